// SPDX-License-Identifier: MIT
// What the picture says at the edges of its questions: each case has one answer, and it is no NaN.
#include "picture/any_room.hpp"
#include "picture/throw.hpp"

using namespace rakeline;
using namespace rakeline::tests;
using picture::PictureMap;
using picture::PictureStudy;
using picture::Pose;

namespace {

constexpr double kRadius = 10.0;

/// A cylinder whose generator through the centre stands in the room's origin, its axis 10 m back.
const geometry::Patch kCylinder = geometry::standing_patch({0.0, 0.0, 0.0}, kRadius, 0.0);
const geometry::Patch kPlane = geometry::standing_patch({0.0, 0.0, 0.0}, 0.0, 0.0);

PictureMap aimed(const geometry::Patch& surface, const glm::dvec3& lens, double yaw, double pitch) {
    Pose pose = picture::aimed_pose(lens, base::radians(yaw), base::radians(pitch), 0.0);
    pose.image_distance_m = 0.05;
    return {surface, pose};
}

/// Straight along an axis of the room, to the last bit: an angle of 90 degrees is off by 6e-17.
PictureMap aimed_along(const geometry::Patch& surface,
                       const glm::dvec3& lens,
                       const glm::dvec3& axis,
                       const glm::dvec3& up) {
    Pose pose;
    pose.lens = lens;
    pose.axis = axis;
    pose.up = up;
    pose.right = glm::cross(axis, up);
    return {surface, pose};
}

void check_place(const PictureMap& map, glm::dvec2 expected) {
    const auto uv = map.screen_from_gate({0.0, 0.0});
    REQUIRE(uv);
    check_close(glm::length(*uv - expected), 0.0, absolute(1e-12, "rounding"));
    const auto back = map.gate_from_screen(*uv);
    REQUIRE(back);
    check_close(glm::length(*back), 0.0, absolute(1e-15, "rounding"));
}

void check_no_light(const PictureMap& map) {
    CHECK(geometry::hits(map.surface(), map.ray({0.0, 0.0})).empty());
    CHECK_FALSE(map.screen_from_gate({0.0, 0.0}));
    CHECK_FALSE(map.area_ratio({0.0, 0.0}));
}

/// A digital projector 15 m before an upright frame 10 m by 4 m, level with its centre.
picture::PictureInput room_with_radius(double radius_m) {
    picture::PictureInput in;
    in.screen.width_m = 10.0;
    in.screen.height_m = 4.0;
    in.screen.sill_m = 1.0;
    in.screen.setback_m = 1.0;
    in.screen.radius_m = radius_m;
    in.formats = {{.name = "2.39", .aspect_ratio = 2.39, .opening_width_m = {}}};
    room::Projector p;
    p.up_m = 3.0;
    p.back_m = 16.0;
    p.formats = {room::FormatUse{}};
    in.projectors = {p};
    in.booth_wall_back_m = 15.5;
    return in;
}

void aim_by_angles(picture::PictureInput& in, double yaw, double pitch) {
    room::Aim& aim = in.projectors[0].aim;
    aim.mode = room::AimMode::angles;
    aim.yaw_rad = base::radians(yaw);
    aim.pitch_rad = base::radians(pitch);
}

void check_refused(const picture::PictureInput& in, const std::string& why) {
    const PictureStudy study = picture::study_picture(in);
    CHECK(study.pictures.empty());
    REQUIRE(study.none.size() == 1);
    INFO("said: ", study.none[0].why);
    CHECK(study.none[0].why.find(why) != std::string::npos);
    CHECK_FALSE(study.none[0].mend.empty());
}

bool finite(const picture::ProjectedPicture& p) {
    const std::array values{p.throw_m,
                            p.angle_down_rad,
                            p.angle_across_rad,
                            p.focal_length_m,
                            p.focal_length_used_m,
                            p.shape.keystone_vertical,
                            p.shape.keystone_horizontal,
                            p.shape.side_slope_rad,
                            p.shape.bow_top_m,
                            p.shape.bow_bottom_m,
                            p.overfill,
                            p.crop,
                            p.uncovered,
                            p.covering ? p.covering->enlargement : 0.0,
                            p.port_point ? glm::length(*p.port_point) : 0.0};
    return std::ranges::all_of(values, [](double x) { return std::isfinite(x); }) &&
           std::ranges::all_of(p.shape.outline, [](glm::dvec2 q) {
               return std::isfinite(q.x) && std::isfinite(q.y);
           });
}

}  // namespace

TEST_SUITE("picture/defined answers") {
    TEST_CASE("of a curved screen's two crossings the one that is met from the seats is taken") {
        // From behind the left flank to the right: in through the back at u = -r a, out at u = r a,
        // sin a = (r - z) / r; only the second shows its front.
        const double z = 4.0;
        const double u = kRadius * (0.5 * base::kPi - std::asin((kRadius - z) / kRadius));
        const PictureMap map = aimed(kCylinder, {-30.0, 0.0, z}, 90.0, 0.0);
        const auto all = geometry::hits(kCylinder, map.ray({0.0, 0.0}));
        REQUIRE(all.size() == 2);
        CHECK_FALSE(all[0].from_front);
        check_close(all[0].uv.x, -u, absolute(1e-12, "rounding"));
        check_place(map, {u, 0.0});
    }

    TEST_CASE("from the booth, beyond the whole cylinder, only the half toward the wall is met") {
        const PictureMap map = aimed(kCylinder, {0.0, 0.0, 45.0}, 0.0, 0.0);
        CHECK(geometry::hits(kCylinder, map.ray({0.0, 0.0})).size() == 1);
        check_place(map, {0.0, 0.0});
    }

    TEST_CASE("a projector inside the cylinder, on its axis or this side of it, lights the sheet") {
        check_place(aimed(kCylinder, {0.0, 0.0, kRadius}, 30.0, 0.0),
                    {kRadius * base::radians(30.0), 0.0});
        check_place(aimed(kCylinder, {0.0, 0.0, 3.0}, 0.0, 0.0), {0.0, 0.0});
        // Looking at the booth from inside: the other half is no screen.
        check_no_light(aimed(kCylinder, {0.0, 0.0, 3.0}, 180.0, 0.0));
    }

    TEST_CASE("refuses: a ray along the generator meets a cylinder nowhere, inside it or out") {
        for (const double z : {3.0, kRadius, 25.0, -2.0, 0.0}) {
            check_no_light(aimed_along(kCylinder, {0, 5, z}, {0, -1, 0}, {0, 0, -1}));
            check_no_light(aimed_along(kCylinder, {0, 5, z}, {0, 1, 0}, {0, 0, 1}));
        }
    }

    TEST_CASE("refuses: a ray along a plane meets it nowhere, off it or in it") {
        for (const double z : {3.0, 0.0, -3.0}) {
            check_no_light(aimed_along(kPlane, {0, 5, z}, {1, 0, 0}, {0, 1, 0}));
            check_no_light(aimed_along(kPlane, {0, 5, z}, {0, -1, 0}, {0, 0, -1}));
        }
    }

    TEST_CASE("property: near the generator an answer is a point on the sheet, or none") {
        int met = 0;
        for (int power = 1; power <= 18; ++power) {
            const double off = 90.0 * std::pow(10.0, -power);
            for (const double z : {3.0, kRadius, 30.0}) {
                const PictureMap map = aimed(kCylinder, {0.0, 0.0, z}, 0.0, 90.0 - off);
                const auto uv = map.screen_from_gate({0.0, 0.0});
                if (!uv) continue;
                ++met;
                CHECK((std::isfinite(uv->x) && std::isfinite(uv->y)));
                CHECK(std::abs(uv->x) <= 0.5 * base::kPi * kRadius);
                CHECK(uv->y < 0.0);
            }
        }
        CHECK(met > 30);
    }

    TEST_CASE("refuses: a projector behind a flat or a curved screen") {
        for (const double radius : {0.0, 12.0}) {
            picture::PictureInput in = room_with_radius(radius);
            in.projectors[0].back_m = 0.5;
            check_refused(in, "back of the picture surface");
            aim_by_angles(in, 180.0, 0.0);
            check_refused(in, "back of the picture surface");
            aim_by_angles(in, 0.0, 0.0);
            check_refused(in, "misses the picture surface");
        }
    }

    TEST_CASE("a lens a hand's breadth before the screen's plane shows, in it or behind it not") {
        picture::PictureInput in = room_with_radius(0.0);
        in.projectors[0].back_m = 1.1;
        const auto near = picture::study_picture(in);
        REQUIRE(near.pictures.size() == 1);
        check_close(near.pictures[0].throw_m, 0.1, absolute(1e-12, "rounding"));
        CHECK(finite(near.pictures[0]));
        in.projectors[0].back_m = 1.0;
        check_refused(in, "misses the picture surface");
        in.projectors[0].back_m = 0.9;
        check_refused(in, "back of the picture surface");
    }

    TEST_CASE("refuses: a lens nearer to the screen than its own focal length") {
        picture::PictureInput in = room_with_radius(0.0);
        in.projectors[0].back_m = 1.5;
        in.projectors[0].formats[0].focal_length_m = 0.6;
        check_refused(in, "not shorter than the throw");
        in.projectors[0].formats[0].focal_length_m = 0.5;  // the throw itself
        check_refused(in, "not shorter than the throw");
    }

    TEST_CASE("refuses: an axis that misses the surface, by its own words for each way") {
        picture::PictureInput in = room_with_radius(0.0);
        aim_by_angles(in, 120.0, 0.0);
        check_refused(in, "misses the picture surface");
        in = room_with_radius(6.0);
        aim_by_angles(in, 50.0, 0.0);  // past the edge of the half cylinder
        check_refused(in, "misses the picture surface");
        in = room_with_radius(0.0);
        aim_by_angles(in, 55.0, 0.0);  // the wall beside the frame is in the screen's plane
        check_refused(in, "wholly outside the opening");
    }

    TEST_CASE("refuses: a picture of which a part runs off the surface") {
        picture::PictureInput in = room_with_radius(5.5);
        in.projectors[0].formats[0].focal_length_m = 0.02;  // wider than the half cylinder
        check_refused(in, "part of the picture misses");
        in = room_with_radius(0.0);
        aim_by_angles(in, 85.0, 0.0);  // the far side runs past the plane's horizon
        in.projectors[0].formats[0].focal_length_m = 0.03;
        check_refused(in, "part of the picture misses");
    }

    TEST_CASE(
        "a picture of which a part runs past the opening says how much, and what stays dark") {
        picture::PictureInput in = room_with_radius(0.0);
        in.projectors[0].formats[0].shift_across = 0.5;
        const auto study = picture::study_picture(in);
        REQUIRE(study.pictures.size() == 1);
        check_close(study.pictures[0].uncovered, 0.5, absolute(1e-12, "rounding"));
        // 2048 by 858 pixels are a little higher than 2.39 wants: that is lost all along.
        check_close(study.pictures[0].crop, 1.0 - 0.5 * 2048.0 / 858.0 / 2.39,
                    absolute(1e-12, "rounding"));
    }

    TEST_CASE(
        "property: whatever aim, shift and place, a room gives a finite picture or says why") {
        Dice dice(590);
        int none = 0;
        for_layouts(591, 10000, [&](room::Layout layout) {
            room::Projector& p = layout.projectors[0];
            p.aim = {.mode = dice.one_in(2) ? room::AimMode::angles : room::AimMode::picture_centre,
                     .yaw_rad = base::radians(dice.between(-60, 60)),
                     .pitch_rad = base::radians(dice.between(-60, 60)),
                     .roll_rad = base::radians(dice.between(-45, 45))};
            p.back_m = dice.between(-5.0, 1.5 * p.back_m);
            p.across_m *= dice.between(0.0, 3.0);
            p.formats[0].shift_up = dice.between(-2.0, 2.0);
            p.formats[0].shift_across = dice.between(-2.0, 2.0);
            const PictureStudy study = picture::study_picture(picture_input(layout));
            REQUIRE(study.pictures.size() + study.none.size() == 1);
            for (const auto& shown : study.pictures)
                CHECK(finite(shown));
            for (const auto& refusal : study.none) {
                ++none;
                CHECK_FALSE(refusal.why.empty());
                CHECK_FALSE(refusal.mend.empty());
            }
        });
        CHECK(none > 3000);
        CHECK(none < 9000);
    }
}
