// SPDX-License-Identifier: MIT
#pragma once

#include "geometry/vector.hpp"
#include "sight/blockers.hpp"

#include <optional>
#include <vector>

/// Heads and walls as one eye has them: their outlines, and which parts of those stand free.
namespace rakeline::drawing {

/// The closed line on an upright spheroid along which lines from the eye touch it; empty where the
/// eye is in it.
///
/// Stretched upward by radius / half height the spheroid is a sphere of radius r; from an eye at
/// distance d > r from its centre the touching points are a circle of radius r sqrt(1 - r^2 / d^2)
/// about the centre plus r^2 / d^2 of the way to the eye. Source: derived here (pole and polar).
std::vector<glm::dvec3> silhouette(const sight::Head& head,
                                   const glm::dvec3& eye,
                                   int corners = 72);

/// Up one end of a wall, along its edge, and down the other end; of a wall that hides all above,
/// its edge alone. Points close enough together that hidden parts can be left out.
std::vector<glm::dvec3> rim(const sight::Wall& wall);

/// Whether a wall can hide anything from an eye at this height: see sight::WallHides.
bool hides_from(const sight::Wall& wall, double eye_up_m);

/// All that can stand before something else, seen from one eye.
class Occluders {
public:
    /// `house` must stay. What belongs to `own_seat` stands before nothing.
    Occluders(const sight::Blockers& house, const glm::dvec3& eye, int own_seat);

    /// Whether a head or wall nearer in plan than `within_m` stands before `p`.
    bool cover(const glm::dvec3& p, double within_m) const;

    /// Distance in plan from the eye.
    double plan_distance(const glm::dvec3& p) const;

    /// The runs of a line before which nothing nearer than `within_m` stands; unset: nearer than
    /// the point itself. A run has two points or more.
    std::vector<std::vector<glm::dvec3>> free_runs(const std::vector<glm::dvec3>& line,
                                                   std::optional<double> within_m = {}) const;

private:
    struct Head {
        glm::dvec3 centre;  ///< from the eye, stretched into a sphere
        double radius_m, kappa, plan_m;
    };
    struct Wall {
        glm::dvec3 from, to;  ///< from the eye
        bool below;
        double nearest_m;
    };
    bool meets(const Head& head, const glm::dvec3& d) const;
    bool meets(const Wall& wall, const glm::dvec3& d, double within_m) const;

    glm::dvec3 eye_;
    std::vector<Head> heads_;
    std::vector<Wall> walls_;
};

}  // namespace rakeline::drawing
