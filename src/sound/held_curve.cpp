// SPDX-License-Identifier: MIT
#include "sound/held_curve.hpp"

#include "base/assert.hpp"

#include <math.h>
// After math.h: Boost 1.74's pchip asks for a plain isnan.
#include <boost/math/interpolators/pchip.hpp>
#include <cmath>

namespace rakeline::sound {

struct HeldCurve::Pieces {
    boost::math::interpolators::pchip<std::vector<double>> curve;
};

HeldCurve::HeldCurve(const std::vector<FrequencyValue>& points) {
    RL_ASSERT(!points.empty());
    first_ = points.front();
    last_ = points.back();
    if (points.size() == 1) return;
    // One more point of the end's own value beyond each end makes the slopes there come out level.
    std::vector<double> at{std::log(first_.frequency_hz) - 1.0};
    std::vector<double> values{first_.value};
    for (const FrequencyValue& point : points) {
        at.push_back(std::log(point.frequency_hz));
        values.push_back(point.value);
    }
    at.push_back(std::log(last_.frequency_hz) + 1.0);
    values.push_back(last_.value);
    pieces_ = std::make_shared<const Pieces>(Pieces{{std::move(at), std::move(values)}});
}

double HeldCurve::at(double frequency_hz) const {
    RL_ASSERT(frequency_hz > 0.0);
    if (frequency_hz <= first_.frequency_hz) return first_.value;
    if (frequency_hz >= last_.frequency_hz) return last_.value;
    return pieces_->curve(std::log(frequency_hz));
}

}  // namespace rakeline::sound
