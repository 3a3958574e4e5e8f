// SPDX-License-Identifier: MIT
// Source: definition of the foot-lambert, 1/pi candela per square foot, with the international foot
// of 0.3048 m; and the screen luminances of ISO 26431-1:2008, SMPTE ST 196 and SMPTE RP 51-1995,
// which print both units.
#include "base/quantity_text.hpp"
#include "base/units.hpp"
#include "support/check.hpp"

using namespace rakeline;
using tests::check_close;
using tests::printed_digits;

namespace {

double cdm2_of(const char* text) {
    const auto value = base::parse_quantity(text, base::Unit::cd_per_m2, base::UnitSystem::metric);
    REQUIRE(value);
    return *value;
}

double footlamberts_of(double cdm2) {
    const base::ShownScale scale =
        base::shown_scale(base::Unit::cd_per_m2, base::UnitSystem::imperial);
    return cdm2 * scale.factor + scale.offset;
}

}  // namespace

TEST_SUITE("outside/footlambert") {
    TEST_CASE("golden: one foot-lambert is 3.4262591 cd/m2") {
        check_close(base::kCdm2PerFootLambert, 3.4262591, printed_digits(7));
        check_close(cdm2_of("1 fL"), 3.4262591, printed_digits(7));
    }

    TEST_CASE("golden: foot-lamberts read as candelas per square metre") {
        struct Row {
            const char* text;
            double cdm2;
            int decimals;
        };
        const Row rows[] = {{"14 fL", 47.968, 3},
                            {"16 fL", 54.820, 3},
                            {"12 fL", 41.12, 2},   // lower end of the film range, ST 196
                            {"22 fL", 75.38, 2}};  // upper end
        for (const Row& row : rows) {
            INFO(row.text);
            check_close(cdm2_of(row.text), row.cdm2, printed_digits(row.decimals));
        }
    }

    TEST_CASE("golden: the standards' own pairs of units agree") {
        // ISO 26431-1: 48.0 cd/m2 printed as 14.0 fL; derived to 14.009.
        check_close(footlamberts_of(48.0), 14.0, printed_digits(1));
        check_close(footlamberts_of(48.0), 14.009, printed_digits(3));
        // ST 196 and RP 51: 55 cd/m2 printed as 16 fL; derived to 16.052.
        check_close(footlamberts_of(55.0), 16.0, printed_digits(0));
        check_close(footlamberts_of(55.0), 16.052, printed_digits(3));
    }
}
