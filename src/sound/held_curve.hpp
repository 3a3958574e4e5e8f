// SPDX-License-Identifier: MIT
#pragma once

#include <memory>
#include <vector>

/// A curve over frequency through measured points.
namespace rakeline::sound {

struct FrequencyValue {
    double frequency_hz = 1000.0;
    double value = 0.0;
};

/// Cubic pieces over the logarithm of frequency that never swing past two neighbours; below the
/// first and above the last frequency the nearest value is held, which the curve runs level into.
/// Source: Fritsch and Butland's slopes (1984) as Boost.Math's pchip has them.
class HeldCurve {
public:
    /// One point (held everywhere) or more, frequencies rising, > 0 Hz.
    explicit HeldCurve(const std::vector<FrequencyValue>& points);

    double at(double frequency_hz) const;

private:
    struct Pieces;
    std::shared_ptr<const Pieces> pieces_;  ///< shared by copies; never changes
    FrequencyValue first_, last_;
};

}  // namespace rakeline::sound
