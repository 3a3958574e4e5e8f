// SPDX-License-Identifier: MIT
// Source: 2010 ADA Standards for Accessible Design, table 221.2.1.1, as reported: wheelchair spaces
// by the number of seats.
#include "room/wheelchair_places.hpp"

#include <doctest/doctest.h>

TEST_SUITE("outside/ada_wheelchair_places") {
    TEST_CASE("golden: every bracket of the table at both of its ends") {
        struct Row {
            int seats;
            int places;
        };
        constexpr Row kRows[] = {{4, 1},     {25, 1},    {26, 2},    {50, 2},    {51, 4},
                                 {120, 4},   {150, 4},   {151, 5},   {300, 5},   {301, 6},
                                 {500, 6},   {501, 7},   {650, 7},   {651, 8},   {800, 8},
                                 {801, 9},   {1000, 10}, {5000, 36}, {5001, 37}, {5200, 37},
                                 {5201, 38}, {5400, 38}, {5401, 39}};
        for (const Row& row : kRows) {
            INFO(row.seats, " seats");
            CHECK(rakeline::room::wheelchair_places_wanted(row.seats) == row.places);
        }
    }

    TEST_CASE("the table does not speak of fewer than four seats") {
        for (const int seats : {0, 1, 3})
            CHECK_FALSE(rakeline::room::wheelchair_places_wanted(seats));
    }

    TEST_CASE("property: more seats never want fewer places, nor more than one further at a step") {
        int before = 1;
        for (int seats = 5; seats <= 20000; ++seats) {
            const int here = rakeline::room::wheelchair_places_wanted(seats).value();
            REQUIRE(here >= before);
            // The table itself goes from 2 to 4 at 51 seats.
            REQUIRE(here <= before + (seats == 51 ? 2 : 1));
            before = here;
        }
    }
}
