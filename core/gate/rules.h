#pragma once
// The rules as data: every guard of the gate has a name here, and the whole set is the default argument everywhere. The
// session never passes anything else. Written down apart so that each can be taken out in turn and be seen to matter: a
// rule whose absence breaks nothing is not needed, or not tested.
#include <array>
#include <string_view>
#include <utility>

namespace core {

struct Rules
{
    // what must be so before a step is shown
    bool dangerFirst = true;         // a stopped walk or an open alarm shows its own page, nothing else
    bool offFirst = true;            // from running or energized the only way on is S9
    bool startFirst = true;          // S0 before anything of the job
    bool lookNeedsClosedOrDead = true;
    bool deadWorkNeedsDead = true;
    bool proofIsOfThePlace = true;
    bool plugOnlyWithCord = true;    // S1 for a cord alone; hard-wired is dead by measurement only
    bool chargeFirst = true;
    bool heatFirst = true;
    bool noPowerAfterVeto = true;
    bool neverHolds = true;
    bool energizedIsTurnedOn = true;
    bool meterMustFit = true;
    bool frameFirst = true;
    bool coversBack = true;          // of S8: covers on
    bool wiresBack = true;           //        wires back
    bool meterOff = true;            //        meter and clips off, and all three known
    bool holdOnlyDead = true;        // clips go on while it is dead
    bool faceOnlyUnplugged = true;   // E2 only from isolated
    bool ownHold = true;             // an acknowledgement opens its own step alone
    bool oneReset = true;
    bool refuseZones = true;         // X
    // what an answer must be
    bool boxesAll = true;
    bool screenStillUp = true;       // what left the screen cannot be answered
    bool waitsHold = true;
    bool knownSourceInBand = true;
    bool pairsBelowLimit = true;
    bool chargeBelowLimit = true;
    bool offAtControlOnlyClosed = true;
    bool stoppedForGood = true;
    // what an event does
    bool shownFlags = true;          // covers, wires and clips fall when a step is shown, not when it is answered
    bool holdFlags = true;           // the same for a hold point that asks for clips
    bool powerCharges = true;
    bool powerHeats = true;
    bool oneReading = true;          // a reading spends its acknowledgement
    bool otherEventsSpend = true;
    bool awayIsUnknown = true;       // lapse, leave, resume, another person: nothing is dead any more
    bool awayForgets = true;         // and wires, covers, clips, charge are not known
    bool dailyOnlyUntouched = true;  // "closed" means as in daily use only if nothing of this job was inside
    bool ackExpires = true;
    bool deadExpires = true;
    bool clocksAgree = true;
    bool meterChangeVoids = true;
    bool alarmLowers = true;
    friend bool operator==(const Rules &, const Rules &) = default;
};

inline constexpr Rules kAllRules{};

struct NamedRule
{
    std::string_view name;
    bool Rules::*rule;
};

inline constexpr auto kRuleNames = std::to_array<NamedRule>({
    {"dangerFirst", &Rules::dangerFirst}, {"offFirst", &Rules::offFirst},
    {"startFirst", &Rules::startFirst}, {"lookNeedsClosedOrDead", &Rules::lookNeedsClosedOrDead},
    {"deadWorkNeedsDead", &Rules::deadWorkNeedsDead}, {"proofIsOfThePlace", &Rules::proofIsOfThePlace},
    {"plugOnlyWithCord", &Rules::plugOnlyWithCord}, {"chargeFirst", &Rules::chargeFirst},
    {"heatFirst", &Rules::heatFirst}, {"noPowerAfterVeto", &Rules::noPowerAfterVeto},
    {"neverHolds", &Rules::neverHolds}, {"energizedIsTurnedOn", &Rules::energizedIsTurnedOn},
    {"meterMustFit", &Rules::meterMustFit}, {"frameFirst", &Rules::frameFirst},
    {"coversBack", &Rules::coversBack}, {"wiresBack", &Rules::wiresBack},
    {"meterOff", &Rules::meterOff}, {"holdOnlyDead", &Rules::holdOnlyDead},
    {"faceOnlyUnplugged", &Rules::faceOnlyUnplugged}, {"ownHold", &Rules::ownHold},
    {"oneReset", &Rules::oneReset}, {"refuseZones", &Rules::refuseZones},
    {"boxesAll", &Rules::boxesAll}, {"screenStillUp", &Rules::screenStillUp},
    {"waitsHold", &Rules::waitsHold}, {"knownSourceInBand", &Rules::knownSourceInBand},
    {"pairsBelowLimit", &Rules::pairsBelowLimit},
    {"chargeBelowLimit", &Rules::chargeBelowLimit}, {"offAtControlOnlyClosed", &Rules::offAtControlOnlyClosed},
    {"stoppedForGood", &Rules::stoppedForGood}, {"shownFlags", &Rules::shownFlags},
    {"holdFlags", &Rules::holdFlags}, {"powerCharges", &Rules::powerCharges},
    {"powerHeats", &Rules::powerHeats}, {"oneReading", &Rules::oneReading},
    {"otherEventsSpend", &Rules::otherEventsSpend}, {"awayIsUnknown", &Rules::awayIsUnknown},
    {"awayForgets", &Rules::awayForgets}, {"dailyOnlyUntouched", &Rules::dailyOnlyUntouched},
    {"ackExpires", &Rules::ackExpires}, {"deadExpires", &Rules::deadExpires},
    {"clocksAgree", &Rules::clocksAgree}, {"meterChangeVoids", &Rules::meterChangeVoids},
    {"alarmLowers", &Rules::alarmLowers},
});

} // namespace core
