// SPDX-License-Identifier: MIT
#pragma once

#include "geometry/vector.hpp"
#include "room/loudspeaker.hpp"

#include <optional>
#include <vector>

/// When direct sound arrives at the seats, delays set, and from where.
namespace rakeline::sound {

/// By this much surrounds are to arrive after the screen at the reference seat, so that what both
/// play is heard from the screen. Common practice (10 to 20 ms), no source.
inline constexpr double kSurroundMargin_s = 0.015;

/// A channel that arrives this much before another draws to itself what both play. Source: the
/// precedence effect, about a millisecond (H. Wallach, E. B. Newman and M. R. Rosenzweig, 1949),
/// from memory.
inline constexpr double kPrecedence_s = 0.001;

/// When the first loudspeaker of each kind of channel is heard at one seat, s after the signal:
/// r / c + delay. Nothing where the room has none.
struct ChannelArrivals {
    std::optional<double> left_s, centre_s, right_s, surround_s;
    bool operator==(const ChannelArrivals&) const = default;

    std::optional<double> first_screen_s() const;
    std::optional<double> last_screen_s() const;
    /// Latest minus earliest of left, centre and right; nothing with fewer than two.
    std::optional<double> spread_s() const;
    /// By how much the nearer of left and right comes before the centre; negative where the centre
    /// comes first. Nothing without a centre or without both others.
    std::optional<double> outer_lead_s() const;
    /// By how much the screen's first channel comes before the first surround; negative where a
    /// surround comes first.
    std::optional<double> screen_lead_s() const;
};

struct Arrival {
    std::vector<ChannelArrivals> seats;
    /// Per loudspeaker, s: see suggested_delays. Empty without a reference seat.
    std::vector<double> suggested_delay_s;
    bool operator==(const Arrival&) const = default;
};

struct ArrivalInput {
    const std::vector<room::Loudspeaker>& loudspeakers;
    const std::vector<glm::dvec3>& ears;
    std::optional<int> reference_seat;
    double sound_speed_m_s = 343.2;
};

Arrival study_arrival(const ArrivalInput& in);

/// Delays with which, at the reference seat, all screen loudspeakers and sub-basses arrive together
/// with the farthest of them, and every surround kSurroundMargin_s after that (a surround that is
/// so far off that it comes later anyway gets none). None is longer than the farthest path needs.
/// Source: derived, (r_max - r) / c. Nothing without a reference seat or without a
/// loudspeaker of the screen.
std::optional<std::vector<double>> suggested_delays(const ArrivalInput& in);

/// From where sound comes against what is looked at, as the ear has it: rad to the right and up.
struct ImageOffset {
    double across_rad = 0.0;
    double up_rad = 0.0;
};

/// Differences of bearing (about the vertical, positive to the right for a seat that faces the
/// screen wall) and of elevation between `source` and `picture`. Neither may stand straight above
/// or below the ear.
ImageOffset image_offset(const glm::dvec3& ear,
                         const glm::dvec3& source,
                         const glm::dvec3& picture);

}  // namespace rakeline::sound
