#include "app/walk/tape_state.h"

#include "app/walk/words.h"

#include <QCoreApplication>

#include <algorithm>

namespace app {
namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("app::Tape", text);
}

// One stub of the way: readings of the same test one after the other share it.
struct Stub
{
    const core::WayView *last;
    QStringList said;
    int number = 0;
};

std::vector<Stub> gathered(const core::StateView &view)
{
    std::vector<Stub> stubs;
    int number = 0;
    for (const core::WayView &way : view.way) {
        const bool same = !stubs.empty() && !way.safety && !stubs.back().last->safety && stubs.back().last->id == way.id &&
                          stubs.back().said.size() < 4;
        if (!same)
            stubs.push_back({&way, {}, way.safety ? 0 : ++number});
        stubs.back().last = &way;
        if (!way.said.empty())
            stubs.back().said << qs(way.said);
    }
    return stubs;
}

bool isPlugOut(const core::Session &session, int number)
{
    const auto &events = session.events();
    const auto at = std::ranges::find(events, number, &core::Event::number);
    return at != events.end() && at->what == core::Event::What::Confirmed &&
           (at->step == "S1" || (at->step == "S9" && at->value == "plug"));
}

QString presentWord(const core::StateView &view)
{
    if (!view.verdict)
        return tr("you are here");
    switch (view.verdict->kind) {
    case core::Verdict::Kind::Replace:
        return tr("replace");
    case core::Verdict::Kind::Fix:
        return tr("nothing to buy");
    case core::Verdict::Kind::Call:
        return tr("call");
    case core::Verdict::Kind::NotProven:
        return tr("not proven");
    }
    Q_UNREACHABLE();
}

QString presentTitle(const core::StateView &view, int number)
{
    if (view.verdict)
        return tr("Verdict");
    if (!view.step.screen.empty())
        return tr("Safety first");
    const std::string &title = view.step.title.empty() ? view.step.text : view.step.title;
    return QString::number(number) + QLatin1Char(' ') + brief(qs(title));
}

} // namespace

std::vector<TapeStub> tapeOf(const core::StateView &view, const core::Session &session)
{
    std::vector<TapeStub> tape;
    int number = 0;
    const std::vector<Stub> stubs = gathered(view);
    for (std::size_t i = 0; i < stubs.size(); ++i) {
        const Stub &stub = stubs[i];
        const core::WayView &way = *stub.last;
        TapeStub out;
        out.id = way.event;
        number = std::max(number, stub.number);
        if (way.safety) {
            const bool plug = isPlugOut(session, way.event);
            out.kind = plug ? TapeStub::Kind::Power : TapeStub::Kind::Step;
            out.title = plug ? QString() : qs(way.title);
            out.reading = plug                  ? qs(way.title) + QLatin1Char('\n') + Words::time(way.wallMs)
                          : stub.said.isEmpty() ? Words::time(way.wallMs)
                                                : stub.said.join(QStringLiteral(", "));
            if (!plug)
                out.standing = Standing::Noted;
        } else {
            const bool here = i + 1 == stubs.size() && (way.id == view.step.test || way.id == view.step.id);
            out.title = QString::number(stub.number) + QLatin1Char(' ') + brief(qs(way.title));
            out.reading = stub.said.join(QStringLiteral(", ")) + (here ? tr(", once") : QString());
            out.standing = standingOf(way.mark);
            out.present = here;
        }
        tape.push_back(std::move(out));
    }
    if (tape.empty() || !tape.back().present) {
        TapeStub present;
        present.title = presentTitle(view, number + 1);
        present.reading = presentWord(view);
        present.present = true;
        tape.push_back(std::move(present));
    }
    return tape;
}

} // namespace app
