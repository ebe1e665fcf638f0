#include "app/shared/widget_style.h"

#include "app/shared/focus_ring.h"
#include "app/shared/theme.h"

#include <QGuiApplication>
#include <QMenuBar>
#include <QPainter>
#include <QPainterPath>
#include <QStyleOption>

#include <algorithm>

namespace app {
namespace {

void paintTick(QPainter &painter, const QRectF &box, const QPen &pen)
{
    QPainterPath tick;
    tick.moveTo(box.left() + box.width() * 0.22, box.top() + box.height() * 0.52);
    tick.lineTo(box.left() + box.width() * 0.42, box.top() + box.height() * 0.72);
    tick.lineTo(box.left() + box.width() * 0.80, box.top() + box.height() * 0.24);
    painter.setPen(pen);
    painter.setBrush(Qt::NoBrush);
    painter.drawPath(tick);
}

void paintIndicator(QPainter &painter, const QStyleOption &option, bool round)
{
    const Style &style = Theme::current().style();
    const bool enabled = option.state & QStyle::State_Enabled;
    const QRectF box = QRectF(option.rect).adjusted(1.25, 1.25, -1.25, -1.25);
    painter.setRenderHint(QPainter::Antialiasing);
    QPen edge = style.pen(enabled ? Role::Petrol : Role::Edge, 2.5);
    if (!enabled)
        edge.setStyle(Qt::DashLine);
    painter.setPen(edge);
    painter.setBrush(style[Role::Sheet]);
    const double radius = round ? box.width() / 2 : 4;
    painter.drawRoundedRect(box, radius, radius);
    if (!(option.state & QStyle::State_On))
        return;
    if (round) {
        painter.setPen(Qt::NoPen);
        painter.setBrush(edge.color());
        painter.drawEllipse(box.center(), box.width() * 0.26, box.width() * 0.26);
    } else {
        paintTick(painter, box, style.pen(enabled ? Role::Petrol : Role::Edge, box.width() * 0.11));
    }
}

void paintField(QPainter &painter, const QStyleOption &option)
{
    const Style &style = Theme::current().style();
    const bool open = (option.state & QStyle::State_Enabled) && !(option.state & QStyle::State_ReadOnly);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(style.pen(open ? Role::Ink : Role::Edge, 2));
    painter.setBrush(style[Role::Sheet]);
    painter.drawRoundedRect(QRectF(option.rect).adjusted(1, 1, -1, -1), 3, 3);
}

QRect sliderRect(const QStyleOptionSlider &bar)
{
    const bool upright = bar.orientation == Qt::Vertical;
    const int length = upright ? bar.rect.height() : bar.rect.width();
    const int range = bar.maximum - bar.minimum;
    const int least = std::min(length, 32);
    const int size =
        range > 0 ? std::max(least, static_cast<int>(qint64(length) * bar.pageStep / (range + bar.pageStep))) : length;
    const int at = QStyle::sliderPositionFromValue(bar.minimum, bar.maximum, bar.sliderPosition, length - size, bar.upsideDown);
    const QRect rect = upright ? QRect(0, at, bar.rect.width(), size) : QRect(at, 0, size, bar.rect.height());
    return rect.translated(bar.rect.topLeft());
}

} // namespace

WidgetStyle::WidgetStyle() : QProxyStyle(QStringLiteral("fusion")) {}

int WidgetStyle::pixelMetric(PixelMetric metric, const QStyleOption *option, const QWidget *widget) const
{
    const Theme &theme = Theme::current();
    switch (metric) {
    case PM_FocusFrameHMargin:
    case PM_FocusFrameVMargin:
        return kFocusRoom;
    case PM_IndicatorWidth:
    case PM_IndicatorHeight:
    case PM_ExclusiveIndicatorWidth:
    case PM_ExclusiveIndicatorHeight:
        return theme.spx(30);
    case PM_CheckBoxLabelSpacing:
    case PM_RadioButtonLabelSpacing:
        return theme.spx(14);
    case PM_MenuBarPanelWidth:
    case PM_MenuBarVMargin:
    case PM_MenuBarHMargin:
        return 0;
    case PM_MenuBarItemSpacing:
        return theme.spx(4);
    case PM_ScrollBarExtent:
        return 16;
    case PM_ScrollBarSliderMin:
        return 32;
    default:
        return QProxyStyle::pixelMetric(metric, option, widget);
    }
}

int WidgetStyle::styleHint(StyleHint hint, const QStyleOption *option, const QWidget *widget, QStyleHintReturn *data) const
{
    switch (hint) {
    case SH_FocusFrame_AboveWidget:
        return 1;
    case SH_UnderlineShortcut: { // in the menu bar while it is spoken to, else never
        const bool bar = qobject_cast<const QMenuBar *>(widget) != nullptr;
        return !bar || widget->hasFocus() || (QGuiApplication::queryKeyboardModifiers() & Qt::AltModifier) ? 1 : 0;
    }
    default:
        return QProxyStyle::styleHint(hint, option, widget, data);
    }
}

// As high as the buttons at the bar's other end, so that both stand on one line.
QSize WidgetStyle::sizeFromContents(ContentsType type, const QStyleOption *option, const QSize &size, const QWidget *widget) const
{
    if (type != CT_MenuBarItem)
        return QProxyStyle::sizeFromContents(type, option, size, widget);
    return {size.width() + Theme::current().spx(16), Theme::current().spx(32)};
}

void WidgetStyle::drawControl(ControlElement element, const QStyleOption *option, QPainter *painter, const QWidget *widget) const
{
    const auto *item = qstyleoption_cast<const QStyleOptionMenuItem *>(option);
    if (element == CE_MenuBarEmptyArea) {
        painter->fillRect(option->rect, Theme::current().colour(Role::Desk));
        return;
    }
    if (element != CE_MenuBarItem || item == nullptr) {
        QProxyStyle::drawControl(element, option, painter, widget);
        return;
    }
    const Style &style = Theme::current().style();
    const bool open = item->state & (State_Selected | State_Sunken);
    painter->fillRect(item->rect, style[open ? Role::Tint : Role::Desk]);
    const bool underlined = styleHint(SH_UnderlineShortcut, option, widget, nullptr) != 0;
    painter->setFont(style.font(Type::Text));
    painter->setPen(style[item->state & State_Enabled ? Role::Ink : Role::Ink2]);
    painter->drawText(item->rect,
                      Qt::AlignCenter | Qt::TextSingleLine | (underlined ? Qt::TextShowMnemonic : Qt::TextHideMnemonic),
                      item->text);
}

void WidgetStyle::drawPrimitive(PrimitiveElement element, const QStyleOption *option, QPainter *painter,
                                const QWidget *widget) const
{
    painter->save();
    switch (element) {
    case PE_FrameFocusRect:
        break; // the focus ring says it
    case PE_IndicatorCheckBox:
        paintIndicator(*painter, *option, false);
        break;
    case PE_IndicatorRadioButton:
        paintIndicator(*painter, *option, true);
        break;
    case PE_PanelLineEdit:
        paintField(*painter, *option);
        break;
    default:
        QProxyStyle::drawPrimitive(element, option, painter, widget);
    }
    painter->restore();
}

void WidgetStyle::drawComplexControl(ComplexControl control, const QStyleOptionComplex *option, QPainter *painter,
                                     const QWidget *widget) const
{
    const auto *bar = qstyleoption_cast<const QStyleOptionSlider *>(option);
    if (control != CC_ScrollBar || !bar) {
        QProxyStyle::drawComplexControl(control, option, painter, widget);
        return;
    }
    const Style &style = Theme::current().style();
    painter->save();
    painter->setRenderHint(QPainter::Antialiasing);
    painter->fillRect(bar->rect, style[Role::Well]);
    painter->setPen(Qt::NoPen);
    painter->setBrush(style[bar->state & State_Sunken ? Role::Ink : Role::Edge]);
    painter->drawRoundedRect(QRectF(sliderRect(*bar)).adjusted(3, 3, -3, -3), 4, 4);
    painter->restore();
}

QRect WidgetStyle::subControlRect(ComplexControl control, const QStyleOptionComplex *option, SubControl part,
                                  const QWidget *widget) const
{
    const auto *bar = qstyleoption_cast<const QStyleOptionSlider *>(option);
    if (control != CC_ScrollBar || !bar)
        return QProxyStyle::subControlRect(control, option, part, widget);
    const QRect slider = sliderRect(*bar);
    const bool upright = bar->orientation == Qt::Vertical;
    QRect rect = bar->rect;
    switch (part) {
    case SC_ScrollBarSlider:
        return slider;
    case SC_ScrollBarGroove:
        return rect;
    case SC_ScrollBarSubPage:
        upright ? rect.setBottom(slider.top() - 1) : rect.setRight(slider.left() - 1);
        return rect;
    case SC_ScrollBarAddPage:
        upright ? rect.setTop(slider.bottom() + 1) : rect.setLeft(slider.right() + 1);
        return rect;
    default:
        return {}; // no arrow buttons
    }
}

} // namespace app
