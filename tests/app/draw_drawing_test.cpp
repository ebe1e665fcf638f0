// Drawings in the theme's colours, axes with their ticks, and the seven segments.
#include "app/draw/axis.h"
#include "app/draw/drawing.h"
#include "app/draw/seven_segments.h"
#include "app/draw/sign.h"
#include "app/draw/test_scene.h"
#include "tests/app/draw_samples.h"

#include <QDir>
#include <QImage>
#include <QPainter>
#include <QRegularExpression>
#include <gtest/gtest.h>

using namespace samples;

namespace {

const Style kLight{Shade::Light, 1};
const Style kDark{Shade::Dark, 1};

QImage painted(Drawing &drawing)
{
    QImage image(400, 260, QImage::Format_ARGB32);
    image.fill(Qt::transparent);
    QPainter painter(&image);
    drawing.paint(painter, QRectF(0, 0, 400, 260));
    return image;
}

// How many of the seven segments are lit, by looking at the middle of each: a to g.
QString litSegments(const QString &digit)
{
    QImage image(200, 300, QImage::Format_RGB32);
    image.fill(Qt::white);
    QPainter painter(&image);
    paintSevenSegments(painter, digit, QRectF(0, 0, 200, 300), Qt::black);
    painter.end();
    // one cell of 0.74 h at the right edge, h = 200 / (0.74 + 0.12), the digit 0.56 h wide and slanted by 0.12
    const double h = 200 / 0.86;
    const double left = 200 - 0.74 * h;
    const auto dark = [&](double x, double y) {
        const double slant = -0.12 * y + 0.06;
        const QPoint at(qRound(left + (x + slant) * h), qRound(150 + (y - 0.5) * h));
        return image.rect().contains(at) && qGray(image.pixel(at)) < 128;
    };
    QString lit;
    const std::tuple<char, double, double> places[] = {{'a', 0.28, 0.065}, {'b', 0.495, 0.28}, {'c', 0.495, 0.72},
                                                       {'d', 0.28, 0.935}, {'e', 0.065, 0.72}, {'f', 0.065, 0.28},
                                                       {'g', 0.28, 0.5}};
    for (const auto &[name, x, y] : places)
        if (dark(x, y))
            lit += QLatin1Char(name);
    return lit;
}

} // namespace

TEST(Drawings, ChangeEveryColourOnceAndAtATime)
{
    const QByteArray svg = "<rect fill=\"#FBFCFA\" stroke=\"#16201d\"/><path fill=\"#1b2322\" stroke=\"#ebf0ed\"/>";
    // the dark sheet is #1b2322 and the dark line #ebf0ed: what stood there before stays, what is new is not changed again
    EXPECT_EQ(recoloured(svg, kDark), "<rect fill=\"#1b2322\" stroke=\"#ebf0ed\"/><path fill=\"#1b2322\" stroke=\"#ebf0ed\"/>");
    EXPECT_EQ(recoloured("fill=\"#16201d\"", kLight), "fill=\"#16201d\"");
}

TEST(Drawings, AllLoadInBothThemesWithoutALightColourInTheDark)
{
    const QDir drawings(QStringLiteral(":/drawings"));
    const QStringList names = drawings.entryList({u"*.svg"_s});
    ASSERT_GT(names.size(), 10);
    for (const QString &file : names) {
        const QString name = file.chopped(4);
        for (const Style &style : {kLight, kDark}) {
            const auto drawing = Drawing::load({name, {}, {}}, style);
            ASSERT_TRUE(drawing) << name.toStdString();
            EXPECT_FALSE(drawing->viewBox().isEmpty());
            for (const QString &terminal : drawing->terminals())
                EXPECT_TRUE(drawing->has(terminal)) << name.toStdString() << ' ' << terminal.toStdString();
        }
        QFile text(drawings.filePath(file));
        ASSERT_TRUE(text.open(QIODevice::ReadOnly));
        const QString dark = QString::fromUtf8(recoloured(text.readAll(), kDark));
        EXPECT_FALSE(dark.contains(colourOf(Role::SheetMetal, Shade::Light).name())) << name.toStdString();
    }
}

TEST(Drawings, ShowOnePositionAtATime)
{
    const auto released = Drawing::load({u"door_switch_dryer"_s, u"released"_s, {}}, kLight);
    const auto pressed = Drawing::load({u"door_switch_dryer"_s, u"pressed"_s, {}}, kLight);
    const auto asDrawn = Drawing::load({u"door_switch_dryer"_s, {}, {}}, kLight);
    ASSERT_TRUE(released && pressed && asDrawn);
    EXPECT_NE(painted(*released), painted(*pressed));
    EXPECT_EQ(painted(*released), painted(*asDrawn));
}

TEST(Drawings, BreakThePathThatAReadingHasShownBroken)
{
    const auto whole = Drawing::load({u"dryer_element"_s, {}, {}}, kLight);
    const auto broken = Drawing::load({u"dryer_element"_s, {}, u"current"_s}, kLight);
    const auto nowhere = Drawing::load({u"dryer_element"_s, {}, u"no_such_id"_s}, kLight);
    ASSERT_TRUE(whole && broken && nowhere);
    EXPECT_NE(painted(*whole), painted(*broken));
    EXPECT_EQ(painted(*whole), painted(*nowhere));
}

TEST(Drawings, WithoutAFileAreBoxesForWhateverTerminalsThereAre)
{
    const auto plain = Drawing::plain({u"t1"_s, u"a<b\"&"_s}, kLight);
    EXPECT_TRUE(plain->has(u"t1"_s));
    EXPECT_EQ(plain->terminals().size(), 2U);
    EXPECT_LT(plain->bounds(u"t1-out"_s).center().x(), plain->bounds(u"t1"_s).left()); // they look to the left
    EXPECT_FALSE(Drawing::load({u"../secrets"_s, {}, {}}, kLight));
}

TEST(Scene, ProbesStandOnTheirTerminalsAndLookAway)
{
    for (const QString &name :
         {u"dryer_element"_s, u"thermal_cutoff"_s, u"door_switch_dryer"_s, u"drive_motor_split"_s, u"no drawing"_s}) {
        TestPictureState state = elementPicture();
        state.drawing = name;
        if (name == u"drive_motor_split"_s) {
            state.red = u"main.t1"_s;
            state.black = u"main.t2"_s;
            state.terminals.clear();
        }
        const TestScene scene = layOutScene(QRectF(0, 0, 722, 294), state, kLight);
        ASSERT_EQ(scene.probes.size(), 2U) << name.toStdString();
        for (const SetProbe &probe : scene.probes) {
            const QRectF terminal = scene.part->bounds(probe.terminal);
            EXPECT_TRUE(terminal.adjusted(-1, -1, 1, 1).contains(probe.tip)) << name.toStdString();
            EXPECT_NEAR(std::hypot(probe.direction.x(), probe.direction.y()), 1, 1e-9);
            EXPECT_LT(probe.direction.x(), 0) << "handles lean to the meter: " << name.toStdString();
            const QPointF end = probe.tip + probe.direction * kProbeLength * scene.part->unit();
            EXPECT_TRUE(QRectF(0, 0, 722, 294).contains(end)) << name.toStdString();
            // unbroken from the jack to the handle
            const QPainterPath cable = cablePath(scene, probe);
            const QPointF jack = probe.probe == Probe::Red ? scene.meter.volt : scene.meter.com;
            EXPECT_EQ(cable.pointAtPercent(0), jack);
            EXPECT_LT(std::hypot(cable.currentPosition().x() - end.x(), cable.currentPosition().y() - end.y()), 3);
            EXPECT_TRUE(QRectF(-1, -1, 724, 296).contains(cable.boundingRect())) << name.toStdString();
        }
    }
}

TEST(Scene, APulledWireIsAwayFromItsTerminal)
{
    const TestScene scene = layOutScene(QRectF(0, 0, 722, 294), elementPicture(), kLight);
    ASSERT_EQ(scene.wires.size(), 2U);
    for (const PulledWire &wire : scene.wires)
        EXPECT_FALSE(scene.part->bounds(wire.terminal).adjusted(-8, -8, 8, 8).contains(wire.mouth));
}

// The usual segment codes of a seven-segment display (IEC 60050 names no code; common practice, no source).
TEST(SevenSegments, LightTheUsualOnes)
{
    const std::pair<const char16_t *, const char *> digits[] = {
        {u"0", "abcdef"}, {u"1", "bc"},      {u"2", "abdeg"},  {u"3", "abcdg"}, {u"4", "bcfg"}, {u"5", "acdfg"}, {u"6", "acdefg"},
        {u"7", "abc"},    {u"8", "abcdefg"}, {u"9", "abcdfg"}, {u"L", "def"},   {u"-", "g"},    {u" ", ""}};
    for (const auto &[digit, segments] : digits)
        EXPECT_EQ(litSegments(QString::fromUtf16(digit)).toStdString(), segments) << QString::fromUtf16(digit).toStdString();
}

TEST(Axis, PlacesDecadesEvenly)
{
    const Axis axis{0.1, 1000, 50, 400, true};
    EXPECT_NEAR(axis.at(0.1), 50, 1e-9);
    EXPECT_NEAR(axis.at(1), 150, 1e-9);
    EXPECT_NEAR(axis.at(10), 250, 1e-9);
    EXPECT_NEAR(axis.at(1000), 450, 1e-9);
    EXPECT_NEAR(axis.clamped(1e9), 450, 1e-9);
    const Axis down{0, 10, 100, -100, false};
    EXPECT_NEAR(down.at(2.5), 75, 1e-9);
}

TEST(Axis, TicksAreRoundAndInside)
{
    EXPECT_EQ(niceTicks(0, 20, false, 5), (std::vector<double>{0, 5, 10, 15, 20}));
    EXPECT_EQ(niceTicks(0, 260, false, 6), (std::vector<double>{0, 50, 100, 150, 200, 250}));
    EXPECT_TRUE(niceTicks(5, 5, false, 5).empty());
    EXPECT_TRUE(niceTicks(0, 10, true, 5).empty()); // no logarithm of 0
    for (const double tick : niceTicks(3, 60, true, 9)) {
        EXPECT_GE(tick, 3);
        EXPECT_LE(tick, 60);
    }
}

TEST(Signs, AreThereForEveryCodeTheCautionsUse)
{
    for (const QString &code : {u"W001"_s, u"W005"_s, u"W010"_s, u"W012"_s, u"W016"_s, u"W017"_s, u"W018"_s, u"W021"_s, u"M004"_s,
                                u"M006"_s, u"M009"_s, u"M021"_s, u"P001"_s, u"P003"_s, u"E003"_s, u"E004"_s}) {
        EXPECT_NE(signName(code), code);
        QImage image(64, 64, QImage::Format_ARGB32);
        image.fill(Qt::transparent);
        QPainter painter(&image);
        paintSign(painter, code, QRectF(0, 0, 64, 64));
        painter.end();
        EXPECT_GT(qAlpha(image.pixel(32, 40)), 0) << code.toStdString();
    }
}
