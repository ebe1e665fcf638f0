#pragma once
// The stubs of the tape as a list of words, and how one of them is painted.
#include "app/draw/tape_view.h"

#include <QAbstractListModel>
#include <QStyledItemDelegate>

namespace app {

class TapeModel : public QAbstractListModel
{
    Q_OBJECT
public:
    explicit TapeModel(QObject *parent) : QAbstractListModel(parent) {}
    void setStubs(std::vector<TapeStub> stubs);
    [[nodiscard]] const TapeStub &stub(int row) const { return m_stubs.at(static_cast<std::size_t>(row)); }
    [[nodiscard]] int presentRow() const; // -1: none

    int rowCount(const QModelIndex &parent = QModelIndex()) const override;
    QVariant data(const QModelIndex &index, int role) const override; // the stub in words

private:
    std::vector<TapeStub> m_stubs;
};

class TapeDelegate : public QStyledItemDelegate
{
    Q_OBJECT
public:
    TapeDelegate(const TapeModel *model, QListView *view) : QStyledItemDelegate(view), m_model(model), m_view(view) {}

    void paint(QPainter *painter, const QStyleOptionViewItem &option, const QModelIndex &index) const override;
    QSize sizeHint(const QStyleOptionViewItem &option, const QModelIndex &index) const override;

private:
    double naturalWidth(const TapeStub &stub) const;

    const TapeModel *m_model;
    const QListView *m_view;
};

} // namespace app
