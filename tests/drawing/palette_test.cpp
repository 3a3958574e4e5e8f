// SPDX-License-Identifier: MIT
#include "drawing/palette.hpp"

#include "support/check.hpp"

#include <cmath>

using namespace rakeline;
using tests::check_close;

namespace {

void check_colour(const drawing::Rgb& actual, const drawing::Rgb& expected) {
    check_close(actual.r, expected.r, tests::printed_digits(6));
    check_close(actual.g, expected.g, tests::printed_digits(6));
    check_close(actual.b, expected.b, tests::printed_digits(6));
}

double linear(double c) {
    return c <= 0.04045 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4);
}

/// CIE 1976 lightness of an sRGB colour.
double lightness(const drawing::Rgb& c) {
    const double y = 0.2126 * linear(c.r) + 0.7152 * linear(c.g) + 0.0722 * linear(c.b);
    return y > 0.008856 ? 116.0 * std::cbrt(y) - 16.0 : 903.3 * y;
}

}  // namespace

TEST_SUITE("drawing/palette") {
    TEST_CASE("golden: entries are those of the published table") {
        // matplotlib 3.6.3, _cm_listed, cividis: entries 0, 64, 128, 200 and 255.
        struct Row {
            int entry;
            drawing::Rgb colour;
        };
        const Row rows[] = {{0, {0.0, 0.135112, 0.304751}},
                            {64, {0.263738, 0.307831, 0.422789}},
                            {128, {0.488697, 0.485318, 0.471008}},
                            {200, {0.769353, 0.707035, 0.408516}},
                            {255, {0.995737, 0.909344, 0.217772}}};
        for (const Row& row : rows) {
            INFO("entry ", row.entry);
            check_colour(drawing::cividis(row.entry / 255.0), row.colour);
        }
    }

    TEST_CASE("a place between two entries is their mix") {
        const drawing::Rgb a = drawing::cividis(100.0 / 255.0);
        const drawing::Rgb b = drawing::cividis(101.0 / 255.0);
        const drawing::Rgb mid = drawing::cividis(100.25 / 255.0);
        check_close(mid.r, 0.75 * a.r + 0.25 * b.r, tests::absolute(1e-12, "rounding of the mix"));
        check_close(mid.b, 0.75 * a.b + 0.25 * b.b, tests::absolute(1e-12, "rounding of the mix"));
        CHECK(a.r != b.r);
    }

    TEST_CASE("places outside the table take its ends") {
        check_colour(drawing::cividis(-3.0), drawing::cividis(0.0));
        check_colour(drawing::cividis(7.0), drawing::cividis(1.0));
    }

    TEST_CASE("property: lightness rises all the way") {
        for (int i = 1; i < 256; ++i) {
            INFO("entry ", i);
            CHECK(lightness(drawing::cividis(i / 255.0)) >
                  lightness(drawing::cividis((i - 1) / 255.0)));
        }
    }
}
