// SPDX-License-Identifier: MIT
#include "light/screen_gain.hpp"

#include "base/units.hpp"
#include "support/check.hpp"

#include <random>

using namespace rakeline;
using light::Directions;
using light::GainModel;
using tests::check_close;

namespace {

const tests::Tolerance kRounding = tests::relative(1e-12, "rounding");

room::ScreenSurface silver(room::LobeKind lobe) {
    room::ScreenSurface surface;
    surface.lobe = lobe;
    surface.peak_gain = 2.4;
    surface.matte_gain = 0.3;
    surface.half_gain_angle_rad = base::radians(25.0);
    return surface;
}

glm::dvec3 random_direction(std::mt19937& random) {
    std::normal_distribution<double> normal;
    return glm::normalize(glm::dvec3(normal(random), normal(random), normal(random)));
}

/// Random directions of light that reaches the seat side and of an eye that sees it.
Directions random_directions(std::mt19937& random) {
    Directions at;
    at.normal = random_direction(random);
    at.incoming = random_direction(random);
    at.toward_eye = random_direction(random);
    if (glm::dot(at.incoming, at.normal) > 0.0) at.incoming = -at.incoming;
    if (glm::dot(at.toward_eye, at.normal) < 0.0) at.toward_eye = -at.toward_eye;
    return at;
}

room::ScreenSurface random_surface(std::mt19937& random) {
    std::uniform_real_distribution<double> unit(0.0, 1.0);
    room::ScreenSurface surface;
    surface.lobe = unit(random) < 0.5 ? room::LobeKind::mirror : room::LobeKind::retro;
    surface.peak_gain = 0.8 + 4.0 * unit(random);
    surface.matte_gain = 0.9 * unit(random);
    surface.half_gain_angle_rad = base::radians(5.0 + 50.0 * unit(random));
    return surface;
}

/// As above, by measured gains, with a retro part half of the time.
room::ScreenSurface random_measured(std::mt19937& random) {
    std::uniform_real_distribution<double> unit(0.0, 1.0);
    room::ScreenSurface surface = random_surface(random);
    double gain = surface.peak_gain;
    for (const double degrees : {0.0, 7.0, 15.0, 30.0, 55.0}) {
        surface.gain_table.push_back({base::radians(degrees), gain});
        gain *= 0.4 + 0.6 * unit(random);
    }
    if (unit(random) < 0.5) surface.retro_gain = unit(random);
    return surface;
}

/// `along` leaned by `angle_rad` toward `side` (unit, square to `along`).
glm::dvec3 leaned(const glm::dvec3& along, const glm::dvec3& side, double angle_rad) {
    return std::cos(angle_rad) * along + std::sin(angle_rad) * side;
}

}  // namespace

TEST_SUITE("light/screen_gain") {
    TEST_CASE("a matte surface has its gain in every direction on the seat side") {
        std::mt19937 random(41);
        room::ScreenSurface surface;
        surface.peak_gain = 0.93;
        const GainModel model(surface, 0.0);
        for (int i = 0; i < 100; ++i)
            CHECK(model.gain(random_directions(random)) == 0.93);
    }

    TEST_CASE("the lobe has its peak in the mirror direction or on the way back to the lens") {
        const glm::dvec3 incoming = glm::normalize(glm::dvec3(0.2, -0.3, -1.0));
        const glm::dvec3 mirrored = glm::normalize(glm::dvec3(0.2, -0.3, 1.0));
        const glm::dvec3 normal{0.0, 0.0, 1.0};
        const room::ScreenSurface mirror = silver(room::LobeKind::mirror);
        const room::ScreenSurface retro = silver(room::LobeKind::retro);
        check_close(light::gain(mirror, 0.0, incoming, mirrored, normal), 2.4, kRounding);
        check_close(light::gain(retro, 0.0, incoming, -incoming, normal), 2.4, kRounding);
        CHECK(light::gain(mirror, 0.0, incoming, -incoming, normal) < 2.0);
        CHECK(light::gain(retro, 0.0, incoming, mirrored, normal) < 2.0);
    }

    TEST_CASE("property: gain is half its peak at the half-gain angle, to any side of the lobe") {
        std::mt19937 random(42);
        for (int i = 0; i < 200; ++i) {
            room::ScreenSurface surface = random_surface(random);
            surface.matte_gain = std::min(surface.matte_gain, 0.45 * surface.peak_gain);
            surface.half_gain_angle_rad =
                std::min(surface.half_gain_angle_rad, base::radians(40.0));
            Directions at;
            at.normal = random_direction(random);
            const glm::dvec3 side = glm::normalize(glm::cross(at.normal, random_direction(random)));
            at.incoming = -leaned(at.normal, side, base::radians(20.0));
            const glm::dvec3 lobe = surface.lobe == room::LobeKind::mirror
                                        ? glm::reflect(at.incoming, at.normal)
                                        : -at.incoming;
            const glm::dvec3 off = glm::normalize(glm::cross(lobe, random_direction(random)));
            at.toward_eye = leaned(lobe, off, surface.half_gain_angle_rad);
            check_close(GainModel(surface, 0.0).gain(at), 0.5 * surface.peak_gain, kRounding);
        }
    }

    TEST_CASE("where the matte part is half the peak or more, the lobe is half its own height") {
        room::ScreenSurface surface = silver(room::LobeKind::mirror);
        surface.peak_gain = 1.4;
        surface.matte_gain = 1.0;
        const GainModel model(surface, 0.0);
        check_close(model.gain_off_lobe(surface.half_gain_angle_rad), 1.2, kRounding);
        check_close(model.gain_off_lobe(0.0), 1.4, kRounding);
    }

    TEST_CASE("property: gain falls from the lobe's direction outward, down to the matte part") {
        std::mt19937 random(43);
        for (int i = 0; i < 50; ++i) {
            room::ScreenSurface surface = random_surface(random);
            surface.matte_gain = std::min(surface.matte_gain, surface.peak_gain - 0.01);
            const GainModel model(surface, 0.0);
            double before = model.gain_off_lobe(0.0);
            for (double angle = 0.05; angle < 1.5; angle += 0.05) {
                const double now = model.gain_off_lobe(angle);
                CHECK(now <= before);
                CHECK(now >= surface.matte_gain);
                before = now;
            }
        }
    }

    TEST_CASE("nothing is seen from behind, and nothing is lit from behind") {
        const glm::dvec3 normal{0.0, 0.0, 1.0};
        const glm::dvec3 toward_screen{0.0, 0.0, -1.0};
        const room::ScreenSurface surface = silver(room::LobeKind::mirror);
        CHECK(light::gain(surface, 0.0, toward_screen, {0.1, 0.0, -0.99}, normal) == 0.0);
        CHECK(light::gain(surface, 0.0, {0.0, 0.0, 1.0}, normal, normal) == 0.0);
        CHECK(light::gain(surface, 0.0, toward_screen, {1.0, 0.0, 0.0}, normal) == 0.0);
        room::ScreenSurface matte;
        CHECK(light::gain(matte, 0.0, toward_screen, {0.0, 0.6, -0.8}, normal) == 0.0);
    }

    TEST_CASE("the holes are counted once") {
        std::mt19937 random(44);
        for (int i = 0; i < 50; ++i) {
            room::ScreenSurface surface = i % 2 ? random_surface(random) : random_measured(random);
            const Directions at = random_directions(random);
            const double unperforated = GainModel(surface, 0.0).gain(at);
            check_close(GainModel(surface, 0.05).gain(at), 0.95 * unperforated, kRounding);
            surface.gain_includes_perforation = true;
            CHECK(GainModel(surface, 0.05).gain(at) == unperforated);
        }
    }

    TEST_CASE("property: light sent the other way meets the same gain (reciprocity)") {
        std::mt19937 random(45);
        for (int i = 0; i < 200; ++i) {
            const GainModel model(i % 2 ? random_surface(random) : random_measured(random), 0.03);
            const Directions there = random_directions(random);
            const Directions back{-there.toward_eye, -there.incoming, there.normal};
            check_close(model.gain(back), model.gain(there), kRounding);
        }
    }

    TEST_CASE("property: turning the whole scene changes no gain") {
        std::mt19937 random(46);
        for (int i = 0; i < 100; ++i) {
            const GainModel model(i % 2 ? random_surface(random) : random_measured(random), 0.0);
            const Directions at = random_directions(random);
            const Directions turned{geometry::turned_about_up(at.incoming, 0.7),
                                    geometry::turned_about_up(at.toward_eye, 0.7),
                                    geometry::turned_about_up(at.normal, 0.7)};
            check_close(model.gain(turned), model.gain(at), kRounding);
        }
    }

    TEST_CASE("a matte surface sends back its gain, lobe or no lobe") {
        room::ScreenSurface surface;
        surface.peak_gain = 0.9;
        CHECK(light::hemispherical_reflectance(surface) == 0.9);
        surface.lobe = room::LobeKind::retro;
        surface.matte_gain = 0.9;
        check_close(light::hemispherical_reflectance(surface), 0.9, kRounding);
    }

    TEST_CASE("a narrow lobe's reflectance lies between its two first series bounds") {
        // Over a lobe 2^-(a/w)^2, sin 2a lies between 2a - 4a^3/3 and 2a, whose integrals are
        // w^2/ln 2 - 2 w^4/(3 ln^2 2) and w^2/ln 2 (to the end of all angles).
        for (const double degrees : {1.0, 2.0, 4.0, 8.0, 12.0}) {
            room::ScreenSurface surface;
            surface.lobe = room::LobeKind::mirror;
            surface.peak_gain = 3.0;
            surface.matte_gain = 0.0;
            surface.half_gain_angle_rad = base::radians(degrees);  // matte 0: w is this angle
            const double first = std::pow(base::radians(degrees), 2) / std::log(2.0);
            const double rho = light::hemispherical_reflectance(surface);
            CHECK(rho < 3.0 * first);
            CHECK(rho > 3.0 * (first - 2.0 / 3.0 * first * first));
        }
    }

    TEST_CASE("measured gains stand in place of peak, matte part and half-gain angle") {
        room::ScreenSurface surface = silver(room::LobeKind::mirror);
        surface.gain_table = {{0.0, 1.7}, {base::radians(20.0), 1.1}, {base::radians(60.0), 0.6}};
        const GainModel model(surface, 0.0);
        CHECK(model.gain_off_lobe(0.0) == 1.7);
        check_close(model.gain_off_lobe(base::radians(20.0)), 1.1, kRounding);
        CHECK(model.gain_off_lobe(base::radians(80.0)) == 0.6);
    }

    TEST_CASE("the retro part stands on the way back, half its height at the half-gain angle") {
        room::ScreenSurface surface = silver(room::LobeKind::mirror);
        room::ScreenSurface with_retro = surface;
        with_retro.retro_gain = 0.4;
        const glm::dvec3 normal{0.0, 0.0, 1.0};
        const glm::dvec3 incoming = -leaned(normal, {1.0, 0.0, 0.0}, base::radians(30.0));
        const auto added = [&](double degrees) {
            const glm::dvec3 eye = leaned(-incoming, {0.0, 1.0, 0.0}, base::radians(degrees));
            return GainModel(with_retro, 0.0).gain({incoming, eye, normal}) -
                   GainModel(surface, 0.0).gain({incoming, eye, normal});
        };
        check_close(added(0.0), 0.4, kRounding);
        check_close(added(25.0), 0.2, kRounding);  // silver's half-gain angle
        surface.lobe = with_retro.lobe = room::LobeKind::matte;
        check_close(added(25.0), 0.2, kRounding);
    }

    TEST_CASE("property: a sheet that keeps polarisation has the same gain") {
        std::mt19937 random(47);
        for (int i = 0; i < 50; ++i) {
            room::ScreenSurface surface = random_measured(random);
            const Directions at = random_directions(random);
            const double plain = GainModel(surface, 0.02).gain(at);
            surface.keeps_polarisation = true;
            CHECK(GainModel(surface, 0.02).gain(at) == plain);
        }
    }

    TEST_CASE("property: the retro part adds its own lobe to the reflectance") {
        std::mt19937 random(48);
        for (int i = 0; i < 50; ++i) {
            room::ScreenSurface surface = random_measured(random);
            surface.retro_gain = 0.0;
            const double body = light::hemispherical_reflectance(surface);
            surface.retro_gain = 0.5;
            room::ScreenSurface lobe_alone;
            lobe_alone.lobe = room::LobeKind::retro;
            lobe_alone.matte_gain = 0.0;
            lobe_alone.peak_gain = 0.5;  // no matte part: half its height at the half-gain angle
            lobe_alone.half_gain_angle_rad = surface.half_gain_angle_rad;
            check_close(light::hemispherical_reflectance(surface),
                        body + light::hemispherical_reflectance(lobe_alone), kRounding);
        }
    }

    TEST_CASE("a gain of 5 at a half-gain angle of 40 degrees claims more light than arrives") {
        room::ScreenSurface surface;
        surface.lobe = room::LobeKind::mirror;
        surface.peak_gain = 5.0;
        surface.matte_gain = 0.1;
        surface.half_gain_angle_rad = base::radians(40.0);
        CHECK(light::hemispherical_reflectance(surface) > 1.0);
        surface.half_gain_angle_rad = base::radians(12.0);
        CHECK(light::hemispherical_reflectance(surface) < 1.0);
    }
}
