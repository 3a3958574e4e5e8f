// SPDX-License-Identifier: MIT
#include "picture/throw.hpp"

#include "picture/random_room.hpp"
#include "support/check.hpp"

using namespace rakeline;
using namespace rakeline::tests;

TEST_SUITE("picture/throw") {
    TEST_CASE("golden: a 50 mm lens at 25 m, and the lens for 12 m at 20 m") {
        // Worked by hand from W = A (D - f) / f: 0.020955 * 499, and 0.419100 / 12.020955.
        check_close(picture::picture_width(0.020955, 25.0, 0.050), 10.4565, printed_digits(4));
        check_close(picture::focal_length(0.020955, 20.0, 12.0), 0.034864, printed_digits(6));
        check_close(picture::focal_length_field(0.020955, 20.0, 12.0), 0.034925, printed_digits(6));
    }

    TEST_CASE("round trip: focal length for a width gives that width") {
        Dice dice(21);
        for (int i = 0; i < 1000; ++i) {
            const double gate = dice.between(0.005, 0.07);
            const double distance = dice.between(2.0, 60.0);
            const double width = dice.between(1.0, 30.0);
            const double f = picture::focal_length(gate, distance, width);
            check_close(picture::picture_width(gate, distance, f), width,
                        relative(1e-12, "rounding"));
        }
    }

    TEST_CASE("property: the field approximation is too long by f A / W") {
        Dice dice(22);
        for (int i = 0; i < 1000; ++i) {
            const double gate = dice.between(0.005, 0.07);
            const double distance = dice.between(2.0, 60.0);
            const double width = dice.between(1.0, 30.0);
            const double exact = picture::focal_length(gate, distance, width);
            const double field = picture::focal_length_field(gate, distance, width);
            check_close(field - exact, exact * gate / width, relative(1e-9, "difference of two"));
        }
    }

    TEST_CASE("property: image distance and throw satisfy the lens equation") {
        Dice dice(23);
        for (int i = 0; i < 1000; ++i) {
            const double f = dice.between(0.01, 0.2);
            const double distance = dice.between(0.5, 60.0);
            const double b = picture::image_distance(f, distance);
            check_close(1.0 / b + 1.0 / distance, 1.0 / f, relative(1e-12, "rounding"));
            check_close(distance / b, picture::picture_width(1.0, distance, f),
                        relative(1e-12, "rounding"));
        }
    }
}
