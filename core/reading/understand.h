#pragma once
// From what a person typed to a reading. What has two meanings is asked back, never assumed.
#include "core/base/expected.h"
#include "core/reading/meter.h"
#include "core/reading/reading.h"

namespace core {

struct Understood
{
    Reading reading;
    std::string shownAs; // said before it is taken: "10.3 kΩ", "20 °C (68 °F)", "OL, more than the meter can show"
};

struct Misread
{
    enum class Code {
        Nothing,       // nothing was typed
        TooLong,       // over kMostTyped bytes
        NotText,       // not UTF-8, control or hidden characters
        NotUnderstood, // no number and no known word, or words around a number that may change it
        WrongUnit,     // understood, but not what this test reads: volts for ohms, a tone for volts
        AskBack,       // it has two meanings: 1,500; 10 m with ohms; a lone 1 on a manual range
        NoThousands,   // written with separators of thousands
        Impossible,    // below zero, over the display
    };
    Code code = Code::NotUnderstood;
    std::string text;                     // one plain sentence
    std::vector<std::string> suggestions; // texts with one meaning to choose from; each is understood
    friend bool operator==(const Misread &, const Misread &) = default;
};
std::string_view word(Misread::Code code); // "not_understood", "ask_back" ...: the protocol's words

inline constexpr std::size_t kMostTyped = 80;

// Untrusted text. Point and comma are both decimal; °F is understood as °C exactly; a number without a unit is in the
// unit of the test (°C, uF). The reading's `with` stays empty: temperatures are read by a call of their own, with
// Measure::Temperature. For what is looked at, heard or felt the text is taken as the answer.
Expected<Understood, Misread> understand(std::string_view typed, Measure measure, const Meter &meter);

} // namespace core
