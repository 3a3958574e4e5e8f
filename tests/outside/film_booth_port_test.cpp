// SPDX-License-Identifier: MIT
// Source: a booklet of 1953 for exhibitors of anamorphic 35 mm film of 2.55 : 1, p. 4: the port's
// width is 2.00 d/f + 4 in, with d from the lens's face to the outer face of the booth wall and f
// the focal length, all in inches; example d 25, f 5. (It prints "10.00 - 4 = 14"; the rule, and
// 14, want plus.) Aperture 0.912 x 0.715 in, p. 3. The rule is one of thumb that has to hold for
// every lens of its day, so it brackets what the exact light needs and does not equal it.
#include "base/units.hpp"
#include "picture/picture_study.hpp"
#include "support/check.hpp"

using namespace rakeline;
using namespace rakeline::tests;

namespace {

constexpr double kInch_m = base::kMetresPerInch;

double rule_m(double distance_in, double focal_length_in) {
    return (2.00 * distance_in / focal_length_in + 4.0) * kInch_m;
}

/// The opening that a square-on 2.55 picture needs, with an f-number of its day, and the part of
/// it that the rays through the lens's middle need.
struct Needed {
    double all_m = 0.0;
    double middle_m = 0.0;
};

Needed needed(double distance_in, double focal_length_in, double f_number) {
    picture::PictureInput in;
    const double focal_m = focal_length_in * kInch_m;
    constexpr double kThrow_m = 30.0;
    in.screen.width_m = 2.0 * 0.912 * kInch_m * (kThrow_m - focal_m) / focal_m;
    in.screen.height_m = in.screen.width_m / 2.55;
    in.screen.setback_m = 1.0;
    in.formats = {{.name = "2.55", .aspect_ratio = 2.55, .opening_width_m = {}}};
    in.lenses = {{.name = "prime",
                  .focal_length_m = focal_m,
                  .focal_length_long_m = focal_m,
                  .f_number = f_number}};
    room::Projector p;
    p.kind = room::SourceKind::film;
    p.up_m = in.screen.sill_m + 0.5 * in.screen.height_m;
    p.back_m = in.screen.setback_m + kThrow_m;
    room::FormatUse use;
    use.format = "2.55";
    use.gate_width_m = 0.912 * kInch_m;
    use.gate_height_m = 0.715 * kInch_m;
    use.squeeze = 2.0;
    use.lens = "prime";
    p.formats = {use};
    in.projectors = {p};
    in.booth_wall_back_m = p.back_m - distance_in * kInch_m;
    const auto study = picture::study_picture(in);
    const auto with_pupil = picture::port_opening(study, 0);
    in.projectors[0].formats[0].lens.clear();
    const auto without = picture::port_opening(picture::study_picture(in), 0);
    REQUIRE(with_pupil);
    REQUIRE(without);
    return {with_pupil->width(), without->width()};
}

}  // namespace

TEST_SUITE("outside/film_booth_port") {
    TEST_CASE("golden: the printed example, 25 in before the wall with 5 in, wants 14 in") {
        check_close(rule_m(25.0, 5.0) / kInch_m, 14.0, absolute(1e-12, "rounding"));
        const Needed port = needed(25.0, 5.0, 2.0);
        CHECK(port.all_m < rule_m(25.0, 5.0));
        CHECK(port.all_m > 0.75 * rule_m(25.0, 5.0));
    }

    TEST_CASE(
        "the rule passes all the light, and gives away no more than its own 4 in and a tenth") {
        // Rays through the lens's middle need 2 x 0.912 (1 - f/D) d/f, which 2.00 d/f rounds up by
        // a tenth and a little; the 4 in are for the pupil of up to f / 1.8, and for play.
        for (const double focal_in : {2.5, 3.0, 4.0, 5.0, 6.0, 7.0}) {
            for (const double distance_in : {6.0, 12.0, 25.0, 40.0}) {
                for (const double f_number : {1.8, 2.0, 2.4}) {
                    INFO("f ", focal_in, " in, d ", distance_in, " in, f-number ", f_number);
                    const Needed port = needed(distance_in, focal_in, f_number);
                    const double rule = rule_m(distance_in, focal_in);
                    CHECK(port.all_m <= rule);
                    const double slope = 2.00 * distance_in / focal_in * kInch_m;
                    CHECK(port.middle_m <= slope);
                    CHECK(port.middle_m >= 0.9 * slope);
                    CHECK(rule - port.all_m <= 4.0 * kInch_m + 0.1 * slope);
                }
            }
        }
    }
}
