#include "core/reading/conformity.h"

#include "core/base/normal.h"

#include <array>
#include <cmath>

namespace core {
namespace {

constexpr double kSure = .95, kHalf = .5, kHardly = .05;
constexpr double kLowOhm = 2;
constexpr double kSurelyOpenOhm = 1e6; // whatever the part: no coil, winding, contact or warm sensor reads more
constexpr double kContactOhm = 5;      // what reads no more than this when good is a contact or a wire

bool isOhm(Measure measure)
{
    return unitOf(measure) == Unit::Ohm;
}

bool isContact(const Limits &limits)
{
    return !limits.openIsGood && limits.lo <= 0 && limits.hi <= kContactOhm;
}

Conformity conformityOf(double p)
{
    return p >= kSure ? Conformity::Good : p > kHalf ? Conformity::GoodNear : p > kHardly ? Conformity::OutNear : Conformity::Out;
}

void surely(Judgement &j, bool good)
{
    j.conformity = good ? Conformity::Good : Conformity::Out;
    j.pGood = j.pNotBad = good ? 1 : 0;
    j.clears = good;
    j.convicts = !good;
}

void noConclusion(Judgement &j)
{
    const Judgement none;
    j.conformity = none.conformity;
    j.pGood = none.pGood;
    j.pNotBad = none.pNotBad;
    j.convicts = j.clears = false;
    j.near = true;
}

void concludeIf(Judgement &j, bool known, bool good)
{
    if (known)
        surely(j, good);
    else
        noConclusion(j);
}

bool canBeNegative(Measure measure)
{
    return measure == Measure::Temperature || measure == Measure::OpensAt;
}

// "none" is what is no more than a stray: inside the meter's own error of nothing, or a twentieth of the least good value.
bool isNothing(double value, double halfWidth, const Limits &limits)
{
    return limits.lo > 0 && (std::abs(value) <= halfWidth || std::abs(value) <= limits.lo / 20);
}

ReadingName nameOfValue(const Judgement &j, Measure measure, const Limits &limits, double halfWidth)
{
    if (measure == Measure::Continuity)
        return j.value < (kToneLow + kToneHigh) / 2 ? ReadingName::Tone : ReadingName::NoTone;
    if (isEnergized(measure) && isNothing(j.value, halfWidth, limits))
        return ReadingName::None;
    if (j.side == Side::Inside || j.pGood > kHalf)
        return ReadingName::Good;
    return j.side == Side::Above ? ReadingName::High : ReadingName::Low;
}

Side sideOf(double value, const Limits &limits)
{
    if (limits.openIsGood)
        return Side::Below;
    return value > limits.hi ? Side::Above : value < limits.lo ? Side::Below : Side::Inside;
}

// The probes of a meter that was not zeroed add something unknown: what is low stays low, what is high may be theirs.
void doubtProbes(Judgement &j, const Limits &limits)
{
    if (limits.openIsGood || j.side == Side::Below)
        return;
    const bool oneSided = limits.lo <= 0;
    if (j.side == Side::Above || !oneSided)
        noConclusion(j);
}

Judgement judgeValue(const Reading &reading, const Limits &limits, Measure measure, const Meter &meter)
{
    const bool ohm = isOhm(measure);
    const ProbeError probe = ohm ? probeError(meter) : ProbeError{};
    const double read = measure == Measure::VoltageDc ? std::abs(reading.amount.value) : reading.amount.value; // leads swapped
    const double a = meterHalfWidth(meter, measure, read, reading.step);
    Judgement j;
    j.value = read - probe.mean;
    j.u = std::sqrt(a * a / 3 + reading.step * reading.step / 12 + probe.deviation * probe.deviation);
    const auto lowEdge = [&](double edge) { return edge <= 0 && !canBeNegative(measure) ? -Limits::kNone : edge; };
    j.pNotBad = conformance(j.value, j.u, lowEdge(limits.badBelow), limits.badAbove);
    j.pGood = limits.openIsGood ? 0 : conformance(j.value, j.u, lowEdge(limits.lo), limits.hi);
    j.side = sideOf(j.value, limits);
    j.conformity = conformityOf(j.pGood);
    j.clears = j.conformity == Conformity::Good;
    j.convicts = j.pGood <= kHardly && j.pNotBad <= kHardly;
    j.clearsOpen = ohm && !limits.openIsGood && (j.clears || read < kTouchesMetalOhm); // more may be fingers on the tips
    j.near = !j.clears && !j.convicts; // near a limit, or between good and bad
    j.name = nameOfValue(j, measure, limits, a);
    if (!limits.judgesValues()) {
        noConclusion(j);
        j.near = false; // a better reading would say no more
        return j;
    }
    if (limits.openIsGood && !j.convicts)
        noConclusion(j);
    if (ohm && !meter.probeZero && read < kLowOhm)
        doubtProbes(j, limits);
    return j;
}

// OL: the value is over the top of the range, less what the meter may be wrong there.
Judgement judgeOverLimit(const Limits &limits, Measure measure, const Meter &meter)
{
    Judgement j;
    j.name = measure == Measure::Continuity ? ReadingName::NoTone : limits.openIsGood ? ReadingName::Good : ReadingName::Open;
    j.side = limits.openIsGood ? Side::Inside : Side::Above;
    if (!isOhm(measure)) {
        concludeIf(j, limits.openIsGood || limits.openIsBad, limits.openIsGood);
        return j;
    }
    const double over = meter.top - meterHalfWidth(meter, measure, meter.top, meter.top / std::max(1, meter.displayCounts));
    if (limits.openIsGood) {
        // no bad edge given: a top under what counts as touching metal cannot say that nothing touches
        concludeIf(j, over >= (std::isfinite(limits.badBelow) ? limits.badBelow : kTouchesMetalOhm), true);
    } else if (!limits.judgesValues()) {
        concludeIf(j, limits.openIsBad && over >= kSurelyOpenOhm, false);
    } else if (!std::isfinite(limits.hi)) {
        concludeIf(j, over >= limits.lo, true);
    } else if (over < limits.hi) {
        noConclusion(j);
    } else {
        surely(j, false);
        // over the top may still lie between good and bad
        j.convicts = limits.openIsBad && (!std::isfinite(limits.badAbove) || over >= limits.badAbove);
        j.pNotBad = j.convicts ? 0 : 1;
        j.near = !j.convicts;
    }
    return j;
}

// What ought to be open: a tone is a closed contact or a touch; silence speaks only where no more than a contact is asked.
void toneWhereOpen(Judgement &j, bool tone, const Limits &limits)
{
    j.side = tone ? Side::Below : Side::Inside;
    if (tone && limits.badBelow >= kToneHigh)
        surely(j, false);
    else if (!tone && std::isfinite(limits.badBelow) && limits.badBelow <= kToneHigh)
        surely(j, true);
}

// What ought to conduct: a tone is under 50 ohm, silence over 20; of a contact silence means open.
void toneWhereValue(Judgement &j, bool tone, const Limits &limits)
{
    j.clearsOpen = tone;
    if (tone ? limits.lo < kToneHigh : limits.hi > kToneLow)
        return;
    j.side = tone ? Side::Below : Side::Above;
    surely(j, false);
    j.convicts = tone ? limits.badBelow >= kToneHigh : isContact(limits);
    j.pNotBad = j.convicts ? 0 : 1;
}

Judgement judgeTone(bool tone, const Limits &limits, Measure measure)
{
    Judgement j;
    noConclusion(j);
    if (limits.openIsGood)
        toneWhereOpen(j, tone, limits);
    else
        toneWhereValue(j, tone, limits);
    j.near = !j.clears && !j.convicts;
    j.name = tone ? ReadingName::Tone : ReadingName::NoTone;
    if (measure == Measure::Continuity)
        return j;
    if (j.clears || (tone && isContact(limits)))
        j.name = ReadingName::Good;
    else if (j.conformity == Conformity::Out)
        j.name = tone ? ReadingName::Low : ReadingName::Open;
    return j;
}

// A thermostat that was warmed and never opened: it opens above the temperature reached, or not at all.
Judgement judgeStaysClosed(const Reading &reading, const Limits &limits, const Meter &meter)
{
    Judgement j;
    j.name = ReadingName::StaysClosed;
    j.side = Side::Above;
    noConclusion(j);
    if (reading.amount.unit != Unit::Celsius || limits.unit != Unit::Celsius)
        return j;
    Reading reached = reading;
    reached.what = Reading::What::Value;
    reached.step = 1;
    const Judgement there = judgeValue(reached, limits, Measure::OpensAt, meter);
    j.value = there.value;
    j.u = there.u;
    if (there.side != Side::Above || there.pGood > kHardly) // not warm enough to tell
        return j;
    j.conformity = Conformity::Out;
    j.pGood = there.pGood;
    j.convicts = reading.amount.value >= limits.stuckAbove;
    j.pNotBad = j.convicts ? 0 : 1;
    j.near = !j.convicts;
    return j;
}

} // namespace

std::string_view word(ReadingName name)
{
    static constexpr std::array<std::string_view, 10> kWords{"",      "open", "good",    "high", "low",
                                                             "jumps", "tone", "no tone", "none", "stays closed"};
    return kWords[static_cast<std::size_t>(name)];
}

double conformance(double value, double u, double lo, double hi)
{
    if (!(u > 0))
        return value >= lo && value <= hi ? 1 : 0;
    if (std::isinf(lo) && std::isinf(hi))
        return 1;
    if (std::isinf(lo))
        return normalCdf((hi - value) / u);
    if (std::isinf(hi))
        return normalCdf((value - lo) / u);
    return normalBetween((lo - value) / u, (hi - value) / u);
}

Judgement judge(const Reading &reading, const Limits &limits, Measure measure, const Meter &meter)
{
    switch (reading.what) {
    case Reading::What::Value:
        return judgeValue(reading, limits, measure, meter);
    case Reading::What::OverLimit:
        return judgeOverLimit(limits, measure, meter);
    case Reading::What::Tone:
        return judgeTone(true, limits, measure);
    case Reading::What::NoTone:
        return judgeTone(false, limits, measure);
    case Reading::What::StaysClosed:
        return judgeStaysClosed(reading, limits, meter);
    case Reading::What::Jumps: {
        Judgement j;
        surely(j, false);
        j.name = ReadingName::Jumps;
        return j;
    }
    case Reading::What::Answer:
        break;
    }
    return {};
}

} // namespace core
