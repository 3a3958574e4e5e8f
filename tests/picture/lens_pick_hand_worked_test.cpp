// SPDX-License-Identifier: MIT
/// A lens table for a small room, worked on paper from the thin-lens equation alone.
///
/// The room: a flat upright screen 6.000 m wide and 2.500 m high, its face 1.000 m from the screen
/// wall; the projector level with its middle and on the centre line, the lens 13.000 m back, so the
/// throw is D = 12.000 m. Format 2.4: opening 6.000 m by 2.500 m. Gate 24.0 mm by 10.0 mm,
/// square-on and unshifted, so that gate and opening have one shape and one number tells all.
///
///     wanted   f = A D / (W + A) = 0.024 * 12 / 6.024         = 47.8088 mm
///     width    W = A (D - f) / f
///     over     (W - 6.000) / 2 past each side
///     crop     1 - (6.000 / W)^2 of the gate, for a picture larger than the opening
///     ratio    D / W
///
///     f 45 mm  W = 0.024 * 11.955 / 0.045 = 6.3760 m   over +188.0 mm   crop 11.45 %  ratio 1.882
///     f 47 mm  W = 0.024 * 11.953 / 0.047 = 6.1037 m   over  +51.8 mm   crop  3.37 %  ratio 1.966
///     f 50 mm  W = 0.024 * 11.950 / 0.050 = 5.7360 m   over -132.0 mm   crop  0       ratio 2.092
///     zoom 40 to 60 mm, set to 47.8088:     6.0000 m          0.0 mm   crop  0
///              at 40 mm 0.024 * 11.960 / 0.040 = 7.1760 m                            ratio 1.672
///              at 60 mm 0.024 * 11.940 / 0.060 = 4.7760 m                            ratio 2.513
///
///     left dark at 50 mm: 1 - (5.736 / 6)^2 = 8.61 %
///     image circle: hypot(24, 10) = 26.0 mm exactly
///
/// Port: the wall stands 12.700 m back, 0.300 m before the lens, and the screen 12 m: a share of
/// 0.300 / 12 = 0.025 of the way. At 47 mm and f/2 the corner of the picture (3.0519 m across,
/// 0.024 : 0.010 of that, 1.2716 m up) passes at 76.3 mm across and 31.8 mm up. Pupil 47 / 2 / 2 =
/// 11.75 mm in radius, 11.75 * 0.975 = 11.46 mm at the wall. In a port of 200 mm by 100 mm:
///     across 100 - 76.30 - 11.46 = 12.25 mm      up 50 - 31.79 - 11.46 = 6.75 mm: the margin.
#include "picture/lens_pick.hpp"
#include "picture/lens_words.hpp"
#include "support/check.hpp"

using namespace rakeline;
using namespace rakeline::tests;
using picture::LensChoice;

namespace {

picture::PictureInput small_room() {
    picture::PictureInput in;
    in.screen.width_m = 6.0;
    in.screen.height_m = 2.5;
    in.screen.sill_m = 1.0;
    in.screen.setback_m = 1.0;
    in.formats = {{.name = "2.4", .aspect_ratio = 2.4, .opening_width_m = {}}};
    in.booth_wall_back_m = 12.7;
    room::Projector p;
    p.kind = room::SourceKind::film;
    p.up_m = 2.25;
    p.back_m = 13.0;
    p.port.up_m = 2.25;
    p.port.width_m = 0.2;
    p.port.height_m = 0.1;
    room::FormatUse use;
    use.format = "2.4";
    use.gate_width_m = 0.024;
    use.gate_height_m = 0.010;
    p.formats = {use};
    in.projectors = {p};
    return in;
}

room::Lens lens(const char* name, double short_m, double long_m, double circle_m) {
    return {.name = name,
            .kind = short_m == long_m ? room::LensKind::prime : room::LensKind::zoom,
            .focal_length_m = short_m,
            .focal_length_long_m = long_m,
            .f_number = 2.0,
            .image_circle_m = circle_m,
            .shift_up_max = 0.0,
            .shift_across_max = 0.0};
}

/// In the catalogue's order: two primes that cover, one that doesn't, a zoom.
const std::vector<room::Lens> kLenses{
    lens("50 mm", 0.050, 0.050, 0.030), lens("45 mm", 0.045, 0.045, 0.026),
    lens("47 mm", 0.047, 0.047, 0.030), lens("40 to 60 mm", 0.040, 0.060, 0.030)};

picture::LensPick small_pick() {
    return *picture::pick_lens(small_room(), 0, 0, kLenses);
}

}  // namespace

TEST_SUITE("picture/lens_pick hand worked") {
    TEST_CASE("golden: what the small room asks of a lens") {
        const picture::LensPick p = small_pick();
        REQUIRE(p.wish);
        check_close(p.wish->demand.throw_m, 12.0, printed_digits(3));
        check_close(1e3 * p.wish->focal_length_m, 47.8088, printed_digits(4));
        REQUIRE(p.wish->covering_focal_length_m);
        check_close(1e3 * *p.wish->covering_focal_length_m, 47.8088, printed_digits(4));
        check_close(1e3 * p.wish->demand.image_circle_m, 26.0, printed_digits(1));
    }

    TEST_CASE(
        "golden: the order, the zoom first, then the primes by light lost, the dark one last") {
        const picture::LensPick p = small_pick();
        REQUIRE(p.choices.size() == 4);
        CHECK(p.choices[0].lens == 3);
        CHECK(p.choices[1].lens == 2);
        CHECK(p.choices[2].lens == 1);
        CHECK(p.choices[3].lens == 0);
        CHECK(p.best() == &p.choices[0]);
    }

    TEST_CASE("golden: width, overfill, crop and throw ratio of each lens") {
        struct Row {
            double focal_mm, width_m, over_mm, crop_percent, ratio_short, ratio_long;
        };
        const Row table[] = {{47.8088, 6.0000, 0.0, 0.00, 1.672, 2.513},
                             {47.0000, 6.1037, 51.8, 3.37, 1.966, 1.966},
                             {45.0000, 6.3760, 188.0, 11.45, 1.882, 1.882},
                             {50.0000, 5.7360, -132.0, 0.00, 2.092, 2.092}};
        const picture::LensPick p = small_pick();
        for (std::size_t i = 0; i < 4; ++i) {
            const LensChoice& c = p.choices.at(i);
            INFO(kLenses.at(static_cast<std::size_t>(c.lens)).name);
            REQUIRE(c.picture);
            REQUIRE(c.picture->overfill);
            check_close(1e3 * c.focal_length_m, table[i].focal_mm, printed_digits(4));
            check_close(*c.picture_width_m, table[i].width_m, printed_digits(4));
            check_close(1e3 * c.picture->overfill->left_m, table[i].over_mm, printed_digits(1));
            check_close(1e3 * c.picture->overfill->right_m, table[i].over_mm, printed_digits(1));
            check_close(100.0 * c.picture->crop, table[i].crop_percent, printed_digits(2));
            check_close(*c.reach.throw_ratio_short, table[i].ratio_short, printed_digits(3));
            check_close(*c.reach.throw_ratio_long, table[i].ratio_long, printed_digits(3));
        }
    }

    TEST_CASE("golden: the 50 mm lens leaves 8.61 % dark, 132 mm at each side") {
        const picture::LensPick p = small_pick();
        CHECK_FALSE(p.choices[3].covers());
        check_close(100.0 * p.choices[3].picture->uncovered, 8.61, printed_digits(2));
        CHECK(picture::lens_faults(p.choices[3], base::UnitSystem::metric).find("132.0 mm") !=
              std::string::npos);
    }

    TEST_CASE("golden: the 47 mm lens clears the port by 6.75 mm, the circle by 4.0 mm") {
        const LensChoice c = small_pick().choices[1];
        REQUIRE(c.picture->port_margin_m);
        check_close(1e3 * *c.picture->port_margin_m, 6.75, printed_digits(2));
        check_close(1e3 * c.reach.image_circle_spare_m, 4.0, printed_digits(1));
    }

    TEST_CASE("a port 20 mm lower cuts into every beam and no lens fits") {
        picture::PictureInput in = small_room();
        in.projectors[0].port.up_m -= 0.02;
        const auto p = picture::pick_lens(in, 0, 0, kLenses);
        REQUIRE(p);
        CHECK(p->best() == nullptr);
        CHECK(p->choices.front().covers());
        check_close(1e3 * *p->choices[1].picture->port_margin_m, 6.75 - 20.0, printed_digits(2));
    }

    TEST_CASE("an image circle that the gate's corners reach exactly fits") {
        const LensChoice c = small_pick().choices[2];  // 45 mm, circle 26.0 mm
        check_close(c.reach.image_circle_spare_m, 0.0, absolute(1e-12, "rounding"));
        CHECK(c.fits());
    }
}
