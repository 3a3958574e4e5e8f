// SPDX-License-Identifier: MIT
#pragma once

#include "sight/hidden_columns.hpp"

#include <vector>

/// What stands before one eye, in doubles and column by column: the plain way, which the outline
/// and the shares use, and the fast kernel where it gives up. Private to sight/hidden.
namespace rakeline::sight::hidden {

/// A stretch of one column that one blocker hides: v over the picture's lower edge, within it.
struct Stretch {
    double bottom_m = 0.0, top_m = 0.0;
    double distance = 0.0;  ///< of the blocker in plan, in units of the column's own
    int blocker = 0;        ///< index of the head, or heads + index of the wall
};

/// One head or wall as this eye has it; see hidden_shadow.hpp for the frame.
struct Shadow {
    enum class Kind {
        cone,  ///< an ordinary head
        over,
        under,   ///< a head above or below the eye: hides all beyond its one edge
        around,  ///< the eye is in the head
        wall_below,
        wall_above,
    };
    Kind kind = Kind::cone;
    int blocker = 0;
    HeadPlace<double> head{};
    HeadCone<double> cone{};  ///< of a wall: b is its edge, left and right are its ends
    PlanPoint facing;         ///< of a wall: facing.d > 1 where the picture is beyond it
};

class Shadows {
public:
    /// All that can hide something of the picture from the eye.
    Shadows(const HiddenInput& in, const PictureColumns& columns, int eye);

    /// What they hide of column `j`, in their own order. `out` is emptied first.
    void stretches(std::size_t j, std::vector<Stretch>& out) const;

private:
    void add_head(const glm::dvec3& centre, const Head& head, int blocker);
    void add_wall(const glm::dvec3& from, const glm::dvec3& to, WallHides hides, int blocker);
    void add(const Shadow& shadow, PlanPoint d, double low, std::vector<Stretch>& out) const;

    const PictureColumns* columns_;
    glm::dvec3 eye_;
    std::vector<Shadow> shadows_;
};

/// The stretches as disjoint intervals from below. Sorts its argument.
std::vector<ClearInterval> merged(std::vector<Stretch>& stretches);

}  // namespace rakeline::sight::hidden
