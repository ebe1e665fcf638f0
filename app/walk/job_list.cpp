#include "app/walk/job_list.h"

#include "app/store/job_folder.h"
#include "app/walk/words.h"
#include "core/session/event_text.h"

namespace app {
namespace {

QString lastWords(const JobEntry &entry)
{
    const auto event = core::eventFrom(entry.lastLine);
    if (!event)
        return {};
    using What = core::Event::What;
    switch (event->what) {
    case What::Stopped:
    case What::Mistake: return JobList::tr("stopped");
    case What::Outcome: return JobList::tr("told how it went");
    case What::VerdictShown:
    case What::PutBack: return JobList::tr("at its verdict: say how it went");
    default: return JobList::tr("power counts as unknown");
    }
}

} // namespace

JobList JobList::read(const ContentFiles &content, const std::filesystem::path &folder)
{
    JobList list;
    const auto entries = listJobs(folder);
    if (!entries) {
        list.fault = qs(entries.error().text);
        return list;
    }
    for (const JobEntry &entry : *entries) {
        const auto first = core::eventFrom(entry.firstLine);
        const core::Tree *tree = first && first->snapshot ? content.library.tree(first->snapshot->tree) : nullptr;
        const core::Appliance *appliance = tree == nullptr ? nullptr : content.library.appliance(tree->appliance);
        if (tree == nullptr || appliance == nullptr) {
            ++list.damaged;
            continue;
        }
        Hit hit;
        hit.id = QString::fromStdString(entry.path.string());
        hit.head = qs(entry.id) + QStringLiteral("  ") + qs(appliance->name);
        hit.tail = qs(tree->complaint);
        hit.note = Words::day(entry.changedMs);
        const QString last = entry.note.empty() ? lastWords(entry) : qs(entry.note);
        if (!last.isEmpty())
            hit.tail += QStringLiteral(" · ") + last;
        list.jobs.push_back(std::move(hit));
    }
    return list;
}

std::vector<Hit> complaintsOf(const ContentFiles &content)
{
    std::vector<Hit> hits;
    for (const auto &[id, tree] : content.library.trees) {
        const core::Appliance *appliance = content.library.appliance(tree.appliance);
        if (appliance == nullptr || content.library.faulty.contains(id))
            continue;
        Hit hit;
        hit.id = qs(id);
        hit.head = qs(tree.complaint);
        hit.tail = qs(appliance->name);
        if (content.library.ownTrees.contains(id))
            hit.note = JobList::tr("own tree");
        for (const std::string &other : tree.alsoCalled)
            hit.also << qs(other);
        hit.also << qs(tree.say);
        hits.push_back(std::move(hit));
    }
    return hits;
}

} // namespace app
