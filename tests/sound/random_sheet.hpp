// SPDX-License-Identifier: MIT
#pragma once

#include "sound/perforation.hpp"

#include <random>

/// Seeded random sheets.
namespace rakeline::tests {

inline double between(std::mt19937& random, double least, double most) {
    return least + (most - least) * static_cast<double>(random()) / 4294967295.0;
}

/// Any sheet that a layout file may hold, from micro-perforated to coarse.
inline sound::Sheet random_sheet(std::mt19937& random) {
    using room::PerforationPattern;
    constexpr PerforationPattern kPatterns[] = {
        PerforationPattern::square, PerforationPattern::staggered, PerforationPattern::woven};
    sound::Sheet sheet;
    sheet.perforation.pattern = kPatterns[random() % 3];
    sheet.perforation.hole_diameter_m = between(random, 0.0001, 0.003);
    sheet.perforation.pitch_m = sheet.perforation.hole_diameter_m * between(random, 1.01, 10.0);
    sheet.thickness_m = between(random, 0.0001, 0.003);
    sheet.mass_kg_m2 = between(random, 0.05, 10.0);
    return sheet;
}

/// A sheet as cinemas hang it: the mass of the air in its holes matters, not its friction.
inline sound::Sheet random_cinema_sheet(std::mt19937& random) {
    sound::Sheet sheet = random_sheet(random);
    sheet.perforation.pattern =
        random() % 2 ? room::PerforationPattern::square : room::PerforationPattern::staggered;
    sheet.perforation.hole_diameter_m = between(random, 0.0008, 0.0015);
    sheet.perforation.pitch_m = between(random, 0.003, 0.007);
    sheet.thickness_m = between(random, 0.0002, 0.0006);
    sheet.mass_kg_m2 = between(random, 0.2, 1.0);
    return sheet;
}

/// A frequency from 20 Hz to 20 kHz, each octave as likely.
inline double random_frequency(std::mt19937& random) {
    return 20.0 * std::pow(1000.0, between(random, 0.0, 1.0));
}

}  // namespace rakeline::tests
