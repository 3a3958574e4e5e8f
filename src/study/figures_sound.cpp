// SPDX-License-Identifier: MIT
#include "study/coverage_cells.hpp"

#include <algorithm>
#include <cmath>
#include <vector>

namespace rakeline::study {
namespace {

using base::Unit;

/// The same sum that the level itself is, term by term.
void record_path(const Cell& c, Working& w) {
    if (!w.recording()) return;
    const sound::DirectPath& path = sound_of(c).paths.at(static_cast<std::size_t>(c.index));
    const room::Layout& layout = c.study.layout();
    const sound::LevelTerms terms =
        sound::level_terms(loudspeaker_of(c), path, sound::sheet_of(layout.screen), air_of(c.study),
                           sound::kOctaves.at(static_cast<std::size_t>(c.band)));
    w.input("r", "distance", path.distance_m, Unit::metre);
    w.input("h", "off the axis, across", path.off_axis_across_rad, Unit::radian);
    w.input("v", "off the axis, up", path.off_axis_up_rad, Unit::radian);
    if (path.through_sheet) w.input("i", "angle at the sheet", path.sheet_angle_rad, Unit::radian);
    w.input("S", "sensitivity, 1 W at 1 m", terms.sensitivity_db, Unit::decibel);
    w.input("10 lg P", "rated power", terms.power_db, Unit::decibel);
    w.input("-20 lg r", "distance", terms.distance_db, Unit::decibel);
    w.input("D", "directivity", terms.directivity_db, Unit::decibel);
    w.input("-T", "the sheet", terms.screen_db, Unit::decibel);
    w.input("-a r", "the air", terms.air_db, Unit::decibel);
}

std::optional<double> direct_level(const Cell& c, Working& w) {
    record_path(c, w);
    return sound_of(c)
        .level_db.at(static_cast<std::size_t>(c.band))
        .at(static_cast<std::size_t>(c.index));
}

std::optional<double> level_spread(const Cell& c, Working& w) {
    const auto& levels = sound_of(c).level_db.at(static_cast<std::size_t>(c.index));
    if (w.recording() && !levels.empty()) {
        const auto [least, most] = std::minmax_element(levels.begin(), levels.end());
        w.input("max L", "loudest seat", *most, Unit::decibel);
        w.input("min L", "quietest seat", *least, Unit::decibel);
    }
    return sound_of(c).spread_db.at(static_cast<std::size_t>(c.index));
}

std::optional<double> hole_visible_from(const Cell& c, Working& w) {
    w.input("d", "hole diameter", c.study.layout().screen.perforation.hole_diameter_m,
            Unit::millimetre);
    return c.study.sound.hole_visible_from_m;
}

}  // namespace

std::span<const FigureDefinition> sound_figures() {
    static const std::vector<FigureDefinition> entries = {
        {"sound.direct_level",
         Subject::sound,
         "Direct level",
         Unit::decibel,
         {.loudspeaker = true, .band = true, .seat = true},
         "Direct sound at rated power, dB re 20 uPa.",
         "S + 10 lg P - 20 lg r + D - T - a r",
         "inverse square law; ISO 9613-1:1993 for the air",
         "{loudspeaker} gives {value} at seat {seat}, {band}",
         direct_level},
        {"sound.level_spread",
         Subject::sound,
         "Level spread",
         Unit::decibel,
         {.loudspeaker = true, .band = true},
         "Highest minus lowest seat.",
         "max L - min L",
         "derived: over all seats",
         "{loudspeaker} differs by {value} between seats at {band}",
         level_spread},
        {"sound.hole_visible_from",
         Subject::sound,
         "Holes seen within",
         Unit::metre,
         {},
         "Distance within which a hole is larger than one minute of arc.",
         "d / tan 1'",
         "acuity of one minute of arc",
         "The holes are seen from within {value}",
         hole_visible_from},
    };
    return entries;
}

}  // namespace rakeline::study
