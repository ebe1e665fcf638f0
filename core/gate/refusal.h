#pragma once
// Why the gate says no. A refusal costs the person nothing: a code, one sentence, the screen as it was. The codes are a
// closed list, the same in the protocol, in the man page and here.
#include <array>
#include <string>
#include <string_view>

namespace core {

enum class RefusalCode {
    Stopped, Alarm, StartFirst, NotNow, LeftScreen, OtherStep, Boxes, ReadingNeeded, WrongPair, Wait, OffFirst, MayBeOn,
    NotIsolated, NotProven, IsolationDeclined, NotDead, StillCharged, ChargeFirst, HotFirst, CloseUp, RunFirst,
    NotAcknowledged, Veto, Never, EnergizedOff, ProvingOff, Untranslated, MeterUnfit, FrameCheck, OneReset, NotUnplugged,
    NotForYou, Unclear,
};

struct RefusalText
{
    RefusalCode code;
    std::string_view word;
    std::string_view text;
};

inline constexpr auto kRefusals = std::to_array<RefusalText>({
    {RefusalCode::Stopped, "stopped", "This walk was stopped for danger; a new job needs the name of whoever ended it."},
    {RefusalCode::Alarm, "alarm", "First the alarm: are you dry, unhurt and out of its reach?"},
    {RefusalCode::StartFirst, "start_first", "First: is the machine closed up, and did anything alarming happen?"},
    {RefusalCode::NotNow, "not_now", "Nothing that is shown now asks for that."},
    {RefusalCode::LeftScreen, "left_screen", "That hold point has left the screen; it is read again from the top."},
    {RefusalCode::OtherStep, "other_step", "The hold point on the screen is for another step."},
    {RefusalCode::Boxes, "boxes", "Every box has to be ticked, each for itself."},
    {RefusalCode::ReadingNeeded, "reading_needed", "A tick proves nothing here: type what the meter shows."},
    {RefusalCode::WrongPair, "wrong_pair", "The screen asks for another pair of wires."},
    {RefusalCode::Wait, "wait", "The waiting time is not over yet."},
    {RefusalCode::OffFirst, "off_first", "It counts as on: first switch it off."},
    {RefusalCode::MayBeOn, "may_be_on", "It may still be on, so nothing else is shown until it is off."},
    {RefusalCode::NotIsolated, "not_isolated", "First the plug has to be out, or the breaker off."},
    {RefusalCode::NotProven, "not_proven", "Breaker off is not dead: this place has to be measured first."},
    {RefusalCode::IsolationDeclined, "isolation_declined", "Without power off only looks from outside are left."},
    {RefusalCode::NotDead, "not_dead", "Twice it was not dead with its breaker off: call an electrician."},
    {RefusalCode::StillCharged, "still_charged", "The capacitor stays charged: do not touch it, call."},
    {RefusalCode::ChargeFirst, "charge_first", "First the stored charge has to be gone."},
    {RefusalCode::HotFirst, "hot_first", "First the hot part has to cool."},
    {RefusalCode::CloseUp, "close_up", "First every wire goes back, the meter comes off and the covers go on."},
    {RefusalCode::RunFirst, "run_first", "First the screen for running it."},
    {RefusalCode::NotAcknowledged, "not_acknowledged", "That reading has a hold point of its own, which was not passed."},
    {RefusalCode::Veto, "veto", "No power any more in this job, because of what was found."},
    {RefusalCode::Never, "never", "You said: never in this job."},
    {RefusalCode::EnergizedOff, "energized_off", "Readings with power on are not turned on for this job."},
    {RefusalCode::ProvingOff, "proving_off", "Proving dead is not turned on for a caller: an electrician does it."},
    {RefusalCode::Untranslated, "untranslated", "The safety text is not checked in this language, so no reading with power on."},
    {RefusalCode::MeterUnfit, "meter_unfit", "This meter may not be used there."},
    {RefusalCode::FrameCheck, "frame_check", "First two dead readings of the frame have to be good."},
    {RefusalCode::OneReset, "one_reset", "It was reset once; if it trips again there is a fault behind it."},
    {RefusalCode::NotUnplugged, "not_unplugged", "The outlet is measured only while the machine is unplugged."},
    {RefusalCode::NotForYou, "not_for_you", "This is not for you to open."},
    {RefusalCode::Unclear, "unclear", "This step contradicts itself, so it is not shown."},
});

struct Refusal
{
    RefusalCode code = RefusalCode::NotNow;
    std::string text; // one sentence; the list's own, or one that names what is wrong
    friend bool operator==(const Refusal &, const Refusal &) = default;
};

std::string_view word(RefusalCode code);
Refusal refusal(RefusalCode code);                   // with the list's sentence
Refusal refusal(RefusalCode code, std::string text);

} // namespace core
