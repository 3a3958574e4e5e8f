// SPDX-License-Identifier: MIT
#include "light/light_study.hpp"

#include "light/lit_room.hpp"
#include "light/port_glass.hpp"
#include "room/perforation.hpp"
#include "support/check.hpp"

#include <algorithm>
#include <cstddef>

using namespace rakeline;
using light::LightStudy;
using light::PictureLight;
using light::PicturePoint;
using tests::check_close;
using tests::LitRoom;

namespace {

const tests::Tolerance kRounding = tests::relative(1e-12, "rounding");

PictureLight the_light(const LitRoom& r) {
    const LightStudy study = tests::light_of(r);
    REQUIRE(study.lights.size() == 1);
    return study.lights.front();
}

/// The points of a room seen in a mirror.
constexpr PicturePoint kMirrored[] = {light::kCentre,  light::kRight,      light::kLeft,
                                      light::kTop,     light::kBottom,     light::kTopRight,
                                      light::kTopLeft, light::kBottomLeft, light::kBottomRight};

LitRoom mirrored(LitRoom r) {
    r.projector.across_m *= -1.0;
    r.projector.aim.yaw_rad *= -1.0;
    r.projector.aim.roll_rad *= -1.0;
    r.projector.flux.hot_spot_across *= -1.0;
    for (glm::dvec3& eye : r.eyes)
        eye.x *= -1.0;
    return r;
}

LitRoom doubled(LitRoom r) {
    for (double* length : {&r.screen.width_m, &r.screen.height_m, &r.screen.sill_m,
                           &r.screen.setback_m, &r.screen.radius_m, &r.projector.across_m,
                           &r.projector.up_m, &r.projector.back_m, &r.booth_wall_back_m}) {
        *length *= 2.0;
    }
    for (glm::dvec3& eye : r.eyes)
        eye *= 2.0;
    return r;
}

}  // namespace

TEST_SUITE("light/light_study") {
    TEST_CASE("the flux on the surface is the chain's, times the part in use, times the port's") {
        LitRoom r = tests::square_on_room(12.0, 2.39);
        r.projector.flux.entry = room::FluxEntry::chain;
        r.projector.port.panes = 2;
        r.projector.formats.front().pixels_wide = 1500;  // of 2000, the full height: 3/4
        const PictureLight light = the_light(r);
        check_close(light.lamp_flux_lm, 80.0 * 25.0 * 37.0 * 0.85, kRounding);
        check_close(light.chain_flux_lm, light.lamp_flux_lm * 0.30 * 0.50 * 0.85 * 0.85, kRounding);
        check_close(light.use_fraction, 0.75, kRounding);
        const double port = light::port_transmittance(
            {.panes = 2, .index = 1.52, .thickness_m = 0.006, .absorption_per_m = 2.0}, 0.0);
        check_close(light.port_transmittance, port, kRounding);
        check_close(light.flux_lm, light.chain_flux_lm * 0.75 * port, kRounding);
    }

    TEST_CASE("the port's glass stands upright: the axis meets it at its own angle down") {
        LitRoom r = tests::square_on_room(12.0, 2.39);
        r.projector.port.panes = 1;
        r.projector.up_m += 4.0;
        const double run = r.projector.back_m - r.screen.setback_m;
        const PictureLight light = the_light(r);
        check_close(light.port_incidence_rad, std::atan(4.0 / run), kRounding);
        r.screen.tilt_rad = base::radians(4.0);  // leans the screen, not the glass
        check_close(the_light(r).port_incidence_rad, std::atan(4.0 / run), kRounding);
    }

    TEST_CASE("a lens in the hall has no port glass in its way") {
        LitRoom r = tests::square_on_room(12.0, 2.39);
        r.projector.port.panes = 2;
        CHECK(the_light(r).port_transmittance < 0.9);
        r.booth_wall_back_m = r.projector.back_m + 3.0;
        CHECK(the_light(r).port_transmittance == 1.0);
    }

    TEST_CASE("an even gate square on: even light at all nine points, flux over area, gain 1") {
        const LitRoom r = tests::square_on_film_room(10.0, 1.85);
        const PictureLight light = the_light(r);
        for (const double lx : light.illuminance_lx) {
            check_close(lx, 10000.0 * 1.85 / 100.0, kRounding);
        }
        check_close(*light::side_ratio(light, 0), 1.0, kRounding);
        check_close(*light::corner_ratio(light, 0), 1.0, kRounding);
    }

    TEST_CASE("the reading points stand 5 % of the picture in from its edges") {
        const LitRoom r = tests::square_on_film_room(10.0, 2.0);
        LitRoom narrow = r;
        // A lamp that lights 89 % of the width leaves the side points, at 90 %, dark; 91 % does
        // not.
        narrow.projector.lit_width_m = 0.89 * r.projector.lit_width_m;
        CHECK(the_light(narrow).illuminance_lx[light::kLeft] == 0.0);
        CHECK(the_light(narrow).illuminance_lx[light::kTop] > 0.0);
        narrow.projector.lit_width_m = 0.91 * r.projector.lit_width_m;
        CHECK(the_light(narrow).illuminance_lx[light::kTopRight] > 0.0);
    }

    TEST_CASE("every point stands on the side of the picture that its name says") {
        LitRoom r = tests::square_on_film_room(10.0, 2.0);
        r.projector.flux.corner_fraction = 0.5;
        const auto brightest = [&](double across, double up) {
            r.projector.flux.hot_spot_across = 0.45 * across;
            r.projector.flux.hot_spot_up = 0.45 * up;
            const auto lx = the_light(r).illuminance_lx;
            return static_cast<PicturePoint>(std::max_element(lx.begin(), lx.end()) - lx.begin());
        };
        CHECK(brightest(0.0, 0.0) == light::kCentre);
        CHECK(brightest(-1.0, 0.0) == light::kLeft);
        CHECK(brightest(1.0, 0.0) == light::kRight);
        CHECK(brightest(0.0, 1.0) == light::kTop);
        CHECK(brightest(0.0, -1.0) == light::kBottom);
        CHECK(brightest(-1.0, 1.0) == light::kTopLeft);
        CHECK(brightest(1.0, 1.0) == light::kTopRight);
        CHECK(brightest(1.0, -1.0) == light::kBottomRight);
        CHECK(brightest(-1.0, -1.0) == light::kBottomLeft);
    }

    TEST_CASE("the worst side and corner are named over the centre") {
        PictureLight light;
        light.illuminance_lx = {100.0, 90.0, 85.0, 95.0, 92.0, 70.0, 80.0, 75.0, 66.0};
        light.gain = {{1.0, 1.0, 1.0, 1.0, 0.5, 1.0, 1.0, 0.5, 1.0}};
        check_close(*light::side_ratio(light, 0), 0.46, kRounding);
        check_close(*light::corner_ratio(light, 0), 0.375, kRounding);
        check_close(*light::side_evenness(light, 0), 0.46, kRounding);
        light.gain[0][light::kTop] = 1.25;  // 118.75: over the centre
        check_close(*light::side_ratio(light, 0), 0.46, kRounding);
        check_close(*light::side_evenness(light, 0), 46.0 / 118.75, kRounding);
        check_close(*light::corner_evenness(light, 0), 0.375, kRounding);
        check_close(light::luminance_cdm2(light, 0, light::kBottom), 46.0 / base::kPi, kRounding);
    }

    TEST_CASE("property: a matte screen looks the same from every seat") {
        std::mt19937 random(61);
        for (int i = 0; i < 40; ++i) {
            const LitRoom r = tests::random_room(random);
            const PictureLight light = the_light(r);
            for (std::size_t seat = 0; seat < r.eyes.size(); ++seat) {
                for (std::size_t p = 0; p < light::kPointCount; ++p) {
                    check_close(light::luminance_cdm2(light, static_cast<int>(seat),
                                                      static_cast<PicturePoint>(p)),
                                light.illuminance_lx[p] / base::kPi, kRounding);
                }
            }
        }
    }

    TEST_CASE("property: a room in the mirror has mirrored light") {
        std::mt19937 random(62);
        for (int i = 0; i < 40; ++i) {
            LitRoom r = tests::random_room(random);
            r.screen.surface = i % 2 ? tests::random_lobe(random) : tests::random_measured(random);
            const PictureLight light = the_light(r);
            const PictureLight mirror = the_light(mirrored(r));
            check_close(mirror.flux_lm, light.flux_lm, kRounding);
            for (std::size_t p = 0; p < light::kPointCount; ++p) {
                const auto q = static_cast<std::size_t>(kMirrored[p]);
                check_close(mirror.illuminance_lx[q], light.illuminance_lx[p],
                            tests::relative(1e-10, "rounding through the map"));
                for (std::size_t seat = 0; seat < r.eyes.size(); ++seat) {
                    check_close(mirror.gain[seat][q], light.gain[seat][p],
                                tests::relative(1e-10, "rounding through the map"));
                }
            }
        }
    }

    TEST_CASE("property: a room of twice the size has a quarter of the light, seen alike") {
        std::mt19937 random(63);
        for (int i = 0; i < 40; ++i) {
            LitRoom r = tests::random_room(random);
            r.screen.surface = tests::random_lobe(random);
            const PictureLight light = the_light(r);
            const PictureLight twice = the_light(doubled(r));
            check_close(twice.flux_lm, light.flux_lm, kRounding);
            for (int p = 0; p < light::kPointCount; ++p) {
                const auto point = static_cast<PicturePoint>(p);
                check_close(light::luminance_cdm2(twice, 3, point),
                            0.25 * light::luminance_cdm2(light, 3, point),
                            tests::relative(1e-10, "rounding through the map"));
            }
        }
    }

    TEST_CASE(
        "property: luminance is in proportion to flux, and the flux needed meets the target") {
        std::mt19937 random(64);
        for (int i = 0; i < 40; ++i) {
            LitRoom r = tests::random_room(random);
            r.screen.surface = tests::random_lobe(random);
            const PictureLight light = the_light(r);
            REQUIRE(light.reference_cdm2);
            REQUIRE(light.flux_needed_lm);
            CHECK(*light.reference_cdm2 == light::luminance_cdm2(light, 5, light::kCentre));
            const double scale = *light.flux_needed_lm / light.flux_lm;
            r.projector.flux.measured_flux_lm *= scale;
            const PictureLight scaled = the_light(r);
            check_close(*scaled.reference_cdm2, light.target_cdm2, kRounding);
            check_close(scaled.flux_lm, *scaled.flux_needed_lm, kRounding);
            check_close(light::luminance_cdm2(scaled, 0, light::kTopLeft),
                        scale * light::luminance_cdm2(light, 0, light::kTopLeft), kRounding);
        }
    }

    TEST_CASE("property: one pane more makes every point darker by the same factor") {
        std::mt19937 random(65);
        for (int i = 0; i < 20; ++i) {
            LitRoom r = tests::random_room(random);
            const PictureLight before = the_light(r);
            ++r.projector.port.panes;
            const PictureLight after = the_light(r);
            const double factor = after.port_transmittance / before.port_transmittance;
            CHECK(factor < 0.95);
            for (std::size_t p = 0; p < light::kPointCount; ++p) {
                check_close(after.illuminance_lx[p], factor * before.illuminance_lx[p], kRounding);
            }
        }
    }

    TEST_CASE("holes lose their light toward every seat, once") {
        LitRoom r = tests::square_on_film_room(10.0, 2.0);
        const PictureLight whole = the_light(r);
        r.screen.perforation.pattern = room::PerforationPattern::staggered;
        const LightStudy holed = tests::light_of(r);
        CHECK(holed.open_area == room::open_area(r.screen.perforation));
        check_close(*holed.lights.front().reference_cdm2,
                    (1.0 - holed.open_area) * *whole.reference_cdm2, kRounding);
        CHECK(holed.lights.front().illuminance_lx == whole.illuminance_lx);
        r.screen.surface.gain_includes_perforation = true;
        CHECK(*the_light(r).reference_cdm2 == *whole.reference_cdm2);
    }

    TEST_CASE("a projector below a mirror screen is brightest for those above the middle") {
        LitRoom r = tests::square_on_film_room(10.0, 2.0);
        r.screen.surface = {.name = "silver",
                            .lobe = room::LobeKind::mirror,
                            .peak_gain = 2.0,
                            .matte_gain = 0.2,
                            .half_gain_angle_rad = base::radians(20.0)};
        const double middle_m = r.projector.up_m;
        r.projector.up_m = middle_m - 3.0;
        r.eyes = {{0.0, middle_m + 2.0, 12.0}, {0.0, middle_m - 2.0, 12.0}};
        const PictureLight mirror = the_light(r);
        CHECK(mirror.gain[0][light::kCentre] > mirror.gain[1][light::kCentre]);
        r.screen.surface.lobe = room::LobeKind::retro;
        const PictureLight retro = the_light(r);
        CHECK(retro.gain[0][light::kCentre] < retro.gain[1][light::kCentre]);
    }

    TEST_CASE("property: an eye in the mirror direction of a point sees its peak gain there") {
        std::mt19937 random(66);
        for (int i = 0; i < 20; ++i) {
            LitRoom r = tests::random_room(random);
            r.screen.surface = tests::random_lobe(random);
            r.screen.surface.lobe = room::LobeKind::mirror;
            r.screen.surface.retro_gain = 0.0;
            const picture::PictureStudy pictures = tests::picture_of(r);
            const glm::dvec3 lens{r.projector.across_m, r.projector.up_m, r.projector.back_m};
            r.eyes.clear();
            for (int p = 0; p < light::kPointCount; ++p) {
                const glm::dvec2 at = light::point_place(static_cast<PicturePoint>(p));
                const glm::dvec3 point =
                    picture::opening_point(pictures.surface, pictures.openings.front(), at.x, at.y);
                const glm::dvec3 normal = geometry::normal_at(
                    pictures.surface, geometry::coordinates_of(pictures.surface, point));
                r.eyes.push_back(point + glm::reflect(point - lens, normal));
            }
            r.reference_seat = 0;
            const PictureLight light = the_light(r);
            for (std::size_t p = 0; p < light::kPointCount; ++p) {
                check_close(light.gain[p][p], r.screen.surface.peak_gain,
                            tests::relative(1e-10, "rounding through the surface"));
            }
        }
    }

    TEST_CASE("a picture beside the centre leaves it dark: no ratio, no flux that would help") {
        LitRoom r = tests::square_on_film_room(10.0, 2.0);
        r.projector.formats.front().focal_length_m = 0.2;  // a small picture
        r.projector.aim.mode = room::AimMode::angles;
        r.projector.aim.yaw_rad = base::radians(7.0);
        const PictureLight light = the_light(r);
        CHECK(light.illuminance_lx[light::kCentre] == 0.0);
        CHECK(*light.reference_cdm2 == 0.0);
        CHECK_FALSE(light.flux_needed_lm);
        CHECK_FALSE(light::side_ratio(light, 0));
        CHECK_FALSE(light::corner_ratio(light, 0));
        CHECK(light.flux_lm > 0.0);
    }

    TEST_CASE("without a reference seat there is no reference reading") {
        LitRoom r = tests::square_on_film_room(10.0, 2.0);
        r.reference_seat.reset();
        const PictureLight light = the_light(r);
        CHECK_FALSE(light.reference_cdm2);
        CHECK_FALSE(light.flux_needed_lm);
    }

    TEST_CASE("lights stand parallel to the pictures, each of its own projector and format") {
        const LitRoom r = tests::square_on_film_room(10.0, 2.0);
        room::Projector second = r.projector;
        second.flux.measured_flux_lm = 3000.0;
        second.kind = room::SourceKind::digital;
        picture::PictureInput in;
        in.screen = r.screen;
        in.formats = {r.format};
        in.projectors = {r.projector, second};
        const LightStudy study = light::study_light(
            {.screen = r.screen, .projectors = in.projectors, .eyes = r.eyes, .reference_seat = {}},
            picture::study_picture(in));
        REQUIRE(study.lights.size() == 2);
        CHECK(study.lights[0].chain_flux_lm == 10000.0);
        CHECK(study.lights[1].chain_flux_lm == 3000.0);
        CHECK(study.lights[0].target_cdm2 == 55.0);
        CHECK(study.lights[1].target_cdm2 == 48.0);
    }

    TEST_CASE("a surface that claims more light than arrives is shown by its reflectance") {
        LitRoom r = tests::square_on_film_room(10.0, 2.0);
        check_close(tests::light_of(r).lobe_reflectance, 1.0, kRounding);
        r.screen.surface = {.name = "bold claim",
                            .lobe = room::LobeKind::mirror,
                            .peak_gain = 4.0,
                            .matte_gain = 0.2,
                            .half_gain_angle_rad = base::radians(45.0)};
        CHECK(tests::light_of(r).lobe_reflectance > 1.0);
    }

    TEST_CASE("holes take their share of what the hall gets back, once") {
        LitRoom r = tests::square_on_film_room(10.0, 2.0);
        r.screen.surface = {};
        r.screen.surface.lobe = room::LobeKind::matte;
        r.screen.surface.peak_gain = 0.9;
        r.screen.surface.gain_includes_perforation = false;
        // Square lattice: pi 1.2^2 / (4 x 5^2) = 0.0452389 of the sheet is hole.
        r.screen.perforation = {room::PerforationPattern::square, 0.0012, 0.005};
        const auto reflectance = [&] {
            return tests::light_of(r).stray.front().room.picture_reflectance;
        };
        check_close(reflectance(), 0.9 * (1.0 - 0.0452389), tests::absolute(1e-7, "digits of it"));
        r.screen.surface.gain_includes_perforation = true;
        check_close(reflectance(), 0.9, tests::relative(1e-12, "rounding"));
    }

    TEST_CASE("a port without panes lets light through no glass") {
        LitRoom r = tests::square_on_film_room(10.0, 2.0);
        r.projector.port.panes = 0;
        CHECK_FALSE(tests::light_of(r).lights.front().through_glass);
        r.projector.port.panes = 1;
        CHECK(tests::light_of(r).lights.front().through_glass);
    }
}
