// SPDX-License-Identifier: MIT
#include "study/perforation_choice.hpp"

#include "room/perforation.hpp"
#include "sight/picture_detail.hpp"
#include "sound/perforation.hpp"
#include "study/slices.hpp"

#include <algorithm>
#include <cmath>

namespace rakeline::study {
namespace {

constexpr double kTreble_hz = 10000.0;

room::SheetChoice present_sheet(const room::Screen& screen) {
    return {.name = kPresentSheet,
            .perforation = screen.perforation,
            .thickness_m = screen.sheet_thickness_m,
            .mass_kg_m2 = screen.sheet_mass_kg_m2};
}

/// What the eyes have of the holes: of the sheet as it would hang, so of one study.
void look_at(const sound::HoleInput& room, SheetTrial& trial) {
    const room::Perforation& holes = trial.sheet.perforation;
    if (holes.pattern == room::PerforationPattern::none) return;
    sound::HoleInput in = room;
    in.perforation = holes;
    in.pictures.clear();
    const sound::HoleStudy seen = sound::study_holes(in);
    trial.hole_seats = seen.seats_that_see_holes;
    if (seen.nearest_seat) {
        const double distance =
            seen.sheet_distance_m.at(static_cast<std::size_t>(*seen.nearest_seat));
        trial.hole_minutes = std::atan2(holes.hole_diameter_m, distance) / sight::kAcuity_rad;
    }
    if (!room.pictures.empty() && !room.eyes.empty()) trial.beat = sound::worst_risk(room, holes);
}

SheetTrial try_sheet(const Study& study,
                     const sound::HoleInput& room,
                     const sound::Sheet& sheet,
                     const room::SheetChoice& choice) {
    const double now = room::open_area(study.layout().screen.perforation);
    SheetTrial out;
    out.sheet = choice;
    out.loss_10k_db = sound::screen_loss_db(sheet, kTreble_hz, 0.0, sound_input(study).air);
    out.open_area = room::open_area(choice.perforation);
    out.light_over_present = (1.0 - out.open_area) / (1.0 - now);
    look_at(room, out);
    return out;
}

}  // namespace

SheetSight sight_of(const SheetTrial& trial) {
    if (trial.beat.value_or(0.0) > 1.0) return SheetSight::beat_seen;
    return trial.hole_minutes.value_or(0.0) > 1.0 ? SheetSight::holes_seen : SheetSight::unseen;
}

std::optional<SheetTrials> sheet_trials(const Study& study,
                                        std::span<const room::SheetChoice> catalogue,
                                        const std::stop_token& stop) {
    const room::Screen& screen = study.layout().screen;
    const sound::HoleInput room = hole_input(study);
    SheetTrials out;
    out.trials.push_back(try_sheet(study, room, sound::sheet_of(screen), present_sheet(screen)));
    for (const room::SheetChoice& choice : catalogue) {
        if (stop.stop_requested()) return std::nullopt;
        const sound::Sheet sheet = sound::sheet_of(with_sheet(study.layout(), choice).screen);
        out.trials.push_back(try_sheet(study, room, sheet, choice));
    }
    out.turn = sound::turn_advice(room);
    return out;
}

std::vector<room::SheetChoice> sheet_catalogue(std::span<const room::Series> series) {
    std::vector<room::SheetChoice> out;
    for (const room::Series& one : series)
        out.insert(out.end(), one.sheets.begin(), one.sheets.end());
    return out;
}

room::Layout with_sheet(room::Layout layout, const room::SheetChoice& sheet) {
    layout.screen.perforation = sheet.perforation;
    layout.screen.sheet_thickness_m = sheet.thickness_m;
    layout.screen.sheet_mass_kg_m2 = sheet.mass_kg_m2;
    layout.screen.loss_table.clear();
    return layout;
}

room::Layout with_turn(room::Layout layout, const sound::TurnAdvice& advice) {
    layout.screen.perforation.angle_rad = advice.trials.at(advice.best).angle_rad;
    return layout;
}

}  // namespace rakeline::study
