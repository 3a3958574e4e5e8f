// SPDX-License-Identifier: MIT
#pragma once

#include "sound/directivity.hpp"
#include "sound/hall_walls.hpp"

#include <optional>
#include <vector>

/// The first reflections that a seat hears of a screen loudspeaker, by image sources: a flat wall
/// sends sound back as if it came from the loudspeaker's mirror image.
///
/// Counted are one or two reflections, in any order, of the side walls, the rear wall and the
/// ceiling, and the screen wall after one of those; each only where the ray meets the walls within
/// their extent. The level against the direct sound is that of the 1 kHz octave:
///
///     level = 20 lg(r / r') + 10 lg((1 - a) (1 - a')) + D' - D     [dB]
///       r, r'  length of the direct and of the reflected path, m     a, a'  absorption of the
///       walls D, D'  directivity of the loudspeaker toward the seat and toward the first wall
///
/// Source: image sources of a room of flat walls, J. B. Allen and D. A. Berkley, 1979 (there for a
/// box); levels derived from the inverse square law. Left out: what the screen wall and the sheet
/// do round a loudspeaker, the sheet's and the air's small differences between the two paths, the
/// floor and the seats, balconies, scattering, and walls that absorb otherwise at a glance than on
/// average.
namespace rakeline::sound {

inline constexpr double kReflectionBand_hz = 1000.0;

/// Weaker reflections than this count neither as the first nor as any: dB against the direct sound.
/// Common practice, no source.
inline constexpr double kHeardReflectionDb = -20.0;

/// A reflection this much later than the direct sound is heard as an echo where it is strong; for
/// speech. Common practice, no source.
inline constexpr double kEchoAfter_s = 0.05;

struct Reflection {
    double delay_s = 0.0;   ///< after the direct sound
    double level_db = 0.0;  ///< against the direct sound
    Wall first = Wall::left;
    std::optional<Wall> second;
    bool operator==(const Reflection&) const = default;
};

/// What one seat hears of one loudspeaker; nothing where nothing of the kind is heard.
struct SeatReflections {
    std::optional<Reflection> first;      ///< to arrive, at kHeardReflectionDb or more
    std::optional<Reflection> strongest;  ///< of all
    std::optional<Reflection> echo;       ///< the strongest that comes kEchoAfter_s late or later
    bool operator==(const SeatReflections&) const = default;
};

struct ReflectionRoom {
    WallPlanes walls;
    std::array<double, kWallCount> returns{};  ///< share of the energy sent back, by Wall
    double sound_speed_m_s = 343.2;
};

/// One path by way of one or two walls.
struct ReflectedPath {
    Wall first = Wall::left;
    std::optional<Wall> second;
    glm::dvec3 at_first{0.0};   ///< where it meets the first wall
    glm::dvec3 at_second{0.0};  ///< where it meets the second; unused without one
    double length_m = 0.0;
};

/// All paths from one point to another that meet their walls within the hall, in a fixed order.
std::vector<ReflectedPath> reflected_paths(const WallPlanes& walls,
                                           const glm::dvec3& from,
                                           const glm::dvec3& to);

/// What each of the seats hears of the loudspeaker; with its beam at kReflectionBand_hz.
std::vector<SeatReflections> seat_reflections(const ReflectionRoom& room,
                                              const room::Loudspeaker& loudspeaker,
                                              const Beam& beam,
                                              const std::vector<glm::dvec3>& ears);

}  // namespace rakeline::sound
