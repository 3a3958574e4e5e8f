// SPDX-License-Identifier: MIT
#include "room/perforation.hpp"

#include "support/check.hpp"

#include <random>

using namespace rakeline;
using tests::check_close;

TEST_SUITE("room/perforation") {
    TEST_CASE("a sheet without holes has no open area, whatever its hole fields say") {
        const room::Perforation sheet{room::PerforationPattern::none, 0.0012, 0.005};
        CHECK(room::open_area(sheet) == 0.0);
    }

    TEST_CASE("golden: 1.2 mm holes at 5.013 mm square are 4.5 % open") {
        // Worked example of a thin perforate, 4.5 % printed to one decimal.
        const room::Perforation sheet{room::PerforationPattern::square, 0.0012, 0.005013};
        check_close(100.0 * room::open_area(sheet), 4.5, tests::printed_digits(1));
    }

    TEST_CASE("property: holes counted in a large field take up the open area") {
        std::mt19937 random(7);
        std::uniform_real_distribution<double> part(0.1, 1.0);
        for (int i = 0; i < 20; ++i) {
            const double pitch_m = 0.005;
            const double diameter_m = pitch_m * part(random);
            const double hole_m2 = 0.25 * base::kPi * diameter_m * diameter_m;
            // 400 by 400 holes; the staggered rows stand sqrt(3)/2 of a pitch apart.
            const double square_m2 = 400.0 * pitch_m * 400.0 * pitch_m;
            const double staggered_m2 = square_m2 * std::sqrt(3.0) / 2.0;
            const tests::Tolerance same = tests::relative(1e-12, "the same sum in another order");
            check_close(room::open_area({room::PerforationPattern::square, diameter_m, pitch_m}),
                        160000.0 * hole_m2 / square_m2, same);
            check_close(room::open_area({room::PerforationPattern::staggered, diameter_m, pitch_m}),
                        160000.0 * hole_m2 / staggered_m2, same);
        }
    }

    TEST_CASE("golden: woven sheets are as open as tables of wire cloth print") {
        // Meshes 20, 100 and 200 to the inch: opening and its share. Tables of the wire cloth
        // trade, from memory.
        const struct {
            double meshes_per_inch, opening_in, open_percent;
        } cloths[] = {{20, 0.034, 46.2}, {100, 0.0055, 30.3}, {200, 0.0029, 33.6}};
        for (const auto& cloth : cloths) {
            const room::Perforation sheet{room::PerforationPattern::woven,
                                          cloth.opening_in * base::kMetresPerInch,
                                          base::kMetresPerInch / cloth.meshes_per_inch};
            check_close(100.0 * room::open_area(sheet), cloth.open_percent,
                        tests::printed_digits(1));
        }
    }

    TEST_CASE("turning the lattice leaves the open area as it is") {
        room::Perforation sheet{room::PerforationPattern::staggered, 0.0012, 0.005};
        const double straight = room::open_area(sheet);
        sheet.angle_rad = base::radians(15.0);
        CHECK(room::open_area(sheet) == straight);
    }

    TEST_CASE("touching staggered holes are the densest packing of circles") {
        check_close(room::open_area({room::PerforationPattern::staggered, 0.005, 0.005}),
                    base::kPi / (2.0 * std::sqrt(3.0)), tests::relative(1e-14, "rounding"));
    }

    TEST_CASE("holes larger than their pitch never open more than the whole sheet") {
        CHECK(room::open_area({room::PerforationPattern::square, 0.01, 0.005}) == 1.0);
    }
}
