// SPDX-License-Identifier: MIT
#include "picture/covering.hpp"

#include "picture/picture_study.hpp"
#include "picture/random_room.hpp"
#include "picture/throw.hpp"
#include "support/check.hpp"

#include <algorithm>

using namespace rakeline;
using namespace rakeline::tests;
using picture::Covering;
using picture::PictureInput;
using picture::ProjectedPicture;

namespace {

picture::Opening opening_of(const PictureInput& in) {
    return picture::masked_opening(in.screen, in.formats[0]);
}

Covering covering_of(const ProjectedPicture& p, const PictureInput& in, double scale) {
    const auto c = picture::covering(p.map, scale * p.gate_size_m, opening_of(in));
    REQUIRE(c);
    return *c;
}

/// Whether a gate lights every one of many points of the opening: by the map alone.
bool lights_all(const ProjectedPicture& p, glm::dvec2 gate_m, const picture::Opening& opening) {
    constexpr int kGrid = 40;
    for (int i = 0; i <= kGrid; ++i) {
        for (int j = 0; j <= kGrid; ++j) {
            const geometry::Rectangle& r = opening.uv;
            const auto g = p.map.gate_from_screen(
                {r.left + r.width() * i / kGrid, r.bottom + r.height() * j / kGrid});
            if (!g) return false;
            if (std::abs(g->x) > 0.5 * gate_m.x || std::abs(g->y) > 0.5 * gate_m.y) return false;
        }
    }
    return true;
}

/// The room with the lens at a focal length.
ProjectedPicture with_focal_length(PictureInput in, double focal_length_m) {
    in.projectors[0].formats[0].focal_length_m = focal_length_m;
    return only_picture(in);
}

/// Level with the middle of a flat upright screen, the gate of the opening's ratio, no shift.
PictureInput square_on(Dice& dice) {
    PictureInput in = random_room(dice);
    in.screen.radius_m = 0.0;
    in.screen.tilt_rad = 0.0;
    room::Projector& p = in.projectors[0];
    p.across_m = 0.0;
    p.up_m = in.screen.sill_m + 0.5 * in.screen.height_m;
    p.aim.roll_rad = 0.0;
    p.formats[0].shift_up = 0.0;
    p.formats[0].shift_across = 0.0;
    return in;
}

const Tolerance kRounding = absolute(1e-12, "rounding");

/// Of 2.5, 8 m wide where masking is four-way, in a frame of 10 m by 5 m.
picture::MaskStops stops(room::MaskingMode masking, room::MovingEdge edge) {
    room::Screen s;
    s.width_m = 10.0;
    s.height_m = 5.0;
    s.masking = masking;
    s.moving_edge = edge;
    return picture::mask_stops(s, {.name = "2.5", .aspect_ratio = 2.5, .opening_width_m = 8.0});
}

}  // namespace

TEST_SUITE("picture/covering") {
    TEST_CASE(
        "property: square-on with the exact focal length the scale is one and the rim lies "
        "on the opening") {
        Dice dice(301);
        for (int i = 0; i < 1000; ++i) {
            INFO("seed 301, case ", i);
            const ProjectedPicture p = only_picture(square_on(dice));
            REQUIRE(p.covering);
            check_close(p.covering->enlargement, 1.0, absolute(1e-12, "rounding"));
            CHECK(p.covering->covers());
            REQUIRE(p.covering->overfill);
            check_close(p.covering->overfill->least_m(), 0.0, absolute(1e-9, "rounding"));
        }
    }

    TEST_CASE("square-on, a picture a tenth too large stands half a tenth past each edge") {
        Dice dice(302);
        PictureInput in = square_on(dice);
        const picture::Opening o = opening_of(in);
        room::FormatUse& use = in.projectors[0].formats[0];
        use.focal_length_m = only_picture(in).focal_length_m;
        use.gate_width_m *= 1.1;
        use.gate_height_m *= 1.1;
        const ProjectedPicture p = only_picture(in);
        REQUIRE(p.covering->overfill);
        const picture::EdgeOverfill& over = *p.covering->overfill;
        const Tolerance rounding = absolute(1e-9, "rounding");
        check_close(p.covering->enlargement, 1.0 / 1.1, absolute(1e-12, "rounding"));
        check_close(over.left_m, 0.05 * o.width_m, rounding);
        check_close(over.right_m, 0.05 * o.width_m, rounding);
        check_close(over.top_m, 0.05 * o.height_m, rounding);
        check_close(over.bottom_m, 0.05 * o.height_m, rounding);
    }

    TEST_CASE("property: the gate enlarged by the scale fills the opening, a hair less does not") {
        Dice dice(303);
        for (int i = 0; i < 2000; ++i) {
            INFO("seed 303, case ", i);
            const PictureInput in = random_room(dice);
            const ProjectedPicture p = only_picture(in);
            REQUIRE(p.covering);
            const double k = p.covering->enlargement;
            CHECK(lights_all(p, k * (1.0 + 1e-9) * p.gate_size_m, opening_of(in)));
            CHECK(covering_of(p, in, k).covers());
            CHECK_FALSE(covering_of(p, in, 0.9999 * k).covers());
            // A curved edge reaches farthest between the grid's points, by less than this.
            CHECK_FALSE(lights_all(p, 0.999 * k * p.gate_size_m, opening_of(in)));
        }
    }

    TEST_CASE("property: the covering focal length fills the opening, a hair longer does not") {
        Dice dice(304);
        for (int i = 0; i < 2000; ++i) {
            INFO("seed 304, case ", i);
            const PictureInput in = random_room(dice);
            const ProjectedPicture p = only_picture(in);
            const auto f =
                picture::covering_focal_length(p.map, p.gate_size_m, *p.covering, p.throw_m);
            REQUIRE(f);
            const ProjectedPicture filled = with_focal_length(in, *f);
            check_close(filled.covering->enlargement, 1.0, absolute(1e-9, "rounding"));
            check_close(filled.uncovered, 0.0,
                        absolute(2e-5, "area of a curved opening by polylines"));
            CHECK(with_focal_length(in, 0.999 * *f).covering->covers());
            CHECK_FALSE(with_focal_length(in, 1.001 * *f).covering->covers());
        }
    }

    TEST_CASE("without shift the covering focal length is that of the image distance over k") {
        Dice dice(305);
        PictureInput in = random_room(dice);
        in.projectors[0].formats[0].shift_up = 0.0;
        in.projectors[0].formats[0].shift_across = 0.0;
        const ProjectedPicture p = only_picture(in);
        const double b = p.map.pose().image_distance_m / p.covering->enlargement;
        const auto f = picture::covering_focal_length(p.map, p.gate_size_m, *p.covering, p.throw_m);
        REQUIRE(f);
        check_close(picture::image_distance(*f, p.throw_m), b, relative(1e-12, "rounding"));
    }

    TEST_CASE("no focal length covers where the shift holds the axis outside the picture") {
        Dice dice(306);
        PictureInput in = square_on(dice);
        in.projectors[0].formats[0].shift_across = 0.6;  // of widths: the axis is off the gate
        const ProjectedPicture p = only_picture(in);
        REQUIRE(p.covering);
        CHECK_FALSE(picture::covering_focal_length(p.map, p.gate_size_m, *p.covering, p.throw_m));
    }

    TEST_CASE("property: the picture reaches past all four edges just where it covers") {
        Dice dice(307);
        int covering = 0;
        for (int i = 0; i < 2000; ++i) {
            INFO("seed 307, case ", i);
            const PictureInput in = random_room(dice);
            const ProjectedPicture p =
                with_focal_length(in, only_picture(in).focal_length_m * dice.between(0.7, 1.05));
            REQUIRE(p.covering->overfill);
            const double least = p.covering->overfill->least_m();
            if (std::abs(least) < 1e-4) continue;  // a curved rim between samples
            CHECK(p.covering->covers() == (least > 0.0));
            covering += p.covering->covers() ? 1 : 0;
        }
        CHECK(covering > 200);
        CHECK(covering < 1800);
    }

    TEST_CASE("property: a mirrored room mirrors the overfill and keeps the scale") {
        Dice dice(308);
        for (int i = 0; i < 1000; ++i) {
            INFO("seed 308, case ", i);
            PictureInput in = random_room(dice);
            const Covering a = *only_picture(in).covering;
            room::Projector& m = in.projectors[0];
            m.across_m = -m.across_m;
            m.aim.roll_rad = -m.aim.roll_rad;
            m.formats[0].shift_across = -m.formats[0].shift_across;
            const Covering b = *only_picture(in).covering;
            const Tolerance rounding = absolute(1e-9, "rounding");
            check_close(b.enlargement, a.enlargement, rounding);
            check_close(b.overfill->left_m, a.overfill->right_m, rounding);
            check_close(b.overfill->right_m, a.overfill->left_m, rounding);
            check_close(b.overfill->top_m, a.overfill->top_m, rounding);
            check_close(b.overfill->bottom_m, a.overfill->bottom_m, rounding);
        }
    }

    TEST_CASE("golden: four-way masks stand about the middle of a frame of 10 m by 5 m") {
        const auto m = stops(room::MaskingMode::four_way, room::MovingEdge::both);
        check_close(m.left_m, 4.0, kRounding);
        check_close(m.right_m, 4.0, kRounding);
        check_close(m.top_m, 1.6, kRounding);
        check_close(m.bottom_m, 1.6, kRounding);
    }

    TEST_CASE("golden: with common width the top mask comes down and the bottom stays") {
        const auto m = stops(room::MaskingMode::common_width, room::MovingEdge::top);
        check_close(m.left_m, 5.0, kRounding);
        check_close(m.top_m, 1.5, kRounding);  // 10 / 2.5 = 4 high, from -2.5 up
        check_close(m.bottom_m, 2.5, kRounding);
    }

    TEST_CASE("golden: fixed masks stand at the frame whatever the format") {
        const auto m = stops(room::MaskingMode::fixed, room::MovingEdge::both);
        check_close(m.left_m, 5.0, kRounding);
        check_close(m.top_m, 2.5, kRounding);
        check_close(m.bottom_m, 2.5, kRounding);
    }

    TEST_CASE("golden: on a curved screen the stops run along the surface") {
        room::Screen s;
        s.width_m = 10.0;
        s.height_m = 4.0;
        s.radius_m = 10.0;
        const auto m =
            picture::mask_stops(s, {.name = "2", .aspect_ratio = 2.0, .opening_width_m = {}});
        check_close(m.right_m, 10.0 * std::asin(0.4), kRounding);  // chord 8 m: half 4 of 10
        check_close(m.left_m, m.right_m, kRounding);
    }
}
