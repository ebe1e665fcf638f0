#pragma once
// What was found, as a list: number, words with the matched letters underlined, a quiet line, a note at the right.
#include "app/walk/hits.h"

#include <QListView>

namespace app {

class HitModel;

class HitList : public QListView
{
    Q_OBJECT
public:
    explicit HitList(const QString &name, QWidget *parent = nullptr);
    void setHits(std::vector<Hit> hits);
    [[nodiscard]] const std::vector<Hit> &hits() const;
    void step(int by); // from the field above it
    [[nodiscard]] QString currentId() const;
    [[nodiscard]] QString idAt(int number) const; // from 1; "" if there is none

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;

Q_SIGNALS:
    void chosen(const QString &id); // Enter or a click

protected:
    void keyPressEvent(QKeyEvent *event) override;
    void resizeEvent(QResizeEvent *event) override;

private:
    HitModel *m_model;
};

} // namespace app
