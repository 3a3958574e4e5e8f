// SPDX-License-Identifier: MIT
#include "picture/focus.hpp"

#include "picture/random_room.hpp"
#include "support/check.hpp"

#include <algorithm>

using namespace rakeline;
using namespace rakeline::tests;
using picture::Focus;

namespace {

constexpr double kFNumber = 2.0;

/// A digital projector 20 m before a flat screen, level with its centre.
picture::PictureInput plain_room(double tilt_deg) {
    picture::PictureInput in;
    in.screen.width_m = 10.0;
    in.screen.height_m = 4.0;
    in.screen.sill_m = 2.0;
    in.screen.setback_m = 1.0;
    in.screen.tilt_rad = base::radians(tilt_deg);
    in.formats = {{.name = "2.39", .aspect_ratio = 2.39, .opening_width_m = {}}};
    room::Projector p;
    p.up_m = 4.0;
    p.back_m = 21.0;
    p.formats = {room::FormatUse{}};
    in.projectors = {p};
    in.booth_wall_back_m = 20.5;
    return in;
}

Focus focus_of(const picture::PictureInput& in, double f_number) {
    const auto study = picture::study_picture(in);
    REQUIRE(study.pictures.size() == 1);
    const auto focus = picture::best_focus(study.pictures[0].map, study.openings[0], f_number);
    REQUIRE(focus);
    return *focus;
}

/// The same room with every length times `scale`.
picture::PictureInput scaled(picture::PictureInput in, double scale) {
    room::Projector& p = in.projectors[0];
    for (double* length : {&in.screen.width_m, &in.screen.height_m, &in.screen.sill_m,
                           &in.screen.setback_m, &in.screen.radius_m, &p.across_m, &p.up_m,
                           &p.back_m, &p.formats[0].gate_width_m, &p.formats[0].gate_height_m}) {
        *length *= scale;
    }
    return in;
}

/// Distances along the axis all over the opening.
std::vector<double> grid_distances(const picture::PictureStudy& study) {
    const auto& map = study.pictures.at(0).map;
    std::vector<double> out;
    constexpr int kSteps = 40;
    for (int i = -kSteps; i <= kSteps; ++i) {
        for (int j = -kSteps; j <= kSteps; ++j) {
            const auto point = picture::opening_point(map.surface(), study.openings.at(0),
                                                      i / double{kSteps}, j / double{kSteps});
            out.push_back(glm::dot(point - map.pose().lens, map.pose().axis));
        }
    }
    return out;
}

double worst_at(const std::vector<double>& distances, double pupil_m, double focused_m) {
    double worst = 0.0;
    for (const double d : distances)
        worst = std::max(worst, picture::blur(pupil_m, d, focused_m));
    return worst;
}

}  // namespace

TEST_SUITE("picture/focus") {
    TEST_CASE("blur by hand: a 25 mm pupil focused at 20 m") {
        const Tolerance rounding = relative(1e-14, "rounding");
        check_close(picture::blur(0.025, 21.0, 20.0), 0.00125, rounding);
        check_close(picture::blur(0.025, 19.0, 20.0), 0.00125, rounding);
        CHECK(picture::blur(0.025, 20.0, 20.0) == 0.0);
    }

    TEST_CASE("blur is the width of a cone of rays traced from the rim of the pupil") {
        const double pupil = 0.03;
        const double focused = 17.0;
        const double distance = 15.5;
        // From (0, +a/2) and (0, -a/2) to the point (17, 0.4), cut at 15.5.
        const auto height_at = [&](double start) {
            return start + (0.4 - start) * distance / focused;
        };
        check_close(picture::blur(pupil, distance, focused),
                    std::abs(height_at(0.5 * pupil) - height_at(-0.5 * pupil)),
                    relative(1e-12, "rounding"));
    }

    TEST_CASE("a flat screen square to the axis is sharp all over, best focused at the throw") {
        const Focus focus = focus_of(plain_room(0.0), kFNumber);
        CHECK(focus.worst_blur_m == 0.0);
        check_close(focus.best_m, 20.0, relative(1e-14, "rounding"));
    }

    TEST_CASE("a tilted screen by hand") {
        const Focus focus = focus_of(plain_room(10.0), kFNumber);
        // The picture fills the frame's width at 2.39: 9.56 m by 4 m; 2 m of it each way of the
        // middle lean by sin 10 degrees = 0.173648, so 20 m -+ 0.347296 m.
        check_close(focus.nearest_m, 19.652704, printed_digits(6));
        check_close(focus.farthest_m, 20.347296, printed_digits(6));
        check_close(focus.worst_blur_m, focus.pupil_m * 0.347296 / 20.0,
                    relative(1e-5, "six digits of the hand value"));
    }

    TEST_CASE("a curved screen by hand: the middle is farthest, the edges nearer by the sagitta") {
        auto in = plain_room(0.0);
        in.screen.radius_m = 15.0;
        const Focus focus = focus_of(in, kFNumber);
        // Chord 9.56 m, so the sagitta is 15 - sqrt(15^2 - 4.78^2) = 0.781997 m.
        check_close(focus.farthest_m, 20.0, relative(1e-12, "rounding"));
        check_close(20.0 - focus.nearest_m, 0.781997, printed_digits(6));
    }

    TEST_CASE("property: blur grows with the tilt") {
        double last = 0.0;
        for (const double tilt : {1.0, 2.0, 4.0, 8.0, 12.0, 16.0}) {
            const double now = focus_of(plain_room(tilt), kFNumber).worst_blur_m;
            CHECK(now > last);
            last = now;
        }
    }

    TEST_CASE("property: twice the f-number halves the blur and leaves the best focus") {
        Dice dice(71);
        for (int i = 0; i < 200; ++i) {
            INFO("seed 71, case ", i);
            const auto in = random_room(dice);
            const Focus open = focus_of(in, kFNumber);
            const Focus stopped = focus_of(in, 2.0 * kFNumber);
            check_close(stopped.worst_blur_m, 0.5 * open.worst_blur_m, relative(1e-13, "rounding"));
            CHECK(stopped.best_m == open.best_m);
        }
    }

    TEST_CASE("property: all lengths doubled, blur doubles") {
        Dice dice(72);
        for (int i = 0; i < 200; ++i) {
            INFO("seed 72, case ", i);
            const auto in = random_room(dice);
            const Focus once = focus_of(in, kFNumber);
            const Focus twice = focus_of(scaled(in, 2.0), kFNumber);
            check_close(twice.worst_blur_m, 2.0 * once.worst_blur_m, relative(1e-9, "rounding"));
            check_close(twice.worst_gate_blur_m, 2.0 * once.worst_gate_blur_m,
                        relative(1e-9, "rounding"));
            check_close(twice.best_m, 2.0 * once.best_m, relative(1e-12, "rounding"));
        }
    }

    TEST_CASE("property: the blur over a detail is the same in a room of half the size") {
        Dice dice(75);
        for (int i = 0; i < 200; ++i) {
            INFO("seed 75, case ", i);
            const auto in = random_room(dice);
            const double grain = dice.between(2e-6, 2e-5);
            const auto ratio = [&](double scale) {
                const auto map = only_picture(scaled(in, scale)).map;
                const auto detail = picture::detail_size(map, scale * grain);
                REQUIRE(detail);
                return focus_of(scaled(in, scale), kFNumber).worst_blur_m / *detail;
            };
            check_close(ratio(0.5), ratio(1.0), relative(1e-9, "rounding"));
        }
    }

    TEST_CASE("property: a blur field is nowhere worse than the worst, which its corners hold") {
        Dice dice(76);
        for (int i = 0; i < 200; ++i) {
            INFO("seed 76, case ", i);
            auto in = random_room(dice);
            in.screen.radius_m = 0.0;  // then both ends of the distance are corners
            const auto study = picture::study_picture(in);
            const auto& map = study.pictures.at(0).map;
            const auto& opening = study.openings.at(0);
            const Focus focus = *picture::best_focus(map, opening, kFNumber);
            const auto field = picture::blur_field(map, opening, focus, 9, 7);
            REQUIRE(field.blur_m.size() == 63);
            const double worst = *std::max_element(field.blur_m.begin(), field.blur_m.end());
            check_close(worst, focus.worst_blur_m, relative(1e-9, "rounding of the difference"));
            const double corner =
                std::max({field.at(0, 0), field.at(8, 0), field.at(0, 6), field.at(8, 6)});
            CHECK(corner == worst);
            const auto middle =
                picture::blur_at(map, opening.uv.centre(), focus.pupil_m, focus.best_m);
            REQUIRE(middle);
            check_close(field.at(4, 3), *middle, relative(1e-6, "rounding of the difference"));
        }
    }

    TEST_CASE("property: to focus nearer or farther than the best blurs the worst place more") {
        Dice dice(77);
        for (int i = 0; i < 300; ++i) {
            INFO("seed 77, case ", i);
            const auto study = picture::study_picture(random_room(dice));
            const auto focus =
                picture::best_focus(study.pictures.at(0).map, study.openings.at(0), kFNumber);
            REQUIRE(focus);
            const auto worst = [&](double focused_m) {
                return std::max(picture::blur(focus->pupil_m, focus->nearest_m, focused_m),
                                picture::blur(focus->pupil_m, focus->farthest_m, focused_m));
            };
            const double step = dice.between(1e-4, 0.3) * focus->best_m;
            CHECK(worst(focus->best_m - step) > focus->worst_blur_m);
            CHECK(worst(focus->best_m + step) > focus->worst_blur_m);
        }
    }

    TEST_CASE("property: the range is that of a dense grid, and its end is never passed") {
        Dice dice(73);
        for (int i = 0; i < 300; ++i) {
            INFO("seed 73, case ", i);
            const auto study = picture::study_picture(random_room(dice));
            const auto focus =
                picture::best_focus(study.pictures.at(0).map, study.openings.at(0), kFNumber);
            REQUIRE(focus);
            const auto distances = grid_distances(study);
            const auto [least, greatest] = std::minmax_element(distances.begin(), distances.end());
            const Tolerance step = absolute(2e-3, "sagitta over half a step of the grid");
            check_close(focus->nearest_m, *least, step);
            check_close(focus->farthest_m, *greatest, step);
            CHECK(focus->nearest_m <= *least + 1e-12);
            CHECK(focus->farthest_m >= *greatest - 1e-12);
        }
    }

    TEST_CASE("property: no other focus has a smaller worst blur") {
        Dice dice(74);
        for (int i = 0; i < 50; ++i) {
            INFO("seed 74, case ", i);
            const auto study = picture::study_picture(random_room(dice));
            const auto focus =
                picture::best_focus(study.pictures.at(0).map, study.openings.at(0), kFNumber);
            REQUIRE(focus);
            const auto distances = grid_distances(study);
            double best = 1e9;
            double best_m = 0.0;
            const double step = (focus->farthest_m - focus->nearest_m) / 400.0;
            for (int k = 0; k <= 400; ++k) {
                const double focused = focus->nearest_m + k * step;
                const double worst = worst_at(distances, focus->pupil_m, focused);
                if (worst < best) {
                    best = worst;
                    best_m = focused;
                }
            }
            const double slack = focus->pupil_m * (2e-3 + step) / focus->best_m;
            check_close(focus->worst_blur_m, best, absolute(slack, "steps of grid and focus"));
            check_close(focus->best_m, best_m, absolute(2e-3 + step, "steps of grid and focus"));
        }
    }

    TEST_CASE("refuses: an opening that runs behind the lens has no focus") {
        auto in = plain_room(0.0);
        const auto study = picture::study_picture(in);
        picture::Pose pose = study.pictures.at(0).map.pose();
        pose.axis = {1.0, 0.0, 0.0};
        pose.right = {0.0, 0.0, 1.0};
        const picture::PictureMap aside(study.surface, pose);
        CHECK_FALSE(picture::best_focus(aside, study.openings.at(0), kFNumber));
    }

    TEST_CASE("a blur field runs from the left at the bottom to the right at the top") {
        auto in = plain_room(6.0);  // the top leans back, away from the lens
        in.projectors[0].across_m = -3.0;
        const auto study = picture::study_picture(in);
        const auto& map = study.pictures.at(0).map;
        const auto& opening = study.openings.at(0);
        const auto focus = picture::best_focus(map, opening, kFNumber);
        REQUIRE(focus);
        const auto field = picture::blur_field(map, opening, *focus, 3, 2);
        const auto at = [&](double u, double v) {
            return *picture::blur_at(map, {u, v}, focus->pupil_m, focus->best_m);
        };
        CHECK(field.at(0, 0) == at(opening.uv.left, opening.uv.bottom));
        CHECK(field.at(2, 0) == at(opening.uv.right, opening.uv.bottom));
        CHECK(field.at(0, 1) == at(opening.uv.left, opening.uv.top));
        CHECK(field.at(2, 1) == at(opening.uv.right, opening.uv.top));
        CHECK(field.at(0, 0) != field.at(2, 0));
        CHECK(field.at(0, 0) != field.at(0, 1));
    }

    TEST_CASE("behind the lens there is no blur to speak of") {
        auto in = plain_room(0.0);
        in.projectors[0].aim.mode = room::AimMode::angles;
        const auto study = picture::study_picture(in);
        picture::Pose pose = study.pictures.at(0).map.pose();
        pose.axis = -pose.axis;
        const picture::PictureMap turned(study.surface, pose);
        CHECK_FALSE(picture::blur_at(turned, {0.0, 0.0}, 0.03, 20.0));
    }

    TEST_CASE("half a line pair at 50 line pairs a millimetre is 10 micrometres, projected") {
        check_close(picture::film_detail(50.0), 10e-6, relative(1e-14, "rounding"));
        auto in = plain_room(0.0);
        const auto p = only_picture(in);
        const double f = p.focal_length_used_m;
        check_close(*picture::detail_size(p.map, 10e-6), 10e-6 * (20.0 - f) / f,
                    relative(1e-12, "rounding"));
    }

    TEST_CASE("an anamorphic picture's upright detail is not drawn out by the squeeze") {
        auto in = plain_room(0.0);
        room::FormatUse& use = in.projectors[0].formats[0];
        use.squeeze = 2.0;
        const auto p = only_picture(in);
        const double f = p.focal_length_used_m;
        check_close(*picture::detail_size(p.map, 10e-6), 10e-6 * (20.0 - f) / f,
                    relative(1e-12, "rounding"));
    }

    TEST_CASE("square-on, a pixel is its pitch times (D - f) / f") {
        const auto p = only_picture(plain_room(0.0));
        const double f = p.focal_length_used_m;
        const auto size = picture::pixel_size(p.map, 13.68e-6);
        REQUIRE(size);
        check_close(*size, 13.68e-6 * (20.0 - f) / f, relative(1e-12, "rounding"));
        // 2048 of them make the picture's width.
        check_close(2048.0 * *size, 4.0 * 2.39, relative(1e-12, "rounding"));
    }
}
