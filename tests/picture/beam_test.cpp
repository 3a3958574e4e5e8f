// SPDX-License-Identifier: MIT
#include "picture/beam.hpp"

#include "picture/tried_beam.hpp"

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

using Floor = FloorAt;

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

/// Gap from a floor point up to the beam's lower side by trying heights; nothing if the beam does
/// not pass there or lies below.
std::optional<double> tried_gap(const picture::ProjectedPicture& picture, const glm::dvec3& floor) {
    const auto column = tried_column(picture, floor, 0.02);
    if (!column || column->high_m < floor.y) return std::nullopt;
    return column->low_m - floor.y;
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

    TEST_CASE("property: raising the projector never brings the beam nearer to a floor behind") {
        // In the front half it may: aimed steeper, the picture's lower edge comes down a little.
        Dice dice(62);
        int found = 0;
        for (int i = 0; i < 200; ++i) {
            INFO("seed 62, case ", i);
            picture::PictureInput in = random_room(dice);
            in.platforms = {platform({.front_m = 0.5 * in.booth_wall_back_m,
                                      .back_m = in.booth_wall_back_m,
                                      .front_up_m = dice.between(-0.5, 0.3),
                                      .back_up_m = dice.between(-0.5, 1.0)})};
            const auto before = only_picture(in).beam;
            in.projectors[0].up_m += dice.between(0.01, 1.0);
            const auto after = only_picture(in).beam;
            if (!before || before->height_m < 0.0) continue;
            ++found;
            REQUIRE(after);
            CHECK(after->height_m >= before->height_m);
        }
        CHECK(found > 100);
    }

    TEST_CASE("property: a level beam rises with its projector, floor by floor") {
        Dice dice(63);
        for (int i = 0; i < 100; ++i) {
            INFO("seed 63, case ", i);
            picture::PictureInput in = random_room(dice);
            in.screen.tilt_rad = 0.0;
            in.projectors[0].aim = {.mode = room::AimMode::angles};
            in.projectors[0].formats[0].shift_up = 0.0;
            in.projectors[0].up_m = in.screen.sill_m + 0.5 * in.screen.height_m;
            in.platforms = {platform({.front_m = 0.4 * in.booth_wall_back_m,
                                      .back_m = in.booth_wall_back_m,
                                      .front_up_m = -0.4})};
            const auto before = only_picture(in).beam;
            const double raised = dice.between(0.01, 0.3);
            in.projectors[0].up_m += raised;
            const auto after = only_picture(in).beam;
            REQUIRE(before);
            REQUIRE(after);
            check_close(after->height_m - before->height_m, raised,
                        absolute(1e-9, "rounding of heights of some metres"));
        }
    }

    TEST_CASE("property: the mirrored room has the same clearance, a doubled one twice as much") {
        Dice dice(64);
        int found = 0;
        for (int i = 0; i < 200; ++i) {
            INFO("seed 64, case ", i);
            picture::PictureInput in = random_room(dice);
            in.platforms = {platform({.front_m = in.booth_wall_back_m * dice.between(0.3, 0.6),
                                      .back_m = in.booth_wall_back_m,
                                      .front_up_m = dice.between(-0.5, 1.5),
                                      .back_up_m = dice.between(0.0, 3.0),
                                      .left_m = -6.0,
                                      .right_m = dice.between(-1.0, 6.0)})};
            const auto beam = only_picture(in).beam;
            const auto image = only_picture(mirrored(in)).beam;
            const auto large = only_picture(doubled(in)).beam;
            CHECK(image.has_value() == beam.has_value());
            CHECK(large.has_value() == beam.has_value());
            if (!beam || !image || !large) continue;
            ++found;
            check_close(image->height_m, beam->height_m, absolute(1e-9, "rounding"));
            check_close(large->height_m, 2.0 * beam->height_m, absolute(1e-9, "rounding"));
        }
        CHECK(found > 100);
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
