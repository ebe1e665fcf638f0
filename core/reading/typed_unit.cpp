#include "core/reading/typed_unit.h"

#include "core/base/text.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace core {
namespace {

using Note = TypedUnit::Note;
using Sort = TypedUnit::Sort;

struct Alias
{
    std::string_view text; // lower case, without blanks
    std::string_view unit; // as unitNamed() of base knows it
};

constexpr std::array kAliases = std::to_array<Alias>({
    {"r", "ohm"},
    {"kohm", "kohm"},
    {"kohms", "kohm"},
    {"kr", "kohm"},
    {"k\u03c9", "kohm"},
    {"kilohm", "kohm"},
    {"kilohms", "kohm"},
    {"kiloohm", "kohm"},
    {"kiloohms", "kohm"},
    {"ohm", "ohm"},
    {"ohms", "ohm"},
    {"\u03c9", "ohm"},
    {"meg", "Mohm"},
    {"megs", "Mohm"},
    {"megohm", "Mohm"},
    {"megohms", "Mohm"},
    {"megaohm", "Mohm"},
    {"megaohms", "Mohm"},
    {"meg\u03a9", "Mohm"},
    {"v", "V"},
    {"volt", "V"},
    {"volts", "V"},
    {"mv", "mV"},
    {"millivolt", "mV"},
    {"millivolts", "mV"},
    {"kv", "kV"},
    {"a", "A"},
    {"amp", "A"},
    {"amps", "A"},
    {"ampere", "A"},
    {"amperes", "A"},
    {"ma", "mA"},
    {"milliamp", "mA"},
    {"milliamps", "mA"},
    {"uf", "uF"},
    {"\u00b5f", "uF"},
    {"\u03bcf", "uF"},
    {"mfd", "uF"},
    {"ufd", "uF"},
    {"microfarad", "uF"},
    {"microfarads", "uF"},
    {"nf", "nF"},
    {"hz", "Hz"},
    {"hertz", "Hz"},
    {"khz", "kHz"},
    {"percent", "%"},
    {"pct", "%"},
    {"cel", "Cel"},
    {"celsius", "Cel"},
    {"\u00b0c", "Cel"},
    {"\u00bac", "Cel"},
    {"degc", "Cel"},
    {"degreec", "Cel"},
    {"degreesc", "Cel"},
    {"degcelsius", "Cel"},
    {"degreescelsius", "Cel"},
    {"\u2103", "Cel"},
    {"\u00b0", "Cel"},
    {"deg", "Cel"},
    {"degrees", "Cel"},
});
constexpr std::array<std::string_view, 10> kFahrenheit{
    "\u00b0f", "\u00baf", "degf", "degreef", "degreesf", "fahrenheit", "degfahrenheit", "degreesfahrenheit", "\u2109", "f"};

std::string withoutBlanks(std::string_view text)
{
    std::string out(text);
    std::erase(out, ' ');
    return out;
}

TypedUnit of(const ScaledUnit &unit)
{
    return {unit.unit, static_cast<int>(std::lround(std::log10(unit.factor))), Note::Clear, Sort::Unsaid};
}

// "V~", "VAC", "V ac", "A dc": the sort of current is taken off the end.
Sort takeSort(std::string &text)
{
    struct Ending
    {
        std::string_view text;
        Sort sort;
    };
    static constexpr std::array<Ending, 6> kEndings{{{"~", Sort::Alternating},
                                                     {"\u223f", Sort::Alternating},
                                                     {"ac", Sort::Alternating},
                                                     {"dc", Sort::Direct},
                                                     {"\u2393", Sort::Direct},
                                                     {"=", Sort::Direct}}};
    for (const Ending &e : kEndings) {
        const std::string low = lowered(text);
        if (low.size() > e.text.size() && low.ends_with(e.text)) {
            text.resize(text.size() - e.text.size());
            return e.sort;
        }
    }
    return Sort::Unsaid;
}

// One letter, or letters whose size is a matter of life: what they mean hangs on what the test reads.
std::optional<TypedUnit> shortUnit(const std::string &text, Unit own)
{
    const bool ohm = own == Unit::Ohm;
    if (ohm && (text == "k" || text == "K"))
        return TypedUnit{Unit::Ohm, 3, Note::Clear, Sort::Unsaid};
    if (ohm && text == "M")
        return TypedUnit{Unit::Ohm, 6, Note::Clear, Sort::Unsaid};
    if ((ohm && text == "m") || text == "m\u03a9" || text == "m\u2126" || text == "m\u03c9" || text == "mohm" ||
        text == "mohms" || text == "mOhm")
        return TypedUnit{Unit::Ohm, 6, Note::Milli, Sort::Unsaid};
    if (text == "mF" || text == "MF" || text == "mf")
        return TypedUnit{Unit::Farad, -6, Note::MilliFarad, Sort::Unsaid};
    if (own == Unit::Farad && (text == "u" || text == "\u00b5" || text == "\u03bc"))
        return TypedUnit{Unit::Farad, -6, Note::Clear, Sort::Unsaid};
    if (text == "f" || text == "F")
        return own == Unit::Farad ? TypedUnit{Unit::Farad, 0, Note::Clear, Sort::Unsaid}
                                  : TypedUnit{Unit::Celsius, 0, Note::Fahrenheit, Sort::Unsaid};
    if (text == "c")
        return TypedUnit{Unit::Celsius, 0, Note::Clear, Sort::Unsaid};
    return std::nullopt;
}

} // namespace

std::optional<TypedUnit> typedUnit(std::string_view behind, Measure measure)
{
    const Unit own = unitOf(measure);
    std::string text = withoutBlanks(behind);
    if (text.empty())
        return TypedUnit{own, own == Unit::Farad ? -6 : 0, Note::Nothing, Sort::Unsaid};
    if (const auto known = shortUnit(text, own))
        return known;
    const Sort sort = takeSort(text);
    if (const auto exact = unitNamed(text); exact && exact->unit != Unit::Second) {
        TypedUnit unit = of(*exact);
        unit.sort = sort;
        return unit;
    }
    const std::string low = lowered(text);
    if (std::ranges::find(kFahrenheit, low) != kFahrenheit.end())
        return TypedUnit{Unit::Celsius, 0, Note::Fahrenheit, Sort::Unsaid};
    // "MV", "MA" are no small letters' business: mega and milli lie a milliard apart
    const bool shouted = text.front() == 'M' && (low == "mv" || low == "ma");
    const auto *const alias = std::ranges::find(kAliases, low, &Alias::text);
    if (alias == kAliases.end() || shouted)
        return std::nullopt;
    const auto base = unitNamed(alias->unit);
    if (!base)
        return std::nullopt;
    TypedUnit unit = of(*base);
    unit.sort = sort;
    return unit;
}

} // namespace core
