#pragma once
// The words the gate is made of: where power stands, what a step asks of it, and the safety screens.
// Local codes and licensed practice stand above this folder, the program and every tree.
#include <string_view>

namespace core {

// Unknown: nobody has said or shown anything yet. OffUnproven: a breaker is said to be off, nothing was measured; under
// 29 CFR 1910.333(b)(1) that still counts as energized. Isolated: cord out, plug in this person's keeping
// (1910.147(a)(2)(iii)(A)). ProvenDead: measured at this place (NFPA 70E 120.5, secondary). Running: on, closed up,
// nobody probes. Energized: a hold point was passed, or proving is under way; stays until off is confirmed.
// Stopped: danger, the walk is over.
enum class Power { Unknown, OffUnproven, Isolated, ProvenDead, Running, Energized, Stopped };

// What a step asks of the appliance. A look or ask, nothing opened; AP touches plug, breaker, switch or outlet; D hands or
// probes inside; DS the same where a capacitor can hold charge; R watched while it runs closed up; E1 volts by clips
// placed dead; E2 volts at a receptacle's face, appliance unplugged; E3 clamp; EO watched running with a cover off;
// P proving dead (only the gate asks for it); X never.
enum class StepClass { A, AP, D, DS, R, E1, E2, E3, EO, P, X };

// S0 at start, S1 unplug, S2 breaker off, S3 prove dead, S4 clips, S5 receptacle, S6 clamp, S7 run, S8 put back,
// S9 make it off, S10 stored charge, S11 hot parts, S12 gas, S13 not for you, S14 shock smoke water.
// Eo is the hold point of class EO: S4's words without the meter's.
enum class Screen { S0, S1, S2, S3, S4, S5, S6, S7, S8, S9, S10, S11, S12, S13, S14, Eo };

enum class Covers { Unknown, Open, Closed };
// Meter or clips on the appliance: Dead were left by a dead test (the meter may be in ohms), Live put on for one hold point.
enum class Clips { Unknown, None, Dead, Live };

std::string_view word(Power power);       // "unknown off_unproven isolated proven_dead running energized stopped"
std::string_view word(StepClass stepClass); // "A AP D DS R E1 E2 E3 EO P X"
std::string_view word(Screen screen);     // "S0" ... "S14", "EO"

constexpr bool isDead(Power power) { return power == Power::Isolated || power == Power::ProvenDead; }
constexpr bool isOn(Power power) { return power == Power::Running || power == Power::Energized; }
constexpr bool isDeadWork(StepClass c) { return c == StepClass::D || c == StepClass::DS; }
// Needs a hold point with an acknowledgement of its own.
constexpr bool isLive(StepClass c)
{
    return c == StepClass::E1 || c == StepClass::E2 || c == StepClass::E3 || c == StepClass::EO;
}
constexpr bool isHold(Screen s) { return s == Screen::S4 || s == Screen::S5 || s == Screen::S6 || s == Screen::Eo; }

} // namespace core
