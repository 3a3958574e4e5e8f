// SPDX-License-Identifier: MIT
#pragma once

/// A chance as it was counted.
namespace rakeline::sight {

struct Interval {
    double low = 0.0, high = 0.0;
    double half_width() const { return 0.5 * (high - low); }
};

/// `clear` times out of `drawn`.
struct Chance {
    int clear = 0;
    int drawn = 0;
    bool operator==(const Chance&) const = default;

    double share() const { return static_cast<double>(clear) / drawn; }  ///< drawn > 0
};

/// Wilson's 95 % interval of the true chance, 0 <= low <= share <= high <= 1:
///   (p + z^2/2n ± z sqrt(p(1-p)/n + z^2/4n^2)) / (1 + z^2/n)
/// with p the share, n the number drawn, z = 1.95996. `drawn` > 0. Unlike p ± z sqrt(p(1-p)/n) it
/// has a width where all or none were clear. Source: Wilson 1927, from memory; held to printed
/// examples in tests/outside/wilson_interval_test.cpp.
Interval wilson_interval(const Chance& chance);

}  // namespace rakeline::sight
