// SPDX-License-Identifier: MIT
#pragma once

#include "light/screen_gain.hpp"

#include <vector>

namespace rakeline::light {

/// The gains of a surface off a table, for a search that compares thousands of directions: no angle
/// and no exponential has to be worked out.
///
/// Asked by the chord between two unit vectors, |a - b| = 2 sin(angle / 2), 0 to 2. Straight lines
/// between kSteps even steps: for a lobe with a half-gain angle of 5 degrees the error is under
/// 3e-4 of its height and falls with the square of the angle. Good enough to find a place by, not
/// to state its gain.
class GainByChord {
public:
    explicit GainByChord(const GainModel& model);

    /// GainModel::gain_off_lobe and retro_off_back.
    double off_lobe(double chord) const { return read(body_, chord); }
    double off_back(double chord) const { return retro_.empty() ? 0.0 : read(retro_, chord); }

private:
    static constexpr int kSteps = 1024;
    static constexpr double kPerChord = 0.5 * kSteps;

    static double read(const std::vector<double>& table, double chord) {
        const double steps = chord * kPerChord;
        const int below = steps < kSteps ? static_cast<int>(steps) : kSteps - 1;
        const double* at = table.data() + below;
        return at[0] + (steps - below) * (at[1] - at[0]);
    }

    std::vector<double> body_;   ///< at chords 0, 2/kSteps, ... 2
    std::vector<double> retro_;  ///< the same; empty without a retro part
};

}  // namespace rakeline::light
