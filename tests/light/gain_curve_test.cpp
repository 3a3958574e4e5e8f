// SPDX-License-Identifier: MIT
#include "light/gain_curve.hpp"

#include "base/units.hpp"
#include "light/screen_gain.hpp"
#include "support/check.hpp"

#include <algorithm>
#include <random>

using namespace rakeline;
using light::GainCurve;
using light::GainModel;
using tests::check_close;

namespace {

const tests::Tolerance kRounding = tests::relative(1e-12, "rounding");

std::vector<room::GainPoint> random_table(std::mt19937& random, bool falling) {
    std::uniform_real_distribution<double> unit(0.0, 1.0);
    std::vector<room::GainPoint> table{{0.0, 1.0 + 2.0 * unit(random)}};
    const int points = 2 + static_cast<int>(8.0 * unit(random));
    while (static_cast<int>(table.size()) < points) {
        const room::GainPoint& last = table.back();
        const double angle = last.angle_rad + 0.02 + unit(random) * (1.5 - last.angle_rad) / 4.0;
        const double gain = falling ? last.gain * unit(random) : 3.0 * unit(random);
        table.push_back({angle, gain});
    }
    return table;
}

room::ScreenSurface lobed(double peak, double matte, double half_degrees) {
    room::ScreenSurface surface;
    surface.lobe = room::LobeKind::mirror;
    surface.peak_gain = peak;
    surface.matte_gain = matte;
    surface.half_gain_angle_rad = base::radians(half_degrees);
    return surface;
}

/// The lobe of `surface`, read at every `step` degrees out to 90.
room::ScreenSurface sampled(const room::ScreenSurface& surface, double step_degrees) {
    const GainModel model(surface, 0.0);
    room::ScreenSurface out = surface;
    for (double degrees = 0.0; degrees <= 90.0; degrees += step_degrees)
        out.gain_table.push_back(
            {base::radians(degrees), model.gain_off_lobe(base::radians(degrees))});
    return out;
}

double worst_miss(const room::ScreenSurface& surface, double step_degrees) {
    const GainModel exact(surface, 0.0);
    const GainModel table(sampled(surface, step_degrees), 0.0);
    double worst = 0.0;
    for (double angle = 0.0; angle < base::radians(90.0); angle += 0.001)
        worst = std::max(worst, std::abs(table.gain_off_lobe(angle) - exact.gain_off_lobe(angle)));
    return worst;
}

}  // namespace

TEST_SUITE("light/gain_curve") {
    TEST_CASE("the curve passes its points, and keeps the last gain beyond the last angle") {
        std::mt19937 random(51);
        for (int i = 0; i < 100; ++i) {
            const auto table = random_table(random, false);
            const GainCurve curve(table);
            for (const room::GainPoint& point : table)
                check_close(curve.at(point.angle_rad), point.gain, kRounding);
            CHECK(curve.at(table.back().angle_rad + 0.3) == table.back().gain);
            CHECK(curve.at(3.1) == table.back().gain);
        }
    }

    TEST_CASE("property: between two points the curve stays between their gains") {
        std::mt19937 random(52);
        const double rounding = 1e-12;
        for (int i = 0; i < 100; ++i) {
            const auto table = random_table(random, false);
            const GainCurve curve(table);
            for (std::size_t k = 1; k < table.size(); ++k) {
                const auto [low, high] = std::minmax(table[k - 1].gain, table[k].gain);
                const double width = table[k].angle_rad - table[k - 1].angle_rad;
                for (double part = 0.0; part <= 1.0; part += 0.05) {
                    const double here = curve.at(table[k - 1].angle_rad + part * width);
                    CHECK(here >= low - rounding);
                    CHECK(here <= high + rounding);
                }
            }
        }
    }

    TEST_CASE("property: where the measured gains fall, the curve falls") {
        std::mt19937 random(53);
        for (int i = 0; i < 100; ++i) {
            const GainCurve curve(random_table(random, true));
            double before = curve.at(0.0);
            for (double angle = 0.01; angle < 1.57; angle += 0.01) {
                const double now = curve.at(angle);
                CHECK(now <= before + 1e-12);
                before = now;
            }
        }
    }

    TEST_CASE("the curve is level in the lobe's middle and at the last angle") {
        const GainCurve curve({{0.0, 2.0}, {0.2, 1.5}, {0.4, 0.8}, {0.9, 0.3}});
        const tests::Tolerance second_order =
            tests::absolute(1e-9, "the curve's own bend over 1e-6 rad");
        check_close(curve.at(1e-6), 2.0, second_order);
        check_close(curve.at(0.9 - 1e-6), 0.3, second_order);
    }

    TEST_CASE("property: a flat table is a matte surface, in gain and in reflectance") {
        std::mt19937 random(54);
        std::uniform_real_distribution<double> unit(0.0, 1.0);
        for (int i = 0; i < 50; ++i) {
            const double gain = 0.3 + unit(random);
            const GainCurve curve({{0.0, gain}, {0.2 + unit(random), gain}});
            check_close(curve.at(1.5 * unit(random)), gain, kRounding);
            check_close(curve.reflectance(), gain, kRounding);
        }
    }

    TEST_CASE("property: a table read off a lobe nears it as it gets finer") {
        std::mt19937 random(55);
        std::uniform_real_distribution<double> unit(0.0, 1.0);
        for (int i = 0; i < 10; ++i) {
            const auto surface =
                lobed(1.5 + unit(random), 0.5 * unit(random), 12.0 + 10.0 * unit(random));
            const double coarse = worst_miss(surface, 6.0);
            const double fine = worst_miss(surface, 1.5);
            CHECK(coarse < 0.05 * surface.peak_gain);
            // A quarter of the step. Slopes of this kind err by its square at worst, hence 16; half
            // of that is left for where the worst place of either happens to lie.
            CHECK(fine < coarse / 8.0);
        }
    }

    TEST_CASE("property: so does its reflectance") {
        std::mt19937 random(56);
        std::uniform_real_distribution<double> unit(0.0, 1.0);
        for (int i = 0; i < 10; ++i) {
            const auto surface =
                lobed(1.5 + unit(random), 0.5 * unit(random), 15.0 + 25.0 * unit(random));
            const double exact = light::hemispherical_reflectance(surface);
            const double coarse = light::hemispherical_reflectance(sampled(surface, 6.0));
            const double fine = light::hemispherical_reflectance(sampled(surface, 1.0));
            check_close(coarse, exact, tests::relative(5e-3, "6 degrees between the points"));
            CHECK(std::abs(fine - exact) < 0.1 * std::abs(coarse - exact));
        }
    }
}
