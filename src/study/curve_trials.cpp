// SPDX-License-Identifier: MIT
#include "study/curve_trials.hpp"

#include "study/slices.hpp"

#include <algorithm>

namespace rakeline::study {

std::optional<light::CurvatureHelp> curve_trials(const Study& study,
                                                 int projector,
                                                 int format,
                                                 const std::stop_token& stop) {
    const room::Layout& layout = study.layout();
    const auto p = static_cast<std::size_t>(projector);
    const auto f = static_cast<std::size_t>(format);
    if (p >= layout.projectors.size() || f >= layout.formats.size()) return std::nullopt;
    const auto& machine = layout.projectors[p];
    const auto& name = layout.formats[f].name;
    const bool shows = std::any_of(machine.formats.begin(), machine.formats.end(),
                                   [&](const room::FormatUse& use) { return use.format == name; });
    if (!shows || study.seats.seats.empty()) return std::nullopt;
    const LightSlice slice = light_slice(study);
    return light::curvature_help({.pictures = slice.pictures,
                                  .light = slice.input,
                                  .projector = projector,
                                  .format = format},
                                 stop);
}

room::Layout with_surface(room::Layout layout, const light::CurvatureTrial& trial) {
    layout.screen.radius_m = trial.radius_m;
    layout.screen.tilt_rad = trial.tilt_rad;
    return layout;
}

}  // namespace rakeline::study
