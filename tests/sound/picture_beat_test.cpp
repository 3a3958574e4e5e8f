// SPDX-License-Identifier: MIT
#include "picture/random_room.hpp"
#include "sound/hole_study.hpp"
#include "sound/lattice_turn.hpp"
#include "sound/perforation.hpp"
#include "support/check.hpp"

#include <algorithm>
#include <cmath>

using namespace rakeline;
using room::PerforationPattern;
using sound::HoleInput;
using sound::HoleStudy;
using tests::check_close;
using tests::Dice;
using tests::relative;

namespace {

/// A random room's screen, its picture taken as digital, and rows of eyes before it.
HoleInput random_input(Dice& dice) {
    const picture::PictureInput room = tests::random_room(dice);
    const picture::PictureStudy study = picture::study_picture(room);
    const picture::ProjectedPicture& p = study.pictures.front();
    HoleInput in;
    in.surface = study.surface;
    in.width_m = room.screen.width_m;
    in.height_m = room.screen.height_m;
    in.perforation.pattern =
        dice.one_in(2) ? PerforationPattern::square : PerforationPattern::staggered;
    in.perforation.pitch_m = dice.between(0.003, 0.007);
    in.perforation.hole_diameter_m = in.perforation.pitch_m * dice.between(0.15, 0.4);
    in.perforation.angle_rad = dice.between(-0.5, 0.5);
    for (int i = 0; i < 40; ++i)
        in.eyes.emplace_back(dice.between(-0.4, 0.4) * in.width_m, dice.between(0.5, 3.0),
                             in.width_m * dice.between(0.4, 1.5));
    in.pictures = {{0, 0, p.map, p.gate_size_m.x / 2048.0, study.openings.front().uv,
                    dice.between(20.0, 60.0)}};
    return in;
}

}  // namespace

TEST_SUITE("sound/picture_beat") {
    TEST_CASE("bands crowd together for an eye that sees them from the side") {
        const geometry::Patch wall = geometry::standing_patch({0, 3.0, 1.0}, 0.0, 0.0);
        const double angle = base::radians(35.0);
        const glm::dvec3 eye(8.0 * std::sin(angle), 3.0, 1.0 + 8.0 * std::cos(angle));
        const auto exact = relative(1e-12, "closed form");
        check_close(sound::cycles_per_radian(wall, {0, 0}, {20.0, 0.0}, eye),
                    8.0 * 20.0 / std::cos(angle), exact);
        check_close(sound::cycles_per_radian(wall, {0, 0}, {0.0, 20.0}, eye), 8.0 * 20.0, exact);
    }

    TEST_CASE("property: a small step across the bands is as many cycles as its angle holds") {
        Dice dice(6120);
        for (int i = 0; i < 50; ++i) {
            const HoleInput in = random_input(dice);
            const glm::dvec2 uv{dice.between(-1.0, 1.0), dice.between(-0.5, 0.5)};
            const glm::dvec2 k{dice.between(-30.0, 30.0), dice.between(5.0, 30.0)};
            const glm::dvec3 eye = in.eyes.front();
            const double expected = sound::cycles_per_radian(in.surface, uv, k, eye);
            double most = 0.0;
            for (int a = 0; a < 720; ++a) {
                const double way = a * base::kPi / 720.0;
                const glm::dvec2 step = 1e-5 * glm::dvec2(std::cos(way), std::sin(way));
                const double angle =
                    geometry::angle_between(geometry::point_at(in.surface, uv + step) - eye,
                                            geometry::point_at(in.surface, uv - step) - eye);
                most = std::max(most, 2.0 * std::abs(glm::dot(k, step)) / angle);
            }
            check_close(most, expected, relative(1e-4, "quarter degrees of direction"));
        }
    }

    TEST_CASE("property: a pixel's piece of the sheet is as large as the picture map says") {
        Dice dice(733);
        for (int i = 0; i < 50; ++i) {
            const HoleInput in = random_input(dice);
            const sound::PixelPicture& picture = in.pictures.front();
            for (const glm::dvec2 uv : sound::beat_places(picture.opening)) {
                const auto pixels = sound::pixel_lattice(picture.map, picture.pixel_m, uv);
                const auto gate = picture.map.gate_from_screen(uv);
                if (!pixels || !gate) continue;
                const auto ratio = picture.map.area_ratio(*gate);
                REQUIRE(ratio);
                const double area = pixels->a.x * pixels->b.y - pixels->a.y * pixels->b.x;
                check_close(area, *ratio * picture.pixel_m * picture.pixel_m,
                            relative(1e-5, "the map bends within a pixel"));
            }
        }
    }

    TEST_CASE("property: the worst beat is worst at no seat less than its own study says") {
        Dice dice(88);
        int found = 0;
        for (int i = 0; i < 40; ++i) {
            const HoleInput in = random_input(dice);
            const HoleStudy study = sound::study_holes(in);
            const auto* beat = sound::find_beat(study, 0, 0);
            if (!beat) continue;
            ++found;
            REQUIRE(beat->seen.size() == in.eyes.size());
            std::size_t many = 0;
            double most = 0.0;
            for (const sound::Seen& seen : beat->seen) {
                many += seen.visibility > 1.0 ? 1 : 0;
                most = std::max(most, seen.visibility);
            }
            CHECK(beat->seen[static_cast<std::size_t>(beat->worst_seat)].visibility == most);
            CHECK(beat->seats_that_see ==
                  static_cast<double>(many) / static_cast<double>(in.eyes.size()));
            const auto orders = sound::hole_orders(in.perforation);
            CHECK(sound::beat_risk(in.pictures.front(), orders, in.eyes) <= most);
        }
        CHECK(found > 20);
    }

    TEST_CASE("property: no turn of the holes within their symmetry beats less than the advice") {
        Dice dice(4711);
        for (int i = 0; i < 5; ++i) {
            HoleInput in = random_input(dice);
            const auto advice = sound::turn_advice(in);
            REQUIRE(advice);
            for (const sound::TurnTrial& trial : advice->trials) {
                CHECK(advice->trials[advice->best].visibility <= trial.visibility);
                in.perforation.angle_rad = trial.angle_rad;
                CHECK(sound::worst_risk(in, in.perforation) == trial.visibility);
            }
            const double range = sound::turn_range_rad(in.perforation.pattern);
            check_close(advice->trials.back().angle_rad, range, relative(1e-12, "sum of steps"));
        }
    }

    TEST_CASE("without holes, pictures or eyes there is nothing to turn") {
        Dice dice(2);
        const HoleInput in = random_input(dice);
        HoleInput bare = in;
        bare.perforation.pattern = PerforationPattern::none;
        CHECK_FALSE(sound::turn_advice(bare));
        CHECK(sound::study_holes(bare) == HoleStudy{});
        bare = in;
        bare.pictures.clear();
        CHECK_FALSE(sound::turn_advice(bare));
        bare = in;
        bare.eyes.clear();
        CHECK_FALSE(sound::turn_advice(bare));
        CHECK(sound::study_holes(bare).beats.empty());
    }

    TEST_CASE("property: seats are as far as the nearest of many points of the sheet") {
        Dice dice(314);
        for (int i = 0; i < 20; ++i) {
            const HoleInput in = random_input(dice);
            const HoleStudy study = sound::study_holes(in);
            const double half = *geometry::half_arc_of_chord(in.surface, in.width_m);
            for (std::size_t s = 0; s < 5; ++s) {
                double least = 1e9;
                for (int a = -100; a <= 100; ++a) {
                    for (int b = -100; b <= 100; ++b) {
                        const glm::dvec2 uv{half * a / 100.0, 0.5 * in.height_m * b / 100.0};
                        least = std::min(
                            least, glm::distance(geometry::point_at(in.surface, uv), in.eyes[s]));
                    }
                }
                check_close(study.sheet_distance_m[s], least,
                            relative(1e-3, "points a hundredth of the sheet apart"));
            }
        }
    }

    TEST_CASE("the share of seats that see holes grows with the holes") {
        Dice dice(99);
        HoleInput in = random_input(dice);
        double before = -1.0;
        for (const double d : {0.0003, 0.0008, 0.0015, 0.003}) {
            in.perforation = {
                .pattern = PerforationPattern::square, .hole_diameter_m = d, .pitch_m = 0.005};
            const HoleStudy study = sound::study_holes(in);
            REQUIRE(study.seats_that_see_holes);
            CHECK(*study.seats_that_see_holes >= before);
            before = *study.seats_that_see_holes;
            std::size_t nearer = 0;
            for (const double distance : study.sheet_distance_m)
                nearer += distance < sound::hole_visible_from_m(d) ? 1 : 0;
            CHECK(*study.seats_that_see_holes ==
                  static_cast<double>(nearer) / static_cast<double>(in.eyes.size()));
        }
    }
}
