// SPDX-License-Identifier: MIT
#pragma once

#include "light/meter_fit.hpp"

#include <vector>

/// What the pattern of the readings points to.
namespace rakeline::light {

enum class MeterSign {
    uneven,      ///< more scatter than the meter's accuracy explains: not a smooth fall-off
    off_centre,  ///< hot spot away from the middle
    too_steep,   ///< corners darker than the layout has them
    hollow,      ///< weaker in the middle than round it
    too_flat,    ///< corners brighter and flux lower than the layout has them
    dim,         ///< flux lower; alone: the pattern is as it should be
    bright,      ///< flux higher
};

/// When a difference counts. All of them: common practice, no source.
struct SignLimits {
    double errors = 2.0;      ///< and so many standard errors
    double slope = 0.10;      ///< by a hot spot off centre: one edge over the other, of the peak
    double corner = 0.05;     ///< of the corner fraction
    double flux = 0.10;       ///< of the flux, as a share
    double dip_errors = 3.0;  ///< of the middle
    double uneven_chance = 0.01;  ///< of a chi-square so large
};

/// Signs in the order of the enum: what is to be mended first stands first. None: the readings
/// agree with the layout.
std::vector<MeterSign> meter_signs(const MeterFit& fit, const SignLimits& limits = {});

/// The reading furthest from the fit, in standard uncertainties; 0 or more readings must be there.
std::size_t furthest_reading(const MeterFit& fit);

}  // namespace rakeline::light
