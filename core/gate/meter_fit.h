#pragma once
// Whether a person's meter may go near voltage: measurement categories of IEC 61010-2-030 and -033 (secondary), asked of
// meter, leads, clips and splitter alike; the lowest counts.
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace core {

struct MeterMark // "CAT III 600 V" = {3, 600}; {0, 0}: not marked
{
    int category = 0;
    int volts = 0;
    friend bool operator==(const MeterMark &, const MeterMark &) = default;
};

MeterMark markIn(std::string_view text);
std::string shown(MeterMark mark); // "CAT III 600 V", "no mark"

// Inside a plug-connected appliance CAT II 300 V at least; any wall receptacle, terminal block of a range or dryer,
// hard-wired appliance and every proof that something is dead: CAT III 300 V (common text of IEC 61010, secondary).
inline constexpr MeterMark kInsideMark{2, 300};
inline constexpr MeterMark kWallMark{3, 300};

struct MeterFit
{
    std::string id;                // which meter; changes when another is taken
    std::vector<MeterMark> marks;  // of every piece that was asked for
    bool voltsAc = false;          // has a V~ position
    bool lowBattery = false;
    bool leadsInAmpJack = false;
    bool unfitForMains = false;    // cracked, glass fuse, analogue without a mark: dead tests only
    friend bool operator==(const MeterFit &, const MeterFit &) = default;
};

MeterMark lowest(const MeterFit &meter);
// Why this meter may not be used where `needed` is asked for; nullopt: it may. A plain sentence.
std::optional<std::string> whyUnfit(const MeterFit &meter, MeterMark needed);

} // namespace core
