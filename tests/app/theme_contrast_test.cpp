// The colours of the one table against WCAG 2.2 (W3C Recommendation 5 October 2023), success criteria 1.4.3 (text 4.5)
// and 1.4.11 (parts 3.0), computed here anew from the text of the standard.
#include "app/draw/safety_colours.h"
#include "app/shared/palette.h"

#include <gtest/gtest.h>

#include <cmath>
#include <set>

using namespace app;

namespace {

// WCAG 2.2, "relative luminance": the threshold as printed there, 0.04045.
double luminance(QColor colour)
{
    const auto channel = [](int value) {
        const double c = value / 255.0;
        return c <= 0.04045 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4);
    };
    return 0.2126 * channel(colour.red()) + 0.7152 * channel(colour.green()) + 0.0722 * channel(colour.blue());
}

double contrast(QColor a, QColor b)
{
    const double la = luminance(a);
    const double lb = luminance(b);
    return (std::max(la, lb) + 0.05) / (std::min(la, lb) + 0.05);
}

} // namespace

// Known ratios, from memory of the standard's supporting documents: black on white is 21:1; #767676 is the lightest grey
// that passes 4.5 on white (4.54), #777777 fails (4.48).
TEST(Contrast, AgreesWithKnownRatios)
{
    EXPECT_NEAR(contrast(Qt::black, Qt::white), 21.0, 1e-9);
    EXPECT_NEAR(contrast(Qt::white, Qt::black), 21.0, 1e-9);
    EXPECT_NEAR(contrast(QColor(0x76, 0x76, 0x76), Qt::white), 4.54, 0.005);
    EXPECT_NEAR(contrast(QColor(0x77, 0x77, 0x77), Qt::white), 4.48, 0.005);
    EXPECT_NEAR(contrast(Qt::red, Qt::red), 1.0, 1e-9);
}

TEST(Contrast, EveryPairInUseIsEnoughInBothThemes)
{
    for (const Shade shade : {Shade::Light, Shade::Dark}) {
        for (const ColourPair &pair : pairsInUse()) {
            const double seen = contrast(colourOf(pair.part, shade), colourOf(pair.on, shade));
            EXPECT_GE(seen, pair.least) << "role " << static_cast<int>(pair.part) << " on " << static_cast<int>(pair.on)
                                        << (shade == Shade::Dark ? " dark" : " light");
        }
    }
}

// A list that leaves a role out proves nothing of it: all that is written or drawn with a meaning is in some pair.
TEST(Contrast, EveryRoleWithAMeaningIsPaired)
{
    std::set<Role> paired;
    for (const ColourPair &pair : pairsInUse()) {
        EXPECT_TRUE(pair.least == 4.5 || pair.least == 3.0);
        paired.insert(pair.part);
        paired.insert(pair.on);
    }
    const std::set<Role> withoutMeaning{Role::Rule, Role::Slot,
                                        Role::BlackProbe}; // hairline; a fill with a Line edge; with a BlackEdge
    for (int i = 0; i < kRoles; ++i)
        EXPECT_TRUE(paired.contains(static_cast<Role>(i)) || withoutMeaning.contains(static_cast<Role>(i))) << "role " << i;
}

// ANSI Z535.1 and Z535.4: the letters of each signal word; 4.5 as for any text.
TEST(Contrast, SignalWordsCanBeRead)
{
    const std::pair<QRgb, QRgb> words[] = {{safety::kRed, safety::kWhite},
                                           {safety::kOrange, safety::kBlack},
                                           {safety::kYellow, safety::kBlack},
                                           {safety::kBlue, safety::kWhite},
                                           {safety::kGreen, safety::kWhite}};
    for (const auto &[ground, letters] : words)
        EXPECT_GE(contrast(QColor::fromRgba(ground), QColor::fromRgba(letters)), 4.5);
}

// Orange and yellow alone are too near to a light sheet, hence an edge round every panel: 3.0 by 1.4.11.
TEST(Contrast, PanelEdgesStandOutFromTheSheet)
{
    for (const Role ground : {Role::Sheet, Role::Desk}) {
        EXPECT_GE(contrast(QColor::fromRgba(safety::kBlack), colourOf(ground, Shade::Light)), 3.0);
        EXPECT_GE(contrast(QColor::fromRgba(safety::kWhite), colourOf(ground, Shade::Dark)), 3.0);
    }
}
