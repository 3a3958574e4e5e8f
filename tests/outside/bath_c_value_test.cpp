// SPDX-License-Identifier: MIT
// Source: University of Bath / Plus Maths stadium sight-line worksheets (P. Shepherd, 2012), the
// problem and its formula. The sheet leaves the answer to the reader: it is worked from its
// formula.
#include "picture/opening.hpp"
#include "sight/row_clearance.hpp"
#include "sight/row_ends.hpp"
#include "support/check.hpp"

using namespace rakeline::tests;

TEST_SUITE("outside/bath_c_value") {
    TEST_CASE("golden: the worksheet's riser for 150 mm at 30 m, and back") {
        // Worksheet problem: D 30 m, R 10 m, T 1 m, C 0.15 m.
        check_close(rakeline::sight::riser_for_c(30.0, 10.0, 1.0, 0.15), 0.48833,
                    printed_digits(5));
        check_close(rakeline::sight::c_value(30.0, 10.0, 1.0, 0.48833), 0.15000, printed_digits(5));
    }

    TEST_CASE("golden: a stadium textbook's riser, from memory") {
        // Remembered to print 0.41 for D 18, R 6.5, T 0.8, C 0.12: from memory, not confirmed.
        check_close(rakeline::sight::riser_for_c(18.0, 6.5, 0.8, 0.12), 0.41, printed_digits(2));
    }

    TEST_CASE("golden: the worksheet's C at both ends of a row that is as straight as its edge") {
        // The same problem in a room: a wide flat picture whose lower edge lies at the datum, a
        // row of front eyes 30 m before it and 10 m over it, the rear eyes 1 m behind.
        namespace sight = rakeline::sight;
        namespace room = rakeline::room;
        room::SeatPlanInput in;
        in.screen = {.width_m = 60.0, .height_m = 20.0, .sill_m = 0.0, .setback_m = 0.0};
        room::SeatBlock block;
        block.rows = 2;
        block.seats_per_row = 40;
        block.first_row_back_m = 30.0;
        block.first_row_up_m = 10.0 - in.audience.eye_height_m;
        block.row_spacing_m = 1.0;
        block.riser_m = 0.48833;
        in.seating = {block};
        const auto surface = rakeline::picture::screen_patch(in.screen);
        const auto opening =
            rakeline::picture::masked_opening(in.screen, {.name = "wide", .aspect_ratio = 3.0});
        const auto ends = sight::row_ends(surface, opening, room::place_seats(in), in.seating);
        check_close(ends.at(1).left.value().c_m, 0.15000, printed_digits(5));
        check_close(ends.at(1).right.value().c_m, 0.15000, printed_digits(5));
    }
}
