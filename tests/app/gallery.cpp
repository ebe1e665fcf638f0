// Draws every self-painted widget in several states to PNG files, for looking at: gallery <folder>. Not shipped, not a test.
#include "app/draw/chain_line.h"
#include "app/draw/chain_view.h"
#include "app/draw/hold_bar.h"
#include "app/draw/safety_picture.h"
#include "app/draw/stop_button.h"
#include "app/shared/flow_layout.h"
#include "app/shared/key_button.h"
#include "app/shared/marks.h"
#include "app/shared/reading_field.h"
#include "app/shared/run_label.h"
#include "app/shared/say_sentence.h"
#include "app/shared/sheet.h"
#include "app/shared/theme.h"
#include "app/shared/tick_box.h"
#include "tests/app/draw_samples.h"

#include <QApplication>
#include <QBoxLayout>
#include <QDir>
#include <QPainter>

#include <functional>
#include <tuple>

using namespace samples;

namespace {

template<class Widget, class State>
Widget *made(State state)
{
    auto *widget = new Widget;
    widget->setState(std::move(state));
    return widget;
}

QWidget *label(const QString &text, Type type = Type::Quiet, Role role = Role::Ink2)
{
    auto *words = new RunLabel;
    words->setText(text, type, role);
    return words;
}

Sheet *column(const QList<QWidget *> &widgets, Role surface = Role::Sheet)
{
    auto *sheet = new Sheet(surface);
    auto *box = new QVBoxLayout(sheet);
    box->setContentsMargins(16, 12, 16, 12);
    box->setSpacing(14);
    for (QWidget *widget : widgets)
        box->addWidget(widget);
    return sheet;
}

QWidget *row(const QList<QWidget *> &widgets)
{
    auto *holder = new QWidget;
    auto *box = new QHBoxLayout(holder);
    box->setContentsMargins(0, 0, 0, 0);
    box->setSpacing(12);
    for (QWidget *widget : widgets)
        box->addWidget(widget);
    return holder;
}

QWidget *buttons(const QList<KeyButton *> &all)
{
    auto *holder = new QWidget;
    auto *flow = new FlowLayout(holder, 10);
    for (KeyButton *button : all)
        flow->addWidget(button);
    return holder;
}

QWidget *lines()
{
    NumberLineState small = withFlag(withFlag(elementLine(), 0, 0, u"OL"_s, true), 0, 0, u"OL"_s, true);
    small.small = true;
    NumberLineState twice = withFlag(withFlag(elementLine(), 13.1, 0.4, u"13.1 Ω"_s), 12.9, 0.4, u"12.9 Ω"_s);
    NumberLineState again = withFlag(elementLine(), 10.7, 0.3, u"10.7 Ω"_s);
    again.flags.insert(again.flags.begin(), {13.1, false, 0, u"13.1 Ω"_s, true});
    return column({made<NumberLine>(elementLine()), made<NumberLine>(withFlag(elementLine(), 13.1, 0.4, u"13.1 Ω"_s)),
                   made<NumberLine>(withFlag(elementLine(), 0, 0, u"OL"_s, true)), made<NumberLine>(pumpLine()), made<NumberLine>(outletLine()),
                   made<NumberLine>(insulationLine()), made<NumberLine>(opensAtLine()), made<NumberLine>(twice), made<NumberLine>(again), made<NumberLine>(small)});
}

QWidget *chains()
{
    ChainState broken = heatChain();
    broken.rungs[0].rows[4].standing = Standing::Proven;
    broken.rungs[0].rows[4].words = u"proven: OL, OL"_s;
    broken.rungs[0].rows[4].likeliest = false;
    broken.lit.reset();
    ChainState several = heatChain();
    several.rungs[0].rows[4].pulledTop = false;
    for (std::size_t i = 1; i < 5; ++i) {
        several.rungs[0].rows[i].standing = Standing::Suspected;
        several.rungs[0].rows[i].words.clear();
    }
    several.lit = ChainLit{1, 4, true, {}};
    ChainState failed = heatChain();
    failed.rungs[0].rows[3].standing = Standing::Failed;
    failed.rungs[0].rows[3].words = u"failed, once: OL"_s;
    failed.rungs[0].rows[1].brokenBelow = true;
    failed.rungs[0].rows[0].symbol = LadderSymbol::Relay;
    failed.lit = ChainLit{4, 4, true, u"bare metal"_s};
    auto *grid = new QWidget;
    auto *box = new QGridLayout(grid);
    const ChainState states[] = {heatChain(), several, broken, twoRungs(), byPlace(), motorChain(), failed};
    for (int i = 0; i < 7; ++i) {
        QWidget *sheet = column({made<ChainView>(states[i])});
        sheet->setFixedWidth(qRound(368 * Theme::current().style().scale));
        box->addWidget(sheet, i / 4, i % 4);
    }
    box->addWidget(column({made<ChainLine>(heatChain()), made<ChainLine>(broken)}), 1, 3);
    return grid;
}

QWidget *step(bool after)
{
    auto *rail = new PowerRail;
    rail->setState({PowerPlace::Isolated, u"plug out, in sight\n10:36"_s, false});
    auto *left = new QWidget;
    auto *leftBox = new QVBoxLayout(left);
    leftBox->setContentsMargins(0, 0, 0, 0);
    leftBox->addWidget(rail);
    leftBox->addWidget(new StopButton);

    auto *field = new ReadingField;
    field->setUnit(u"Ω"_s);
    auto *take = new KeyButton(after ? u"Take it once more"_s : u"Take this reading"_s, u"Enter"_s);
    take->setEnabled(after);
    if (after) {
        field->setText(u"OL"_s);
        field->setNote(u"first, taken"_s);
        field->setClosed(true);
        take->setFace(KeyButton::Face::Filled);
    }
    auto *line = made<NumberLine>(after ? withFlag(elementLine(), 0, 0, u"OL"_s, true) : elementLine());
    auto *sheet = column({label(u"Test 8 · Element, end to end · about 3 minutes · plug out"_s),
                          new SaySentence(after ? u"OL: nothing gets through the coil. Take it once more."_s
                                                : u"Pull the second wire off the heating element too, then hold one probe on each of its two tabs."_s),
                          made<TestPicture>(after ? brokenElementPicture() : elementPicture()), row({field, line}),
                          buttons({new KeyButton(u"OL"_s), new KeyButton(u"It jumps"_s), new KeyButton(u"I cannot"_s, u"?"_s), take})});
    auto *chain = column({label(u"The chain"_s, Type::Title, Role::Ink), made<ChainView>(heatChain())});
    auto *strip = new TapeView;
    strip->setStubs(tape());
    auto *page = new Sheet(Role::Desk);
    auto *grid = new QGridLayout(page);
    grid->setContentsMargins(8, 12, 16, 12);
    grid->setSpacing(12);
    grid->addWidget(left, 0, 0, 2, 1);
    grid->addWidget(sheet, 0, 1);
    grid->addWidget(chain, 0, 2);
    grid->addWidget(strip, 1, 1, 1, 2);
    chain->setFixedWidth(368);
    return page;
}

// Every drawing with probes on its first two terminals, and the other forms.
QWidget *pictures()
{
    auto *grid = new QWidget;
    auto *box = new QGridLayout(grid);
    int at = 0;
    const auto add = [&](const TestPictureState &state) {
        auto *picture = made<TestPicture>(state);
        picture->setFixedSize(722, 294);
        box->addWidget(column({picture}), at / 2, at % 2);
        ++at;
    };
    const std::tuple<QString, QString, QString> drawings[] = {
        {u"thermal_cutoff"_s, u"t1"_s, u"t2"_s}, {u"high_limit"_s, u"t1"_s, u"t2"_s}, {u"drive_motor_split"_s, u"main.t1"_s, u"main.t2"_s}, {u"door_switch_dryer"_s, u"t1"_s, u"t2"_s},
        {u"ntc_thermistor"_s, u"t1"_s, u"t2"_s}, {u"board_relay"_s, u"t1"_s, u"t2"_s}, {u"timer_contacts"_s, u"heat.t1"_s, u"heat.t2"_s}, {u"dryer_element"_s, u"t1"_s, u"can"_s},
        {u"heat_chain"_s, u"t1"_s, u"t2"_s}, {u"receptacle_14_30"_s, u"x"_s, u"y"_s}, {u"unknown"_s, u"t1"_s, u"t2"_s}};
    for (const auto &[drawing, red, black] : drawings) {
        TestPictureState state = elementPicture();
        state.drawing = drawing;
        state.part = drawing;
        state.terminals = {{red, red, u"1"_s, true}, {black, black, u"2"_s, black != u"can"_s}};
        state.red = red;
        state.black = black;
        state.captions = {{drawing, {}}};
        add(state);
    }
    TestPictureState clips = elementPicture();
    clips.form = TestPictureState::Form::Clips;
    clips.terminals[0].pulled = clips.terminals[1].pulled = false;
    add(clips);
    TestPictureState fists;
    fists.form = TestPictureState::Form::Fists;
    fists.meter = {true, Dial::VoltAc, u"241"_s, u"V"_s, true, false};
    fists.drawing = u"receptacle_14_30"_s;
    fists.black = u"x"_s;
    fists.red = u"y"_s;
    fists.terminals = {{u"x"_s, u"X"_s, {}, false}, {u"y"_s, u"Y"_s, {}, false}};
    fists.blackNote = u"1 black first into X"_s;
    fists.redNote = u"2 then red into Y"_s;
    add(fists);
    TestPictureState clamp = elementPicture();
    clamp.form = TestPictureState::Form::Clamp;
    clamp.meter = {true, Dial::ClampAmpere, u"21.8"_s, u"A"_s, true, false};
    clamp.terminals[0].pulled = clamp.terminals[1].pulled = false;
    clamp.wire = u"one wire of the element"_s;
    add(clamp);
    TestPictureState look;
    look.form = TestPictureState::Form::Look;
    look.drawing = u"vent"_s;
    look.captions = {{u"lint screen, duct, flap"_s, {}}};
    add(look);
    return grid;
}

QWidget *safety(const SignalText &text, SafetyPictureState::Scene scene)
{
    auto *panel = new SignalPanel;
    panel->setText(text);
    SafetyPictureState state;
    state.scene = scene;
    state.parts = {{u"thermal_cutoff"_s, u"cycling thermostat"_s, {{u"t1"_s, u"1"_s}}},
                   {u"dryer_element"_s, u"heating element"_s, {{u"t1"_s, u"2"_s}, {u"t2"_s, u"3"_s}}}};
    auto *boxes = new QWidget;
    auto *list = new QVBoxLayout(boxes);
    list->addWidget(new TickBox(u"the plug is out"_s));
    auto *ticked = new TickBox(u"element, tab 1: back on, tugged"_s, u"2"_s);
    ticked->setChecked(true);
    list->addWidget(ticked);
    list->addStretch();
    auto *on = new KeyButton(u"Go on"_s);
    on->setEnabled(false);
    auto *other = new KeyButton(u"I cannot reach the plug"_s);
    auto *decline = new KeyButton(u"Not now"_s, u"Esc"_s);
    for (KeyButton *button : {on, other, decline})
        button->setSize(KeyButton::Size::Safety);
    Runs state1{{u"Power: unknown. "_s, Type::Strong}, {u"Covers closed, wires pulled: none. Next: test 4, heat chain, needs the plug out."_s, Type::Text, Role::Ink2}};
    return column({new RunLabel(state1), panel, row({made<SafetyPicture>(state), boxes}), row({on, other, decline})});
}

QWidget *rails()
{
    auto *all = new QWidget;
    auto *box = new QHBoxLayout(all);
    const RailState states[] = {{PowerPlace::Isolated, u"plug out, in sight\n10:36"_s, false}, {PowerPlace::Isolated, u"plug out, in sight\n11:08"_s, true},
                                {PowerPlace::Energized, u"outlet, 11:31\none reading"_s, false}, {PowerPlace::NotProven, u"breaker off, taped, told\n14:01"_s, true},
                                {PowerPlace::Unknown, u"in daily use until 10:35"_s, false}, {PowerPlace::Running, u"heated cycle\n11:50"_s, false}, {PowerPlace::ProvenDead, u"14:06"_s, false}};
    for (const RailState &state : states)
        box->addWidget(made<PowerRail>(state));
    auto *lying = new QWidget;
    auto *rows = new QVBoxLayout(lying);
    for (const RailState &state : states) {
        auto *rail = new PowerRail(Qt::Horizontal);
        rail->setState(state);
        rows->addWidget(row({rail, new StopButton(Qt::Horizontal)}));
    }
    rows->addWidget(new HoldBar(u"Energized. Both hands behind the guards, touch no metal, nobody touching you."_s));
    rows->addStretch();
    box->addWidget(lying, 1);
    return column({all}, Role::Desk);
}

struct Page
{
    QString name;
    QSize size;
    std::function<QWidget *()> make;
};

QList<Page> pages()
{
    using Scene = SafetyPictureState::Scene;
    QList<Page> all{{u"lines"_s, {760, 0}, lines},
                    {u"curve"_s, {440, 300}, [] { return made<CurveView>(thermistorCurve()); }},
                    {u"chains"_s, {1560, 1240}, chains},
                    {u"step"_s, {1280, 760}, [] { return step(false); }},
                    {u"step-after"_s, {1280, 760}, [] { return step(true); }},
                    {u"pictures"_s, {1540, 0}, pictures},
                    {u"rails"_s, {1320, 480}, rails},
                    {u"gas"_s, {1248, 0}, [] {
                         auto *panel = new SignalPanel;
                         panel->setStopPage(true);
                         panel->setText(gasText());
                         return panel;
                     }}};
    const std::pair<QString, Scene> scenes[] = {{u"unplug"_s, Scene::Unplug}, {u"breaker"_s, Scene::BreakerOff}, {u"prove"_s, Scene::ProveDead}, {u"clips"_s, Scene::Clips},
                                                {u"outlet"_s, Scene::Outlet}, {u"clamp"_s, Scene::Clamp}, {u"run"_s, Scene::Run}, {u"putback"_s, Scene::PutBack},
                                                {u"off"_s, Scene::MakeItOff}, {u"wait"_s, Scene::Wait}, {u"hot"_s, Scene::Hot}, {u"closed"_s, Scene::Closed}};
    for (const auto &[name, scene] : scenes)
        all.append({u"safety-"_s + name, {1136, 0}, [scene = scene] { return safety(unplugText(), scene); }});
    return all;
}

void draw(const Page &page, const QString &file)
{
    QWidget window;
    auto *box = new QVBoxLayout(&window);
    box->setContentsMargins(12, 12, 12, 12);
    box->addWidget(page.make());
    const int width = page.size.width() + 24;
    window.resize(width, page.size.height() > 0 ? page.size.height() + 24 : std::max(box->heightForWidth(width), window.sizeHint().height()));
    window.show();
    QApplication::processEvents();
    window.grab().save(file);
}

} // namespace

int main(int argc, char **argv)
{
    qputenv("QT_QPA_PLATFORM", "offscreen");
    QApplication app(argc, argv);
    QApplication::setApplicationName(QStringLiteral("meterfirst"));
    Theme::current().install();
    const QDir folder(QString::fromLocal8Bit(argc > 1 ? argv[1] : "."));
    const QString only = QString::fromLocal8Bit(argc > 2 ? argv[2] : "");
    folder.mkpath(QStringLiteral("."));
    for (const auto &[name, wish] : {std::pair(u"light"_s, ShadeWish::Light), std::pair(u"dark"_s, ShadeWish::Dark)}) {
        for (const int percent : {100, 200}) {
            Theme::current().setShadeWish(wish);
            Theme::current().setTextPercent(percent);
            for (const Page &page : pages())
                if (page.name.startsWith(only))
                    draw(page, folder.filePath(u"%1-%2-%3.png"_s.arg(page.name, name).arg(percent)));
        }
    }
    return 0;
}
