#include "app/paper/record.h"

#include "core/base/text.h"
#include "core/session/view_of.h"

#include <algorithm>
#include <ctime>
#include <fmt/chrono.h>
#include <fmt/format.h>

namespace app {
namespace {

constexpr std::size_t kColumns = 72;

std::string localTime(std::int64_t wallMs, const char *format)
{
    const auto second = static_cast<std::time_t>(wallMs / 1000);
    return fmt::format(fmt::runtime(format), fmt::localtime(second));
}

std::string goodOf(const core::VerdictView &verdict, const std::string &test)
{
    for (const core::ProofLine &line : verdict.proofs)
        if (line.test == test)
            return line.good;
    return {};
}

RecordRow rowOf(const core::WayView &stub, const core::VerdictView &verdict)
{
    RecordRow row{localTime(stub.wallMs, "{:%H:%M}"), stub.title, goodOf(verdict, stub.id), stub.said, {}};
    if (stub.mark != core::Standing::Noted)
        row.word = word(stub.mark);
    return row;
}

void wrap(std::string &out, std::string_view text, std::size_t indent)
{
    std::size_t column = indent;
    out.append(indent, ' ');
    for (const std::string_view w : core::split(text, ' ')) {
        if (column > indent && column + w.size() + 1 > kColumns) {
            out += '\n';
            out.append(indent, ' ');
            column = indent;
        } else if (column > indent) {
            out += ' ';
            ++column;
        }
        out += w;
        column += w.size();
    }
    out += '\n';
}

void section(std::string &out, std::string_view title, const std::vector<std::string> &lines)
{
    if (lines.empty())
        return;
    out += '\n';
    out += title;
    out += '\n';
    for (const std::string &line : lines)
        wrap(out, line, 2);
}

void table(std::string &out, std::string_view title, const std::vector<RecordRow> &rows)
{
    std::vector<std::string> lines;
    for (const RecordRow &r : rows) {
        std::string line = r.when + "  " + r.what;
        if (!r.said.empty())
            line += ": " + r.said;
        if (!r.good.empty())
            line += " (good: " + r.good + ")";
        if (!r.word.empty())
            line += " - " + r.word;
        lines.push_back(std::move(line));
    }
    section(out, title, lines);
}

} // namespace

std::string_view outcomeSaid(std::string_view outcome)
{
    constexpr std::pair<std::string_view, std::string_view> kSaid[] = {{"fixed", "It works again."},
                                                                       {"not_fixed", "It is as it was before."},
                                                                       {"not_fitted", "Nothing was fitted or done."},
                                                                       {"dead_on_arrival", "The new part was bad itself."}};
    const auto at = std::ranges::find(kSaid, outcome, &std::pair<std::string_view, std::string_view>::first);
    return at == std::end(kSaid) ? outcome : at->second;
}

Record recordOf(const core::Session &session, const std::string &job)
{
    const core::StateView view = core::viewOf(session);
    const core::VerdictView verdict = view.verdict ? *view.verdict : core::verdictView(session, view.components);
    Record r;
    r.job = job;
    r.date = localTime(session.events().front().at.wallMs, "{:%Y-%m-%d}");
    r.appliance = view.applianceName;
    r.complaint = view.complaint;
    r.meter = session.start().meter.category.empty() ? "no category marked" : session.start().meter.category;
    r.proven = verdict.kind != core::Verdict::Kind::NotProven;
    r.verdict = verdict.headline;
    r.sentence = verdict.sentence;
    r.basis = verdict.basis;
    r.proof = verdict.proof;
    for (const core::CauseLine &c : verdict.causes)
        r.causes.push_back(c.name + ": " + std::string(word(c.standing)) + (c.said.empty() ? "" : " (" + c.said + ")"));
    r.notes = verdict.dangers;
    r.notes.insert(r.notes.end(), verdict.notes.begin(), verdict.notes.end());
    for (const auto *more : {&verdict.refused, &view.vetoes})
        r.notes.insert(r.notes.end(), more->begin(), more->end());
    r.prove = verdict.prove;
    for (const core::WayView &stub : view.way)
        (stub.safety ? r.safety : r.readings).push_back(rowOf(stub, verdict));
    for (const core::Named &item : verdict.putBack)
        r.putBack.push_back(item.text);
    if (view.outcome)
        r.outcome = outcomeSaid(*view.outcome);
    r.practice = view.practice;
    r.lastLine = session.content().phrases->say("record.last");
    return r;
}

std::string recordText(const Record &r)
{
    std::string out = "TEST RECORD " + r.job + "  " + r.date + "\n";
    wrap(out, r.appliance + ": " + r.complaint, 0);
    if (r.practice)
        wrap(out, "PRACTICE: the times were told, not measured.", 0);
    out += '\n' + std::string(kColumns, '=') + '\n';
    wrap(out, r.verdict, 0);
    if (!r.sentence.empty())
        wrap(out, r.sentence, 0);
    out += std::string(kColumns, '=') + '\n';
    if (!r.basis.empty())
        wrap(out, "Limits: " + r.basis + ". Wiring: as assumed, not compared with the sheet.", 0);
    if (!r.proof.empty())
        wrap(out, "Proof: by " + r.proof + ". Meter: " + r.meter + ".", 0);
    table(out, "Readings and looks", r.readings);
    section(out, "Behind it", r.causes);
    section(out, "To know", r.notes);
    section(out, "Still to be put back", r.putBack);
    section(out, "After the repair, prove it", r.prove);
    if (!r.outcome.empty())
        section(out, "How it went", {r.outcome});
    table(out, "Safety screens", r.safety);
    out += '\n';
    wrap(out, r.lastLine, 0);
    return out;
}

} // namespace app
