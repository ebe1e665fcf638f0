#include "app/walk/hit_list.h"

#include "app/shared/key_button.h"
#include "app/shared/theme.h"

#include <QAbstractListModel>
#include <QKeyEvent>
#include <QPainter>
#include <QStyledItemDelegate>

#include <algorithm>
#include <cmath>
#include <memory>

namespace app {

class HitModel : public QAbstractListModel
{
public:
    using QAbstractListModel::QAbstractListModel;

    void show(std::vector<Hit> hits)
    {
        beginResetModel();
        m_hits = std::move(hits);
        endResetModel();
    }
    const std::vector<Hit> &hits() const { return m_hits; }
    int rowCount(const QModelIndex &parent = {}) const override { return parent.isValid() ? 0 : static_cast<int>(m_hits.size()); }
    QVariant data(const QModelIndex &index, int role) const override
    {
        if (!checkIndex(index, CheckIndexOption::IndexIsValid) || (role != Qt::DisplayRole && role != Qt::AccessibleTextRole))
            return {};
        const Hit &hit = m_hits[static_cast<std::size_t>(index.row())];
        QStringList words{hit.head, hit.tail, hit.note};
        words.removeAll(QString());
        return words.join(QStringLiteral(", "));
    }

private:
    std::vector<Hit> m_hits;
};

namespace {

constexpr double kSide = 16, kKeyRoom = 44;

Runs marked(const QString &text, const std::vector<Stretch> &matched, Type plain, Type strong, Role role)
{
    Runs runs;
    int at = 0;
    std::vector<Stretch> sorted = matched;
    std::ranges::sort(sorted, {}, &Stretch::from);
    for (const Stretch &stretch : sorted) {
        if (stretch.from < at || stretch.from + stretch.length > text.size())
            continue;
        if (stretch.from > at)
            runs.push_back({text.mid(at, stretch.from - at), plain, role});
        runs.push_back({text.mid(stretch.from, stretch.length), strong, role});
        at = stretch.from + stretch.length;
    }
    if (at < text.size())
        runs.push_back({text.mid(at), plain, role});
    return runs;
}

class HitDelegate : public QStyledItemDelegate
{
public:
    HitDelegate(const HitModel *model, QListView *view) : QStyledItemDelegate(view), m_model(model), m_view(view) {}

    QSize sizeHint(const QStyleOptionViewItem &, const QModelIndex &index) const override
    {
        const Row row = rowOf(index, m_view->viewport()->width());
        const double height = row.head->height() + row.tail->height() + Theme::current().px(18);
        return {m_view->viewport()->width(), static_cast<int>(std::ceil(height))};
    }

    void paint(QPainter *painter, const QStyleOptionViewItem &option, const QModelIndex &index) const override
    {
        const Style &style = Theme::current().style();
        const QRectF rect = option.rect;
        const bool current = option.state & QStyle::State_Selected;
        painter->setRenderHint(QPainter::Antialiasing);
        if (current) {
            painter->fillRect(rect, style[Role::Tint]);
            painter->fillRect(QRectF(rect.left(), rect.top(), 4, rect.height()), style[Role::Petrol]);
        }
        painter->fillRect(QRectF(rect.left(), rect.bottom() - 1, rect.width(), 1), style[Role::Rule]);
        const Row row = rowOf(index, rect.width());
        const double left = rect.left() + style.px(kSide + kKeyRoom);
        const double top = rect.top() + (rect.height() - row.head->height() - row.tail->height()) / 2;
        row.head->paint(*painter, {left, top});
        row.tail->paint(*painter, {left, top + row.head->height()});
        if (index.row() < 9)
            paintKeyBox(*painter, QString::number(index.row() + 1), style, rect.left() + style.px(kSide), rect.center().y(), style[Role::Petrol]);
        if (row.note->width() > 0)
            row.note->paint(*painter, {rect.right() - style.px(kSide) - row.note->width(), rect.center().y() - row.note->height() / 2});
    }

private:
    struct Row
    {
        std::unique_ptr<TextBlock> head, tail, note;
    };

    Row rowOf(const QModelIndex &index, double width) const
    {
        const Style &style = Theme::current().style();
        const Hit &hit = m_model->hits()[static_cast<std::size_t>(index.row())];
        Row row;
        row.note = std::make_unique<TextBlock>(Runs{{hit.note, Type::Quiet, Role::Ink2}}, style);
        const double room = std::max(style.px(120), width - style.px(2 * kSide + kKeyRoom) - (hit.note.isEmpty() ? 0 : row.note->width() + style.px(16)));
        row.head = std::make_unique<TextBlock>(marked(hit.head, hit.match.head, Type::Safety, Type::SafetyStrong, Role::Ink), style, room);
        row.tail = std::make_unique<TextBlock>(marked(hit.tail, hit.match.tail, Type::Quiet, Type::QuietStrong, Role::Ink2), style, room);
        return row;
    }

    const HitModel *m_model;
    const QListView *m_view;
};

} // namespace

HitList::HitList(const QString &name, QWidget *parent) : QListView(parent), m_model(new HitModel(this))
{
    setAccessibleName(name);
    setModel(m_model);
    setItemDelegate(new HitDelegate(m_model, this));
    setFrameShape(QFrame::NoFrame);
    setEditTriggers(QAbstractItemView::NoEditTriggers);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
    setTabKeyNavigation(false);
    connect(this, &QListView::clicked, this, [this](const QModelIndex &index) { Q_EMIT chosen(idAt(index.row() + 1)); });
    connect(&Theme::current(), &Theme::changed, this, [this] { scheduleDelayedItemsLayout(); });
}

void HitList::setHits(std::vector<Hit> hits)
{
    m_model->show(std::move(hits));
    if (m_model->rowCount() > 0)
        setCurrentIndex(m_model->index(0, 0));
    updateGeometry();
}

const std::vector<Hit> &HitList::hits() const
{
    return m_model->hits();
}

void HitList::step(int by)
{
    const int row = std::clamp(currentIndex().row() + by, 0, std::max(0, m_model->rowCount() - 1));
    setCurrentIndex(m_model->index(row, 0));
}

QString HitList::currentId() const
{
    return idAt(currentIndex().row() + 1);
}

QString HitList::idAt(int number) const
{
    const bool there = number >= 1 && number <= m_model->rowCount();
    return there ? m_model->hits()[static_cast<std::size_t>(number - 1)].id : QString();
}

QSize HitList::sizeHint() const
{
    return {Theme::current().spx(520), Theme::current().spx(260)};
}

QSize HitList::minimumSizeHint() const
{
    return {Theme::current().spx(220), Theme::current().spx(120)};
}

void HitList::keyPressEvent(QKeyEvent *event)
{
    const bool enter = event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter;
    const int digit = event->key() - Qt::Key_0;
    if (enter && !event->isAutoRepeat() && !currentId().isEmpty()) {
        Q_EMIT chosen(currentId());
    } else if (digit >= 1 && digit <= 9 && !(event->modifiers() & ~Qt::KeypadModifier) && !idAt(digit).isEmpty()) {
        Q_EMIT chosen(idAt(digit));
    } else if (event->key() == Qt::Key_Escape || !event->text().isEmpty()) {
        event->ignore(); // letters are for the field above
    } else {
        QListView::keyPressEvent(event);
    }
}

void HitList::resizeEvent(QResizeEvent *event)
{
    QListView::resizeEvent(event);
    scheduleDelayedItemsLayout();
}

} // namespace app
