// SPDX-License-Identifier: MIT
#pragma once

#include "room/layout.hpp"

#include <cstdint>
#include <span>
#include <vector>

/// How well the reference reading is known: a product of factors, each with a standard uncertainty
/// that the layout gives as a share of it (room::FluxTolerances). Factors are taken as independent.
namespace rakeline::light {

struct UncertainFactor {
    const char* symbol;  ///< "u_age"
    const char* what;    ///< "ageing"
    double share = 0.0;  ///< standard uncertainty over value, 0 or more
};

/// The factors that the reading of this machine is made of: the measured flux, or the chain from
/// the lamp on (no shutter in a digital machine); the port where light passes glass; the gain.
std::vector<UncertainFactor> reading_factors(const room::Projector& projector, bool through_glass);

/// Relative standard uncertainty of a product, first order: u = sqrt(sum of u_i^2).
/// Source: GUM (JCGM 100:2008), 5.1.6, eq. (12) with all exponents 1.
double combined_share(std::span<const UncertainFactor> factors);

/// The same without first order's neglect, for independent factors: sqrt(prod(1 + u_i^2) - 1), over
/// the mean. Source: variance of a product of independent quantities; derived.
double product_share(std::span<const UncertainFactor> factors);

/// Factor of GUM 6.3.3 for a range of about 95 %.
inline constexpr double kCoverage = 2.0;

/// What random draws of the product say, as multiples of the reading.
struct DrawnProduct {
    double mean = 1.0;
    double share = 0.0;  ///< standard deviation over the mean
    double low = 1.0;    ///< 2.5 % of the draws lie below
    double high = 1.0;   ///< 2.5 % lie above
};

/// Every factor drawn from a normal distribution about 1, `trials` times (40 or more); the same
/// numbers for the same seed. Source: propagation of distributions, JCGM 101:2008 clause 7, normal
/// where a value and its standard uncertainty are all that is known (6.4.7). The product is nearly
/// lognormal: its range leans upward of reading (1 +- 2u), by about 2 u^2 at both ends.
DrawnProduct drawn_product(std::span<const UncertainFactor> factors,
                           int trials,
                           std::uint64_t seed);

}  // namespace rakeline::light
