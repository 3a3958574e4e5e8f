// SPDX-License-Identifier: MIT
#include "room/seat_plan.hpp"

#include <doctest/doctest.h>

using namespace rakeline::room;

namespace {

/// Two blocks of three rows, the second behind the first.
SeatPlanInput two_blocks() {
    SeatPlanInput in;
    in.hall.width_m = 16.0;
    in.hall.length_m = 30.0;
    SeatBlock front;
    front.rows = 3;
    front.first_row_back_m = 5.0;
    SeatBlock rear = front;
    rear.name = "rear";
    rear.first_row = "D";
    rear.first_row_back_m = 10.0;
    in.seating = {front, rear};
    return in;
}

}  // namespace

TEST_SUITE("room/rows ahead") {
    TEST_CASE("the first row of a block behind another looks over that block's last row") {
        const SeatPlan plan = place_seats(two_blocks());
        REQUIRE(plan.rows.size() == 6);
        CHECK(plan.rows[3].row_in_front == 2);
        CHECK(plan.rows[3].second_row_in_front == 1);
        CHECK(plan.rows[4].row_in_front == 3);
        CHECK(plan.rows[4].second_row_in_front == 2);
        CHECK_FALSE(plan.rows[0].row_in_front);
        CHECK_FALSE(plan.rows[1].second_row_in_front);
    }

    TEST_CASE("the order of blocks in the file does not matter") {
        SeatPlanInput in = two_blocks();
        std::swap(in.seating[0], in.seating[1]);
        const SeatPlan plan = place_seats(in);
        CHECK(plan.rows[0].row_in_front == 5);
        CHECK_FALSE(plan.rows[3].row_in_front);
    }

    TEST_CASE("a block to the side is not in front, nor is anything in front of a balcony") {
        SeatPlanInput in = two_blocks();
        in.seating[0].across_m = -5.0;
        in.seating[0].seats_per_row = 5;
        in.seating[1].across_m = 4.0;
        in.seating[1].seats_per_row = 5;
        CHECK_FALSE(place_seats(in).rows[3].row_in_front);
        in = two_blocks();
        in.seating[1].raised = true;
        in.seating[1].first_row_up_m = 4.0;
        CHECK_FALSE(place_seats(in).rows[3].row_in_front);
    }
}
