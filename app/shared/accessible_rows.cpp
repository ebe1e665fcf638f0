#include "app/shared/accessible_rows.h"

#include <QWidget>

#include <vector>

namespace app {
namespace {

class AccessibleRow : public QAccessibleInterface, public QAccessibleActionInterface
{
public:
    AccessibleRow(QWidget *list, RowSource *rows, int row) : m_list(list), m_rows(rows), m_row(row) {}

    bool isValid() const override { return m_row < m_rows->rowCount(); }
    QObject *object() const override { return nullptr; }
    QWindow *window() const override { return m_list->window()->windowHandle(); }
    QAccessibleInterface *parent() const override { return QAccessible::queryAccessibleInterface(m_list); }
    QAccessibleInterface *child(int) const override { return nullptr; }
    int childCount() const override { return 0; }
    int indexOfChild(const QAccessibleInterface *) const override { return -1; }
    QAccessibleInterface *childAt(int, int) const override { return nullptr; }
    void setText(QAccessible::Text, const QString &) override {}
    QAccessible::Role role() const override { return QAccessible::ListItem; }
    QString text(QAccessible::Text which) const override
    {
        return which == QAccessible::Name && isValid() ? m_rows->rowText(m_row) : QString();
    }
    QRect rect() const override
    {
        const QRect own = m_rows->rowRect(m_row);
        return {m_list->mapToGlobal(own.topLeft()), own.size()};
    }
    QAccessible::State state() const override
    {
        QAccessible::State state;
        state.focusable = true;
        state.selectable = true;
        state.selected = m_rows->currentRow() == m_row;
        state.focused = state.selected && m_list->hasFocus();
        return state;
    }
    void *interface_cast(QAccessible::InterfaceType type) override
    {
        return type == QAccessible::ActionInterface ? static_cast<QAccessibleActionInterface *>(this) : nullptr;
    }
    QStringList actionNames() const override { return {pressAction()}; }
    void doAction(const QString &name) override
    {
        if (name == pressAction() && isValid())
            m_rows->activateRow(m_row);
    }
    QStringList keyBindingsForAction(const QString &) const override { return {QStringLiteral("Return")}; }

private:
    QWidget *m_list;
    RowSource *m_rows;
    int m_row;
};

class AccessibleRows : public QAccessibleWidget
{
public:
    AccessibleRows(QWidget *list, RowSource *rows) : QAccessibleWidget(list, QAccessible::List), m_rows(rows) {}
    ~AccessibleRows() override
    {
        for (const QAccessible::Id id : m_ids)
            QAccessible::deleteAccessibleInterface(id);
    }

    int childCount() const override { return m_rows->rowCount(); }
    QAccessibleInterface *child(int row) const override
    {
        if (row < 0 || row >= m_rows->rowCount())
            return nullptr;
        while (static_cast<int>(m_ids.size()) <= row)
            m_ids.push_back(QAccessible::registerAccessibleInterface(
                new AccessibleRow(widget(), m_rows, static_cast<int>(m_ids.size()))));
        return QAccessible::accessibleInterface(m_ids[static_cast<std::size_t>(row)]);
    }
    int indexOfChild(const QAccessibleInterface *item) const override
    {
        for (int row = 0; row < childCount(); ++row)
            if (child(row) == item)
                return row;
        return -1;
    }
    QAccessibleInterface *childAt(int x, int y) const override
    {
        const QPoint own = widget()->mapFromGlobal(QPoint(x, y));
        for (int row = 0; row < childCount(); ++row)
            if (m_rows->rowRect(row).contains(own))
                return child(row);
        return nullptr;
    }
    QAccessibleInterface *focusChild() const override
    {
        return widget()->hasFocus() ? child(m_rows->currentRow()) : nullptr;
    }

private:
    RowSource *m_rows;
    mutable std::vector<QAccessible::Id> m_ids; // made when first asked for
};

QAccessibleInterface *rowsFactory(const QString &, QObject *object)
{
    auto *widget = qobject_cast<QWidget *>(object);
    auto *rows = dynamic_cast<RowSource *>(object);
    return widget && rows ? new AccessibleRows(widget, rows) : nullptr;
}

} // namespace

void installAccessibleRows()
{
    static const bool once = (QAccessible::installFactory(rowsFactory), true);
    Q_UNUSED(once)
}

void announceRow(QWidget *list, int row)
{
    QAccessibleEvent event(list, QAccessible::Focus);
    event.setChild(row);
    QAccessible::updateAccessibility(&event);
}

void announceRowsChanged(QWidget *list)
{
    QAccessibleEvent event(list, QAccessible::NameChanged);
    QAccessible::updateAccessibility(&event);
}

} // namespace app
