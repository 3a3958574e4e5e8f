// SPDX-License-Identifier: MIT
#pragma once

#include "geometry/vector.hpp"
#include "room/layout.hpp"
#include "sound/air.hpp"

#include <optional>

/// How much quieter a loudspeaker is off its axis.
///
/// A direction is two angles in the loudspeaker's own frame: `across_rad` turns about its upright
/// (for one that faces the booth squarely, positive toward +x), `up_rad` then lifts out of its
/// level plane. The true angle from the axis is acos(cos(across) cos(up)).
namespace rakeline::sound {

/// Levels stop falling here. Nulls and the rear of a loudspeaker are filled by the room and by
/// whatever stands around it; common practice, no source.
inline constexpr double kDirectivityFloorDb = -30.0;

/// A direction as the models take it: how far off the axis, and toward which side.
struct OffAxis {
    double angle_rad = 0.0;     ///< from the axis, 0 to pi
    double across_share = 1.0;  ///< cos^2 of the roll about the axis: 1 in the across plane
    double up_share = 0.0;      ///< sin^2 of the roll: 1 in the up plane
    double sine = 0.0;          ///< of the angle; 1 behind the plane of a baffle
    bool operator==(const OffAxis&) const = default;
};
OffAxis off_axis(double across_rad, double up_rad);

/// The same of a way given in the loudspeaker's own frame: across, up, along its axis, in any unit.
OffAxis off_axis_of(const glm::dvec3& way);

/// Rigid circular piston in a wide baffle, dB relative to the axis, <= 0, no floor applied.
///
///     level = 20 lg |2 J1(x)/x|,   x = k a sin(angle)
///       k = 2 pi f/c, a  piston radius, m
///
/// Behind the baffle's plane (angle > pi/2) the form says nothing; the value in the plane is kept.
/// Source: published closed form (any acoustics text). Example: x 2.2151 -> -6.02 dB.
double piston_db(double ka, double angle_rad);

/// Above this frequency a horn's mouth holds a coverage of `half_angle_rad` (0 to pi/2).
///
///     f_hold = 2.2151 c / (2 pi a sin(half angle))     [Hz]
///       a  mouth half-width, m
///
/// Below it a piston as wide as the mouth would itself spread wider than the nominal coverage, so
/// the walls no longer form the beam. Source: derived from piston_db's -6.02 dB direction; ours.
double coverage_held_from_hz(double mouth_half_width_m, double half_angle_rad, const Air& air);

/// Whole angles between the -6.02 dB directions.
struct Coverage {
    double across_rad = 0.0;
    double up_rad = 0.0;
};

/// Coverage of a loudspeaker at one frequency.
///
/// Horn with a coverage table: the table's, over the logarithm of frequency by cubic pieces that
/// stay between neighbours, held beyond its ends (held_curve.hpp). Horn without: nominal for
/// f >= f_hold, times f_hold/f below; may be more than a full turn, where nothing is 6 dB down.
/// Piston: 2 asin(2.2151/(k a)) in both planes; nothing below k a = 2.2151.
std::optional<Coverage> coverage_at(const room::Loudspeaker& loudspeaker,
                                    double frequency_hz,
                                    const Air& air);

/// A loudspeaker's directivity at one frequency, for a caller who asks for many directions.
///
/// Piston: piston_db of the true angle. Horn, a model of ours, exact where data sheets are: -6 dB
/// at the edges of its coverage,
///
///     level = -6.0206 dB * angle^2 (cos^2(phi)/h_across^2 + sin^2(phi)/h_up^2)
///       angle  from the axis, phi  roll about the axis from the across direction
///       h      half of coverage_at of the plane
///
/// so without a table the beam widens toward all directions alike as the frequency falls.
/// Continuous and falling with the angle, except directly behind where directions of all rolls
/// meet.
class Beam {
public:
    Beam(const room::Loudspeaker& loudspeaker, double frequency_hz, const Air& air);

    /// Level relative to the axis, dB, from kDirectivityFloorDb to 0.
    double level_db(const OffAxis& direction) const;

private:
    bool piston_ = false;
    double ka_ = 0.0;           ///< piston: wave number times radius
    double edge_across_ = 1.0;  ///< horn: 1 over half the coverage, squared, 1/rad^2
    double edge_up_ = 1.0;
};

/// Level relative to the axis of one loudspeaker in one direction: Beam::level_db of off_axis.
double directivity_db(const room::Loudspeaker& loudspeaker,
                      double frequency_hz,
                      double across_rad,
                      double up_rad,
                      const Air& air);

}  // namespace rakeline::sound
