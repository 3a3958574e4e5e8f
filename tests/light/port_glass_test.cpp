// SPDX-License-Identifier: MIT
#include "light/port_glass.hpp"

#include "base/units.hpp"
#include "support/check.hpp"

#include <random>

using namespace rakeline;
using light::port_transmittance;
using light::PortGlass;
using tests::check_close;

namespace {

/// The light in a stack of plane surfaces, followed bounce by bounce until nothing is left: the
/// flux in each gap going onward and back, one step at a time. The second route to the sums.
double followed(int surfaces, double r, double internal) {
    // Gap 0 is before the first surface; odd gaps are glass.
    std::vector<double> onward(static_cast<std::size_t>(surfaces) + 1, 0.0);
    std::vector<double> back(onward.size(), 0.0);
    onward[0] = 1.0;
    double out = 0.0;
    for (int step = 0; step < 4000; ++step) {
        std::vector<double> next_onward(onward.size(), 0.0);
        std::vector<double> next_back(onward.size(), 0.0);
        for (std::size_t gap = 0; gap < onward.size(); ++gap) {
            const double through = gap % 2 == 1 ? internal : 1.0;
            if (gap + 1 < onward.size()) {
                next_onward[gap + 1] += (1.0 - r) * onward[gap] * through;
                next_back[gap] += r * onward[gap] * through;
            }
            if (gap > 0) {
                next_back[gap - 1] += (1.0 - r) * back[gap] * through;
                next_onward[gap] += r * back[gap] * through;
            }
        }
        out += next_onward.back();
        next_onward.back() = 0.0;
        next_back.front() = 0.0;
        onward = next_onward;
        back = next_back;
    }
    return out;
}

}  // namespace

TEST_SUITE("light/port_glass") {
    TEST_CASE("an open port passes everything") {
        PortGlass glass;
        glass.panes = 0;
        glass.absorption_per_m = 50.0;
        CHECK(port_transmittance(glass, 0.0) == 1.0);
        CHECK(port_transmittance(glass, 1.2) == 1.0);
    }

    TEST_CASE("glass of the index of air without absorption passes everything") {
        PortGlass glass;
        glass.index = 1.0;
        check_close(port_transmittance(glass, 0.7), 1.0, tests::absolute(1e-15, "rounding"));
    }

    TEST_CASE("the panes pass what following every bounce passes") {
        for (int panes = 1; panes <= 4; ++panes) {
            PortGlass glass;
            glass.panes = panes;
            glass.coated_reflectance = 0.11;
            glass.thickness_m = 0.01;
            glass.absorption_per_m = 7.0;
            check_close(port_transmittance(glass, 0.0), followed(2 * panes, 0.11, std::exp(-0.07)),
                        tests::relative(1e-12, "both sum the same series"));
        }
    }

    TEST_CASE("panes without loss pass (1 - R)/(1 + (2n - 1) R)") {
        for (int panes = 1; panes <= 4; ++panes) {
            PortGlass glass;
            glass.panes = panes;
            glass.coated_reflectance = 0.04;
            const double closed = (1.0 - 0.04) / (1.0 + (2.0 * panes - 1.0) * 0.04);
            check_close(port_transmittance(glass, 0.3), closed, tests::relative(1e-14, "rounding"));
        }
    }

    TEST_CASE("at Brewster's angle one polarisation passes whole") {
        PortGlass glass;
        const double n = glass.index;
        const double r_s = std::pow((n * n - 1.0) / (n * n + 1.0), 2);
        check_close(port_transmittance(glass, std::atan(n)),
                    0.5 * (1.0 + (1.0 - r_s) / (1.0 + r_s)), tests::relative(1e-13, "rounding"));
    }

    TEST_CASE("absorption acts along the slanted path") {
        PortGlass glass;
        glass.coated_reflectance = 0.0;
        glass.thickness_m = 0.02;
        glass.absorption_per_m = 10.0;
        const double incidence_rad = base::radians(50.0);
        const double inside_rad = std::asin(std::sin(incidence_rad) / glass.index);
        check_close(port_transmittance(glass, incidence_rad),
                    std::exp(-10.0 * 0.02 / std::cos(inside_rad)),
                    tests::relative(1e-13, "rounding"));
    }

    TEST_CASE(
        "property: transmittance lies in (0, 1], falls with panes, absorption and steep angles") {
        const unsigned seed = 20261;
        INFO("seed ", seed);
        std::mt19937 random(seed);
        std::uniform_real_distribution<double> unit(0.0, 1.0);
        for (int i = 0; i < 500; ++i) {
            PortGlass glass;
            glass.panes = 1 + i % 3;
            glass.index = 1.3 + 0.7 * unit(random);
            glass.thickness_m = 0.001 + 0.02 * unit(random);
            glass.absorption_per_m = 20.0 * unit(random);
            if (i % 2 == 1) glass.coated_reflectance = 0.05 * unit(random);
            const double incidence_rad = base::radians(85.0) * unit(random);
            const double passed = port_transmittance(glass, incidence_rad);
            CHECK(passed > 0.0);
            CHECK(passed <= 1.0);
            PortGlass more = glass;
            ++more.panes;
            CHECK(port_transmittance(more, incidence_rad) < passed);
            PortGlass darker = glass;
            darker.absorption_per_m += 1.0;
            CHECK(port_transmittance(darker, incidence_rad) < passed);
            CHECK(port_transmittance(glass, base::radians(89.0)) < passed);
        }
    }
}
