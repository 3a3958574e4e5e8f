// SPDX-License-Identifier: MIT
// Source: Richardson, Handbook of Projection, 1927, p. 492, Table 2: luminance of real screens at
// 0, 5, 10, 20, 30, 40, 50 degrees, a reference white being 100. Half-gain angles of the table by
// linear interpolation between its angles: no. 8 16.20, no. 24 24.56, no. 6 30.0 degrees; nos. 4
// and 20 (a matte one) stay above half. Energy from 0 to 50 degrees: no. 8 0.562, no. 20 0.439.
#include "base/units.hpp"
#include "light/screen_gain.hpp"
#include "support/check.hpp"

#include <algorithm>
#include <array>

using namespace rakeline;
using tests::check_close;
using tests::printed_digits;

namespace {

constexpr std::array<double, 7> kDegrees = {0.0, 5.0, 10.0, 20.0, 30.0, 40.0, 50.0};

struct MeasuredScreen {
    int number;
    std::array<double, 7> percent;
    double half_gain_degrees;
};
constexpr MeasuredScreen kLobed[] = {
    {8, {414.0, 361.0, 295.0, 153.0, 71.0, 32.0, 17.0}, 16.20},
    {24, {228.0, 215.0, 194.0, 140.0, 83.0, 54.0, 35.0}, 24.56},
    {6, {132.0, 125.0, 115.0, 88.0, 66.0, 50.0, 37.0}, 30.0},
};

/// Our model of a measured screen: its peak, its half-gain angle, and what is left at 50 degrees
/// as the matte part.
room::ScreenSurface modelled(const MeasuredScreen& screen) {
    room::ScreenSurface surface;
    surface.lobe = room::LobeKind::mirror;
    surface.peak_gain = 0.01 * screen.percent.front();
    surface.matte_gain = 0.01 * screen.percent.back();
    surface.half_gain_angle_rad = base::radians(screen.half_gain_degrees);
    return surface;
}

constexpr MeasuredScreen kNo4 = {4, {113.0, 109.0, 106.0, 94.0, 83.0, 80.0, 79.0}, 0.0};
constexpr MeasuredScreen kNo20 = {20, {78.0, 77.0, 77.0, 76.0, 75.0, 74.0, 73.0}, 0.0};

/// The measured gains themselves.
room::ScreenSurface measured(const MeasuredScreen& screen) {
    room::ScreenSurface surface;
    surface.lobe = room::LobeKind::mirror;
    for (std::size_t i = 0; i < kDegrees.size(); ++i)
        surface.gain_table.push_back({base::radians(kDegrees[i]), 0.01 * screen.percent[i]});
    return surface;
}

/// Where the curve through the measured gains falls to half its middle, degrees.
double half_gain_degrees(const MeasuredScreen& screen) {
    const light::GainModel model(measured(screen), 0.0);
    double low = 0.0;
    double high = 50.0;
    for (int i = 0; i < 60; ++i) {
        const double middle = 0.5 * (low + high);
        const bool above =
            model.gain_off_lobe(base::radians(middle)) > 0.005 * screen.percent.front();
        (above ? low : high) = middle;
    }
    return low;
}

/// 2 * integral of g sin cos over the table's angles, g linear between them.
double energy_of_table(const std::array<double, 7>& percent) {
    double sum = 0.0;
    constexpr int kSteps = 2000;
    for (std::size_t i = 0; i + 1 < kDegrees.size(); ++i) {
        const double step = base::radians(kDegrees[i + 1] - kDegrees[i]) / kSteps;
        for (int k = 0; k < kSteps; ++k) {
            const double part = (k + 0.5) / kSteps;
            const double g = 0.01 * ((1.0 - part) * percent[i] + part * percent[i + 1]);
            sum += g * std::sin(2.0 * (base::radians(kDegrees[i]) + step * (k + 0.5))) * step;
        }
    }
    return sum;
}

/// Energy, 2 integral of g sin cos from 0 to 50 degrees, of the straight lines between the points,
/// and of the lowest and highest of each span's own line and its neighbours' drawn on into it.
struct Envelope {
    double low = 0.0, straight = 0.0, high = 0.0;
};

Envelope energy_of_lines(const MeasuredScreen& screen) {
    constexpr int kSteps = 2000;  // a span: the rest of the midpoint rule is far below the checks
    const auto& g = screen.percent;
    const std::size_t spans = kDegrees.size() - 1;
    const auto line = [&](std::size_t span, double degrees) {
        const double slope = (g[span + 1] - g[span]) / (kDegrees[span + 1] - kDegrees[span]);
        return g[span] + slope * (degrees - kDegrees[span]);
    };
    Envelope out;
    for (std::size_t i = 0; i < spans; ++i) {
        const double width = (kDegrees[i + 1] - kDegrees[i]) / kSteps;
        for (int k = 0; k < kSteps; ++k) {
            const double degrees = kDegrees[i] + (k + 0.5) * width;
            const double a = base::radians(degrees);
            const double weight = 0.02 * std::sin(a) * std::cos(a) * base::radians(width);
            const double own = line(i, degrees);
            const double before = i > 0 ? line(i - 1, degrees) : own;
            const double after = i + 1 < spans ? line(i + 1, degrees) : own;
            out.straight += weight * own;
            out.low += weight * std::min({own, before, after});
            out.high += weight * std::max({own, before, after});
        }
    }
    return out;
}

}  // namespace

TEST_SUITE("outside/richardson_1927_screens") {
    TEST_CASE("golden: a lobe set by peak and half-gain angle is half its peak there") {
        for (const MeasuredScreen& screen : kLobed) {
            INFO("screen no. ", screen.number);
            const light::GainModel model(modelled(screen), 0.0);
            check_close(100.0 * model.gain_off_lobe(0.0), screen.percent.front(),
                        printed_digits(0));
            check_close(100.0 * model.gain_off_lobe(base::radians(screen.half_gain_degrees)),
                        0.5 * screen.percent.front(), printed_digits(0));
        }
    }

    TEST_CASE("screen no. 8 falls to 30 degrees by more than the 5.83 that was measured") {
        // The text works 414/71. A Gaussian lobe falls faster than a real one in its tail.
        const room::ScreenSurface surface = modelled(kLobed[0]);
        const glm::dvec3 toward_screen{0.0, 0.0, -1.0};
        const glm::dvec3 normal{0.0, 0.0, 1.0};
        const glm::dvec3 at_30{0.5, 0.0, std::sqrt(0.75)};
        const double ahead = light::gain(surface, 0.0, toward_screen, normal, normal);
        const double aside = light::gain(surface, 0.0, toward_screen, at_30, normal);
        CHECK(ahead / aside > 414.0 / 71.0);
        CHECK(ahead / aside < 10.0);
    }

    TEST_CASE("golden: the model stays within 8 % of the peak of every measured value") {
        for (const MeasuredScreen& screen : kLobed) {
            const light::GainModel model(modelled(screen), 0.0);
            for (std::size_t i = 0; i < kDegrees.size(); ++i) {
                INFO("screen no. ", screen.number, " at ", kDegrees[i]);
                check_close(100.0 * model.gain_off_lobe(base::radians(kDegrees[i])),
                            screen.percent[i],
                            tests::absolute(0.08 * screen.percent.front(),
                                            "what one Gaussian lobe misses of a measured curve"));
            }
        }
    }

    TEST_CASE("the model sends back as much as the measured screen") {
        // The tables' own energy, first as published for nos. 8 and 20.
        check_close(energy_of_table(kLobed[0].percent), 0.562, printed_digits(3));
        check_close(energy_of_table({78.0, 77.0, 77.0, 76.0, 75.0, 74.0, 73.0}), 0.439,
                    printed_digits(3));
        // Ours must lie between that and the same with the last value kept on from 50 to 90; 3 %
        // for the shape (no. 6 is 2 % over).
        for (const MeasuredScreen& screen : kLobed) {
            INFO("screen no. ", screen.number);
            const double to_50 = energy_of_table(screen.percent);
            const double beyond =
                0.01 * screen.percent.back() * std::pow(std::cos(base::radians(50.0)), 2);
            const double rho = light::hemispherical_reflectance(modelled(screen));
            CHECK(rho > to_50);
            CHECK(rho < 1.03 * (to_50 + beyond));
            CHECK(rho < 1.0);  // real screens claim no more light than arrives
        }
    }

    TEST_CASE("golden: measured gains come back at every angle of the table") {
        for (const MeasuredScreen& screen : {kLobed[0], kLobed[1], kLobed[2], kNo4, kNo20}) {
            INFO("screen no. ", screen.number);
            const light::GainModel model(measured(screen), 0.0);
            const glm::dvec3 toward_screen{0.0, 0.0, -1.0};
            for (std::size_t i = 0; i < kDegrees.size(); ++i) {
                const double a = base::radians(kDegrees[i]);
                const double gain = model.gain({.incoming = toward_screen,
                                                .toward_eye = {std::sin(a), 0.0, std::cos(a)},
                                                .normal = {0.0, 0.0, 1.0}});
                check_close(100.0 * gain, screen.percent[i], tests::relative(1e-12, "rounding"));
            }
        }
    }

    TEST_CASE("golden: half-gain angles of the measured curves") {
        for (const MeasuredScreen& screen : kLobed) {
            INFO("screen no. ", screen.number);
            check_close(half_gain_degrees(screen), screen.half_gain_degrees,
                        tests::absolute(0.6, "curved between the points, the source straight"));
        }
        CHECK(half_gain_degrees(kNo4) > 49.9);
        CHECK(half_gain_degrees(kNo20) > 49.9);
    }

    TEST_CASE("golden: energy of the measured curves from 0 to 50 degrees, and never over 1") {
        const auto to_50 = [](const MeasuredScreen& screen) {
            const double kept = 0.01 * screen.percent.back();
            return light::hemispherical_reflectance(measured(screen)) -
                   kept * std::pow(std::cos(base::radians(50.0)), 2);
        };
        // A curve through the points runs, in each span, between the source's straight line and the
        // neighbouring spans' lines drawn on; so does its energy.
        for (const MeasuredScreen& screen : {kLobed[0], kLobed[1], kLobed[2]}) {
            INFO("screen no. ", screen.number);
            const Envelope lines = energy_of_lines(screen);
            CHECK(to_50(screen) > lines.low);
            CHECK(to_50(screen) < lines.high);
        }
        check_close(energy_of_lines(kLobed[0]).straight, 0.562, printed_digits(3));
        check_close(to_50(kNo20), 0.439,
                    tests::relative(0.002,
                                    "near flat: the same, and printed "
                                    "digits"));
        for (const MeasuredScreen& screen : {kLobed[0], kLobed[1], kLobed[2], kNo4, kNo20})
            CHECK(light::hemispherical_reflectance(measured(screen)) < 1.0);
    }
}
