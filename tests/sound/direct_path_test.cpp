// SPDX-License-Identifier: MIT
#include "sound/direct_path.hpp"

#include "base/units.hpp"
#include "sound/directivity.hpp"
#include "support/check.hpp"

#include <cmath>
#include <random>

using namespace rakeline;
using room::Loudspeaker;
using sound::direct_path;
using sound::DirectPath;
using tests::absolute;
using tests::check_close;

namespace {

const auto kRounding = absolute(1e-12, "rounding of angles and lengths of order ten");

double between(std::mt19937& random, double least, double most) {
    return least + (most - least) * static_cast<double>(random()) / 4294967295.0;
}

Loudspeaker loudspeaker_at(const glm::dvec3& place) {
    Loudspeaker l;
    l.across_m = place.x;
    l.up_m = place.y;
    l.back_m = place.z;
    return l;
}

geometry::Patch flat_sheet() {
    return geometry::standing_patch({0.0, 3.0, 1.0}, 0.0, 0.0);
}

}  // namespace

TEST_SUITE("sound/direct_path") {
    TEST_CASE("yaw turns the axis toward +x, pitch downward, and the axes stay right-handed") {
        Loudspeaker l = loudspeaker_at({0, 0, 0});
        l.yaw_rad = 0.3;
        l.pitch_rad = 0.2;
        const sound::LoudspeakerAxes axes = sound::axes_of(l);
        CHECK(axes.forward.x > 0.0);
        CHECK(axes.forward.y < 0.0);
        check_close(std::asin(-axes.forward.y), 0.2, kRounding);
        check_close(std::atan2(axes.forward.x, axes.forward.z), 0.3, kRounding);
        check_close(glm::length(glm::cross(axes.across, axes.up) - axes.forward), 0.0, kRounding);
        check_close(glm::length(axes.up), 1.0, kRounding);
        CHECK(axes.up.y > 0.9);
        CHECK(axes.across.y == 0.0);
    }

    TEST_CASE("a loudspeaker that faces the booth hears +x as right and above as up") {
        const Loudspeaker l = loudspeaker_at({1.0, 2.0, 0.0});
        const DirectPath path = direct_path(l, flat_sheet(), {4.0, 6.0, 4.0});
        check_close(path.distance_m, std::sqrt(9.0 + 16.0 + 16.0), kRounding);
        check_close(path.off_axis_across_rad, std::atan2(3.0, 4.0), kRounding);
        check_close(path.off_axis_up_rad, std::atan2(4.0, 5.0), kRounding);
        CHECK(path.through_sheet);
        check_close(path.sheet_angle_rad, std::acos(4.0 / path.distance_m), kRounding);
    }

    TEST_CASE("an ear on the axis is at no angle, however the loudspeaker is turned") {
        std::mt19937 random(20260501);
        for (int i = 0; i < 200; ++i) {
            INFO("draw ", i, " of seed 20260501");
            const glm::dvec3 place(between(random, -5, 5), between(random, 1, 6), 0.2);
            Loudspeaker l = loudspeaker_at(place);
            l.yaw_rad = between(random, -3.1, 3.1);
            l.pitch_rad = between(random, -1.2, 1.2);
            const glm::dvec3 ear = place + 9.0 * sound::axes_of(l).forward;
            const DirectPath path = direct_path(l, flat_sheet(), ear);
            check_close(path.off_axis_across_rad, 0.0, kRounding);
            check_close(path.off_axis_up_rad, 0.0, kRounding);
            check_close(path.distance_m, 9.0, kRounding);
        }
    }

    TEST_CASE("property: both angles together give the true angle between axis and path") {
        std::mt19937 random(20260502);
        for (int i = 0; i < 500; ++i) {
            INFO("draw ", i, " of seed 20260502");
            const glm::dvec3 place(between(random, -5, 5), between(random, 1, 6), 0.2);
            Loudspeaker l = loudspeaker_at(place);
            l.yaw_rad = between(random, -3.1, 3.1);
            l.pitch_rad = between(random, -1.2, 1.2);
            const glm::dvec3 ear(between(random, -8, 8), between(random, 1, 5),
                                 between(random, 4, 25));
            const DirectPath path = direct_path(l, flat_sheet(), ear);
            check_close(sound::off_axis(path.off_axis_across_rad, path.off_axis_up_rad).angle_rad,
                        geometry::angle_between(ear - place, sound::axes_of(l).forward),
                        absolute(1e-9, "the sine is flat near a quarter turn"));
        }
    }

    TEST_CASE("a path from the centre of a curved sheet's curvature crosses it squarely") {
        // Sound toward the axis: from behind the sheet, aimed at a point on the cylinder's axis.
        const geometry::Patch curved = geometry::standing_patch({0, 3.0, 1.0}, 15.0, 0.0);
        const Loudspeaker l = loudspeaker_at({-4.0, 3.0, 1.0});
        const DirectPath path = direct_path(l, curved, {0.0, 3.0, 16.0});
        CHECK(path.through_sheet);
        check_close(path.sheet_angle_rad, 0.0, absolute(1e-9, "rounding"));
        CHECK(direct_path(l, flat_sheet(), {0.0, 3.0, 16.0}).sheet_angle_rad >= 0.0);
    }

    TEST_CASE("a leaning sheet is crossed at its lean") {
        const geometry::Patch leaning = geometry::standing_patch({0, 3.0, 1.0}, 0.0, 0.1);
        const DirectPath path = direct_path(loudspeaker_at({0, 3.0, 0.2}), leaning, {0, 3.0, 10.0});
        check_close(path.sheet_angle_rad, 0.1, kRounding);
    }

    TEST_CASE("a loudspeaker in the hall, or one that says so, has no sheet before it") {
        Loudspeaker l = loudspeaker_at({0, 3.0, 0.2});
        CHECK(direct_path(l, flat_sheet(), {2.0, 1.2, 9.0}).through_sheet);
        l.behind_screen = false;
        CHECK_FALSE(direct_path(l, flat_sheet(), {2.0, 1.2, 9.0}).through_sheet);
        CHECK(direct_path(l, flat_sheet(), {2.0, 1.2, 9.0}).sheet_angle_rad == 0.0);
        // An ear still behind the sheet: the way would cross it only farther on.
        l.behind_screen = true;
        CHECK_FALSE(direct_path(l, flat_sheet(), {0.5, 2.0, 0.9}).through_sheet);
        // Wrongly said to stand behind the screen: the way never crosses the sheet.
        const Loudspeaker in_hall = loudspeaker_at({0, 3.0, 1.5});
        CHECK_FALSE(direct_path(in_hall, flat_sheet(), {2.0, 1.2, 9.0}).through_sheet);
    }
}
