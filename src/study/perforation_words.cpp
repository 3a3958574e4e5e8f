// SPDX-License-Identifier: MIT
#include "study/perforation_words.hpp"

#include "base/number_text.hpp"

namespace rakeline::study {
namespace {

using base::Unit;
using room::PerforationPattern;

std::string short_length(double si, base::UnitSystem system) {
    return base::quantity_text(si, Unit::millimetre, system, 1);
}

std::string times(double ratio) {
    return base::fixed_text(ratio, ratio < 0.095 ? 2 : 1);
}

std::string why_no_beat(const Study& study, int projector) {
    const room::Layout& layout = study.layout();
    if (layout.screen.perforation.pattern == PerforationPattern::none)
        return "The sheet has no holes for pixels to beat with.";
    const auto& machine = layout.projectors.at(static_cast<std::size_t>(projector));
    if (machine.kind == room::SourceKind::film)
        return "Film has no pixels: its grain is irregular and makes no bands with the holes.";
    return "No beat: no combination of pixels and holes up to order 3 is coarser than both.";
}

}  // namespace

std::string sheet_words(const room::Perforation& p, base::UnitSystem system) {
    if (p.pattern == PerforationPattern::none) return "no holes";
    const std::string d = short_length(p.hole_diameter_m, system);
    const std::string b = short_length(p.pitch_m, system);
    std::string out;
    if (p.pattern == PerforationPattern::woven)
        out = d + " openings between threads " + b + " apart";
    else
        out = d + " holes, " + b +
              (p.pattern == PerforationPattern::staggered ? " staggered" : " square");
    if (p.angle_rad != 0.0)
        out += ", rows turned by " + base::quantity_text(p.angle_rad, Unit::radian, system);
    return out;
}

const char* sheet_sight_words(SheetSight sight) {
    switch (sight) {
        case SheetSight::beat_seen:
            return "beat seen";
        case SheetSight::holes_seen:
            return "holes seen";
        case SheetSight::unseen:
            break;
    }
    return "unseen";
}

std::string beat_words(const Study& study, int projector, int format, base::UnitSystem system) {
    const auto* found = sound::find_beat(study.holes, projector, format);
    if (!found) return why_no_beat(study, projector);
    const auto seat = static_cast<std::size_t>(found->worst_seat);
    const sound::Seen& seen = found->seen.at(seat);
    return "Pixels and holes beat every " + short_length(found->beat.period_m(), system) +
           " at a contrast of " + base::fixed_text(100.0 * found->beat.contrast, 2) +
           " %: seen most from " + study.seats.seats.at(seat).name + ", " +
           base::quantity_text(seen.cycles_per_radian, Unit::per_radian, system) + ", at " +
           times(seen.visibility) + " times the eye's threshold; " +
           base::quantity_text(found->seats_that_see, Unit::fraction, system) +
           " of the seats see it.";
}

std::string turn_words(const SheetTrials& trials, base::UnitSystem system) {
    if (!trials.turn) return "There are no holes, digital pictures or seats to turn the rows for.";
    const sound::TurnAdvice& turn = *trials.turn;
    const sound::TurnTrial& best = turn.trials.at(turn.best);
    if (turn.now == 0.0)
        return "No picture beats with the holes: there is nothing to turn them for.";
    if (turn.now < 1.0)
        return "No seat sees a beat as the rows hang (" + times(turn.now) +
               " times the eye's threshold): there is nothing to turn them for.";
    const std::string angle = base::quantity_text(best.angle_rad, Unit::radian, system);
    if (!(best.visibility < turn.now))
        return "The rows hang as well as any: no angle makes the beat fainter than " +
               times(turn.now) + " times the eye's threshold.";
    if (best.visibility == 0.0)
        return "Rows of holes turned to " + angle +
               " beat with no picture; as they hang the beat "
               "is " +
               times(turn.now) + " times the eye's threshold.";
    return "Rows of holes turned to " + angle + " would make the beat " + times(best.visibility) +
           " times the eye's threshold; as they hang it is " + times(turn.now) + ".";
}

std::vector<std::string> sheet_scope(const Study& study) {
    std::vector<std::string> out{
        "Loss at 10 kHz, straight through. Light lost is the open area. A hole is seen above one "
        "minute of arc from the nearest seat, a beat above the eye's threshold from any.",
        "The beat is that of an even white picture with sharp gaps between its pixels, at the "
        "luminance that it has now. A soft lens makes it fainter; look at a sample in the room "
        "before you buy."};
    if (study.layout().screen.surface.gain_includes_perforation)
        out.emplace_back(
            "The surface's gain was measured with holes in: with other holes it has to be measured "
            "anew.");
    out.emplace_back(
        "A sheet and its frame hang over people: a competent rigger takes them down and hangs "
        "them, by local rules.");
    return out;
}

}  // namespace rakeline::study
