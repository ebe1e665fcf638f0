#pragma once
// The safety texts: the program's own, one file a language. What is shown is lines; which of them, decided by the names of
// conditions; {words} in braces are filled in as plain text, never as markup.
#include "core/base/expected.h"

#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace core {

struct SafetyLine
{
    std::string text;
    std::string when; // what it is shown under, all of it: "name", "!name" unless, "name !other" both; "" always
    bool bold = false; // hazard and consequence
    friend bool operator==(const SafetyLine &, const SafetyLine &) = default;
};

struct SafetyText
{
    int version = 0;
    std::string word;                                      // DANGER WARNING CAUTION; "" for a question (ANSI Z535.4, secondary)
    std::vector<std::pair<std::string, std::string>> signs; // ISO 7010 number, condition
    std::string wordWhen, wordThen;                        // another word under a condition (very hot parts: WARNING)
    std::vector<SafetyLine> lines;
    std::map<std::string, std::string> boxes;              // id before the colon -> text; {name} stands for what follows it
    std::map<std::string, std::string> ways;
};

struct CallText // who is to be called, and why this is not for the person
{
    std::string why, who;
};

struct SafetyTexts
{
    std::string language;
    std::map<std::string, SafetyText> screens; // "S0" ... "S14", "EO"
    std::map<std::string, CallText> calls;     // X zones
    std::map<std::string, std::string> lines;  // the program's own lines on ordinary steps: plug_out, proven, closed_up ...
};

// The file's text. The error names what is wrong: not JSON, a key that is missing or unknown, a wrong type.
Expected<SafetyTexts, std::string> safetyTextsIn(std::string_view json);
// What a translation leaves out or adds against the original: missing screens, boxes, ways, other word, signs, conditions,
// {words} or version. Empty: it may be shown alone. A translation that differs has English beside it and no energized step.
std::vector<std::string> differences(const SafetyTexts &original, const SafetyTexts &translation);

// {words} filled in; a word without a value stays as it is, so that it is seen.
std::string filled(std::string_view text, const std::map<std::string, std::string> &params);
bool holds(std::string_view condition, const std::vector<std::string> &notes);
std::vector<SafetyLine> linesOf(const SafetyText &text, const std::vector<std::string> &notes,
                                const std::map<std::string, std::string> &params);
std::string wordOf(const SafetyText &text, const std::vector<std::string> &notes);
std::vector<std::string> signsOf(const SafetyText &text, const std::vector<std::string> &notes);

} // namespace core
