#pragma once
// The number at the head of a typed reading, as people and meters write it, before its unit.
#include <optional>
#include <string>
#include <string_view>

namespace core {

struct Numeral
{
    enum class Form {
        Plain,    // one meaning: 11  0,4  .4  4k7
        Doubtful, // one separator before exactly three digits: 1,500
        Grouped,  // separators of thousands: 1,500,000  1'500  1 500
        Unended,  // a separator and nothing behind it: 1.
    };
    Form form = Form::Plain;
    bool negative = false;
    std::string whole;      // digits before the separator, groups joined; may be empty
    std::string fraction;   // digits behind it
    char letter = 0;        // IEC 60062: the letter that stood for the separator, as in 4k7
    std::size_t length = 0; // bytes read
};

// nullopt: no number there, or one that no person means (more than 12 digits, 1.2.3). Point and comma are alike.
std::optional<Numeral> numeralAt(std::string_view text);

// Value and step of whole.fraction x 10^exponent, each the double nearest to the decimal number.
struct Counted
{
    double value = 0;
    double step = 0;
};
Counted counted(const Numeral &numeral, int exponent);
// The same digits read as one whole number, without the separator: 1,500 as 1500.
Numeral withoutSeparator(const Numeral &numeral);

} // namespace core
