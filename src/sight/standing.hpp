// SPDX-License-Identifier: MIT
#pragma once

#include "room/cross_aisles.hpp"
#include "sight/blockers.hpp"

#include <optional>
#include <vector>

/// Sight over people who stand or pass in a cross aisle.
namespace rakeline::sight {

/// Shoulders of a standing person over the stature: height and full breadth. Source: Drillis and
/// Contini 1966, body segment lengths, 0.818 and 0.259 of stature, from memory.
inline constexpr double kShoulderHeightShare = 0.818;
inline constexpr double kShoulderBreadthShare = 0.259;

/// How far apart people stand shoulder to shoulder, m.
double standing_pitch(const room::Audience& audience);

/// People of Audience::standing_height_m shoulder to shoulder in every cross aisle: each a head (as
/// in hidden.hpp, its crown at the stature) and under it a body, a wall as broad as the shoulders
/// up to their height.
Blockers standing_people(const std::vector<room::CrossAisleLine>& aisles,
                         const room::Audience& audience);

/// What a row sees over someone in a cross aisle in front of it.
struct OverStanding {
    glm::dvec3 crown{0.0};  ///< of the person in the aisle's middle, on the block's centre line
    glm::dvec3 focus{0.0};
    double c_m = 0.0;  ///< what the sight line clears over the crown; negative where it is hidden
    int aisle = 0;     ///< index in the lines: of several aisles in front, the one with the least C
    bool operator==(const OverStanding&) const = default;
};

/// For every row of the plan: nothing where no cross aisle lies in front of it. The row looks from
/// its eye on the block's centre line, as for the C-value over the row in front, and over the crown
/// instead of an eye:
///
///     C = D (N + R) / (D + T) - R     D, T level from crown to focus and from rear eye to crown,
///                                     R crown over focus, N rear eye over crown
///
/// Source: sight::c_value with the crown for the front eye.
std::vector<std::optional<OverStanding>> over_standing(
    const geometry::Patch& surface,
    const picture::Opening& opening,
    const room::SeatPlan& plan,
    const std::vector<room::CrossAisleLine>& aisles,
    const room::Audience& audience);

/// Indices of the cross aisles that lie between a row and the picture, nearest first: those in
/// front of the row in its own block, and in the blocks that its row_in_front leads to.
std::vector<int> aisles_ahead(const room::SeatPlan& plan,
                              const std::vector<room::CrossAisleLine>& aisles,
                              int row);

/// Hidden part of the picture's area for every seat behind a cross aisle, in a full house with
/// people shoulder to shoulder in all cross aisles; nothing for the other seats.
std::vector<std::optional<double>> hidden_standing(const geometry::Patch& surface,
                                                   const picture::Opening& opening,
                                                   const room::SeatPlan& plan,
                                                   const std::vector<room::CrossAisleLine>& aisles,
                                                   const Blockers& house,
                                                   const room::Audience& audience);

}  // namespace rakeline::sight
