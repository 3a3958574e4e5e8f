// SPDX-License-Identifier: MIT
// Source: Fresnel's equations for a clear pane of index 1.52 with incoherent inter-reflection, as
// tabulated to five digits (derived by an independent calculation, no absorption).
#include "base/units.hpp"
#include "light/port_glass.hpp"
#include "support/check.hpp"

using namespace rakeline;
using tests::check_close;
using tests::printed_digits;

TEST_SUITE("outside/fresnel_pane") {
    TEST_CASE("golden: a clear pane of index 1.52 by angle of incidence") {
        struct Row {
            double degrees;
            double transmittance;
        };
        const Row rows[] = {{0.0, 0.91832},  {10.0, 0.91829}, {15.0, 0.91819},
                            {20.0, 0.91790}, {30.0, 0.91596}, {45.0, 0.90253}};
        for (const Row& row : rows) {
            INFO(row.degrees, " degrees");
            check_close(light::port_transmittance({}, base::radians(row.degrees)),
                        row.transmittance, printed_digits(5));
        }
    }

    TEST_CASE("golden: at normal incidence a lossless pane passes 2n/(n^2 + 1)") {
        for (const double n : {1.3, 1.46, 1.52, 1.7, 2.0}) {
            check_close(light::port_transmittance({.index = n}, 0.0), 2.0 * n / (n * n + 1.0),
                        tests::relative(1e-14, "closed form, rounding"));
        }
    }

    TEST_CASE(
        "golden: a second pane brings it to 0.84897, reflections between the panes included") {
        check_close(light::port_transmittance({.panes = 2}, 0.0), 0.84897, printed_digits(5));
    }

    TEST_CASE("golden: a pane with 0.5 % reflectance at each surface passes 0.99005") {
        check_close(light::port_transmittance({.coated_reflectance = 0.005}, 0.0), 0.99005,
                    printed_digits(5));
    }

    TEST_CASE("golden: the reflectance of one surface is 0.04258") {
        // A pane coated to what bare glass reflects is a bare pane.
        check_close(light::port_transmittance({.coated_reflectance = 0.04258}, 0.0),
                    light::port_transmittance({}, 0.0),
                    tests::absolute(1e-5, "half a unit of the fifth digit, twice: two surfaces"));
    }
}
