// SPDX-License-Identifier: MIT
// Outside: beats of two gratings (Amidror, The theory of the moire phenomenon, from memory), and a
// plain Fourier sum over points strewn on a rendered piece of sheet.
#include "sound/beat.hpp"
#include "sound/hole_study.hpp"
#include "sound/perforation.hpp"
#include "support/check.hpp"

#include <algorithm>
#include <cmath>
#include <complex>
#include <random>

using namespace rakeline;
using room::Perforation;
using room::PerforationPattern;
using sound::Beat;
using sound::Lattice;
using tests::check_close;
using tests::printed_digits;
using tests::relative;

namespace {

/// The beat of these orders, found whichever sign it goes by.
std::optional<Beat> beat_of_orders(const std::vector<Beat>& all,
                                   glm::ivec2 pixels,
                                   glm::ivec2 holes) {
    for (const Beat& b : all) {
        const glm::ivec2 p(b.pixel_i, b.pixel_j);
        const glm::ivec2 h(b.hole_i, b.hole_j);
        if ((p == pixels && h == holes) || (p == -pixels && h == -holes)) return b;
    }
    return std::nullopt;
}

/// Share of the way to the next points of the lattice, each -1/2 to 1/2.
glm::dvec2 within_cell(const Lattice& lattice, glm::dvec2 at) {
    const sound::Reciprocal r = sound::reciprocal(lattice);
    const glm::dvec2 s(glm::dot(at, r.a), glm::dot(at, r.b));
    return s - glm::round(s);
}

bool in_hole(const Perforation& holes, const Lattice& lattice, glm::dvec2 at) {
    const glm::dvec2 s = within_cell(lattice, at);
    if (holes.pattern == PerforationPattern::woven) {
        const double side = 0.5 * holes.hole_diameter_m / holes.pitch_m;
        return std::abs(s.x) < side && std::abs(s.y) < side;
    }
    for (int i = -1; i <= 1; ++i) {
        for (int j = -1; j <= 1; ++j) {
            const glm::dvec2 to = (s.x + i) * lattice.a + (s.y + j) * lattice.b;
            if (glm::length(to) < 0.5 * holes.hole_diameter_m) return true;
        }
    }
    return false;
}

bool in_pixel(const Lattice& pixels, glm::dvec2 at) {
    const glm::dvec2 s = within_cell(pixels, at);
    const double half = 0.5 * std::sqrt(sound::kPixelFill);
    return std::abs(s.x) < half && std::abs(s.y) < half;
}

/// Modulation at frequency `k` of the light on 0.2 m x 0.2 m of sheet: one point strewn in each
/// seventh of a millimetre, under a Hann window.
double modulation(const Perforation& holes, const Lattice& pixels, glm::dvec2 k) {
    constexpr int kPoints = 1400;
    constexpr double kStep_m = 0.2 / kPoints;
    const Lattice lattice = sound::hole_lattice(holes);
    std::mt19937 random(31);
    std::uniform_real_distribution<double> strewn(0.0, 1.0);
    const auto window = [](int i) {
        const double s = std::sin(base::kPi * (i + 0.5) / kPoints);
        return s * s;
    };
    std::complex<double> sum = 0.0;
    double mean = 0.0;
    for (int i = 0; i < kPoints; ++i) {
        for (int j = 0; j < kPoints; ++j) {
            const glm::dvec2 at = kStep_m * glm::dvec2(i + strewn(random), j + strewn(random));
            if (in_hole(holes, lattice, at) || !in_pixel(pixels, at)) continue;
            const double w = window(i) * window(j);
            mean += w;
            sum += w * std::polar(1.0, -2.0 * base::kPi * glm::dot(k, at));
        }
    }
    return 2.0 * std::abs(sum) / mean;
}

}  // namespace

TEST_SUITE("outside/beats of gratings") {
    TEST_CASE("golden: parallel rows beat at p1 p2 / |p1 - p2|") {
        const Perforation holes{
            .pattern = PerforationPattern::square, .hole_diameter_m = 0.0012, .pitch_m = 0.005};
        const Lattice pixels{{0.0048, 0.0}, {0.0, 0.0048}};
        const auto found =
            beat_of_orders(sound::beats(sound::hole_orders(holes), pixels, 5.0), {-1, 0}, {1, 0});
        REQUIRE(found);
        check_close(found->period_m(), 0.0048 * 0.005 / 0.0002, relative(1e-12, "exact formula"));
    }

    TEST_CASE("golden: turned rows beat at f^2 = f1^2 + f2^2 - 2 f1 f2 cos a") {
        for (const double degrees : {1.0, 3.0, 8.0, 15.0}) {
            const double a = base::radians(degrees);
            const Perforation holes{.pattern = PerforationPattern::square,
                                    .hole_diameter_m = 0.0012,
                                    .pitch_m = 0.005,
                                    .angle_rad = a};
            const Lattice pixels{{0.0045, 0.0}, {0.0, 0.0045}};
            const auto found = beat_of_orders(sound::beats(sound::hole_orders(holes), pixels, 5.0),
                                              {-1, 0}, {1, 0});
            REQUIRE(found);
            const double f1 = 1.0 / 0.0045;
            const double f2 = 1.0 / 0.005;
            const double f = std::sqrt(f1 * f1 + f2 * f2 - 2.0 * f1 * f2 * std::cos(a));
            check_close(found->period_m(), 1.0 / f, relative(1e-12, "exact formula"));
        }
    }

    TEST_CASE("a rendered sheet under pixels holds the beats at their frequency and contrast") {
        struct Sheet {
            Perforation holes;
            Lattice pixels;
        };
        const Sheet sheets[] = {
            {{PerforationPattern::square, 0.0020, 0.005, base::radians(4.0)},
             {{0.0046, 0.0001}, {-0.0001, 0.0046}}},
            {{PerforationPattern::staggered, 0.0018, 0.005, base::radians(9.0)},
             {{0.0043, 0.0}, {0.0001, 0.0044}}},
            {{PerforationPattern::woven, 0.0012, 0.003, base::radians(6.0)},
             {{0.0034, 0.0}, {0.0, 0.0034}}},
        };
        for (const Sheet& sheet : sheets) {
            const auto all = sound::beats(sound::hole_orders(sheet.holes), sheet.pixels, 0.1);
            REQUIRE_FALSE(all.empty());
            const Beat& strongest = *std::max_element(
                all.begin(), all.end(),
                [](const Beat& a, const Beat& b) { return a.contrast < b.contrast; });
            INFO("period ", strongest.period_m(), ", contrast ", strongest.contrast);
            const double here = modulation(sheet.holes, sheet.pixels, strongest.frequency);
            check_close(here, strongest.contrast,
                        relative(0.06, "strewn points, and orders past 3 within the window"));
            for (const glm::dvec2 aside : {glm::dvec2(4, 0), {-4, 0}, {0, 4}, {0, -4}}) {
                const glm::dvec2 k = strongest.frequency + aside;
                CHECK(modulation(sheet.holes, sheet.pixels, k) < 0.9 * here);
            }
        }
    }

    TEST_CASE(
        "golden: a hole is one minute of arc, two pitches two, where they are said to be seen") {
        // 1/tan 1' = 3437.75: 1.2 mm holes to 4.13 m, rows 5.0 mm apart at 2' to 8.59 m.
        check_close(sound::hole_visible_from_m(0.0012), 4.13, printed_digits(2));
        check_close(sound::pitch_visible_from_m(0.005), 8.59, printed_digits(2));
        check_close(sound::hole_visible_from_m(1.0), 3437.75, printed_digits(2));
    }
}
