// SPDX-License-Identifier: MIT
#include "sound/beat.hpp"

#include "support/check.hpp"

#include <algorithm>
#include <cmath>
#include <random>

using namespace rakeline;
using room::Perforation;
using room::PerforationPattern;
using sound::Beat;
using sound::Lattice;
using tests::check_close;
using tests::relative;

namespace {

constexpr double kFar_m = 10.0;  ///< longest period that still counts
const auto kExact = relative(1e-9, "rounding of a difference of near frequencies");

Lattice upright(double pixel_m) {
    return {{pixel_m, 0.0}, {0.0, pixel_m}};
}

glm::dvec2 turned(glm::dvec2 p, double clockwise_rad) {
    const double c = std::cos(clockwise_rad);
    const double s = std::sin(clockwise_rad);
    return {c * p.x + s * p.y, c * p.y - s * p.x};
}

Lattice turned(const Lattice& l, double clockwise_rad) {
    return {turned(l.a, clockwise_rad), turned(l.b, clockwise_rad)};
}

/// Periods and contrasts, longest first, whatever the orders are called.
std::vector<std::pair<double, double>> spectrum(const Perforation& holes, const Lattice& pixels) {
    std::vector<std::pair<double, double>> out;
    for (const Beat& beat : sound::beats(sound::hole_orders(holes), pixels, kFar_m))
        out.emplace_back(beat.period_m(), beat.contrast);
    std::sort(out.rbegin(), out.rend());
    return out;
}

void check_same(const std::vector<std::pair<double, double>>& a,
                const std::vector<std::pair<double, double>>& b,
                double scale = 1.0) {
    REQUIRE(a.size() == b.size());
    for (std::size_t i = 0; i < a.size(); ++i) {
        check_close(b[i].first, scale * a[i].first, kExact);
        check_close(b[i].second, a[i].second, relative(1e-6, "equal periods come in any order"));
    }
}

/// A sheet and pixels as rooms have them, all three patterns in turn.
struct RandomSheets {
    std::mt19937 random{90517};
    double between(double low, double high) {
        return std::uniform_real_distribution<double>(low, high)(random);
    }
    Perforation holes(int turn) {
        constexpr PerforationPattern kPatterns[] = {
            PerforationPattern::square, PerforationPattern::staggered, PerforationPattern::woven};
        Perforation p;
        p.pattern = kPatterns[turn % 3];
        p.pitch_m = between(0.002, 0.008);
        p.hole_diameter_m = p.pitch_m * between(0.1, 0.4);
        p.angle_rad = between(-0.7, 0.7);
        return p;
    }
    Lattice pixels() {
        const double p = between(0.002, 0.006);
        return {{p, between(-0.03, 0.03) * p}, {between(-0.03, 0.03) * p, p * between(0.9, 1.1)}};
    }
};

}  // namespace

TEST_SUITE("sound/beat") {
    TEST_CASE("property: turning pixels and holes together changes no beat") {
        RandomSheets dice;
        std::size_t seen = 0;
        for (int i = 0; i < 60; ++i) {
            Perforation holes = dice.holes(i);
            const Lattice pixels = dice.pixels();
            const auto before = spectrum(holes, pixels);
            const double by = dice.between(-1.0, 1.0);
            holes.angle_rad += by;
            check_same(before, spectrum(holes, turned(pixels, by)));
            seen += before.size();
        }
        CHECK(seen > 100);
    }

    TEST_CASE("property: holes turned by what their pattern repeats in beat as before") {
        RandomSheets dice;
        for (int i = 0; i < 60; ++i) {
            Perforation holes = dice.holes(i);
            const Lattice pixels = dice.pixels();
            const auto before = spectrum(holes, pixels);
            const bool staggered = holes.pattern == PerforationPattern::staggered;
            holes.angle_rad += base::radians(staggered ? 60.0 : 90.0);
            check_same(before, spectrum(holes, pixels));
        }
    }

    TEST_CASE("property: everything finer by a factor beats finer by that factor") {
        RandomSheets dice;
        for (int i = 0; i < 60; ++i) {
            Perforation holes = dice.holes(i);
            Lattice pixels = dice.pixels();
            const auto before = spectrum(holes, pixels);
            const double s = 0.5;
            holes.pitch_m *= s;
            holes.hole_diameter_m *= s;
            check_same(before, spectrum(holes, {s * pixels.a, s * pixels.b}), s);
        }
    }

    TEST_CASE("pixels as wide as the holes' pitch have no beat of that order") {
        Perforation holes{
            .pattern = PerforationPattern::square, .hole_diameter_m = 0.001, .pitch_m = 0.004};
        CHECK(spectrum(holes, upright(0.004)).empty());
        holes.angle_rad = base::radians(1.0);
        CHECK_FALSE(spectrum(holes, upright(0.004)).empty());
    }

    TEST_CASE("a micro-perforated sheet under coarse pixels has no beat of low order") {
        const Perforation holes{
            .pattern = PerforationPattern::square, .hole_diameter_m = 0.0003, .pitch_m = 0.0008};
        CHECK(spectrum(holes, upright(0.005)).empty());
    }

    TEST_CASE("property: smaller holes at the same pitch beat at the same periods, fainter") {
        RandomSheets dice;
        for (int i = 0; i < 60; ++i) {
            Perforation holes = dice.holes(i);
            // Of the highest order larger holes hold more only up to there.
            holes.hole_diameter_m = std::min(holes.hole_diameter_m, 0.16 * holes.pitch_m);
            const Lattice pixels = dice.pixels();
            const auto large = sound::beats(sound::hole_orders(holes), pixels, kFar_m);
            holes.hole_diameter_m *= 0.5;
            const auto small = sound::beats(sound::hole_orders(holes), pixels, kFar_m);
            REQUIRE(small.size() == large.size());
            for (std::size_t k = 0; k < small.size(); ++k) {
                CHECK(small[k].frequency == large[k].frequency);
                CHECK(small[k].contrast < large[k].contrast);
            }
        }
    }

    TEST_CASE("every beat is coarser than pixels and holes and of orders up to 3 of both") {
        RandomSheets dice;
        for (int i = 0; i < 60; ++i) {
            const Perforation holes = dice.holes(i);
            const Lattice pixels = dice.pixels();
            const auto p = sound::reciprocal(pixels);
            const auto h = sound::reciprocal(sound::hole_lattice(holes));
            for (const Beat& beat : sound::beats(sound::hole_orders(holes), pixels, kFar_m)) {
                CHECK(glm::length(beat.frequency) < sound::lowest_frequency(p));
                CHECK(glm::length(beat.frequency) < sound::lowest_frequency(h) * (1.0 + 1e-12));
                CHECK((beat.pixel_i != 0 || beat.pixel_j != 0));
                CHECK(std::abs(beat.pixel_i) <= 3);
                CHECK(std::abs(beat.pixel_j) <= 3);
                const glm::dvec2 sum =
                    p.at(beat.pixel_i, beat.pixel_j) + h.at(beat.hole_i, beat.hole_j);
                CHECK(glm::distance(sum, beat.frequency) < 1e-9);
            }
        }
    }
}
