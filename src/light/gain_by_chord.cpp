// SPDX-License-Identifier: MIT
#include "light/gain_by_chord.hpp"

#include <algorithm>
#include <cmath>

namespace rakeline::light {

GainByChord::GainByChord(const GainModel& model) {
    for (int step = 0; step <= kSteps; ++step) {
        const double angle_rad = 2.0 * std::asin(std::min(1.0, 0.5 * step / kPerChord));
        body_.push_back(model.gain_off_lobe(angle_rad));
        if (model.has_retro_part()) retro_.push_back(model.retro_off_back(angle_rad));
    }
}

}  // namespace rakeline::light
