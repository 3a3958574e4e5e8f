// SPDX-License-Identifier: MIT
// Source: J. B. Allen and D. A. Berkley, "Image method for efficiently simulating small-room
// acoustics", 1979, from memory: in a box with one corner at the origin the images of (x, y, z)
// stand at ((1 - 2u) x + 2 l Lx, ...), u 0 or 1, l any whole number, after |l - u| reflections at
// the wall through the origin and |l| at the one opposite.
#include "sound/hall_room.hpp"
#include "support/check.hpp"

#include <algorithm>
#include <cstdlib>

using namespace rakeline;
using namespace rakeline::tests;
using sound::Wall;

namespace {

struct AxisImage {
    double at = 0.0;
    int near_wall = 0;  ///< reflections at the wall through the origin
    int far_wall = 0;
};

std::vector<AxisImage> images_along(double at, double side) {
    std::vector<AxisImage> out;
    for (int l = -2; l <= 2; ++l)
        for (const int u : {0, 1})
            out.push_back({(1 - 2 * u) * at + 2.0 * l * side, std::abs(l - u), std::abs(l)});
    return out;
}

/// Lengths of all paths with one or two reflections, none of them at the floor or the screen wall.
std::vector<double> lattice_lengths(const sound::HallInput& hall,
                                    const glm::dvec3& from,
                                    const glm::dvec3& to) {
    std::vector<double> out;
    const double half = 0.5 * hall.width_m;
    for (const AxisImage& x : images_along(from.x + half, hall.width_m))
        for (const AxisImage& y : images_along(from.y, hall.height_m))
            for (const AxisImage& z : images_along(from.z, hall.length_m)) {
                const int order =
                    x.near_wall + x.far_wall + y.near_wall + y.far_wall + z.near_wall + z.far_wall;
                if (order < 1 || order > 2 || y.near_wall > 0 || z.near_wall > 0) continue;
                out.push_back(glm::distance(glm::dvec3{x.at - half, y.at, z.at}, to));
            }
    std::sort(out.begin(), out.end());
    return out;
}

}  // namespace

TEST_SUITE("outside/shoebox_images") {
    TEST_CASE("golden: the images of a box are the published lattice, each seen once") {
        std::mt19937 random(981);
        for (int round = 0; round < 200; ++round) {
            const sound::HallInput hall = box_hall(
                between(random, 5.0, 20.0), between(random, 3.0, 10.0), between(random, 8.0, 30.0));
            const glm::dvec3 from = point_in(random, hall);
            const glm::dvec3 to = point_in(random, hall);
            std::vector<double> ours;
            for (const auto& path : sound::reflected_paths(sound::wall_planes(hall), from, to))
                if (path.second != Wall::screen) ours.push_back(path.length_m);
            std::sort(ours.begin(), ours.end());
            const std::vector<double> published = lattice_lengths(hall, from, to);
            INFO("round ", round);
            REQUIRE(ours.size() == published.size());
            for (std::size_t i = 0; i < ours.size(); ++i)
                check_close(ours[i], published[i], absolute(1e-10, "rounding of some ten metres"));
        }
    }
}
