#include "app/draw/tape_model.h"

#include "app/draw/plug_disc.h"
#include "app/shared/text_block.h"
#include "app/shared/theme.h"

#include <QPainter>

#include <algorithm>
#include <cmath>

namespace app {
namespace {

constexpr double kPad = 12, kNarrow = 62, kWide = 150;

void paintEdge(QPainter &painter, const QRectF &rect, const Style &style)
{
    QPen dotted(style[Role::Edge], 2, Qt::SolidLine, Qt::FlatCap);
    dotted.setDashPattern({1, 1});
    painter.setPen(dotted);
    painter.drawLine(rect.topLeft() + QPointF(0, 1), rect.bottomLeft());
}

// At most two lines, the rest as dots: nothing covers the reading below.
QString shortened(const QString &title, const Style &style, double width)
{
    const auto lines = [&](const QString &text) { return TextBlock({{text, Type::Quiet}}, style, width).lines(); };
    if (lines(title) <= 2)
        return title;
    QString text = title;
    do
        text = text.left(std::max<qsizetype>(0, text.lastIndexOf(QLatin1Char(' '))));
    while (!text.isEmpty() && lines(text + QStringLiteral(" …")) > 2);
    return text + QStringLiteral(" …");
}

void paintPower(QPainter &painter, const QRectF &rect, const TapeStub &stub, const Style &style)
{
    painter.fillRect(rect, style[Role::Well]);
    paintPlugDisc(painter, {rect.center().x(), rect.top() + style.px(22)}, style);
    TextBlock::Options options;
    options.align = Qt::AlignHCenter;
    const TextBlock words({{stub.reading, Type::Quiet, Role::Ink2}}, style, rect.width() - 4, options);
    words.paint(painter, {rect.left() + 2, rect.bottom() - style.px(6) - words.height()});
}

void paintStep(QPainter &painter, const QRectF &rect, const TapeStub &stub, const Style &style)
{
    const bool next = stub.kind == TapeStub::Kind::Next;
    const QRectF room = rect.adjusted(style.px(kPad), style.px(8), -style.px(6), -style.px(8));
    TextBlock({{shortened(stub.title, style, room.width()), Type::Quiet, stub.present ? Role::Ink : Role::Ink2}}, style,
              room.width())
        .paint(painter, room.topLeft());
    double left = room.left();
    const double middle = rect.bottom() - style.px(20);
    if (stub.standing) {
        paintMark(painter, *stub.standing, {left + style.px(kMarkSide / 2), middle}, style);
        left += style.px(kMarkSide + 7);
    }
    const double width = std::max(1.0, rect.right() - left - style.px(4));
    const bool fits = TextBlock({{stub.reading, Type::Heading}}, style).width() <= width;
    const Type type = next ? Type::Quiet : fits ? Type::Heading : Type::Title;
    const Role role = next ? Role::Ink2 : stub.present ? Role::Ink : Role::Petrol;
    const TextBlock reading({{stub.reading, type, role}}, style, width);
    const double top = std::min(reading.topAt(middle), rect.bottom() - style.px(8) - reading.height());
    reading.paint(painter, {left, top});
    if (stub.struck) {
        painter.setPen(QPen(style[role], 2));
        painter.drawLine(QPointF(left - 2, top + reading.height() / 2),
                         QPointF(left + reading.width() + 2, top + reading.height() / 2));
    }
}

} // namespace

void TapeModel::setStubs(std::vector<TapeStub> stubs)
{
    beginResetModel();
    m_stubs = std::move(stubs);
    endResetModel();
}

int TapeModel::presentRow() const
{
    const auto present = std::find_if(m_stubs.begin(), m_stubs.end(), [](const TapeStub &stub) { return stub.present; });
    return present == m_stubs.end() ? -1 : static_cast<int>(present - m_stubs.begin());
}

int TapeModel::rowCount(const QModelIndex &parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(m_stubs.size());
}

QVariant TapeModel::data(const QModelIndex &index, int role) const
{
    if (!index.isValid() || (role != Qt::AccessibleTextRole && role != Qt::DisplayRole))
        return {};
    return stubWords(stub(index.row()));
}

void TapeDelegate::paint(QPainter *painter, const QStyleOptionViewItem &option, const QModelIndex &index) const
{
    const Style &style = Theme::current().style();
    const TapeStub &stub = m_model->stub(index.row());
    const QRectF rect(option.rect);
    painter->save();
    painter->setRenderHint(QPainter::Antialiasing);
    const bool chosen = m_view->hasFocus() && m_view->currentIndex() == index;
    painter->fillRect(rect, style[chosen ? Role::Tint : stub.kind == TapeStub::Kind::Next ? Role::Desk : Role::Sheet]);
    if (stub.kind == TapeStub::Kind::Power)
        paintPower(*painter, rect, stub, style);
    else
        paintStep(*painter, rect, stub, style);
    paintEdge(*painter, rect, style);
    if (stub.present)
        painter->fillRect(QRectF(rect.left(), rect.top(), rect.width(), 5), style[Role::Ink]);
    if (chosen)
        painter->fillRect(QRectF(rect.left(), rect.top(), 4, rect.height()), style[Role::Petrol]);
    painter->restore();
}

double TapeDelegate::naturalWidth(const TapeStub &stub) const
{
    const Style &style = Theme::current().style();
    if (stub.kind == TapeStub::Kind::Power)
        return std::max(style.px(kNarrow), widestWord({{stub.reading, Type::Quiet}}, style) + style.px(8));
    const double mark = stub.standing ? style.px(kMarkSide + 7) : 0;
    const bool next = stub.kind == TapeStub::Kind::Next;
    const double reading = TextBlock({{stub.reading, next ? Type::Quiet : Type::Title}}, style).width();
    return std::max(style.px(kWide), style.px(kPad + 6) + mark + std::min(reading, style.px(200)));
}

// Stubs grow together until the tape is full; the power stubs stay narrow.
QSize TapeDelegate::sizeHint(const QStyleOptionViewItem &, const QModelIndex &index) const
{
    double natural = 0;
    int wide = 0;
    for (int row = 0; row < m_model->rowCount(); ++row) {
        natural += naturalWidth(m_model->stub(row));
        wide += m_model->stub(row).kind == TapeStub::Kind::Power ? 0 : 1;
    }
    const TapeStub &stub = m_model->stub(index.row());
    double width = naturalWidth(stub);
    const double room = m_view->viewport()->width() - natural;
    if (room > 0 && wide > 0 && stub.kind != TapeStub::Kind::Power)
        width += room / wide;
    return {static_cast<int>(std::floor(width)), std::max(1, m_view->viewport()->height())};
}

} // namespace app
