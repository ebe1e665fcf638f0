// What a screen reader gets: every widget has a name, lists have rows, the words say what the picture shows.
// Roles are those of QAccessible; the pattern is WAI-ARIA's list and listitem.
#include "app/draw/chain_line.h"
#include "app/draw/chain_view.h"
#include "app/draw/hold_bar.h"
#include "app/draw/safety_picture.h"
#include "app/draw/stop_button.h"
#include "app/shared/key_button.h"
#include "app/shared/reading_field.h"
#include "app/shared/say_sentence.h"
#include "app/shared/tick_box.h"
#include "tests/app/draw_samples.h"

#include <QAccessible>
#include <QSignalSpy>
#include <gtest/gtest.h>

using namespace samples;

namespace {

QString nameOf(QWidget &widget)
{
    QAccessibleInterface *face = QAccessible::queryAccessibleInterface(&widget);
    return face ? face->text(QAccessible::Name) : QString();
}

void expectSays(const QString &text, std::initializer_list<const char *> parts)
{
    for (const char *part : parts)
        EXPECT_TRUE(text.contains(QString::fromUtf8(part))) << part << " in: " << text.toStdString();
}

} // namespace

TEST(Access, NumberLineSaysBandsAndReading)
{
    NumberLine line;
    line.setState(withFlag(elementLine(), 13.1, 0.4, u"13.1 Ω"_s));
    expectSays(nameOf(line), {"Element, end to end", "good: 9.4 to 12.3 Ω", "bad: 0 to 8 Ω", "no conclusion: 12.3 to 13.9 Ω",
                              "OL, over limit: bad", "13.1 Ω, give or take 0.4"});
    line.setState(opensAtLine());
    expectSays(nameOf(line), {"your printed temperature"});
}

TEST(Access, CurveSaysItsReadings)
{
    CurveView view;
    view.setState(thermistorCurve());
    expectSays(nameOf(view), {"Exhaust thermistor", "10 kΩ at 25 °C, ±10 %", "reading 24.9 kΩ, 5.3 kΩ below the good band",
                              "earlier reading 11.6 kΩ"});
}

TEST(Access, PictureSaysProbesWiresAndFault)
{
    TestPicture picture;
    picture.setState(brokenElementPicture());
    expectSays(nameOf(picture), {"heating element", "Meter at ohms", "OL MΩ", "red probe on tab 1", "black probe on tab 2",
                                 "wires pulled: tab 1, tab 2", "broken, somewhere in here"});
}

TEST(Access, ChainIsAListWithOneRowAComponent)
{
    ChainView view;
    view.setState(heatChain());
    view.resize(view.sizeHint());
    QAccessibleInterface *list = QAccessible::queryAccessibleInterface(&view);
    ASSERT_TRUE(list);
    EXPECT_EQ(list->role(), QAccessible::List);
    ASSERT_EQ(list->childCount(), 10); // six components, four conditions
    for (int i = 0; i < list->childCount(); ++i) {
        QAccessibleInterface *row = list->child(i);
        ASSERT_TRUE(row);
        EXPECT_EQ(row->role(), QAccessible::ListItem);
        EXPECT_FALSE(row->text(QAccessible::Name).isEmpty());
        EXPECT_EQ(list->indexOfChild(row), i);
        EXPECT_FALSE(row->rect().isEmpty());
    }
    expectSays(list->child(4)->text(QAccessible::Name),
               {"Heating element", "suspected", "likeliest now", "both its wires are pulled", "under test"});
    expectSays(list->child(1)->text(QAccessible::Name), {"Cycling thermostat", "cleared, 0.1 Ω", "its upper wire is pulled"});
    expectSays(list->child(8)->text(QAccessible::Name), {"Vent", "cleared", "flap lifts"});
    expectSays(list->text(QAccessible::Name), {"The chain", "3 cleared"});
}

TEST(Access, ARowCanBePressedWithoutAKeyboard)
{
    ChainView view;
    view.setState(heatChain());
    view.resize(view.sizeHint());
    QSignalSpy activated(&view, &ChainView::activated);
    QAccessibleInterface *row = QAccessible::queryAccessibleInterface(&view)->child(4);
    row->actionInterface()->doAction(QAccessibleActionInterface::pressAction());
    ASSERT_EQ(activated.count(), 1);
    EXPECT_EQ(activated.first().first().toString(), u"element"_s);
}

TEST(Access, RailIsAStatusBar)
{
    PowerRail rail;
    rail.setState({PowerPlace::Isolated, u"plug out, in sight,\n10:36"_s, false});
    QAccessibleInterface *face = QAccessible::queryAccessibleInterface(&rail);
    ASSERT_TRUE(face);
    EXPECT_EQ(face->role(), QAccessible::StatusBar);
    EXPECT_EQ(face->text(QAccessible::Name), u"Power: isolated, plug out, in sight, 10:36"_s);
}

// ANSI Z535.4 and the order a panel is read in: signal word, hazard, consequence, what to do.
TEST(Access, PanelIsReadInItsOrder)
{
    SignalPanel panel;
    SignalText text = unplugText();
    text.fromTree = {u"Mind the tank."_s};
    panel.setText(text);
    const QString said = nameOf(panel);
    int at = -1;
    for (const QString &part : {u"WARNING"_s, u"Electric shock can kill."_s, u"Big plug"_s, u"Pull it out"_s, u"From the tree:"_s,
                                u"Mind the tank."_s}) {
        const int next = static_cast<int>(said.indexOf(part));
        EXPECT_GT(next, at) << part.toStdString();
        at = next;
    }
    EXPECT_EQ(panel.accessibleDescription(), u"Signs: electricity, pull the plug from the outlet"_s);
    EXPECT_NE(panel.focusPolicy(), Qt::NoFocus);
}

TEST(Access, TapeStubsAreRead)
{
    TapeView view;
    view.setStubs(tape());
    QAccessibleInterface *list = QAccessible::queryAccessibleInterface(&view);
    ASSERT_TRUE(list);
    EXPECT_EQ(list->text(QAccessible::Name), u"The way so far"_s);
    ASSERT_EQ(list->childCount(), 8);
    expectSays(list->child(2)->text(QAccessible::Name), {"4 Heat chain, end to end", "OL", "suspected"});
    expectSays(list->child(4)->text(QAccessible::Name), {"struck out"});
    expectSays(list->child(6)->text(QAccessible::Name), {"present step"});
}

TEST(Access, EveryWidgetHasAName)
{
    KeyButton button(u"Take this reading"_s, u"Enter"_s);
    StopButton stop;
    ReadingField field;
    field.setUnit(u"Ω"_s);
    SaySentence sentence(u"Pull the second wire."_s);
    TickBox box(u"back on, tugged"_s, u"2"_s);
    HoldBar bar(u"Energized."_s);
    ChainLine line;
    line.setState(heatChain());
    SafetyPicture picture;
    picture.setState({});
    for (QWidget *widget : std::initializer_list<QWidget *>{&button, &stop, &field, &sentence, &box, &bar, &line, &picture})
        EXPECT_FALSE(nameOf(*widget).isEmpty()) << widget->metaObject()->className();
    EXPECT_EQ(button.accessibleDescription(), u"Key: Enter"_s);
    EXPECT_EQ(stop.accessibleDescription(), u"Key: F12"_s);
    EXPECT_EQ(nameOf(box), u"2: back on, tugged"_s);
    EXPECT_NE(sentence.focusPolicy(), Qt::NoFocus);
}

// Names come from trees and people: an ampersand is no mnemonic, a tag no markup.
TEST(Access, WordsStayPlain)
{
    KeyButton button(u"Wash & dry <b>now</b>"_s);
    EXPECT_EQ(nameOf(button), u"Wash & dry <b>now</b>"_s);
    EXPECT_TRUE(button.shortcut().isEmpty());
    SaySentence sentence(u"<img src=\"file:///etc/hostname\">"_s);
    EXPECT_EQ(sentence.textFormat(), Qt::PlainText);
}
