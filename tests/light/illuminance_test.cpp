// SPDX-License-Identifier: MIT
#include "light/illuminance.hpp"

#include "light/lit_room.hpp"
#include "light/quadrature.hpp"
#include "support/check.hpp"

using namespace rakeline;
using light::Beam;
using light::Illuminance;
using tests::check_close;
using tests::LitRoom;

namespace {

Beam beam_of(const LitRoom& r) {
    const picture::PictureStudy study = tests::picture_of(r);
    REQUIRE(study.pictures.size() == 1);
    const picture::ProjectedPicture& picture = study.pictures.front();
    return {.map = picture.map,
            .gate = light::gate_light(r.projector),
            .part_size_m = picture.gate_size_m,
            .whole_flux_lm = r.projector.flux.measured_flux_lm};
}

/// Integral of the illuminance over the whole picture on the surface. The picture is walked by
/// gate place, with the area of a surface patch from differences of the mapped points themselves
/// (Richardson-extrapolated), so that the map's own area ratio is put to the test.
double flux_on_picture(const Beam& beam) {
    const Illuminance illuminance(beam);
    const glm::dvec2 half = 0.5 * beam.part_size_m;
    const auto uv = [&](double s, double t) {
        return *beam.map.screen_from_gate(half * glm::dvec2(s, t));
    };
    const auto slopes = [&](double s, double t, double h) {
        const glm::dvec2 along_s = (uv(s + h, t) - uv(s - h, t)) / (2.0 * h);
        const glm::dvec2 along_t = (uv(s, t + h) - uv(s, t - h)) / (2.0 * h);
        return std::abs(along_s.x * along_t.y - along_s.y * along_t.x);
    };
    return tests::square_integral(3, [&](double s, double t) {
        const double h = 1e-3;
        const double area = (4.0 * slopes(s, t, 0.5 * h) - slopes(s, t, h)) / 3.0;
        return illuminance.at_lx(uv(s, t)) * area;
    });
}

/// Integral over a rectangle of surface coordinates that the picture covers smoothly.
double flux_on_rectangle(const Illuminance& illuminance, const geometry::Rectangle& r) {
    return 0.25 * r.area() * tests::square_integral(2, [&](double s, double t) {
               const glm::dvec2 half(0.5 * r.width(), 0.5 * r.height());
               return illuminance.at_lx(r.centre() + half * glm::dvec2(s, t));
           });
}

}  // namespace

TEST_SUITE("light/illuminance") {
    TEST_CASE("an even gate lights a square-on plane evenly, flux over area") {
        const LitRoom r = tests::square_on_film_room(12.0, 2.39);
        const Illuminance illuminance(beam_of(r));
        const double expected = 10000.0 / (r.screen.width_m * r.screen.height_m);
        const double x = 0.4999 * r.screen.width_m;
        const double y = 0.4999 * r.screen.height_m;
        for (const glm::dvec2 uv : {glm::dvec2(0.0, 0.0), glm::dvec2(x, y), glm::dvec2(-x, 0.3 * y),
                                    glm::dvec2(0.1 * x, -y)}) {
            check_close(illuminance.at_lx(uv), expected, tests::relative(1e-12, "rounding"));
        }
    }

    TEST_CASE("it is dark outside the picture") {
        const LitRoom r = tests::square_on_film_room(12.0, 2.39);
        const Illuminance illuminance(beam_of(r));
        CHECK(illuminance.at_lx({6.001, 0.0}) == 0.0);
        CHECK(illuminance.at_lx({0.0, -0.5 * r.screen.height_m - 0.001}) == 0.0);
        CHECK(illuminance.at_lx({5.999, 0.0}) > 0.0);
    }

    TEST_CASE("the part of the imager that the format leaves unused stays dark") {
        LitRoom r = tests::square_on_room(12.0, 2.0);
        r.projector.formats.front().pixels_wide = 1500;  // of 2000; these fill the 12 m
        const Illuminance illuminance(beam_of(r));
        CHECK(illuminance.at_lx({6.001, 0.0}) == 0.0);
        CHECK(illuminance.at_lx({5.999, 0.0}) > 0.0);
    }

    TEST_CASE("the part of the aperture that the lamp leaves dark stays dark on the screen") {
        LitRoom r = tests::square_on_film_room(12.0, 2.39);
        r.projector.lit_width_m = 0.5 * r.projector.formats.front().gate_width_m;
        const Illuminance illuminance(beam_of(r));
        CHECK(illuminance.at_lx({3.01, 0.0}) == 0.0);
        CHECK(illuminance.at_lx({2.99, 0.0}) > 0.0);
    }

    TEST_CASE("the hot spot stands where the layout puts it, as seen from the seats") {
        LitRoom r = tests::square_on_film_room(12.0, 2.39);
        r.projector.flux.corner_fraction = 0.6;
        r.projector.flux.hot_spot_across = 0.25;  // right
        r.projector.flux.hot_spot_up = -0.25;     // low
        const Illuminance illuminance(beam_of(r));
        const double peak = illuminance.at_lx({3.0, -0.25 * r.screen.height_m});
        CHECK(peak > illuminance.at_lx({3.1, -0.25 * r.screen.height_m}));
        CHECK(peak > illuminance.at_lx({3.0, -0.26 * r.screen.height_m}));
        CHECK(illuminance.at_lx({3.0, 0.0}) > illuminance.at_lx({-3.0, 0.0}));
    }

    TEST_CASE("property: what leaves the port through the part in use arrives on the picture") {
        const unsigned seed = 51;
        INFO("seed ", seed);
        std::mt19937 random(seed);
        for (int i = 0; i < 25; ++i) {
            const LitRoom r = tests::random_room(random);
            const Beam beam = beam_of(r);
            const double sent =
                beam.whole_flux_lm * light::use_fraction(beam.gate, beam.part_size_m);
            check_close(flux_on_picture(beam), sent,
                        tests::relative(1e-6, "differences and quadrature of a smooth picture"));
        }
    }

    TEST_CASE("what misses the opening is in the masking") {
        LitRoom r = tests::square_on_film_room(12.0, 2.39);
        r.projector.flux.corner_fraction = 0.55;
        r.projector.flux.hot_spot_across = 0.1;
        r.projector.formats.front().focal_length_m = 0.025;  // shorter than wanted: overfills
        const picture::PictureStudy study = tests::picture_of(r);
        const Beam beam = beam_of(r);
        const Illuminance illuminance(beam);
        const geometry::Rectangle open = study.openings.front().uv;
        const glm::dvec2 edge = *beam.map.screen_from_gate(0.5 * beam.part_size_m);
        REQUIRE(edge.x > open.right);
        REQUIRE(edge.y > open.top);
        const double masked =
            flux_on_rectangle(illuminance, {-edge.x, open.left, -edge.y, edge.y}) +
            flux_on_rectangle(illuminance, {open.right, edge.x, -edge.y, edge.y}) +
            flux_on_rectangle(illuminance, {open.left, open.right, open.top, edge.y}) +
            flux_on_rectangle(illuminance, {open.left, open.right, -edge.y, open.bottom});
        CHECK(masked > 0.0);
        check_close(flux_on_rectangle(illuminance, open) + masked, beam.whole_flux_lm,
                    tests::relative(1e-11, "the rule is exact for a quadratic"));
    }
}
