// SPDX-License-Identifier: MIT
#include "light/curvature_help.hpp"

#include "light/lit_room.hpp"
#include "support/check.hpp"

#include <algorithm>

using namespace rakeline;
using light::CurvatureHelp;
using light::CurvatureInput;
using light::CurvatureTrial;
using tests::check_close;
using tests::LitRoom;

namespace {

const tests::Tolerance kRounding = tests::relative(1e-12, "rounding");

CurvatureInput input_of(const LitRoom& r) {
    CurvatureInput in;
    in.pictures.screen = r.screen;
    in.pictures.formats = {r.format};
    in.pictures.projectors = {r.projector};
    in.pictures.booth_wall_back_m = r.booth_wall_back_m;
    in.light = {.screen = r.screen,
                .projectors = {r.projector},
                .eyes = r.eyes,
                .reference_seat = r.reference_seat};
    return in;
}

/// An angle-reflective surface of a strong lobe, the lens on the picture's axis and an eye there.
LitRoom lens_and_eye_on_axis() {
    LitRoom r = tests::square_on_film_room(10.0, 2.0);
    r.screen.surface.lobe = room::LobeKind::mirror;
    r.screen.surface.peak_gain = 2.4;
    r.screen.surface.matte_gain = 0.2;
    r.screen.surface.half_gain_angle_rad = base::radians(20.0);
    r.screen.setback_m = 2.0;
    r.projector.back_m = 22.0;
    r.eyes = {{0.0, r.projector.up_m, r.projector.back_m}};
    return r;
}

}  // namespace

TEST_SUITE("light/curvature_help") {
    TEST_CASE("golden: a sagitta of 5 % of the chord is a radius of 2.525 chords") {
        // UNIC, How to design a cinema auditorium, 2nd ed. 2020, as reported: sagitta 5 % of the
        // chord; W = 20 m, 1.0 m: R 50.5 m, arc 20.133 m.
        check_close(light::radius_of_sagitta(1.0, 0.05), 2.525, kRounding);
        check_close(light::radius_of_sagitta(20.0, 0.05), 50.5, kRounding);
        check_close(20.0 * light::sagitta_fraction(20.0, 50.5), 1.0, kRounding);
        const geometry::Patch patch = geometry::standing_patch({0, 0, 0}, 50.5, 0.0);
        check_close(2.0 * *geometry::half_arc_of_chord(patch, 20.0), 20.133,
                    tests::printed_digits(3));
    }

    TEST_CASE("round trip: radius to sagitta and back, flat and nearly flat too") {
        std::mt19937 random(81);
        std::uniform_real_distribution<double> unit(0.0, 1.0);
        CHECK(light::radius_of_sagitta(12.0, 0.0) == 0.0);
        CHECK(light::sagitta_fraction(12.0, 0.0) == 0.0);
        for (int i = 0; i < 100; ++i) {
            const double chord = 4.0 + 20.0 * unit(random);
            const double sagitta = std::pow(10.0, -5.0 * unit(random)) * 0.3;
            check_close(light::sagitta_fraction(chord, light::radius_of_sagitta(chord, sagitta)),
                        sagitta, tests::relative(1e-10, "rounding of a small difference"));
        }
    }

    TEST_CASE("property: a trial is the study of the room with that surface") {
        std::mt19937 random(82);
        std::uniform_real_distribution<double> unit(0.0, 1.0);
        for (int i = 0; i < 20; ++i) {
            LitRoom r = tests::random_room(random);
            r.screen.surface = i % 2 ? tests::random_lobe(random) : tests::random_measured(random);
            const double radius =
                unit(random) < 0.3 ? 0.0 : r.screen.width_m * (1.5 + unit(random));
            const double tilt = base::radians(4.0 * unit(random) - 2.0);
            const auto trial = light::try_surface(input_of(r), radius, tilt);
            r.screen.radius_m = radius;
            r.screen.tilt_rad = tilt;
            const auto picture = tests::picture_of(r);
            const light::PictureLight light = tests::light_of(r).lights.front();
            REQUIRE(trial);
            double sides = 1e9;
            double lowest = 1e9;
            double highest = 0.0;
            for (int seat = 0; seat < static_cast<int>(r.eyes.size()); ++seat) {
                sides = std::min(sides, *light::side_ratio(light, seat));
                for (int p = 0; p < light::kPointCount; ++p) {
                    const double here =
                        light::luminance_cdm2(light, seat, static_cast<light::PicturePoint>(p));
                    lowest = std::min(lowest, here);
                    highest = std::max(highest, here);
                }
            }
            CHECK(trial->side_ratio == sides);
            CHECK(*light::side_ratio(light, trial->side_seat) == sides);
            CHECK(trial->lowest_cdm2 == lowest);
            CHECK(trial->highest_cdm2 == highest);
            CHECK(trial->evenness == lowest / highest);
            CHECK(trial->crop == picture.pictures.front().crop);
            CHECK(trial->throw_m == picture.pictures.front().throw_m);
        }
    }

    TEST_CASE("a surface bent about the lens returns the sides to it: even where flat is not") {
        // From the axis of the cylinder every level ray meets the sheet square and comes back to
        // the lens, where the eye is: the full gain left and right. On a flat sheet the mirrored
        // ray leaves by twice its angle.
        const LitRoom r = lens_and_eye_on_axis();
        const CurvatureInput in = input_of(r);
        const double throw_m = r.projector.back_m - r.screen.setback_m;
        const auto flat = light::try_surface(in, 0.0, 0.0);
        const auto bent = light::try_surface(in, throw_m, 0.0);
        REQUIRE(flat);
        REQUIRE(bent);
        CHECK(bent->side_ratio > 1.2 * flat->side_ratio);
        CHECK(bent->evenness > 1.2 * flat->evenness);
        const CurvatureHelp help = light::curvature_help(in);
        REQUIRE(help.best_curve);
        const CurvatureTrial& best = help.curves[static_cast<std::size_t>(*help.best_curve)];
        CHECK(best.radius_m > 0.7 * throw_m);
        CHECK(best.radius_m < 1.4 * throw_m);
    }

    TEST_CASE("for lens and eyes on the axis level with the picture's middle no tilt is best") {
        const CurvatureHelp help = light::curvature_help(input_of(lens_and_eye_on_axis()));
        REQUIRE(help.best_tilt);
        CHECK(help.tilts[static_cast<std::size_t>(*help.best_tilt)].tilt_rad == 0.0);
    }

    TEST_CASE("property: the most even stands clear of the wall, and none that does is more even") {
        std::mt19937 random(83);
        for (int i = 0; i < 6; ++i) {
            LitRoom r = tests::random_room(random);
            r.screen.surface = tests::random_lobe(random);
            const CurvatureHelp help = light::curvature_help(input_of(r));
            for (const auto& [trials, best] : {std::pair(&help.curves, help.best_curve),
                                               std::pair(&help.tilts, help.best_tilt)}) {
                REQUIRE(best);
                const CurvatureTrial& chosen = trials->at(static_cast<std::size_t>(*best));
                CHECK(chosen.clear_of_wall);
                for (const CurvatureTrial& trial : *trials)
                    if (trial.clear_of_wall) CHECK(trial.evenness <= chosen.evenness);
            }
            for (const CurvatureTrial& trial : help.curves) {
                CHECK(trial.tilt_rad == r.screen.tilt_rad);
                CHECK(trial.sagitta_fraction <= 0.1 + 0.05 / r.screen.width_m);
            }
            for (const CurvatureTrial& trial : help.tilts)
                CHECK(trial.radius_m == r.screen.radius_m);
        }
    }

    TEST_CASE("property: a matte screen is as even for one seat as for all") {
        std::mt19937 random(84);
        for (int i = 0; i < 10; ++i) {
            LitRoom r = tests::random_room(random);
            const auto all = light::try_surface(input_of(r), 0.0, 0.0);
            r.eyes.resize(1);
            r.reference_seat = 0;
            const auto one = light::try_surface(input_of(r), 0.0, 0.0);
            REQUIRE(all);
            REQUIRE(one);
            check_close(all->evenness, one->evenness, kRounding);
            check_close(all->side_ratio, one->side_ratio, kRounding);
        }
    }

    TEST_CASE("a sheet near its wall has tilts that would pass through it, and says so") {
        LitRoom r = lens_and_eye_on_axis();
        r.screen.setback_m = 0.2;  // half of 5 m high: 0.2 / 2.5 is a tilt of 4.6 degrees
        const CurvatureHelp help = light::curvature_help(input_of(r));
        for (const CurvatureTrial& trial : help.tilts) {
            INFO(base::degrees(trial.tilt_rad));
            CHECK(trial.clear_of_wall == (std::abs(base::degrees(trial.tilt_rad)) < 4.6));
        }
    }

    TEST_CASE("a more even tilt that would pass through the wall is not chosen") {
        LitRoom r = lens_and_eye_on_axis();
        r.screen.setback_m = 0.01;  // no tilt of half a degree clears the wall
        r.projector.up_m += 3.0;    // the lobe points below the eyes: a tilt would raise it
        const CurvatureHelp help = light::curvature_help(input_of(r));
        REQUIRE(help.best_tilt);
        const CurvatureTrial& best = help.tilts[static_cast<std::size_t>(*help.best_tilt)];
        CHECK(best.tilt_rad == 0.0);
        CHECK(std::any_of(help.tilts.begin(), help.tilts.end(), [&](const CurvatureTrial& trial) {
            return trial.evenness > 1.05 * best.evenness;
        }));
    }

    TEST_CASE("trials that are stopped have no result, and a stop that never comes changes none") {
        const LitRoom r = lens_and_eye_on_axis();
        const CurvatureInput in = input_of(r);
        std::stop_source source;
        const auto whole = light::curvature_help(in, source.get_token());
        REQUIRE(whole);
        const CurvatureHelp plain = light::curvature_help(in);
        CHECK(whole->curves.size() == plain.curves.size());
        CHECK(whole->best_curve == plain.best_curve);
        source.request_stop();
        CHECK_FALSE(light::curvature_help(in, source.get_token()));
    }

    TEST_CASE("a projector that sees no screen has no trials") {
        LitRoom r = lens_and_eye_on_axis();
        r.projector.aim = {.mode = room::AimMode::angles, .yaw_rad = base::radians(60.0)};
        const CurvatureHelp help = light::curvature_help(input_of(r));
        CHECK_FALSE(help.now);
        CHECK(help.curves.empty());
        CHECK_FALSE(help.best_curve);
    }
}
