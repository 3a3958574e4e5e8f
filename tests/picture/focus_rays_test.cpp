// SPDX-License-Identifier: MIT
#include "picture/focus.hpp"
#include "picture/random_room.hpp"
#include "picture/throw.hpp"
#include "support/check.hpp"

#include <algorithm>
#include <vector>

/// The closed forms of blur against bundles of rays, bent one by one by a thin lens.
using namespace rakeline;
using namespace rakeline::tests;

namespace {

constexpr double kFNumber = 1.9;
constexpr int kRays = 64;

/// Distances from the lens axis, across and up.
using Place = glm::dvec2;

/// Where a ray from `start`, `before_m` before the lens, lands `behind_m` behind it, when it passes
/// the lens at `through`. A thin lens takes away through / f from the slope.
Place bent(Place start, double before_m, Place through, double behind_m, double focal_length_m) {
    const Place slope = (through - start) / before_m - through / focal_length_m;
    return through + slope * behind_m;
}

/// Greatest distance between any two places.
double spread(const std::vector<Place>& places) {
    double most = 0.0;
    for (const Place a : places)
        for (const Place b : places)
            most = std::max(most, glm::length(a - b));
    return most;
}

/// Spread on a plane square to the axis of all rays from `start` through the pupil's rim.
double traced(Place start, double before_m, double pupil_m, double behind_m, double focal_m) {
    std::vector<Place> landed;
    for (int k = 0; k < kRays; ++k) {
        const double angle = 2.0 * base::kPi * k / kRays;
        const Place through = 0.5 * pupil_m * Place(std::cos(angle), std::sin(angle));
        landed.push_back(bent(start, before_m, through, behind_m, focal_m));
    }
    return spread(landed);
}

/// A random place in the opening of a random room, and its focus.
struct Aimed {
    picture::PictureMap map;
    picture::Focus focus;
    glm::dvec2 uv;
    Place place;  ///< of the surface point, from the axis
    double distance_m = 0.0;
};

Aimed aimed(Dice& dice) {
    const auto study = picture::study_picture(random_room(dice));
    const auto& map = study.pictures.at(0).map;
    const auto& o = study.openings.at(0).uv;
    Aimed out{.map = map,
              .focus = *picture::best_focus(map, study.openings.at(0), kFNumber),
              .uv = {dice.between(o.left, o.right), dice.between(o.bottom, o.top)},
              .place = {}};
    const glm::dvec3 from = geometry::point_at(map.surface(), out.uv) - map.pose().lens;
    out.place = {glm::dot(from, map.pose().right), glm::dot(from, map.pose().up)};
    out.distance_m = glm::dot(from, map.pose().axis);
    return out;
}

}  // namespace

TEST_SUITE("picture/focus, rays") {
    TEST_CASE("property: rays of one gate point spread on the screen by the circle of confusion") {
        Dice dice(81);
        for (int i = 0; i < 300; ++i) {
            INFO("seed 81, case ", i);
            const Aimed a = aimed(dice);
            const double f = a.map.pose().focal_length_m;
            const double gate_m = picture::image_distance(f, a.focus.best_m);
            const Place gate = -a.place * gate_m / a.distance_m;  // light crosses over in the lens
            const auto blurred = picture::blur_at(a.map, a.uv, a.focus.pupil_m, a.focus.best_m);
            REQUIRE(blurred);
            check_close(*blurred, traced(gate, gate_m, a.focus.pupil_m, a.distance_m, f),
                        absolute(1e-11, "rounding of slopes of 1e-16 over tens of metres"));
        }
    }

    TEST_CASE("property: rays of one screen point spread in the gate by the circle in the gate") {
        Dice dice(82);
        for (int i = 0; i < 300; ++i) {
            INFO("seed 82, case ", i);
            const Aimed a = aimed(dice);
            const double f = a.map.pose().focal_length_m;
            const double gate_m = picture::image_distance(f, a.focus.best_m);
            const double blurred =
                picture::gate_blur(a.focus.pupil_m, f, a.distance_m, a.focus.best_m);
            check_close(blurred, traced(a.place, a.distance_m, a.focus.pupil_m, gate_m, f),
                        absolute(1e-15, "rounding of slopes of 1e-16 over tenths of a metre"));
            CHECK(blurred <= a.focus.worst_gate_blur_m * (1.0 + 1e-9));
        }
    }
}
