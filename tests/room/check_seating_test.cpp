// SPDX-License-Identifier: MIT
#include "room/refusal.hpp"
#include "room/valid_room.hpp"

#include <chrono>

using namespace rakeline;
using namespace rakeline::room;
using tests::check_refused;
using tests::valid_room;

namespace {

template <class Edit>
Layout edited(const Edit& edit) {
    Layout layout = valid_room();
    edit(layout);
    return layout;
}

}  // namespace

TEST_SUITE("room/check_seating") {
    TEST_CASE("refuses: doubled names of blocks and loudspeakers") {
        check_refused(edited([](Layout& x) { x.seating[1].name = "front"; }),
                      {"seating[1].name", "\"front\" is the name of seating[0]", "own"});
        check_refused(edited([](Layout& x) { x.loudspeakers[1].name = "centre"; }),
                      {"loudspeakers[1].name", "\"centre\" is the name of loudspeakers[0]", "own"});
        check_refused(edited([](Layout& x) { x.loudspeakers[1].name.clear(); }),
                      {"loudspeakers[1].name", "has no name", "give it one"});
    }

    TEST_CASE("refuses: seats of two blocks that share a name, once a pair of blocks") {
        check_refused(edited([](Layout& x) { x.seating[1].first_row = "D"; }),
                      {"seating[1]", "its seats D1 to D12 share names with seating[0]",
                       "first_row or first_seat_number"});
        CHECK(check_layout(edited([](Layout& x) {
                  x.seating[1].first_row = "D";
                  x.seating[1].first_seat_number = 13;
              })).empty());
    }

    TEST_CASE("refuses: what is no row letter") {
        for (const char* letter : {"", "1", "A1", "Ä", "ABCDE"}) {
            INFO(letter);
            check_refused(edited([&](Layout& x) {
                              x.seating = {x.seating[1]};
                              x.seating[0].first_row = letter;
                              x.audience.reference_seat.clear();
                          }),
                          {"seating[0].first_row", "is no row letter", "AA, AB"});
        }
    }

    TEST_CASE("refuses: rows that shrink to nothing") {
        check_refused(edited([](Layout& x) { x.seating[1].seats_added_per_row = -4; }),
                      {"seating[1].seats_added_per_row", "row 4 of the block would have 0 seats",
                       "fewer seats off a row"});
    }

    TEST_CASE("refuses: aisles beyond the row, doubled aisles") {
        check_refused(edited([](Layout& x) { x.seating[0].aisles[0].after_seat = 12; }),
                      {"seating[0].aisles[0].after_seat",
                       "seat 12 is not followed by another in a first row of 12", "between"});
        check_refused(
            edited([](Layout& x) {
                x.seating[0].aisles.push_back({6, 1.0});
            }),
            {"seating[0].aisles[1].after_seat", "an aisle after seat 6 already", "keep one"});
        check_refused(edited([](Layout& x) { x.seating[0].cross_aisles[0].after_row = 5; }),
                      {"seating[0].cross_aisles[0].after_row",
                       "row 5 is not followed by another in a block of 5 rows", "between"});
        check_refused(edited([](Layout& x) {
                          x.seating[0].cross_aisles.push_back({3, 1.0});
                      }),
                      {"seating[0].cross_aisles[1].after_row", "after row 3 already", "keep one"});
    }

    TEST_CASE("refuses: wheelchair places that no seat has, and doubled ones") {
        const auto with_place = [](WheelchairPlace place) {
            return edited([&](Layout& x) { x.seating[0].wheelchair_places.push_back(place); });
        };
        check_refused(with_place({"E", 13}),
                      {"seating[0].wheelchair_places[2]", "the block has no seat E13",
                       "its rows run from A1 to A12 to E1 to E12"});
        check_refused(with_place({"F", 1}),
                      {"seating[0].wheelchair_places[2]", "the block has no seat F1", "rows run"});
        check_refused(with_place({"5", 1}),
                      {"seating[0].wheelchair_places[2]", "the block has no seat 51", "rows run"});
        check_refused(with_place({"e", 12}), {"seating[0].wheelchair_places[2]",
                                              "is a wheelchair place already", "keep one"});
    }

    TEST_CASE("refuses: a reference seat that the room does not have") {
        for (const char* name : {"Z1", "E13", "E", "12", "E7x", "7E"}) {
            INFO(name);
            check_refused(edited([&](Layout& x) { x.audience.reference_seat = name; }),
                          {"audience.reference_seat", "the room has no seat", "leave it empty"});
        }
        CHECK(check_layout(edited([](Layout& x) { x.audience.reference_seat = "e7"; })).empty());
    }

    TEST_CASE("refuses: more than 20000 seats, without placing them") {
        const Layout crowded = edited([](Layout& x) {
            x.audience.reference_seat.clear();
            SeatBlock block = x.seating[0];
            block.rows = 200;
            block.seats_per_row = 500;
            block.aisles.clear();
            block.cross_aisles.clear();
            block.wheelchair_places.clear();
            x.seating.clear();
            for (int i = 0; i < 40; ++i) {
                block.name = "block " + std::to_string(i);
                block.first_seat_number = 1 + 500 * (i % 10);
                block.first_row = std::string(1, static_cast<char>('A' + i / 10)) + "AA";
                x.seating.push_back(block);
            }
        });
        const auto start = std::chrono::steady_clock::now();
        check_refused(crowded, {"seating", "4000000 seats are more than the 20000", "take out"});
        // Four million seats would take far longer than this to place.
        CHECK(std::chrono::steady_clock::now() - start < std::chrono::seconds(2));
    }

    TEST_CASE("refuses: rows beyond the booth wall or outside the side walls") {
        check_refused(edited([](Layout& x) { x.seating[1].first_row_back_m = 17.0; }),
                      {"seating[1].rows", "seat I1 stands 0.3 m beyond the booth wall at 20 m",
                       "take out rows"});
        check_refused(
            edited([](Layout& x) { x.seating[1].seats_per_row = 23; }),
            {"seating[1].seats_per_row", "stands 0.16 m outside the side wall", "take out seats"});
    }

    TEST_CASE("refuses: a seat inside or behind the screen") {
        check_refused(edited([](Layout& x) { x.seating[0].first_row_back_m = 1.2; }),
                      {"seating[0].first_row_back_m",
                       "seat A1 at 1.2 m does not stand in front of the screen", "move"});
        // The edges of a curved screen reach farther into the room than its middle.
        check_refused(edited([](Layout& x) {
                          x.screen.radius_m = 6.0;
                          x.seating[0].first_row_back_m = 3.5;
                      }),
                      // 1.2 + 6 - sqrt(36 - 25) = 3.883 m
                      {"seating[0].first_row_back_m", "which reaches to 3.883 m", "move"});
    }

    TEST_CASE("refuses: eyes above the ceiling") {
        check_refused(edited([](Layout& x) { x.seating[1].first_row_up_m = 5.0; }),
                      {"seating[1].first_row_up_m", "above the ceiling at 6.5 m", "rake"});
    }

    TEST_CASE("refuses: an arc that can't hold its row") {
        check_refused(edited([](Layout& x) { x.seating[1].row_radius_m = 1.5; }),
                      // Half of 11 x 0.56 m is 3.08 m; a half circle of 1.5 m holds 2.36 m.
                      {"seating[1].row_radius_m", "can't hold row 1 of the block", "larger"});
    }

    TEST_CASE("refuses: a loudspeaker outside the hall") {
        const auto moved = [](double across_m, double up_m, double back_m) {
            return edited([&](Layout& x) {
                x.loudspeakers[1].across_m = across_m;
                x.loudspeakers[1].up_m = up_m;
                x.loudspeakers[1].back_m = back_m;
            });
        };
        check_refused(moved(-6.1, 3.0, 9.0), {"loudspeakers[1].across_m",
                                              "outside the side walls, which stand 6 m", "move"});
        check_refused(moved(0.0, 6.6, 9.0),
                      {"loudspeakers[1].up_m", "6.6 m is above the ceiling at 6.5 m", "move"});
        check_refused(moved(0.0, 3.0, 20.1),
                      {"loudspeakers[1].back_m", "20.1 m is beyond the booth wall", "move"});
    }

    TEST_CASE("refuses: a loudspeaker said to be behind the screen that stands in front of it") {
        check_refused(
            edited([](Layout& x) { x.loudspeakers[0].back_m = 1.5; }),
            {"loudspeakers[0].behind_screen", "stands 0.3 m in front of the sheet", "write false"});
        check_refused(edited([](Layout& x) { x.loudspeakers[1].behind_screen = true; }),
                      {"loudspeakers[1].behind_screen", "stands 7.8 m in front", "write false"});
        // Behind the edge of a curved sheet, though nearer to the seats than its middle.
        CHECK(check_layout(edited([](Layout& x) {
                  x.screen.radius_m = 8.0;
                  x.loudspeakers[0].across_m = 4.5;
                  x.loudspeakers[0].back_m = 2.0;
              })).empty());
    }
}
