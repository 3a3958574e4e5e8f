// SPDX-License-Identifier: MIT
#pragma once

#include "room/layout.hpp"

#include <memory>
#include <vector>

/// Gain over the angle from the lobe's middle, through measured points.
namespace rakeline::light {

/// Cubic pieces through the points that never swing past two neighbours: where the gains fall, the
/// curve falls. The lobe is the same to all sides of its middle, so the curve is level at 0; beyond
/// the last angle it holds the last gain and runs level into it. Source: Fritsch and Butland's
/// slopes (1984) as Boost.Math's pchip has them. Its makima draws a smoother curve but swings past
/// the points, which would put a bright ring round a lobe that was measured without one.
class GainCurve {
public:
    /// Two points or more, angles rising from 0.
    explicit GainCurve(const std::vector<room::GainPoint>& table);

    /// `angle_rad` 0 or more.
    double at(double angle_rad) const;

    /// 2 * integral over the half space of gain sin a cos a da: the share of the light that a sheet
    /// of this gain, lit along its normal, sends back. Relative error < 1e-12.
    double reflectance() const;

private:
    struct Pieces;
    std::shared_ptr<const Pieces> pieces_;  ///< shared by copies; never changes
    std::vector<double> angles_rad_;
    double last_gain_ = 0.0;
};

}  // namespace rakeline::light
