// SPDX-License-Identifier: MIT
#include "sound/measured_loss.hpp"

#include "base/assert.hpp"

#include <math.h>
// After math.h: Boost 1.74's pchip asks for a plain isnan.
#include <algorithm>
#include <boost/math/interpolators/pchip.hpp>
#include <cmath>

namespace rakeline::sound {

struct MeasuredLoss::Pieces {
    boost::math::interpolators::pchip<std::vector<double>> curve;
};

MeasuredLoss::MeasuredLoss(const std::vector<room::LossPoint>& table) {
    RL_ASSERT(table.size() >= 2);
    first_ = table.front();
    last_ = table.back();
    // One more point of the end's own loss beyond each end makes the slopes there come out level.
    std::vector<double> at{std::log(first_.frequency_hz) - 1.0};
    std::vector<double> losses{first_.loss_db};
    for (const room::LossPoint& point : table) {
        at.push_back(std::log(point.frequency_hz));
        losses.push_back(point.loss_db);
    }
    at.push_back(std::log(last_.frequency_hz) + 1.0);
    losses.push_back(last_.loss_db);
    pieces_ = std::make_shared<const Pieces>(Pieces{{std::move(at), std::move(losses)}});
}

double MeasuredLoss::normal_db(double frequency_hz) const {
    RL_ASSERT(frequency_hz > 0.0);
    if (frequency_hz <= first_.frequency_hz) return first_.loss_db;
    if (frequency_hz >= last_.frequency_hz) return last_.loss_db;
    return std::max(0.0, pieces_->curve(std::log(frequency_hz)));
}

std::complex<double> mass_that_loses(double loss_db) {
    RL_ASSERT(loss_db >= 0.0);
    return {0.0, std::sqrt(std::max(0.0, std::pow(10.0, 0.1 * loss_db) - 1.0))};
}

}  // namespace rakeline::sound
