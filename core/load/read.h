#pragma once
// Documents to values, one file of the content a function. What a value refers to is looked up later (link.h); a value
// read from a faulty document is whole in memory and of no use.
#include "core/load/fields.h"
#include "core/tree/library.h"

namespace core {

Kind readKind(Fields &file);
Appliance readAppliance(Fields &file);
Tree readTree(Fields &file);
std::vector<WorkedCase> readCases(Fields &file);

// Parts that two of them share.
Test readTest(const Node &key, const Node &value, Notes &notes, bool isLoop);
// good, bad_below, bad_above, basis, source. A basis is demanded where there are numbers, if `needsBasis`.
PathLimits readLimits(Fields &fields, bool needsBasis);
bool hasNumbers(const PathLimits &limits);
Span readSpan(Fields &fields, std::string_view key, Unit wanted); // {} if the key is not there
std::string dangerIn(const Node &value, Notes &notes);              // a word of kDangers; "" with a note
double minutesOf(Measure measure);                                // where the author is silent

} // namespace core
