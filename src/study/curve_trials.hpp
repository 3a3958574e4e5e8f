// SPDX-License-Identifier: MIT
#pragma once

#include "light/curvature_help.hpp"
#include "study/study.hpp"

/// The screen's curve and tilt tried over a study's room. The seats stay where they are; a floor
/// that is solved for equal clearance follows the picture's new lower edge once a surface is put
/// in.
namespace rakeline::study {

/// Nothing where there is no such projector or format, the one has no use for the other, or there
/// are no seats; nor where `stop` came first.
std::optional<light::CurvatureHelp> curve_trials(const Study& study,
                                                 int projector,
                                                 int format,
                                                 const std::stop_token& stop = {});

/// The layout with the surface of a trial.
room::Layout with_surface(room::Layout layout, const light::CurvatureTrial& trial);

}  // namespace rakeline::study
