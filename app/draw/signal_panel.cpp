#include "app/draw/signal_panel.h"

#include "app/draw/safety_colours.h"
#include "app/draw/sign.h"
#include "app/shared/theme.h"

#include <QPainter>

#include <algorithm>
#include <cmath>

namespace app {
namespace {

struct Colours
{
    QRgb ground;
    QRgb letters;
};

Colours coloursOf(Signal signal)
{
    switch (signal) {
    case Signal::Danger: return {safety::kRed, safety::kWhite};
    case Signal::Warning: return {safety::kOrange, safety::kBlack};
    case Signal::Caution: return {safety::kYellow, safety::kBlack};
    case Signal::Notice: return {safety::kBlue, safety::kWhite};
    }
    Q_UNREACHABLE();
}

TextBlock blackText(const Runs &runs, const Style &style, double width)
{
    TextBlock::Options options;
    options.colour = QColor::fromRgba(safety::kBlack);
    options.leading = 1.05;
    return TextBlock(runs, style, width, options);
}

Runs inType(Runs runs, bool stopPage)
{
    if (stopPage)
        for (Run &run : runs)
            run.type = run.type == Type::SafetyStrong ? Type::StopStrong : Type::Stop;
    return runs;
}

} // namespace

QString signalWord(Signal signal)
{
    switch (signal) {
    case Signal::Danger: return SignalPanel::tr("DANGER");
    case Signal::Warning: return SignalPanel::tr("WARNING");
    case Signal::Caution: return SignalPanel::tr("CAUTION");
    case Signal::Notice: return SignalPanel::tr("NOTICE");
    }
    Q_UNREACHABLE();
}

QString signalWords(const SignalText &text)
{
    QStringList words{signalWord(text.signal) + QLatin1Char('.'), text.hazard};
    for (const auto &step : text.steps)
        words += (step.number.isEmpty() ? QString() : step.number + QStringLiteral(". ")) + plainText(step.text);
    if (!text.fromTree.empty())
        words += SignalPanel::tr("From the tree:");
    for (const QString &line : text.fromTree)
        words += line;
    return words.join(QLatin1Char(' '));
}

// Where everything of the panel stands for one width.
struct SignalPanel::Plan
{
    struct Line
    {
        TextBlock text;
        QPointF at;
        QString number;
        QString sign;
        bool rule = false; // a hairline above
    };
    double head = 0;    // height of the coloured field
    double column = 0;  // right edge of the signs' column
    double signSide = 0;
    double height = 0;
    std::vector<Line> lines;
};

SignalPanel::SignalPanel(QWidget *parent) : QWidget(parent)
{
    setFocusPolicy(Qt::StrongFocus);
    QSizePolicy policy(QSizePolicy::Expanding, QSizePolicy::Preferred); // its height follows from its width alone
    policy.setHeightForWidth(true);
    setSizePolicy(policy);
    followTheme(this);
}

void SignalPanel::setText(SignalText text)
{
    m_text = std::move(text);
    setAccessibleName(signalWords(m_text));
    QStringList signs;
    for (const QString &code : m_text.signs)
        signs += signName(code);
    setAccessibleDescription(signs.isEmpty() ? QString() : tr("Signs: %1").arg(signs.join(QStringLiteral(", "))));
    updateGeometry();
    update();
}

void SignalPanel::setStopPage(bool stopPage)
{
    m_stopPage = stopPage;
    updateGeometry();
    update();
}

SignalPanel::Plan SignalPanel::plan(double width) const
{
    const Style &style = Theme::current().style();
    // The signs stop growing with the text at a third of the width.
    const double pad = style.px(m_stopPage ? 28 : 18);
    Plan plan;
    plan.head = style.px(m_stopPage ? 82 : 48);
    const bool signs = !m_text.signs.empty();
    plan.signSide = std::min(style.px(m_stopPage ? 100 : m_text.signs.size() < 2 ? 96 : 88), width / 5);
    plan.column = signs ? 3 + plan.signSide + 2 * style.px(m_stopPage ? 32 : 16) : 0;
    const double left = plan.column + (signs ? 3 : 0) + pad;
    const double room = std::max(40.0, width - left - pad);

    double y = plan.head + 3 + style.px(m_stopPage ? 22 : 9);
    const auto add = [&](const Runs &runs, double indent, double gap) -> Plan::Line & {
        TextBlock text = blackText(runs, style, room - indent);
        const double height = text.height();
        plan.lines.push_back({std::move(text), {left + indent, y}, {}, {}, false});
        y += height + gap;
        return plan.lines.back();
    };
    add({{m_text.hazard, m_stopPage ? Type::StopHead : Type::SafetyHead}}, 0, style.px(m_stopPage ? 26 : 4));
    const bool numbered = std::any_of(m_text.steps.begin(), m_text.steps.end(), [](const auto &step) { return !step.number.isEmpty(); });
    bool first = true;
    for (const auto &step : m_text.steps) {
        const double indent = !step.sign.isEmpty() ? style.px(80) : !step.number.isEmpty() && numbered ? style.px(26) : 0;
        Plan::Line &line = add(inType(step.text, m_stopPage), indent, style.px(m_stopPage ? 24 : 3));
        line.number = step.number;
        line.sign = step.sign;
        line.rule = m_stopPage && !first;
        first = false;
    }
    y += m_text.fromTree.empty() ? 0 : style.px(3);
    for (std::size_t i = 0; i < m_text.fromTree.size(); ++i)
        add({{i == 0 ? tr("from the tree: ") : QString(), Type::Quiet}, {m_text.fromTree[i], Type::Text}}, 0, style.px(2)).rule = i == 0;
    const double gap = style.px(12);
    const double column = plan.head + 3 + gap + (plan.signSide + gap) * static_cast<double>(m_text.signs.size());
    plan.height = std::ceil(std::max(y + style.px(7), signs ? column : 0) + 3);
    return plan;
}

QSize SignalPanel::sizeHint() const
{
    const int width = Theme::current().spx(720);
    return {width, heightForWidth(width)};
}

QSize SignalPanel::minimumSizeHint() const
{
    return {Theme::current().spx(300), 0};
}

int SignalPanel::heightForWidth(int width) const
{
    return static_cast<int>(plan(width).height);
}

void SignalPanel::paintHead(QPainter &painter, const Plan &plan) const
{
    const Colours colours = coloursOf(m_text.signal);
    const QColor letters = QColor::fromRgba(colours.letters);
    painter.fillRect(QRectF(0, 0, width(), plan.head), QColor::fromRgba(colours.ground));
    TextBlock::Options options;
    options.colour = letters;
    Style style = Theme::current().style();
    const double gap = style.px(12);
    style.scale *= m_stopPage ? 1.25 : 1;
    const TextBlock word({{signalWord(m_text.signal), m_stopPage ? Type::StopHead : Type::Verdict}}, style, TextBlock::kNoLimit, options);
    const double side = m_text.signal == Signal::Notice ? 0 : plan.head * 0.72; // NOTICE is not about injury: no alert symbol
    const double room = side > 0 ? side + gap : 0;
    const double left = (width() - word.width() - room) / 2;
    if (side > 0)
        paintAlert(painter, {left, (plan.head - side) / 2 + 1, side, side}, letters, QColor::fromRgba(colours.ground));
    word.paint(painter, {left + room, word.topAt(plan.head / 2 + 1)});
}

void SignalPanel::paintSigns(QPainter &painter, const Plan &plan) const
{
    const double count = static_cast<double>(m_text.signs.size());
    const double gap = Theme::current().px(12);
    double y = plan.head + 3 + (height() - plan.head - 6 - count * plan.signSide - (count - 1) * gap) / 2;
    for (const QString &code : m_text.signs) {
        paintSign(painter, code, {(plan.column - plan.signSide) / 2 + 1, y, plan.signSide, plan.signSide});
        y += plan.signSide + gap;
    }
}

void SignalPanel::paintLines(QPainter &painter, const Plan &plan) const
{
    const Style &style = Theme::current().style();
    for (const auto &line : plan.lines) {
        const double left = plan.column + style.px(20);
        if (line.rule)
            painter.fillRect(QRectF(left, line.at.y() - style.px(m_stopPage ? 13 : 3), width() - left - style.px(20), 1), QColor::fromRgba(safety::kBlack));
        if (!line.number.isEmpty())
            blackText({{line.number, m_stopPage ? Type::StopStrong : Type::SafetyStrong}}, style, TextBlock::kNoLimit)
                .paint(painter, line.at - QPointF(style.px(26), 0));
        if (!line.sign.isEmpty())
            paintSign(painter, line.sign, {line.at.x() - style.px(80), line.at.y() + line.text.height() / 2 - style.px(30), style.px(60), style.px(60)});
        line.text.paint(painter, line.at);
    }
}

void SignalPanel::paintEvent(QPaintEvent *)
{
    const Plan plan = this->plan(width());
    const QColor black = QColor::fromRgba(safety::kBlack);
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.fillRect(rect(), QColor::fromRgba(safety::kWhite));
    paintHead(painter, plan);
    painter.fillRect(QRectF(0, plan.head, width(), 3), black);
    if (plan.column > 0)
        painter.fillRect(QRectF(plan.column, plan.head, 3, height() - plan.head), black);
    painter.setPen(QPen(Theme::current().style().dark() ? QColor::fromRgba(safety::kWhite) : black, 3, Qt::SolidLine, Qt::SquareCap, Qt::MiterJoin));
    painter.setBrush(Qt::NoBrush);
    painter.drawRect(QRectF(rect()).adjusted(1.5, 1.5, -1.5, -1.5));
    paintSigns(painter, plan);
    paintLines(painter, plan);
}

} // namespace app
