// SPDX-License-Identifier: MIT
#include "picture/beam_gaps.hpp"

#include "picture/beam_solid.hpp"

#include <algorithm>
#include <cmath>

namespace rakeline::picture {
namespace {

using Gap = std::optional<BeamGap>;

void take_less(Gap& least, const Gap& other) {
    if (other && (!least || other->distance_m < least->distance_m)) least = other;
}

/// Least upright distance between the beam's faces and a platform that lies `sunk_m` lower than it
/// is given. Over: from the platform up to the lower faces; else from the upper faces up to it.
Gap gap_to(const BeamSolid& beam, bool over, const room::Platform& platform, double sunk_m) {
    Gap least;
    auto c = platform.corners;
    for (glm::dvec3& corner : c)
        corner.y -= sunk_m;
    for (const BeamFace& face : over ? beam.lower : beam.upper) {
        for (const SpacePolygon& half :
             {SpacePolygon{c[0], c[1], c[2]}, SpacePolygon{c[0], c[2], c[3]}}) {
            for (const glm::dvec3& p : plan_overlap(face, half)) {
                const double rise = face.rise(p);
                take_less(least, BeamGap{.distance_m = over ? rise : -rise,
                                         .part_point = p,
                                         .beam_point = p + glm::dvec3(0.0, rise, 0.0),
                                         .beam_over = over});
            }
        }
    }
    return least;
}

Gap gap_to_all(const BeamSolid& beam,
               bool over,
               const std::vector<room::Platform>& parts,
               double sunk_m = 0.0) {
    Gap least;
    for (const room::Platform& part : parts)
        take_less(least, gap_to(beam, over, part, sunk_m));
    return least;
}

Gap gap_to_balcony(const BeamSolid& beam, const Balcony& balcony) {
    Gap over = gap_to_all(beam, true, balcony.fronts);
    if (!over) over = gap_to_all(beam, true, balcony.floors);
    Gap under = gap_to_all(beam, false, balcony.floors);
    take_less(under, gap_to_all(beam, false, balcony.fronts, balcony.front_wall_m));
    if (!over || !under) return over ? over : under;
    return over->distance_m >= under->distance_m ? over : under;
}

/// Corners of the beam's part in the hall: its rim, and where each ray of the rim passes the booth
/// wall; the lens, if that stands in the hall.
std::vector<glm::dvec3> corners_in_hall(const BeamInput& in, std::span<const glm::dvec3> rim) {
    const glm::dvec3 lens = in.map.pose().lens;
    const double behind_m = lens.z - in.booth_wall_back_m;
    std::vector<glm::dvec3> corners;
    if (behind_m <= 0.0) corners.push_back(lens);
    for (const glm::dvec3& p : rim) {
        if (p.z > in.booth_wall_back_m) continue;
        corners.push_back(p);
        if (behind_m > 0.0) corners.push_back(lens + (behind_m / (lens.z - p.z)) * (p - lens));
    }
    return corners;
}

Gap gap_to_ceiling(const HallShell& shell, const std::vector<glm::dvec3>& corners) {
    Gap least;
    for (const glm::dvec3& p : corners)
        take_less(least, BeamGap{.distance_m = shell.height_m - p.y,
                                 .part_point = {p.x, shell.height_m, p.z},
                                 .beam_point = p});
    return least;
}

Gap gap_to_walls(const HallShell& shell, const std::vector<glm::dvec3>& corners) {
    Gap least;
    const double c = std::cos(shell.splay_rad);
    const double s = std::sin(shell.splay_rad);
    for (const glm::dvec3& p : corners) {
        for (const double side : {-1.0, 1.0}) {
            const glm::dvec3 outward(side * c, 0.0, -s);
            const double distance = 0.5 * shell.width_m * c - glm::dot(outward, p);
            take_less(least, BeamGap{.distance_m = distance,
                                     .part_point = p + distance * outward,
                                     .beam_point = p});
        }
    }
    return least;
}

}  // namespace

BeamGaps beam_gaps(const BeamInput& in,
                   std::span<const glm::dvec3> rim,
                   const std::optional<HallShell>& shell,
                   std::span<const Balcony> balconies) {
    BeamGaps gaps;
    if (const auto beam = beam_solid(in.map, in.gate_size_m)) {
        for (const Balcony& balcony : balconies)
            take_less(gaps.balcony, gap_to_balcony(*beam, balcony));
    }
    if (!shell) return gaps;
    const std::vector<glm::dvec3> corners = corners_in_hall(in, rim);
    gaps.ceiling = gap_to_ceiling(*shell, corners);
    gaps.wall = gap_to_walls(*shell, corners);
    return gaps;
}

}  // namespace rakeline::picture
