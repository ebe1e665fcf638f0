#include "app/shared/palette.h"

#include <array>

namespace app {
namespace {

struct Row
{
    Role role;
    QRgb light;
    QRgb dark;
};

constexpr std::array<Row, kRoles> kTable{{
    {Role::Desk, 0xffe4e9e6, 0xff121817},
    {Role::Sheet, 0xfffbfcfa, 0xff1b2322},
    {Role::Well, 0xfff0f3f0, 0xff232d2b},
    {Role::Rule, 0xffccd4d0, 0xff3a4644},
    {Role::Edge, 0xff67736e, 0xff8b9894},
    {Role::Ink, 0xff16201d, 0xffebf0ed},
    {Role::Ink2, 0xff46524e, 0xffb6c1bd},
    {Role::Petrol, 0xff0b5767, 0xff74c6d3},
    {Role::PetrolDown, 0xff084554, 0xff9bd8e2},
    {Role::OnPetrol, 0xffffffff, 0xff08242a},
    {Role::Tint, 0xffd7e8ea, 0xff14393f},
    {Role::Zone, 0xffc3ccc8, 0xff4b5854},
    {Role::Hatch, 0xff7c8883, 0xff8b9894},
    {Role::Line, 0xff16201d, 0xffebf0ed},
    {Role::Detail, 0xff5b6763, 0xffa3afaa},
    {Role::SheetMetal, 0xffdde3e0, 0xff4d5a56},
    {Role::Terminal, 0xffb7c0bc, 0xff6a7873},
    {Role::DarkPlastic, 0xff8d9894, 0xff323d3a},
    {Role::Ceramic, 0xffffffff, 0xff3a4643},
    {Role::Slot, 0xff0e1513, 0xff0a0f0e},
    {Role::Copper, 0xffa8683a, 0xffdc9f6f},
    {Role::Display, 0xffd6ded6, 0xffa9b8ac},
    {Role::Digits, 0xff16201d, 0xff121817},
    {Role::RedProbe, 0xffb23a2c, 0xffe2685a},
    {Role::RedCore, 0xfffbe9e5, 0xff3a0f0a},
    {Role::BlackProbe, 0xff16201d, 0xff050807},
    {Role::BlackEdge, 0xff16201d, 0xffc6cfcb},
}};

constexpr bool inOrder()
{
    for (int i = 0; i < kRoles; ++i)
        if (static_cast<int>(kTable[static_cast<std::size_t>(i)].role) != i)
            return false;
    return true;
}
static_assert(inOrder(), "a row a role, in the order of Role");

constexpr double kText = 4.5;
constexpr double kPart = 3.0;

constexpr std::array kPairs{
    ColourPair{Role::Ink, Role::Desk, kText},         ColourPair{Role::Ink, Role::Sheet, kText},
    ColourPair{Role::Ink, Role::Well, kText},         ColourPair{Role::Ink, Role::Tint, kText},
    ColourPair{Role::Ink, Role::Zone, kText},         ColourPair{Role::Sheet, Role::Ink, kText}, // flags, "likeliest now"
    ColourPair{Role::Ink2, Role::Desk, kText},        ColourPair{Role::Ink2, Role::Sheet, kText},
    ColourPair{Role::Ink2, Role::Well, kText},        ColourPair{Role::Ink2, Role::Tint, kText},
    ColourPair{Role::Petrol, Role::Desk, kText},      ColourPair{Role::Petrol, Role::Sheet, kText},
    ColourPair{Role::Petrol, Role::Well, kText},      ColourPair{Role::Petrol, Role::Tint, kText},
    ColourPair{Role::PetrolDown, Role::Desk, kText},  ColourPair{Role::PetrolDown, Role::Sheet, kText},
    ColourPair{Role::PetrolDown, Role::Tint, kText},  ColourPair{Role::PetrolDown, Role::Well, kText},
    ColourPair{Role::OnPetrol, Role::Petrol, kText},  ColourPair{Role::OnPetrol, Role::PetrolDown, kText},
    ColourPair{Role::Edge, Role::Desk, kPart},        ColourPair{Role::Edge, Role::Sheet, kPart},
    ColourPair{Role::Edge, Role::Well, kPart},        ColourPair{Role::Hatch, Role::Sheet, kPart},
    ColourPair{Role::Hatch, Role::Well, kPart},       ColourPair{Role::Line, Role::Sheet, kPart},
    ColourPair{Role::Line, Role::Desk, kPart},        ColourPair{Role::Line, Role::SheetMetal, kPart},
    ColourPair{Role::Line, Role::Terminal, kPart},    ColourPair{Role::Line, Role::DarkPlastic, kPart},
    ColourPair{Role::Line, Role::Ceramic, kPart},     ColourPair{Role::Detail, Role::Sheet, kPart},
    ColourPair{Role::Detail, Role::SheetMetal, kPart}, ColourPair{Role::Detail, Role::Ceramic, kPart},
    ColourPair{Role::Copper, Role::Sheet, kPart},     ColourPair{Role::Copper, Role::Well, kPart},
    ColourPair{Role::Copper, Role::SheetMetal, kPart}, ColourPair{Role::Copper, Role::Ceramic, kPart},
    ColourPair{Role::Digits, Role::Display, kText},   ColourPair{Role::RedProbe, Role::Sheet, kPart},
    ColourPair{Role::RedProbe, Role::Well, kPart},    ColourPair{Role::RedCore, Role::RedProbe, kText}, // the letter R on its disc
    ColourPair{Role::BlackEdge, Role::Sheet, kPart},  ColourPair{Role::BlackEdge, Role::Well, kPart},
};

constexpr std::array kDrawing{Role::Line,    Role::Detail, Role::SheetMetal, Role::Terminal, Role::DarkPlastic,
                              Role::Ceramic, Role::Slot,   Role::Copper,     Role::Sheet,    Role::Display};

} // namespace

QColor colourOf(Role role, Shade shade)
{
    const Row &row = kTable[static_cast<std::size_t>(role)];
    return QColor::fromRgba(shade == Shade::Light ? row.light : row.dark);
}

std::span<const ColourPair> pairsInUse()
{
    return kPairs;
}

std::span<const Role> drawingRoles()
{
    return kDrawing;
}

} // namespace app
