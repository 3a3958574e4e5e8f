// SPDX-License-Identifier: MIT
#include "light/reading_uncertainty.hpp"

#include "base/assert.hpp"
#include "base/counted_random.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>

namespace rakeline::light {
namespace {

void add_chain(const room::FluxTolerances& t, bool shutter, std::vector<UncertainFactor>& out) {
    out.push_back({"u_P", "lamp current and voltage", t.lamp_power});
    out.push_back({"u_e", "lamp efficacy", t.lamp_efficacy});
    out.push_back({"u_age", "ageing", t.ageing});
    out.push_back({"u_col", "collection", t.collection});
    if (shutter) out.push_back({"u_sh", "shutter", t.shutter});
    out.push_back({"u_gate", "gate or imager", t.gate});
    out.push_back({"u_lens", "lens", t.lens});
}

/// Value below which `share` of the sorted draws lie.
double quantile(const std::vector<double>& sorted, double share) {
    const double place = share * static_cast<double>(sorted.size() - 1);
    const auto below = static_cast<std::size_t>(place);
    const std::size_t above = std::min(below + 1, sorted.size() - 1);
    const double part = place - static_cast<double>(below);
    return sorted[below] + part * (sorted[above] - sorted[below]);
}

std::vector<double> draws(std::span<const UncertainFactor> factors,
                          int trials,
                          std::uint64_t seed) {
    std::vector<double> products(static_cast<std::size_t>(trials), 1.0);
    for (std::size_t f = 0; f < factors.size(); ++f) {
        if (factors[f].share == 0.0) continue;
        const base::CountedRandom random({seed, f});
        for (std::size_t i = 0; i < products.size(); ++i)
            products[i] *= 1.0 + factors[f].share * random.normal(i);
    }
    return products;
}

}  // namespace

std::vector<UncertainFactor> reading_factors(const room::Projector& projector, bool through_glass) {
    const room::FluxTolerances& t = projector.flux.tolerances;
    std::vector<UncertainFactor> out;
    if (projector.flux.entry == room::FluxEntry::measured) {
        out.push_back({"u_F", "measured flux", t.measured_flux});
    } else {
        add_chain(t, projector.kind == room::SourceKind::film, out);
    }
    if (through_glass) out.push_back({"u_T", "port", t.port});
    out.push_back({"u_G", "gain", t.gain});
    return out;
}

double combined_share(std::span<const UncertainFactor> factors) {
    double sum = 0.0;
    for (const UncertainFactor& factor : factors)
        sum += factor.share * factor.share;
    return std::sqrt(sum);
}

double product_share(std::span<const UncertainFactor> factors) {
    double product = 1.0;
    for (const UncertainFactor& factor : factors)
        product *= 1.0 + factor.share * factor.share;
    return std::sqrt(product - 1.0);
}

DrawnProduct drawn_product(std::span<const UncertainFactor> factors,
                           int trials,
                           std::uint64_t seed) {
    RL_ASSERT(trials >= 40);
    std::vector<double> products = draws(factors, trials, seed);
    double sum = 0.0;
    for (const double product : products)
        sum += product;
    const double mean = sum / trials;
    double squares = 0.0;
    for (const double product : products)
        squares += (product - mean) * (product - mean);
    std::sort(products.begin(), products.end());
    return {.mean = mean,
            .share = std::sqrt(squares / (trials - 1)) / mean,
            .low = quantile(products, 0.025),
            .high = quantile(products, 0.975)};
}

}  // namespace rakeline::light
