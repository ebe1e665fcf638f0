#include "app/draw/tape_view.h"

#include "app/draw/tape_model.h"
#include "app/shared/text_block.h"
#include "app/shared/theme.h"

#include <QKeyEvent>
#include <QPainter>

namespace app {

QString stubWords(const TapeStub &stub)
{
    QStringList words;
    if (!stub.title.isEmpty())
        words += stub.title;
    words += plainText({{stub.reading}});
    if (stub.standing)
        words += StandingWords::word(*stub.standing);
    if (stub.struck)
        words += TapeView::tr("struck out");
    if (stub.present)
        words += TapeView::tr("present step");
    if (stub.kind == TapeStub::Kind::Next)
        words += TapeView::tr("not done yet");
    return words.join(QStringLiteral(", "));
}

TapeView::TapeView(QWidget *parent) : QListView(parent)
{
    auto *model = new TapeModel(this);
    setModel(model);
    setItemDelegate(new TapeDelegate(model, this));
    setFlow(QListView::LeftToRight);
    setWrapping(false);
    setFrameShape(QFrame::NoFrame);
    setSelectionMode(QAbstractItemView::SingleSelection);
    setEditTriggers(QAbstractItemView::NoEditTriggers);
    setHorizontalScrollMode(QAbstractItemView::ScrollPerPixel);
    setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff); // arrow keys, wheel; all of it is behind F7
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    setAccessibleName(tr("The way so far"));
    connect(this, &QListView::clicked, this,
            [this, model](const QModelIndex &index) { Q_EMIT stubActivated(model->stub(index.row()).id); });
    connect(&Theme::current(), &Theme::changed, this, [this] {
        scheduleDelayedItemsLayout();
        updateGeometry();
        viewport()->update();
    });
}

void TapeView::setStubs(const std::vector<TapeStub> &stubs)
{
    auto *model = static_cast<TapeModel *>(this->model());
    model->setStubs(stubs);
    const QModelIndex present = model->index(model->presentRow());
    if (present.isValid())
        setCurrentIndex(present);
    showPresent();
}

void TapeView::showPresent()
{
    const auto *model = static_cast<const TapeModel *>(this->model());
    const QModelIndex present = model->index(model->presentRow());
    if (present.isValid())
        scrollTo(present);
}

void TapeView::doItemsLayout()
{
    QListView::doItemsLayout();
    showPresent();
}

QSize TapeView::sizeHint() const
{
    return {Theme::current().spx(800), Theme::current().spx(104)};
}

QSize TapeView::minimumSizeHint() const
{
    return {Theme::current().spx(200), Theme::current().spx(104)};
}

// Enter once a press; QAbstractItemView's own activated() would come with a click as well on some desktops.
void TapeView::keyPressEvent(QKeyEvent *event)
{
    if (event->key() != Qt::Key_Return && event->key() != Qt::Key_Enter) {
        const bool walk = event->key() == Qt::Key_Left || event->key() == Qt::Key_Right || event->key() == Qt::Key_Home ||
                          event->key() == Qt::Key_End;
        walk ? QListView::keyPressEvent(event) : event->ignore(); // letters and Esc are the screen's
        return;
    }
    if (!event->isAutoRepeat() && currentIndex().isValid())
        Q_EMIT stubActivated(static_cast<TapeModel *>(model())->stub(currentIndex().row()).id);
    event->accept();
}

void TapeView::paintEvent(QPaintEvent *event)
{
    const Theme &theme = Theme::current();
    const auto *model = static_cast<const TapeModel *>(this->model());
    const bool next = model->rowCount() > 0 && model->stub(model->rowCount() - 1).kind == TapeStub::Kind::Next;
    QPainter(viewport()).fillRect(viewport()->rect(), theme.colour(next ? Role::Desk : Role::Sheet));
    QListView::paintEvent(event);
    QPainter painter(viewport());
    painter.setPen(QPen(theme.colour(Role::Rule), 1));
    painter.drawRect(QRectF(viewport()->rect()).adjusted(0.5, 0.5, -0.5, -0.5));
}

void TapeView::resizeEvent(QResizeEvent *event)
{
    QListView::resizeEvent(event);
    scheduleDelayedItemsLayout();
}

} // namespace app
