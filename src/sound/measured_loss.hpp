// SPDX-License-Identifier: MIT
#pragma once

#include "room/layout.hpp"
#include "sound/held_curve.hpp"

#include <complex>
#include <vector>

/// Transmission loss of a sheet as somebody measured it, at normal incidence.
namespace rakeline::sound {

/// Loss over frequency through measured points (held_curve.hpp). A sheet loses ever more toward the
/// treble, so what is held above the last point is too little there.
class MeasuredLoss {
public:
    /// Two points or more, frequencies rising, > 0 Hz.
    explicit MeasuredLoss(const std::vector<room::LossPoint>& table);

    double normal_db(double frequency_hz) const;

private:
    HeldCurve curve_;
};

/// z / (2 rho c) of a mass that loses `loss_db` >= 0 at normal incidence: what a measured loss is
/// taken for at other angles and in front of a wall behind the sheet.
///
///     x = j sqrt(10^(loss/10) - 1),   so that at an angle  loss = 10 lg (1 + |x|^2 cos^2(angle))
///
/// A measurement tells the size of 1 + x, not how much of x is friction. Most of a cinema sheet's
/// is the mass of air in its holes. Were it all friction, a loss of 6 dB would be 3.5 dB at 60
/// degrees where this says 2.4 dB. An assumption of ours: no source.
std::complex<double> mass_that_loses(double loss_db);

}  // namespace rakeline::sound
