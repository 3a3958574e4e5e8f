// SPDX-License-Identifier: MIT
#include "light/meter_fit.hpp"

#include "base/assert.hpp"

#include <algorithm>
#include <cmath>

namespace rakeline::light {
namespace {

GateLight gate_of(const MeterScene& scene, const GateLaw& law) {
    GateLight out = scene.gate;
    out.corner_fraction = law[kCorner];
    out.hot_spot_m = scene.gate.lit_size_m * glm::dvec2(law[kAcross], law[kUp]);
    return out;
}

GateLaw law_of(const MeterScene& scene) {
    const glm::dvec2 spot = scene.gate.hot_spot_m / scene.gate.lit_size_m;
    return {1.0, scene.gate.corner_fraction, spot.x, spot.y};
}

MeterData data_of(const MeterScene& scene, const std::vector<MeterReading>& readings) {
    MeterData out;
    for (const MeterReading& reading : readings) {
        RL_ASSERT(reading.value >= 0.0 && reading.error > 0.0);
        out.samples.push_back(meter_sample(scene, reading));
        out.values.push_back(reading.value);
        out.errors.push_back(reading.error);
    }
    return out;
}

/// The least certain of the fitted parts other than the peak, if it says nothing.
std::optional<std::size_t> unsure_part(const LawFit& fit) {
    if (!fit.covariance) return static_cast<std::size_t>(fit.blind);
    std::optional<std::size_t> out;
    double most = kErrorMost;
    for (std::size_t j = kCorner; j < kLawParts; ++j) {
        const double error = std::sqrt((*fit.covariance)[j][j]);
        if (error <= most) continue;
        most = error;
        out = j;
    }
    return out;
}

/// Holds the parts that say nothing, one by one, until the others are sure.
LawFit sure_fit(const MeterData& data, const GateLaw& start) {
    std::array<bool, kLawParts> free = telling_parts(data);
    RL_ASSERT(free[kPeak]);
    LawFit fit = fit_law(data, start, free);
    for (auto unsure = unsure_part(fit); unsure && *unsure != kPeak; unsure = unsure_part(fit)) {
        free[*unsure] = false;
        fit = fit_law(data, start, free);
    }
    return fit;
}

/// Flux over the layout's.
double flux_ratio(const MeterScene& scene, const GateLaw& law) {
    const glm::dvec2 whole = scene.gate.lit_size_m;
    return law[kPeak] * lit_integral_m2(gate_of(scene, law), whole) /
           lit_integral_m2(scene.gate, whole);
}

/// dPhi / dlaw over the layout's flux, by differences within the bounds: the integral has no closed
/// derivative where it is clamped.
GateLaw flux_slope(const MeterScene& scene, const GateLaw& law) {
    constexpr double kStep = 1e-5;
    GateLaw slope{flux_ratio(scene, law) / law[kPeak]};
    for (std::size_t j = kCorner; j < kLawParts; ++j) {
        GateLaw low = law, high = law;
        low[j] = std::max(low[j] - kStep, kLawBounds[j].low);
        high[j] = std::min(high[j] + kStep, kLawBounds[j].high);
        slope[j] = (flux_ratio(scene, high) - flux_ratio(scene, low)) / (high[j] - low[j]);
    }
    return slope;
}

/// The covariance with the flux in the place of the peak: T C T^T, T the unit matrix but for its
/// first row.
PartMatrix with_flux(const PartMatrix& c, const GateLaw& slope) {
    PartMatrix out = c;
    for (std::size_t j = 0; j < kLawParts; ++j) {
        double along = 0.0;
        for (std::size_t i = 0; i < kLawParts; ++i)
            along += slope[i] * c[i][j];
        out[kPeak][j] = out[j][kPeak] = along;
    }
    double flux = 0.0;
    for (std::size_t i = 0; i < kLawParts; ++i)
        for (std::size_t j = 0; j < kLawParts; ++j)
            flux += slope[i] * c[i][j] * slope[j];
    out[kPeak][kPeak] = flux;
    return out;
}

void put_errors(MeterFit& fit, const PartMatrix& covariance) {
    for (std::size_t i = 0; i < kLawParts; ++i) {
        if (fit.parts[i].state != PartState::fitted) continue;
        const double scale = i == kPeak ? fit.parts[kPeak].layout_value : 1.0;
        fit.parts[i].error = scale * std::sqrt(covariance[i][i]);
        for (std::size_t j = 0; j < kLawParts; ++j) {
            const double both = covariance[i][i] * covariance[j][j];
            fit.correlation[i][j] = both > 0.0 ? covariance[i][j] / std::sqrt(both) : 0.0;
        }
    }
}

void put_parts(MeterFit& fit, const MeterScene& scene, const LawFit& found) {
    const GateLaw layout = law_of(scene);
    for (std::size_t j = 0; j < kLawParts; ++j) {
        fit.parts[j] = {found.law[j], layout[j], found.states[j], std::nullopt};
    }
    fit.parts[kPeak].layout_value = scene.lens_flux_lm;
    fit.parts[kPeak].value = scene.lens_flux_lm * flux_ratio(scene, found.law);
}

}  // namespace

MeterFit fit_meter(const MeterScene& scene, const std::vector<MeterReading>& readings) {
    const MeterData data = data_of(scene, readings);
    const LawFit found = sure_fit(data, law_of(scene));
    MeterFit fit;
    put_parts(fit, scene, found);
    if (found.covariance)
        put_errors(fit, with_flux(*found.covariance, flux_slope(scene, found.law)));
    for (std::size_t i = 0; i < readings.size(); ++i) {
        fit.readings.push_back({readings[i].value, modelled(data.samples[i], found.law),
                                readings[i].error, data.samples[i].dark_share});
    }
    fit.chi_square = found.chi_square;
    const auto fitted = std::count(found.states.begin(), found.states.end(), PartState::fitted);
    fit.freedom = static_cast<int>(readings.size()) - static_cast<int>(fitted);
    if (fit.freedom > 0) fit.chance = chi_square_chance(fit.chi_square, fit.freedom);
    fit.dip = middle_dip(data);
    return fit;
}

GateLight fitted_gate(const MeterScene& scene, const MeterFit& fit) {
    return gate_of(scene,
                   {1.0, fit.part(kCorner).value, fit.part(kAcross).value, fit.part(kUp).value});
}

double chi_square_chance(double chi_square, int freedom) {
    RL_ASSERT(freedom >= 1 && chi_square >= 0.0);
    const double half = 0.5 * chi_square;
    const bool odd = freedom % 2 == 1;
    double chance = odd ? std::erfc(std::sqrt(half)) : std::exp(-half);
    // The term for freedom 3 is x^(1/2) e^-x / Gamma(3/2), for 4 it is x e^-x, x = chi-square / 2.
    double term =
        odd ? 2.0 * std::sqrt(half / base::kPi) * std::exp(-half) : half * std::exp(-half);
    for (int n = odd ? 3 : 4; n <= freedom; n += 2) {
        chance += term;
        term *= half / (0.5 * n);
    }
    return std::min(1.0, chance);
}

}  // namespace rakeline::light
