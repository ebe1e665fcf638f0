#include "app/draw/test_picture.h"

#include "app/shared/theme.h"

#include <QPainter>

#include <algorithm>

namespace app {
namespace {

using Form = TestPictureState::Form;

QString dialWord(Dial dial)
{
    switch (dial) {
    case Dial::Off:
        return TestPicture::tr("off");
    case Dial::VoltAc:
        return TestPicture::tr("volts with the wave");
    case Dial::VoltDc:
        return TestPicture::tr("volts with the straight line");
    case Dial::Ohm:
        return TestPicture::tr("ohms");
    case Dial::Continuity:
        return TestPicture::tr("the beeper");
    case Dial::Capacitance:
        return TestPicture::tr("capacitance");
    case Dial::ClampAmpere:
        return TestPicture::tr("amperes of the clamp");
    }
    Q_UNREACHABLE();
}

QString nameOf(const TestPictureState &state, const QString &id)
{
    const auto terminal =
        std::find_if(state.terminals.begin(), state.terminals.end(), [&](const auto &each) { return each.id == id; });
    return terminal == state.terminals.end() || terminal->name.isEmpty() ? id : terminal->name;
}

void addMeter(QStringList &words, const TestPictureState &state)
{
    words += TestPicture::tr("Meter at %1").arg(dialWord(state.meter.dial));
    if (!state.meter.display.isEmpty())
        words += TestPicture::tr("its display: %1 %2").arg(state.meter.display, state.meter.unit).trimmed();
    if (!state.meterNote.isEmpty())
        words += state.meterNote;
    if (!state.otherDisplay.isEmpty())
        words += TestPicture::tr("%1: %2").arg(state.otherNote, state.otherDisplay);
    if (state.form == Form::Clamp)
        words += TestPicture::tr("the jaw round %1 alone").arg(state.wire);
}

} // namespace

QString testPictureWords(const TestPictureState &state)
{
    QStringList words{state.form == Form::Meter ? TestPicture::tr("Drawing of a meter")
                      : state.part.isEmpty()    ? TestPicture::tr("Drawing")
                                                : TestPicture::tr("Drawing of %1").arg(state.part)};
    if (state.meter.shown && state.form != Form::Look)
        addMeter(words, state);
    const bool clips = state.form == Form::Clips;
    if (!state.black.isEmpty() && state.form != Form::Clamp)
        words +=
            (clips ? TestPicture::tr("black clip on %1") : TestPicture::tr("black probe on %1")).arg(nameOf(state, state.black));
    if (!state.red.isEmpty() && state.form != Form::Clamp)
        words += (clips ? TestPicture::tr("red clip on %1") : TestPicture::tr("red probe on %1")).arg(nameOf(state, state.red));
    if (state.form == Form::Fists)
        words += TestPicture::tr("a hand on each probe, fingers behind the guards");
    QStringList pulled;
    for (const auto &terminal : state.terminals)
        if (terminal.pulled)
            pulled += nameOf(state, terminal.id);
    if (!pulled.isEmpty())
        words += TestPicture::tr("wires pulled: %1").arg(pulled.join(QStringLiteral(", ")));
    for (const auto &caption : state.captions)
        words += caption.text;
    if (state.fault)
        words += state.fault->words;
    return words.join(QStringLiteral("; "));
}

TestPicture::TestPicture(QWidget *parent) : QWidget(parent)
{
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
    followTheme(this);
}

void TestPicture::setState(TestPictureState state)
{
    m_state = std::move(state);
    setAccessibleName(testPictureWords(m_state));
    updateGeometry();
    update();
}

// A picture grows with the window, not with the text: its words do, up to what the picture carries.
QSize TestPicture::sizeHint() const
{
    const double scale = std::min(Theme::current().style().scale, 1.7);
    if (m_state.form == Form::Meter)
        return {qRound(170 * scale), qRound(272 * scale)};
    return {qRound(722 * scale), qRound(294 * scale)};
}

QSize TestPicture::minimumSizeHint() const
{
    if (m_state.form == Form::Meter)
        return {110, 176};
    return m_state.meter.shown ? QSize(540, 226) : QSize(220, 143);
}

void TestPicture::paintEvent(QPaintEvent *)
{
    QPainter painter(this);
    paintTestPicture(painter, rect(), m_state, Theme::current().style());
}

} // namespace app
