// SPDX-License-Identifier: MIT
#include "picture/beam.hpp"

#include "picture/random_room.hpp"
#include "picture/throw.hpp"
#include "support/check.hpp"

#include <algorithm>
#include <limits>

using namespace rakeline;
using namespace rakeline::tests;
using picture::BeamClearance;
using picture::PictureMap;
using room::Platform;

namespace {

constexpr glm::dvec2 kGate{0.02, 0.01};

/// Lens level at 5 m up, 20 m before an upright flat screen at z = 1: picture 5 +- 2 m high,
/// 8 m wide. The beam's lower side falls from 5 m at the lens to 3 m at the screen.
PictureMap level_beam() {
    picture::Pose pose = picture::aimed_pose({0.0, 5.0, 21.0}, 0.0, 0.0, 0.0);
    pose.image_distance_m = 20.0 * 0.005 / 2.0;
    return {geometry::standing_patch({0.0, 5.0, 1.0}, 0.0, 0.0), pose};
}

struct Floor {
    double front_m = 0.0;
    double back_m = 0.0;
    double front_up_m = 0.0;
    double back_up_m = 0.0;
    double left_m = -3.0;
    double right_m = 3.0;
};

Platform platform(const Floor& f) {
    Platform p;
    p.corners = {glm::dvec3(f.left_m, f.front_up_m, f.front_m),
                 glm::dvec3(f.left_m, f.back_up_m, f.back_m),
                 glm::dvec3(f.right_m, f.back_up_m, f.back_m),
                 glm::dvec3(f.right_m, f.front_up_m, f.front_m)};
    return p;
}

std::optional<BeamClearance> clearance(const PictureMap& map,
                                       const std::vector<Platform>& platforms) {
    return picture::beam_clearance({.map = map, .gate_size_m = kGate, .booth_wall_back_m = 20.0},
                                   platforms);
}

/// Height of the level beam's lower side, and of its upper one.
double lower_side(double back_m) {
    return 5.0 - 0.1 * (21.0 - back_m);
}
double upper_side(double back_m) {
    return 5.0 + 0.1 * (21.0 - back_m);
}

/// Whether a point of the hall is lit: within the gate's cone and not behind the screen.
bool lit(const picture::ProjectedPicture& picture, const glm::dvec3& p) {
    const picture::Pose& pose = picture.map.pose();
    const glm::dvec3 d = p - pose.lens;
    const double depth = glm::dot(d, pose.axis);
    if (depth <= 0.0) return false;
    const double scale = pose.image_distance_m / depth;
    const double x = scale * glm::dot(d, pose.right) / pose.squeeze - pose.shift_m.x;
    const double y = scale * glm::dot(d, pose.up) - pose.shift_m.y;
    if (std::abs(x) > 0.5 * picture.gate_size_m.x) return false;
    if (std::abs(y) > 0.5 * picture.gate_size_m.y) return false;
    const auto hit = geometry::front_hit(picture.map.surface(), {pose.lens, d});
    return hit && hit->t >= 1.0;
}

/// Gap from a floor point up to the beam's lower side by trying heights; nothing if the beam does
/// not pass there or lies below.
std::optional<double> tried_gap(const picture::ProjectedPicture& picture, const glm::dvec3& floor) {
    constexpr double kStep = 0.02;
    double low = std::numeric_limits<double>::infinity();
    double high = -low;
    for (double y = -2.0; y < 30.0; y += kStep) {
        if (!lit(picture, {floor.x, y, floor.z})) continue;
        low = std::min(low, y);
        high = std::max(high, y);
    }
    if (high < floor.y) return std::nullopt;
    return low - floor.y;
}

}  // namespace

TEST_SUITE("picture/beam") {
    TEST_CASE("over a level floor the least height lies at its front") {
        const auto c = clearance(level_beam(), {platform({.front_m = 6.0, .back_m = 19.0})});
        REQUIRE(c);
        check_close(c->height_m, lower_side(6.0), relative(1e-12, "rounding"));
        check_close(c->floor_point.z, 6.0, relative(1e-12, "rounding"));
        check_close(c->floor_point.y, 0.0, absolute(1e-12, "rounding"));
    }

    TEST_CASE("over a raked floor it lies at the back, and no farther than the booth wall") {
        const Floor rake{
            .front_m = 5.0, .back_m = 25.0, .front_up_m = 0.0, .back_up_m = 4.0, .left_m = -3.0};
        const auto c = clearance(level_beam(), {platform(rake)});
        REQUIRE(c);
        check_close(c->floor_point.z, 20.0, relative(1e-12, "rounding"));
        check_close(c->height_m, lower_side(20.0) - 3.0, relative(1e-12, "rounding"));
    }

    TEST_CASE("the least of several platforms counts, and a floor beside the beam does not") {
        const Floor step{.front_m = 10, .back_m = 12, .front_up_m = 1.5, .back_up_m = 1.5};
        const Floor beside{.front_m = 10,
                           .back_m = 12,
                           .front_up_m = 3,
                           .back_up_m = 3,
                           .left_m = 3.0,
                           .right_m = 6.0};
        const auto c = clearance(level_beam(), {platform({.front_m = 6, .back_m = 10}),
                                                platform(step), platform(beside)});
        REQUIRE(c);
        check_close(c->height_m, lower_side(10.0) - 1.5, relative(1e-12, "rounding"));
        CHECK_FALSE(clearance(level_beam(), {platform(beside)}));
        CHECK_FALSE(clearance(level_beam(), {}));
    }

    TEST_CASE("a floor behind the screen does not count") {
        CHECK_FALSE(clearance(level_beam(), {platform({.front_m = -2.0, .back_m = 0.9})}));
        const auto c = clearance(level_beam(), {platform({.front_m = -2.0, .back_m = 3.0})});
        REQUIRE(c);
        check_close(c->height_m, lower_side(1.0), relative(1e-12, "rounding"));
    }

    TEST_CASE("before a curved screen the beam reaches on past the line between its sides") {
        // The sides of the picture come about 0.7 m forward; the floor lies behind that line.
        const PictureMap flat = level_beam();
        const PictureMap curved(geometry::standing_patch({0, 5, 1}, 10.0, 0.0), flat.pose());
        const Floor near_sheet{.front_m = 1.05, .back_m = 1.5, .left_m = -0.5, .right_m = 0.5};
        const auto c = clearance(curved, {platform(near_sheet)});
        REQUIRE(c);
        check_close(c->height_m, lower_side(1.05), relative(1e-12, "rounding"));
    }

    TEST_CASE("a balcony that the beam passes under does not count") {
        const Floor balcony{.front_m = 10, .back_m = 19, .front_up_m = 6.2, .back_up_m = 6.2};
        REQUIRE(upper_side(10.0) < 6.2);
        CHECK_FALSE(clearance(level_beam(), {platform(balcony)}));
        const auto c = clearance(level_beam(),
                                 {platform(balcony), platform({.front_m = 6.0, .back_m = 19.0})});
        REQUIRE(c);
        check_close(c->height_m, lower_side(6.0), relative(1e-12, "rounding"));
    }

    TEST_CASE("a balcony that cuts into the beam gives a negative height") {
        const Floor balcony{.front_m = 15, .back_m = 19, .front_up_m = 5, .back_up_m = 5};
        const auto c = clearance(level_beam(), {platform(balcony)});
        REQUIRE(c);
        check_close(c->height_m, lower_side(15.0) - 5.0, relative(1e-12, "rounding"));
        CHECK(c->height_m < 0.0);
    }

    TEST_CASE("a floor that runs right through the beam is cut by its whole thickness") {
        // Below the beam at its back edge, above it at its front edge: the deepest cut is where it
        // leaves through the upper side, 9 - 0.5 (z - 8) = 5 + 0.1 (21 - z).
        const Floor ramp{.front_m = 8, .back_m = 19, .front_up_m = 9, .back_up_m = 3.5};
        const double leaves = (9.0 + 4.0 - 7.1) / 0.4;
        const auto c = clearance(level_beam(), {platform(ramp)});
        REQUIRE(c);
        check_close(c->floor_point.z, leaves, relative(1e-12, "rounding"));
        check_close(c->height_m, lower_side(leaves) - upper_side(leaves),
                    relative(1e-12, "rounding"));
    }

    TEST_CASE("an upright balcony front counts by its top") {
        Platform wall;
        wall.corners = {glm::dvec3(-2, 0, 12), glm::dvec3(2, 0, 12), glm::dvec3(2, 3.2, 12),
                        glm::dvec3(-2, 3.2, 12)};
        const auto c = clearance(level_beam(), {wall});
        REQUIRE(c);
        check_close(c->height_m, lower_side(12.0) - 3.2, relative(1e-12, "rounding"));
    }

    TEST_CASE("property: clearance agrees with trying points of the floor and of the air") {
        Dice dice(61);
        int found = 0;
        int cut = 0;
        for (int i = 0; i < 60; ++i) {
            INFO("seed 61, case ", i);
            picture::PictureInput in = random_room(dice);
            const Floor floor{.front_m = in.booth_wall_back_m * dice.between(0.3, 0.6),
                              .back_m = in.booth_wall_back_m,
                              .front_up_m = dice.between(-0.5, 1.5),
                              .back_up_m = in.projectors[0].up_m * dice.between(0.0, 1.6),
                              .left_m = -6.0,
                              .right_m = dice.between(-1.0, 6.0)};
            in.platforms = {platform(floor)};
            const auto p = only_picture(in);
            std::optional<double> tried;
            constexpr int kSteps = 40;
            for (int k = 0; k <= kSteps * kSteps; ++k) {
                const double s = static_cast<double>(k % kSteps) / (kSteps - 1);
                const double t = static_cast<double>(k / kSteps) / (kSteps - 1);
                const glm::dvec3 point(floor.left_m + s * (floor.right_m - floor.left_m),
                                       floor.front_up_m + t * (floor.back_up_m - floor.front_up_m),
                                       floor.front_m + t * (floor.back_m - floor.front_m));
                const auto gap = t <= 1.0 ? tried_gap(p, point) : std::nullopt;
                if (gap && (!tried || *gap < *tried)) tried = gap;
            }
            if (!tried) continue;
            ++found;
            REQUIRE(p.beam);
            if (p.beam->height_m < 0.0) ++cut;
            // No point tried can lie lower; the lowest lies within a grid cell of a point tried.
            CHECK(p.beam->height_m <= *tried + 1e-9);
            check_close(p.beam->height_m, *tried, absolute(0.4, "a cell of 40 x 40 over 40 m"));
        }
        CHECK(found > 30);
        CHECK(cut > 3);
    }

    TEST_CASE("the axis leaves the booth through its wall") {
        picture::Pose pose = picture::aimed_pose({1.0, 5.0, 21.0}, 0.0, base::radians(10), 0.0);
        const auto port = picture::port_point(pose, 20.0, 20.5);
        REQUIRE(port);
        check_close(port->x, 1.0, absolute(1e-12, "rounding"));
        check_close(port->y, 5.0 - 0.5 * std::tan(base::radians(10)), relative(1e-13, "rounding"));
        check_close(port->z, 20.5, relative(1e-14, "rounding"));
    }

    TEST_CASE("refuses: a lens in the hall has no port, nor an axis that never reaches the wall") {
        const picture::Pose pose = picture::aimed_pose({0.0, 5.0, 18.0}, 0.0, 0.0, 0.0);
        CHECK_FALSE(picture::port_point(pose, 17.0, 20.0));
        const picture::Pose across = picture::aimed_pose({0, 5, 21}, base::radians(90), 0, 0);
        CHECK_FALSE(picture::port_point(across, 3.0, 20.0));
    }
}
