// SPDX-License-Identifier: MIT
#include "light/meter_advice.hpp"

#include "base/assert.hpp"

#include <algorithm>
#include <cmath>

namespace rakeline::light {
namespace {

/// Off by more than `least` and more than so many standard errors. A part at its bound has none.
bool counts(double off, double least, const FittedPart& part, double errors) {
    if (part.state == PartState::held) return false;
    return std::abs(off) > std::max(least, errors * part.error.value_or(0.0));
}

/// By how much one edge is brighter than the other because of an offset h: the law gives
/// (1 - corner) a 2h of the peak, with a = 2 for a square gate (meter_sample.hpp).
double slope(const MeterFit& fit, LawPart which) {
    return 4.0 * (1.0 - fit.part(kCorner).value) * std::abs(fit.part(which).value);
}

bool off_centre(const MeterFit& fit, const SignLimits& limits) {
    for (const LawPart which : {kAcross, kUp}) {
        const FittedPart& part = fit.part(which);
        if (slope(fit, which) > limits.slope && counts(part.value, 0.0, part, limits.errors))
            return true;
    }
    return false;
}

/// By how much the corner is brighter than the layout's, if that counts; else 0.
double corner_change(const MeterFit& fit, const SignLimits& limits) {
    const FittedPart& part = fit.part(kCorner);
    const double change = part.value - part.layout_value;
    return counts(change, limits.corner, part, limits.errors) ? change : 0.0;
}

/// The same of the flux, as a share of the layout's.
double flux_change(const MeterFit& fit, const SignLimits& limits) {
    const FittedPart& part = fit.part(kPeak);
    const double change = part.value - part.layout_value;
    const bool matters = counts(change, limits.flux * part.layout_value, part, limits.errors);
    return matters ? change / part.layout_value : 0.0;
}

}  // namespace

std::vector<MeterSign> meter_signs(const MeterFit& fit, const SignLimits& limits) {
    std::vector<MeterSign> out;
    const double corner = corner_change(fit, limits);
    const double flux = flux_change(fit, limits);
    if (fit.chance && *fit.chance < limits.uneven_chance) out.push_back(MeterSign::uneven);
    if (off_centre(fit, limits)) out.push_back(MeterSign::off_centre);
    if (corner < 0.0) out.push_back(MeterSign::too_steep);
    const bool hollow = fit.dip && *fit.dip > limits.dip_errors;
    if (hollow) out.push_back(MeterSign::hollow);
    const bool too_flat = corner > 0.0 && flux < 0.0 && !hollow;
    if (too_flat) out.push_back(MeterSign::too_flat);
    if (flux < 0.0 && !too_flat) out.push_back(MeterSign::dim);
    if (flux > 0.0) out.push_back(MeterSign::bright);
    return out;
}

std::size_t furthest_reading(const MeterFit& fit) {
    RL_ASSERT(!fit.readings.empty());
    const auto further = [](const FittedReading& a, const FittedReading& b) {
        return std::abs(a.residual_errors()) < std::abs(b.residual_errors());
    };
    return static_cast<std::size_t>(
        std::max_element(fit.readings.begin(), fit.readings.end(), further) - fit.readings.begin());
}

}  // namespace rakeline::light
