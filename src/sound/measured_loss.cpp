// SPDX-License-Identifier: MIT
#include "sound/measured_loss.hpp"

#include "base/assert.hpp"

#include <algorithm>
#include <cmath>

namespace rakeline::sound {
namespace {

std::vector<FrequencyValue> losses_of(const std::vector<room::LossPoint>& table) {
    RL_ASSERT(table.size() >= 2);
    std::vector<FrequencyValue> out;
    for (const room::LossPoint& point : table)
        out.push_back({point.frequency_hz, point.loss_db});
    return out;
}

}  // namespace

MeasuredLoss::MeasuredLoss(const std::vector<room::LossPoint>& table) : curve_(losses_of(table)) {}

double MeasuredLoss::normal_db(double frequency_hz) const {
    return std::max(0.0, curve_.at(frequency_hz));
}

std::complex<double> mass_that_loses(double loss_db) {
    RL_ASSERT(loss_db >= 0.0);
    return {0.0, std::sqrt(std::max(0.0, std::pow(10.0, 0.1 * loss_db) - 1.0))};
}

}  // namespace rakeline::sound
