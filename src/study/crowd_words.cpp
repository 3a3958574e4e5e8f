// SPDX-License-Identifier: MIT
#include "study/crowd_words.hpp"

#include "base/assert.hpp"

namespace rakeline::study {
namespace {

using base::Unit;

std::string percent(double fraction) {
    return base::quantity_text(fraction, Unit::fraction);
}

double figure_value(const Study& study, const char* id, int format) {
    const Figure* figure = find_figure(study, id, {.format = format});
    RL_ASSERT(figure && !figure->values.empty());
    return figure->values.front().si;
}

std::string taken_words(double fraction) {
    return fraction == 1.0 ? "every seat taken" : percent(fraction) + " of the seats taken";
}

}  // namespace

std::string crowd_sentence(const Study& study, int format) {
    RL_ASSERT(study.crowd);
    const auto value = [&](const char* id) { return figure_value(study, id, format); };
    const auto at = static_cast<std::size_t>(format);
    const sight::Chance& room = study.crowd->formats.at(at).room;
    return "In " + study.layout().formats.at(at).name + ", " + std::to_string(room.clear) + " of " +
           std::to_string(room.drawn) +
           " crowds leave every seat at least 95 % clear (95 % interval " +
           base::quantity(value("sight.room_clear_chance_low"), Unit::fraction,
                          base::UnitSystem::metric)
               .number +
           " to " + percent(value("sight.room_clear_chance_high")) + "); on average " +
           percent(value("sight.seats_clear")) + " of the seats are.";
}

std::string people_sentence(const Study& study) {
    RL_ASSERT(study.crowd);
    const room::Crowd& crowd = study.crowd->crowd;
    return std::to_string(study.crowd->drawn) + " crowds drawn with seed " +
           std::to_string(crowd.seed) + ": " + percent(crowd.women_fraction) + " women, " +
           taken_words(crowd.taken_fraction) +
           "; bodies by ANSUR II (soldiers, measured barefoot and bolt upright). "
           "A seat is clear in a crowd when whoever sits there sees at least 95 % of the picture; "
           "each chance has a 95 % interval of a half width of " +
           percent(crowd.precision) + " or less.";
}

std::string precision_sentence(const Study& study) {
    RL_ASSERT(study.crowd);
    if (study.crowd->reached) return {};
    return "Not every interval is as narrow as that: sampling ended at " +
           std::to_string(study.crowd->drawn) + " crowds, the most that are drawn.";
}

}  // namespace rakeline::study
