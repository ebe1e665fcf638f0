#include "app/draw/safety_picture.h"

#include "app/draw/safety_icons.h"
#include "app/draw/safety_scenes.h"
#include "app/shared/text_block.h"
#include "app/shared/theme.h"

#include <QPainter>

#include <algorithm>

namespace app {
namespace {

using Scene = SafetyPictureState::Scene;

struct Step
{
    Act act;
    QString words;
};

// At an outlet the machine is unplugged already: only the probes come out.
std::vector<Step> stepsToOff(const SafetyPictureState &state)
{
    if (state.atOutlet)
        return {{Act::ProbeRedOut, SafetyPicture::tr("red out first")},
                {Act::ProbeBlackOut, SafetyPicture::tr("then black, both down")},
                {Act::PlugOut, SafetyPicture::tr("the plug stays out")}};
    std::vector<Step> steps{{Act::OffAtControl, SafetyPicture::tr("off at the control")}};
    steps.push_back(state.breaker ? Step{Act::BreakerOff, SafetyPicture::tr("then the breaker")}
                                  : Step{Act::PlugOut, SafetyPicture::tr("then the plug, in sight")});
    if (state.clips)
        steps.push_back({Act::ClipsOff, SafetyPicture::tr("then the clips, one hand")});
    return steps;
}

// What is done, in its order. Scenes that are drawn as a whole have their words here too.
std::vector<Step> stepsOf(const SafetyPictureState &state)
{
    const Step plug{Act::PlugOut, SafetyPicture::tr("the plug, in sight")};
    switch (state.scene) {
    case Scene::BreakerOff:
        return {{Act::BreakerOff, SafetyPicture::tr("off, both halves")}, {Act::TapeOn, SafetyPicture::tr("taped, everyone told")}};
    case Scene::Clips:
        return {{Act::ClipsOn, SafetyPicture::tr("clips on, power off")}, {Act::HandsAway, SafetyPicture::tr("hands off, stand back")},
                {Act::PowerOn, SafetyPicture::tr("then power on, read once")}};
    case Scene::Clamp:
        return {{Act::JawAlone, SafetyPicture::tr("the jaw round one wire")}, {Act::HandsAway, SafetyPicture::tr("stand back")},
                {Act::PowerOn, SafetyPicture::tr("then power on, read")}};
    case Scene::Run:
        return {{Act::Closed, SafetyPicture::tr("closed up")}, {Act::StayBeside, SafetyPicture::tr("stay beside it")}, {Act::FlapLifts, SafetyPicture::tr("watch the flap")}};
    case Scene::MakeItOff:
        return stepsToOff(state);
    case Scene::Wait:
        return {plug, {Act::HandsAway, SafetyPicture::tr("hands out")}, {Act::Wait, SafetyPicture::tr("wait")}};
    case Scene::Hot:
        return {{Act::Wait, SafetyPicture::tr("wait")}, {Act::BackOfHand, SafetyPicture::tr("back of the hand near, not on")}};
    case Scene::Closed: return {{Act::Closed, SafetyPicture::tr("it stays closed")}};
    case Scene::Unplug:
    case Scene::ProveDead:
    case Scene::Outlet:
    case Scene::PutBack: return {};
    }
    Q_UNREACHABLE();
}

void paintSteps(QPainter &painter, const QRectF &into, const std::vector<Step> &steps, const Style &style)
{
    const double gap = style.px(12);
    const double count = static_cast<double>(std::max<std::size_t>(2, steps.size()));
    const double width = std::min((into.width() - (count - 1) * gap) / count, style.px(230));
    double words = 0;
    for (const Step &step : steps)
        words = std::max(words, TextBlock({{step.words, Type::QuietStrong}}, style, width).height());
    const double height = std::min(into.height() - words - style.px(8), width * 0.95);
    double x = into.left();
    for (std::size_t i = 0; i < steps.size(); ++i) {
        const QRectF frame(x, into.top(), width, height);
        painter.setPen(QPen(style[Role::Rule], 1));
        painter.setBrush(style[Role::Well]);
        painter.drawRect(frame.adjusted(0.5, 0.5, -0.5, -0.5));
        paintAct(painter, steps[i].act, frame.adjusted(width * 0.1, height * 0.12, -width * 0.1, -height * 0.06), style);
        if (steps.size() > 1) {
            const QPointF at = frame.topLeft() + QPointF(style.px(19), style.px(19));
            painter.setPen(style.pen(Role::Line, 1.75));
            painter.setBrush(style[Role::Sheet]);
            painter.drawEllipse(at, style.px(12), style.px(12));
            paintLine(painter, {QString::number(i + 1), Type::QuietStrong}, style, at, Qt::AlignHCenter);
        }
        TextBlock::Options options;
        options.align = Qt::AlignHCenter;
        TextBlock({{steps[i].words, Type::QuietStrong}}, style, width, options).paint(painter, frame.bottomLeft() + QPointF(0, style.px(8)));
        x += width + gap;
    }
}

} // namespace

QString safetyPictureWords(const SafetyPictureState &state)
{
    switch (state.scene) {
    case Scene::Unplug: return SafetyPicture::tr("Drawing: the plug pulled out of its outlet, lying where you see it");
    case Scene::ProveDead: return SafetyPicture::tr("Drawing: first a known outlet, then the machine, then the same outlet again, with the same meter");
    case Scene::Outlet:
        return SafetyPicture::tr("Drawing: a hand on each probe, fingers behind the guards; first black into %1, then red into %2; the machine unplugged")
            .arg(state.black.toUpper(), state.red.toUpper());
    case Scene::PutBack: {
        QStringList wires;
        for (const auto &part : state.parts)
            for (const auto &wire : part.wires)
                wires += SafetyPicture::tr("%1: %2, %3").arg(wire.number, part.caption, wire.terminal);
        return SafetyPicture::tr("Drawing of the pulled wires; %1").arg(wires.join(QStringLiteral("; ")));
    }
    case Scene::BreakerOff:
    case Scene::Clips:
    case Scene::Clamp:
    case Scene::Run:
    case Scene::MakeItOff:
    case Scene::Wait:
    case Scene::Hot:
    case Scene::Closed: break;
    }
    QStringList words;
    for (const Step &step : stepsOf(state))
        words += step.words;
    return SafetyPicture::tr("Drawing: %1").arg(words.join(QStringLiteral("; ")));
}

void paintSafetyPicture(QPainter &painter, const QRectF &into, const SafetyPictureState &state, const Style &style)
{
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    switch (state.scene) {
    case Scene::Unplug: paintUnplug(painter, into, state, style); break;
    case Scene::ProveDead: paintProvingDead(painter, into, state, style); break;
    case Scene::Outlet: paintAtTheOutlet(painter, into, state, style); break;
    case Scene::PutBack: paintPutBack(painter, into, state, style); break;
    case Scene::BreakerOff:
    case Scene::Clips:
    case Scene::Clamp:
    case Scene::Run:
    case Scene::MakeItOff:
    case Scene::Wait:
    case Scene::Hot:
    case Scene::Closed: paintSteps(painter, into, stepsOf(state), style); break;
    }
    painter.restore();
}

SafetyPicture::SafetyPicture(QWidget *parent) : QWidget(parent)
{
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
    followTheme(this);
}

void SafetyPicture::setState(SafetyPictureState state)
{
    m_state = std::move(state);
    setAccessibleName(safetyPictureWords(m_state));
    update();
}

QSize SafetyPicture::sizeHint() const
{
    return {Theme::current().spx(520), Theme::current().spx(230)};
}

QSize SafetyPicture::minimumSizeHint() const
{
    return {320, 150};
}

void SafetyPicture::paintEvent(QPaintEvent *)
{
    QPainter painter(this);
    paintSafetyPicture(painter, rect(), m_state, Theme::current().style());
}

} // namespace app
