// Everything by keyboard: walking the chain and the tape, and what Enter, Space, `?` and a held-down key do.
#include "app/draw/chain_view.h"
#include "app/draw/stop_button.h"
#include "app/shared/key_button.h"
#include "app/shared/reading_field.h"
#include "app/shared/theme.h"
#include "tests/app/draw_samples.h"

#include <QKeyEvent>
#include <QSignalSpy>
#include <QTest>
#include <gtest/gtest.h>

using namespace samples;

namespace {

void holdDown(QWidget &widget, int key)
{
    QKeyEvent again(QEvent::KeyPress, key, Qt::NoModifier, QString(), true);
    QApplication::sendEvent(&widget, &again);
}

void showActive(QWidget &widget)
{
    Theme::current().install();
    widget.show();
    ASSERT_TRUE(QTest::qWaitForWindowActive(&widget));
    widget.setFocus();
}

} // namespace

TEST(Keys, WalkTheChainFromRailToRail)
{
    ChainView view;
    view.setState(heatChain());
    view.resize(368, 560);
    showActive(view);
    QSignalSpy activated(&view, &ChainView::activated);
    QStringList seen{view.rowId(view.currentRow())};
    for (int i = 0; i < 12; ++i) {
        QTest::keyClick(&view, Qt::Key_Down);
        if (view.rowId(view.currentRow()) != seen.last())
            seen += view.rowId(view.currentRow());
    }
    EXPECT_EQ(seen.join(u' ').toStdString(), "timer thermostat limit cutoff element motor_switch breaker cycle vent leg");
    QTest::keyClick(&view, Qt::Key_Home);
    EXPECT_EQ(view.currentRow(), 0);
    QTest::keyClick(&view, Qt::Key_Up);
    EXPECT_EQ(view.currentRow(), 0);
    QTest::keyClick(&view, Qt::Key_End);
    EXPECT_EQ(view.rowId(view.currentRow()), u"leg"_s);
    view.setCurrentRow(4);
    QTest::keyClick(&view, Qt::Key_Return);
    ASSERT_EQ(activated.count(), 1);
    EXPECT_EQ(activated.first().first().toString(), u"element"_s);
    holdDown(view, Qt::Key_Return);
    EXPECT_EQ(activated.count(), 1);
}

TEST(Keys, KeepTheirPlaceWhenTheChainChanges)
{
    ChainView view;
    view.setState(heatChain());
    view.setCurrentRow(3);
    ChainState next = heatChain();
    next.rungs[0].rows.erase(next.rungs[0].rows.begin());
    next.lit = ChainLit{3, 3, true, {}};
    view.setState(next);
    EXPECT_EQ(view.rowId(view.currentRow()), u"cutoff"_s);
}

TEST(Keys, UnfoldWhatIsFolded)
{
    ChainView view;
    view.setState(motorChain());
    view.resize(368, 400);
    showActive(view);
    const int folded = view.rowCount();
    EXPECT_EQ(folded, 10); // twelve, four of them in one, and a condition
    EXPECT_TRUE(view.foldsRows());
    view.setCurrentRow(0);
    QTest::keyClick(&view, Qt::Key_Return);
    EXPECT_FALSE(view.foldsRows());
    EXPECT_EQ(view.rowCount(), 13);
}

// The current row is always seen, between the two rails.
TEST(Keys, ScrollTheCurrentRowIntoSight)
{
    ChainView view;
    view.setState(motorChain());
    view.resize(368, 300);
    showActive(view);
    for (int row = 0; row < view.rowCount(); ++row) {
        view.setCurrentRow(row);
        EXPECT_TRUE(view.rect().adjusted(0, 20, 0, -20).contains(view.rowRect(row).center())) << row;
    }
}

TEST(Keys, WalkTheTape)
{
    TapeView view;
    view.setStubs(tape());
    view.resize(700, 104);
    showActive(view);
    QSignalSpy activated(&view, &TapeView::stubActivated);
    EXPECT_EQ(view.currentIndex().row(), 6); // the present one
    QTest::keyClick(&view, Qt::Key_Left);
    QTest::keyClick(&view, Qt::Key_Left);
    EXPECT_EQ(view.currentIndex().row(), 4);
    EXPECT_TRUE(view.viewport()->rect().contains(view.visualRect(view.currentIndex()).center()));
    QTest::keyClick(&view, Qt::Key_Return);
    ASSERT_EQ(activated.count(), 1);
    EXPECT_EQ(activated.first().first().toInt(), 6);
    QTest::mouseClick(view.viewport(), Qt::LeftButton, {}, view.visualRect(view.model()->index(5, 0)).center());
    EXPECT_EQ(activated.count(), 2);
    holdDown(view, Qt::Key_Return);
    EXPECT_EQ(activated.count(), 2);
}

TEST(Keys, PressAButtonOnlyOnceAndOnlyWithTheFocus)
{
    KeyButton button(u"Go on"_s);
    EXPECT_FALSE(button.autoDefault());
    EXPECT_FALSE(button.isDefault());
    QSignalSpy clicked(&button, &QPushButton::clicked);
    QTest::keyClick(&button, Qt::Key_Return);
    QTest::keyClick(&button, Qt::Key_Space);
    EXPECT_EQ(clicked.count(), 2);
    holdDown(button, Qt::Key_Return);
    holdDown(button, Qt::Key_Space);
    EXPECT_EQ(clicked.count(), 2);
    button.setEnabled(false);
    QTest::keyClick(&button, Qt::Key_Return);
    EXPECT_EQ(clicked.count(), 2);
}

TEST(Keys, StopNeverAsks)
{
    qRegisterMetaType<app::StopWord>("app::StopWord");
    for (const Qt::Orientation orientation : {Qt::Vertical, Qt::Horizontal}) {
        StopButton stop(orientation);
        stop.resize(stop.sizeHint());
        QSignalSpy stopped(&stop, &StopButton::stopped);
        QTest::keyClick(&stop, Qt::Key_Return);
        ASSERT_EQ(stopped.count(), 1);
        EXPECT_EQ(stopped.last().first().value<StopWord>(), StopWord::Unsaid);
        for (const StopWord word : {StopWord::Gas, StopWord::Smoke, StopWord::Shock, StopWord::Water}) {
            QTest::mouseClick(&stop, Qt::LeftButton, {}, stop.wordRect(word).center().toPoint());
            EXPECT_EQ(stopped.last().first().value<StopWord>(), word);
        }
        QTest::mouseClick(&stop, Qt::LeftButton, {}, {4, 4});
        EXPECT_EQ(stopped.last().first().value<StopWord>(), StopWord::Unsaid);
        EXPECT_EQ(stopped.count(), 6);
    }
}

// Both decimal signs are read, none is guessed: "1,234" and "1.5" are one comma and one point, "1.234,5" stays as typed.
TEST(Keys, OfTheReadingField)
{
    ReadingField field;
    QSignalSpy typed(&field, &ReadingField::typed);
    QSignalSpy taken(&field, &ReadingField::taken);
    QTest::keyClicks(&field, u"10,7 k"_s);
    EXPECT_EQ(typed.count(), 6);
    EXPECT_EQ(field.text(), u"10,7 k"_s);
    EXPECT_EQ(field.reading(), u"10.7 k"_s);
    EXPECT_EQ(typed.last().first().toString(), u"10.7 k"_s);
    field.setText(u"1.234,5"_s);
    EXPECT_EQ(field.reading(), u"1.234,5"_s);
    field.setText(u"1,2,3"_s);
    EXPECT_EQ(field.reading(), u"1,2,3"_s);
    QTest::keyClick(&field, Qt::Key_Return);
    EXPECT_EQ(taken.count(), 1);
    holdDown(field, Qt::Key_Return);
    EXPECT_EQ(taken.count(), 1);
}

TEST(Keys, LeaveTheFieldForTheScreen)
{
    QWidget screen;
    struct Catcher : QObject
    {
        QStringList keys;
        bool eventFilter(QObject *, QEvent *event) override
        {
            if (event->type() == QEvent::KeyPress)
                keys += static_cast<QKeyEvent *>(event)->text();
            return false;
        }
    } catcher;
    screen.installEventFilter(&catcher);
    ReadingField field(&screen);
    QTest::keyClicks(&field, u"1?"_s);
    EXPECT_EQ(field.text(), u"1"_s);
    EXPECT_EQ(catcher.keys, QStringList{u"?"_s});
    field.setClosed(true);
    QTest::keyClicks(&field, u"r"_s);
    EXPECT_EQ(field.text(), u"1"_s);
    EXPECT_EQ(catcher.keys.last(), u"r"_s);
}
