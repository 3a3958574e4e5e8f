// SPDX-License-Identifier: MIT
#include "light/gain_curve.hpp"

#include "base/assert.hpp"

#include <math.h>
// After math.h: Boost 1.74's pchip asks for a plain isnan.
#include <boost/math/interpolators/pchip.hpp>
#include <boost/math/quadrature/gauss.hpp>
#include <cmath>

namespace rakeline::light {

struct GainCurve::Pieces {
    boost::math::interpolators::pchip<std::vector<double>> curve;
};

namespace {

/// The points to both sides of the middle, and one more of the last gain at each end, from which
/// the slopes at 0 and at the last angle come out level.
struct BothSides {
    std::vector<double> angles;
    std::vector<double> gains;

    void add(double angle, double gain) {
        angles.push_back(angle);
        gains.push_back(gain);
    }
};

BothSides both_sides(const std::vector<room::GainPoint>& table) {
    const room::GainPoint& last = table.back();
    BothSides out;
    out.add(-2.0 * last.angle_rad, last.gain);
    for (std::size_t i = table.size() - 1; i > 0; --i)
        out.add(-table[i].angle_rad, table[i].gain);
    for (const room::GainPoint& point : table)
        out.add(point.angle_rad, point.gain);
    out.add(2.0 * last.angle_rad, last.gain);
    return out;
}

}  // namespace

GainCurve::GainCurve(const std::vector<room::GainPoint>& table) {
    RL_ASSERT(table.size() >= 2 && table.front().angle_rad == 0.0);
    BothSides sides = both_sides(table);
    pieces_ =
        std::make_shared<const Pieces>(Pieces{{std::move(sides.angles), std::move(sides.gains)}});
    for (const room::GainPoint& point : table)
        angles_rad_.push_back(point.angle_rad);
    last_gain_ = table.back().gain;
}

double GainCurve::at(double angle_rad) const {
    return angle_rad >= angles_rad_.back() ? last_gain_ : pieces_->curve(angle_rad);
}

double GainCurve::reflectance() const {
    // 2 sin a cos a = sin 2a. One cubic times a sine a piece: far below the rule's own error.
    const auto sent_back = [&](double angle) { return at(angle) * std::sin(2.0 * angle); };
    double sum = 0.0;
    for (std::size_t i = 1; i < angles_rad_.size(); ++i) {
        sum += boost::math::quadrature::gauss<double, 20>::integrate(sent_back, angles_rad_[i - 1],
                                                                     angles_rad_[i]);
    }
    // The last gain from the last angle on: 2 * integral of sin a cos a is cos^2 of it.
    const double beyond = std::cos(angles_rad_.back());
    return sum + last_gain_ * beyond * beyond;
}

}  // namespace rakeline::light
