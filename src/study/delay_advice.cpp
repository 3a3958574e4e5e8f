// SPDX-License-Identifier: MIT
#include "study/delay_advice.hpp"

#include <cmath>

namespace rakeline::study {

std::optional<room::Layout> with_suggested_delays(const Study& study) {
    const std::vector<double>& delays = study.sound.arrival.suggested_delay_s;
    if (delays.empty()) return std::nullopt;
    constexpr double kSteps_per_s = 1e5;
    room::Layout layout = study.layout();
    for (std::size_t i = 0; i < delays.size(); ++i)
        layout.loudspeakers.at(i).delay_s = std::round(delays[i] * kSteps_per_s) / kSteps_per_s;
    return layout;
}

}  // namespace rakeline::study
