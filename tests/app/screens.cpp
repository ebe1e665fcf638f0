// Draws every screen of whole walks into a folder: light and dark, text at 100 and 200 %, and a small window.
//   screens [folder]      by default build/screens; METERFIRST_SCREENS names another one
#include "tests/app/walk_driver.h"

#include <QDir>
#include <QFileInfo>
#include <QTextStream>

#include <functional>

namespace {

using walk::Person;
using walk::Rig;
using Until = std::function<bool(const core::StateView &)>;

class Album
{
public:
    explicit Album(const QString &folder) : m_folder(folder) { QDir().mkpath(folder); }

    // The window as it is: plain, dark, at 200 %, and at 1024 x 600.
    void take(Rig &rig, const QString &name)
    {
        save(rig, name, {1280, 800});
        app::Theme::current().setShadeWish(app::ShadeWish::Dark);
        save(rig, name + QStringLiteral("-dark"), {1280, 800});
        app::Theme::current().setShadeWish(app::ShadeWish::Light);
        app::Theme::current().setTextPercent(200);
        save(rig, name + QStringLiteral("-200"), {1280, 800});
        app::Theme::current().setTextPercent(100);
        save(rig, name + QStringLiteral("-1024x600"), {1024, 600});
        save(rig, {}, {1280, 800});
    }
    void takeMore(Rig &rig, const QString &name) // besides: other shapes of window
    {
        save(rig, name + QStringLiteral("-1024x768"), {1024, 768});
        save(rig, name + QStringLiteral("-portrait"), {800, 1280});
        app::Theme::current().setTextPercent(150);
        save(rig, name + QStringLiteral("-150"), {1280, 800});
        app::Theme::current().setTextPercent(100);
        save(rig, {}, {1280, 800});
    }
    int count() const { return m_count; }
    bool failed() const { return m_failed; }

private:
    void save(Rig &rig, const QString &name, QSize size)
    {
        rig.window().resize(size);
        rig.settle();
        if (name.isEmpty())
            return;
        const QString file = QStringLiteral("%1/%2.png").arg(m_folder, name);
        m_failed = !rig.window().grab().save(file) || m_failed;
        ++m_count;
    }

    QString m_folder;
    int m_count = 0;
    bool m_failed = false;
};

// A place to walk to, with its name for when it is not reached.
struct Place
{
    std::string name;
    Until there;
};

std::vector<std::string> missed; // places no walk reached: their pictures show something else

void goUntil(Rig &rig, const Person &person, const Place &place)
{
    for (int i = 0; i < 150 && !place.there(rig.view()); ++i)
        if (!walk::goOn(rig, person))
            break;
    if (!place.there(rig.view()))
        missed.push_back(place.name);
}

Place screen(const char *name, const char *phase = "")
{
    return {name, [=](const core::StateView &view) {
                return view.step.screen == name && (*phase == '\0' || view.step.phase == phase);
            }};
}

Place test(const char *name)
{
    return {name, [=](const core::StateView &view) { return view.step.test == name && view.step.screen.empty(); }};
}

Place step(const char *name)
{
    return {name, [=](const core::StateView &view) { return view.step.id == name && view.step.screen.empty(); }};
}

Place verdict()
{
    return {"verdict", [](const core::StateView &view) { return view.verdict.has_value(); }};
}

Person coldDryer()
{
    Person person;
    person.answers = {{"supply", "split_120_240"},
                      {"control", "knob"},
                      {"cord", "4_wire"},
                      {"cycle", "heated"},
                      {"breaker", "still cold"},
                      {"outside_flap", "opens wide"},
                      {"power_cord_terminal.look", "clean and tight"}};
    person.readings = {{"heat_chain", "OL"},          {"thermal_cutoff.ohm", "0.4"}, {"high_limit.ohm", "0.4"},
                       {"cycling_tstat.cold", "0.3"}, {"dryer_element.ohm", "OL"},   {"dryer_element.gnd", "OL"}};
    return person;
}

Person soundDryer()
{
    Person person = coldDryer();
    person.otherwise = "0.3";
    person.readings = {{"heat_chain", "10.9"},
                       {"dryer_element.ohm", "10.8"},
                       {"dryer_element.gnd", "OL"},
                       {"thermal_cutoff.ohm", "0.4"},
                       {"house_supply.leg_to_leg", "118"},
                       {"ground_path.ohm", "0.3"},
                       {"power_cord_terminal.iso", "OL"},
                       {"power_cord_terminal.earth", "0.3"},
                       {"motor_start_switch.pull", "0.3"}};
    return person;
}

void begin(Rig &rig, const char *tree, bool energized = false)
{
    if (energized) {
        rig.walk().showMeter();
        rig.settle();
        rig.press(QStringLiteral("energized"));
        rig.key(Qt::Key_Return);
    }
    rig.walk().begin(QString::fromLatin1(tree));
    rig.settle();
}

void startAndMeter(Album &album)
{
    Rig rig;
    album.take(rig, QStringLiteral("01-start"));
    rig.type(QStringLiteral("dry cold"));
    album.take(rig, QStringLiteral("02-start-typed"));
    rig.walk().showMeter();
    rig.settle();
    album.take(rig, QStringLiteral("03-meter"));
    rig.press(QStringLiteral("check"));
    rig.type(QStringLiteral("OL"));
    rig.key(Qt::Key_Return);
    rig.type(QStringLiteral("0.2"));
    rig.key(Qt::Key_Return);
    album.take(rig, QStringLiteral("03b-meter-check"));
    rig.key(Qt::Key_Escape);
    rig.walk().showMeter(QStringLiteral("dryer_elec/no_heat"));
    rig.settle();
    rig.press(QStringLiteral("none"));
    album.take(rig, QStringLiteral("03c-no-meter"));
    rig.key(Qt::Key_Escape);
    rig.walk().showMeter();
    rig.settle();
    rig.key(Qt::Key_Escape);
    rig.key(Qt::Key_K, Qt::ControlModifier);
    rig.type(QStringLiteral("dark"));
    album.take(rig, QStringLiteral("04-find"));
}

void overPages(Album &album, Rig &rig)
{
    const auto over = [&](const char *name, int key, Qt::KeyboardModifiers modifiers = Qt::NoModifier) {
        rig.key(key, modifiers);
        album.take(rig, QLatin1String(name));
        rig.key(Qt::Key_Escape);
    };
    over("30-why", Qt::Key_F4);
    over("30b-ladder", Qt::Key_F5);
    over("31-chain", Qt::Key_F6);
    over("32-way", Qt::Key_F7);
    over("33-help", Qt::Key_F1);
    rig.walk().showCannot();
    rig.settle();
    album.take(rig, QStringLiteral("34-i-cannot"));
    rig.key(Qt::Key_1);
    album.take(rig, QStringLiteral("35-where"));
    rig.key(Qt::Key_Escape);
    for (const core::WayView &way : rig.view().way)
        if (way.id == "heat_chain") {
            rig.walk().showAmend(way.event);
            break;
        }
    rig.settle();
    rig.type(QStringLiteral("10.9"));
    rig.key(Qt::Key_Return);
    album.take(rig, QStringLiteral("36-amend"));
    rig.key(Qt::Key_Escape);
}

void replaceWalk(Album &album)
{
    Rig rig;
    const Person person = coldDryer();
    begin(rig, "dryer_elec/no_heat");
    album.take(rig, QStringLiteral("10-s0"));
    goUntil(rig, person, step("control"));
    album.take(rig, QStringLiteral("11-ask"));
    goUntil(rig, person, screen("S7"));
    album.take(rig, QStringLiteral("12-s7-run"));
    goUntil(rig, person, step("breaker"));
    album.take(rig, QStringLiteral("13-do"));
    goUntil(rig, person, step("outside_flap"));
    album.take(rig, QStringLiteral("14-look"));
    goUntil(rig, person, screen("S9"));
    album.take(rig, QStringLiteral("15-s9-make-it-off"));
    goUntil(rig, person, screen("S1"));
    album.take(rig, QStringLiteral("16-s1-unplug"));
    goUntil(rig, person, test("heat_chain"));
    album.take(rig, QStringLiteral("17-dead-test-loop"));
    rig.type(QStringLiteral("OL"));
    album.take(rig, QStringLiteral("18-loop-typed"));
    rig.key(Qt::Key_Return);
    album.take(rig, QStringLiteral("19-loop-taken"));
    rig.key(Qt::Key_Return);
    goUntil(rig, person, test("thermal_cutoff.ohm"));
    album.take(rig, QStringLiteral("20-protector"));
    goUntil(rig, person, test("dryer_element.ohm"));
    album.take(rig, QStringLiteral("21-dead-test"));
    album.takeMore(rig, QStringLiteral("21-dead-test"));
    overPages(album, rig);
    rig.type(QStringLiteral("1,500"));
    album.take(rig, QStringLiteral("22-asked-back"));
    for (int i = 0; i < 5; ++i)
        rig.key(Qt::Key_Backspace);
    rig.type(QStringLiteral("OL"));
    rig.key(Qt::Key_Return);
    album.take(rig, QStringLiteral("23-first-ol"));
    album.takeMore(rig, QStringLiteral("23-first-ol"));
    rig.key(Qt::Key_Return);
    album.take(rig, QStringLiteral("24-once-more"));
    rig.type(QStringLiteral("OL"));
    rig.key(Qt::Key_Return);
    album.take(rig, QStringLiteral("25-failed-twice"));
    rig.key(Qt::Key_Return);
    album.take(rig, QStringLiteral("26-each-end-to-the-can"));
    goUntil(rig, person, verdict());
    album.take(rig, QStringLiteral("40-verdict-replace"));
    album.takeMore(rig, QStringLiteral("40-verdict-replace"));
    rig.key(Qt::Key_F8);
    album.take(rig, QStringLiteral("41-outcome"));
    rig.key(Qt::Key_Escape);
    rig.key(Qt::Key_F12);
    album.take(rig, QStringLiteral("50-s12-stop"));
    rig.key(Qt::Key_1);
    album.take(rig, QStringLiteral("51-s14-smoke"));
}

void otherVerdicts(Album &album)
{
    {
        Rig rig;
        Person person = coldDryer();
        person.answers["breaker"] = "warm now";
        begin(rig, "dryer_elec/no_heat");
        goUntil(rig, person, verdict());
        album.take(rig, QStringLiteral("42-verdict-nothing-to-buy"));
    }
    {
        Rig rig;
        const Person person = soundDryer();
        begin(rig, "dryer_elec/no_heat");
        goUntil(rig, person, verdict());
        album.take(rig, QStringLiteral("44-verdict-not-proven"));
    }
    Rig rig;
    Person person = coldDryer();
    person.readings["dryer_element.ohm"] = "13.6";
    begin(rig, "dryer_elec/no_heat");
    goUntil(rig, person, test("dryer_element.ohm"));
    rig.type(QStringLiteral("13.6"));
    rig.key(Qt::Key_Return);
    album.take(rig, QStringLiteral("27-near-the-limit"));
    rig.key(Qt::Key_S);
    rig.type(QStringLiteral("240 V 5400 W"));
    album.take(rig, QStringLiteral("28-sheet-value"));
    rig.key(Qt::Key_Return);
    album.take(rig, QStringLiteral("29-taken-again"));
}

void underVoltage(Album &album)
{
    Rig rig;
    Person person = soundDryer();
    begin(rig, "dryer_elec/no_heat", true);
    person.declinesPower = false;
    goUntil(rig, person, screen("S8"));
    album.take(rig, QStringLiteral("60-s8-put-back"));
    goUntil(rig, person, screen("S5"));
    album.take(rig, QStringLiteral("61-s5-receptacle"));
    goUntil(rig, person, test("house_supply.leg_to_leg"));
    rig.type(QStringLiteral("118"));
    album.take(rig, QStringLiteral("62-energized"));
    album.takeMore(rig, QStringLiteral("62-energized"));
    rig.key(Qt::Key_Return);
    album.take(rig, QStringLiteral("63-s9-after"));
    goUntil(rig, person, verdict());
    album.take(rig, QStringLiteral("43-verdict-call"));
}

void provingDead(Album &album)
{
    Rig rig;
    Person person = coldDryer();
    begin(rig, "dryer_elec/no_heat");
    goUntil(rig, person, screen("S1"));
    rig.press(QStringLiteral("way:cannot_reach_plug"));
    album.take(rig, QStringLiteral("70-s2-breaker-off"));
    rig.passScreen(QStringLiteral("confirm"));
    album.take(rig, QStringLiteral("71-s3-hold"));
    rig.passScreen(QStringLiteral("acknowledge"));
    album.take(rig, QStringLiteral("72-s3-known-before"));
    rig.type(QStringLiteral("121"));
    rig.key(Qt::Key_Return);
    for (int i = 0; i < 3; ++i) {
        rig.type(QStringLiteral("0.1"));
        rig.key(Qt::Key_Return);
    }
    album.take(rig, QStringLiteral("73-s3-work-point"));
    for (int i = 0; i < 20 && rig.view().step.phase == "work_point"; ++i) {
        rig.type(QStringLiteral("0.0"));
        rig.key(Qt::Key_Return);
    }
    album.take(rig, QStringLiteral("74-s3-known-after"));
}

void resumed(Album &album)
{
    Rig rig;
    const Person person = coldDryer();
    begin(rig, "dryer_elec/no_heat");
    goUntil(rig, person, test("cycling_tstat.cold"));
    rig.kill();
    rig.open();
    album.take(rig, QStringLiteral("05-start-with-jobs"));
    for (const auto &entry : std::filesystem::directory_iterator(rig.jobs()))
        rig.walk().open(entry.path());
    rig.settle();
    album.take(rig, QStringLiteral("37-resume"));
}

} // namespace

int main(int argc, char **argv)
{
    const QTemporaryDir home;
    for (const char *place : {"XDG_DATA_HOME", "XDG_CONFIG_HOME", "XDG_CACHE_HOME"})
        qputenv(place, (home.path() + QLatin1Char('/') + QLatin1String(place)).toUtf8());
    qputenv("QT_QPA_PLATFORM", "offscreen");
    QApplication application(argc, argv);
    QApplication::setApplicationName(QStringLiteral("meterfirst"));
    const QByteArray wish = qgetenv("METERFIRST_SCREENS");
    const QStringList arguments = QApplication::arguments();
    Album album(arguments.size() > 1 ? arguments.at(1)
                : !wish.isEmpty()    ? QString::fromUtf8(wish)
                                     : QStringLiteral("build/screens"));
    const std::pair<const char *, void (*)(Album &)> parts[] = {{"start", startAndMeter},    {"replace", replaceWalk},
                                                                {"verdicts", otherVerdicts}, {"power", underVoltage},
                                                                {"prove", provingDead},      {"resume", resumed}};
    for (const auto &[name, part] : parts)
        if (arguments.size() < 3 || arguments.at(2) == QLatin1String(name))
            part(album);
    QTextStream(stdout) << album.count() << " pictures\n";
    for (const std::string &place : missed)
        QTextStream(stderr) << "not reached: " << QString::fromStdString(place) << '\n';
    return album.failed() || !missed.empty() ? 1 : 0;
}
