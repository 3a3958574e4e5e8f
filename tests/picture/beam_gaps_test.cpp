// SPDX-License-Identifier: MIT
#include "picture/beam_gaps.hpp"

#include "picture/tried_beam.hpp"

using namespace rakeline;
using namespace rakeline::tests;
using picture::Balcony;
using picture::BeamGap;

namespace {

picture::PictureInput hall_with_level_beam() {
    picture::PictureInput in = room_with_level_beam();
    in.shell = picture::HallShell{.width_m = 12.0, .height_m = 8.0, .splay_rad = 0.0};
    return in;
}

/// Its floor at `up_m`, from `front_m` to 19 m back, a solid front of 0.8 m.
Balcony balcony(double up_m, double front_m) {
    Balcony out;
    out.front_wall_m = 0.8;
    out.fronts = {platform({.front_m = front_m - 0.15,
                            .back_m = front_m,
                            .front_up_m = up_m + 0.8,
                            .back_up_m = up_m + 0.8})};
    out.floors = {
        platform({.front_m = front_m, .back_m = 19.0, .front_up_m = up_m, .back_up_m = up_m})};
    return out;
}

const Tolerance kRounding = absolute(1e-9, "rounding of lengths of some metres");

BeamGap balcony_gap(picture::PictureInput in) {
    const auto p = only_picture(in);
    REQUIRE(p.gaps.balcony);
    return *p.gaps.balcony;
}

/// A room with a hall about it and a balcony somewhere in the beam's way.
picture::PictureInput room_with_balcony(Dice& dice) {
    picture::PictureInput in = random_room(dice);
    in.shell = picture::HallShell{.width_m = in.screen.width_m * dice.between(1.0, 1.4),
                                  .height_m = in.projectors[0].up_m * dice.between(0.9, 1.6),
                                  .splay_rad = base::radians(dice.between(-2.0, 6.0))};
    Balcony one = balcony(in.projectors[0].up_m * dice.between(0.2, 1.6), 0.0);
    const double front = in.booth_wall_back_m * dice.between(0.5, 0.8);
    const double up = one.floors[0].corners[0].y;
    const double left = dice.between(-4.0, 0.0), right = dice.between(0.0, 4.0);
    one.fronts = {platform({front - 0.15, front, up + 0.8, up + 0.8, left, right})};
    one.floors = {
        platform({front, in.booth_wall_back_m, up, up + dice.between(0.0, 2.0), left, right})};
    in.balconies = {one};
    return in;
}

}  // namespace

TEST_SUITE("picture/beam_gaps") {
    TEST_CASE("over a balcony the least height is that over its solid front") {
        picture::PictureInput in = hall_with_level_beam();
        in.balconies = {balcony(2.0, 15.0)};
        const BeamGap gap = balcony_gap(in);
        // At the front's outer edge, 14.85 m back: 5 - 0.615 - 2.8.
        CHECK(gap.beam_over);
        check_close(gap.distance_m, 5.0 - 0.615 - 2.8, kRounding);
        check_close(gap.part_point.y, 2.8, kRounding);
        check_close(gap.beam_point.y, 5.0 - 0.615, kRounding);
        check_close(gap.part_point.z, 14.85, kRounding);
    }

    TEST_CASE("a balcony without a solid front counts by its floor") {
        picture::PictureInput in = hall_with_level_beam();
        in.balconies = {balcony(2.0, 15.0)};
        in.balconies[0].fronts.clear();
        check_close(balcony_gap(in).distance_m, 5.0 - 0.6 - 2.0, kRounding);
    }

    TEST_CASE("under a balcony the least height is that up to the foot of its front") {
        picture::PictureInput in = hall_with_level_beam();
        in.balconies = {balcony(6.5, 15.0)};
        const BeamGap gap = balcony_gap(in);
        CHECK_FALSE(gap.beam_over);
        check_close(gap.distance_m, 6.5 - (5.0 + 0.615), kRounding);
        check_close(gap.part_point.y, 6.5, kRounding);
        check_close(gap.beam_point.y, 5.615, kRounding);
    }

    TEST_CASE("a balcony in the beam counts by the shorter way out of it") {
        picture::PictureInput in = hall_with_level_beam();
        in.balconies = {balcony(3.9, 15.0)};  // its front reaches up to 4.7, the beam down to 4.385
        BeamGap gap = balcony_gap(in);
        CHECK(gap.beam_over);
        check_close(gap.distance_m, 4.385 - 4.7, kRounding);
        in.balconies = {balcony(5.5, 15.0)};  // its foot hangs down to 5.5, the beam rises to 5.615
        gap = balcony_gap(in);
        CHECK_FALSE(gap.beam_over);
        check_close(gap.distance_m, 5.5 - 5.615, kRounding);
    }

    TEST_CASE("of two balconies the nearer counts, and one beside the beam does not") {
        picture::PictureInput in = hall_with_level_beam();
        in.balconies = {balcony(2.0, 15.0), balcony(6.5, 15.0)};
        check_close(balcony_gap(in).distance_m, 6.5 - 5.615, kRounding);
        for (Balcony& one : in.balconies)
            for (auto* parts : {&one.fronts, &one.floors})
                for (room::Platform& part : *parts)
                    for (glm::dvec3& corner : part.corners)
                        corner.x += 20.0;
        CHECK_FALSE(only_picture(in).gaps.balcony);
    }

    TEST_CASE("the ceiling is nearest where the beam is highest, at the picture's top here") {
        const auto gap = only_picture(hall_with_level_beam()).gaps.ceiling;
        REQUIRE(gap);
        check_close(gap->distance_m, 8.0 - 7.0, kRounding);
        check_close(gap->beam_point.z, 1.0, kRounding);
        check_close(gap->part_point.y, 8.0, kRounding);
    }

    TEST_CASE("a beam that falls is highest where it leaves the booth") {
        picture::PictureInput in = hall_with_level_beam();
        in.screen.sill_m = -2.0;  // the picture's centre is at 0, its top at 2
        in.screen.tilt_rad = std::atan2(5.0, 20.0);
        const auto p = only_picture(in);
        REQUIRE(p.gaps.ceiling);
        check_close(p.gaps.ceiling->beam_point.z, 20.5, kRounding);
    }

    TEST_CASE("the walls are nearest at the picture's sides, square to a splayed wall") {
        picture::PictureInput in = hall_with_level_beam();
        auto gap = only_picture(in).gaps.wall;
        REQUIRE(gap);
        check_close(gap->distance_m, 6.0 - 4.0, kRounding);
        const double splay = base::radians(5.0);
        in.shell->splay_rad = splay;
        gap = only_picture(in).gaps.wall;
        REQUIRE(gap);
        check_close(gap->distance_m, (6.0 + std::tan(splay) - 4.0) * std::cos(splay), kRounding);
        check_close(glm::length(gap->part_point - gap->beam_point), gap->distance_m, kRounding);
        check_close(gap->part_point.z, 1.0 - gap->distance_m * std::sin(splay), kRounding);
    }

    TEST_CASE("without a hall or a balcony there is nothing to come near") {
        picture::PictureInput in = hall_with_level_beam();
        in.shell.reset();
        const auto gaps = only_picture(in).gaps;
        CHECK_FALSE(gaps.balcony);
        CHECK_FALSE(gaps.ceiling);
        CHECK_FALSE(gaps.wall);
    }

    TEST_CASE("property: no lit point of the hall lies nearer to ceiling or wall") {
        Dice dice(71);
        for (int i = 0; i < 60; ++i) {
            INFO("seed 71, case ", i);
            const picture::PictureInput in = room_with_balcony(dice);
            const auto p = only_picture(in);
            REQUIRE(p.gaps.ceiling);
            REQUIRE(p.gaps.wall);
            const double c = std::cos(in.shell->splay_rad), s = std::sin(in.shell->splay_rad);
            double ceiling = 1e9, wall = 1e9;
            for (int k = 0; k < 4000; ++k) {
                // The rim's rays too: every third point lies on the gate's border.
                const bool rim = k % 3 == 0;
                const double across = rim && k % 2 == 0 ? 1.0 : dice.between(-1.0, 1.0);
                const double up = rim && k % 2 == 1 ? 1.0 : dice.between(-1.0, 1.0);
                const auto uv = p.map.screen_from_gate(gate_point(p, across, up));
                REQUIRE(uv);
                const glm::dvec3 on = geometry::point_at(p.map.surface(), *uv);
                const glm::dvec3 lens = p.map.pose().lens;
                const double to_wall = (lens.z - in.booth_wall_back_m) / (lens.z - on.z);
                const double share = k % 5 == 0   ? to_wall
                                     : k % 7 == 0 ? 1.0
                                                  : dice.between(to_wall, 1.0);
                const glm::dvec3 at = lens + share * (on - lens);
                ceiling = std::min(ceiling, in.shell->height_m - at.y);
                wall = std::min(wall, 0.5 * in.shell->width_m * c + at.z * s - std::abs(at.x) * c);
            }
            const double sag = p.map.surface().flat() ? 1e-9 : 1e-3;
            CHECK(p.gaps.ceiling->distance_m <= ceiling + sag);
            CHECK(p.gaps.wall->distance_m <= wall + sag);
            check_close(p.gaps.ceiling->distance_m, ceiling,
                        absolute(0.3, "points some 0.1 m apart over the rim"));
        }
    }

    TEST_CASE("property: no column of air shows less clearance of a balcony than the gap says") {
        Dice dice(72);
        int over = 0, under = 0, cut = 0;
        for (int i = 0; i < 80; ++i) {
            INFO("seed 72, case ", i);
            const picture::PictureInput in = room_with_balcony(dice);
            const auto p = only_picture(in);
            const Balcony& one = in.balconies[0];
            double least_over = 1e9, least_under = 1e9;
            constexpr int kSteps = 12;
            for (int k = 0; k < kSteps * kSteps; ++k) {
                const double s = static_cast<double>(k % kSteps) / (kSteps - 1);
                const double t = static_cast<double>(k / kSteps) / (kSteps - 1);
                for (const bool front : {true, false}) {
                    const auto& c = (front ? one.fronts : one.floors)[0].corners;
                    const glm::dvec3 at =
                        (1 - s) * ((1 - t) * c[0] + t * c[1]) + s * ((1 - t) * c[3] + t * c[2]);
                    const auto column = tried_column(p, at, 0.05);
                    if (!column) continue;
                    const double foot = at.y - (front ? one.front_wall_m : 0.0);
                    if (front) least_over = std::min(least_over, column->low_m - at.y);
                    least_under = std::min(least_under, foot - column->high_m);
                }
            }
            if (least_over > 1e8) continue;
            REQUIRE(p.gaps.balcony);
            const double gap = p.gaps.balcony->distance_m;
            const double tried = std::max(least_over, least_under);
            CHECK(gap <= tried + 1e-9);
            check_close(gap, tried, absolute(0.6, "a cell of 12 x 12 and 0.05 m of height"));
            ++(gap < 0.0 ? cut : p.gaps.balcony->beam_over ? over : under);
        }
        CHECK(over > 5);
        CHECK(under > 5);
        CHECK(cut > 5);
    }

    TEST_CASE("property: the mirrored room has the same gaps, a doubled one twice as much") {
        Dice dice(73);
        for (int i = 0; i < 200; ++i) {
            INFO("seed 73, case ", i);
            const picture::PictureInput in = room_with_balcony(dice);
            const auto gaps = only_picture(in).gaps;
            const auto image = only_picture(mirrored(in)).gaps;
            const auto large = only_picture(doubled(in)).gaps;
            for (auto which : {&picture::BeamGaps::balcony, &picture::BeamGaps::ceiling,
                               &picture::BeamGaps::wall}) {
                REQUIRE((image.*which).has_value() == (gaps.*which).has_value());
                REQUIRE((large.*which).has_value() == (gaps.*which).has_value());
                if (!(gaps.*which)) continue;
                check_close((image.*which)->distance_m, (gaps.*which)->distance_m, kRounding);
                check_close((large.*which)->distance_m, 2.0 * (gaps.*which)->distance_m, kRounding);
            }
        }
    }
}
