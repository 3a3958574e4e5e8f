// SPDX-License-Identifier: MIT
#include "room/wheelchair_places.hpp"

#include "room/cross_aisles.hpp"
#include "room/platforms.hpp"
#include "room/refusal.hpp"
#include "room/valid_room.hpp"
#include "support/check.hpp"

using namespace rakeline;
using namespace rakeline::room;
using tests::check_refused;

namespace {

/// Names of the places without a companion in one row of eight seats, aisle after the fourth.
std::vector<std::string> alone_with(const std::vector<int>& places) {
    SeatPlanInput in;
    SeatBlock block;
    block.rows = 2;
    block.seats_per_row = 8;
    block.aisles = {{4, 1.0}};
    for (const int seat : places)
        block.wheelchair_places.push_back({"A", seat});
    in.seating = {block};
    const SeatPlan plan = place_seats(in);
    std::vector<std::string> names;
    for (const int seat : places_without_companion(plan, in.seating))
        names.push_back(plan.seats[static_cast<std::size_t>(seat)].name);
    return names;
}

using Names = std::vector<std::string>;

Layout with_range(double low_m, double typical_m, double high_m) {
    Layout layout = tests::valid_room();
    layout.audience.wheelchair_eye_low_m = low_m;
    layout.audience.wheelchair_eye_height_m = typical_m;
    layout.audience.wheelchair_eye_high_m = high_m;
    return layout;
}

}  // namespace

TEST_SUITE("room/wheelchair_places") {
    TEST_CASE("a place has a companion seat of its own beside it, on this side of an aisle") {
        CHECK(alone_with({}) == Names{});
        CHECK(alone_with({2}) == Names{});
        CHECK(alone_with({1, 3}) == Names{});
        CHECK(alone_with({1, 2}) == Names{"A1"});
        CHECK(alone_with({2, 3}) == Names{});
        // One seat between two places, with no other free: only one of them has it.
        CHECK(alone_with({1, 3, 4}) == Names{"A3", "A4"});
        // The seat after the aisle is not beside the place before it.
        CHECK(alone_with({3, 4}) == Names{"A4"});
        CHECK(alone_with({4, 5}) == Names{});
        CHECK(alone_with({5, 6, 7, 8}) == Names{"A5", "A6", "A7", "A8"});
    }

    TEST_CASE("refuses: a range of eye heights that ends before it begins, or misses the typical") {
        check_refused(with_range(1.3, 1.25, 1.2),
                      {"audience.wheelchair_eye_low_m",
                       "1.3 m is over the range's upper end at 1.2 m", "lower end"});
        check_refused(with_range(1.1, 1.05, 1.2),
                      {"audience.wheelchair_eye_height_m",
                       "1.05 m is outside the range of 1.1 m to 1.2 m", "within the range"});
        check_refused(with_range(1.1, 1.25, 1.2),
                      {"audience.wheelchair_eye_height_m", "1.25 m is outside", "widen"});
        CHECK(check_layout(with_range(1.2, 1.2, 1.2)).empty());
        CHECK(check_layout(with_range(1.1, 1.2, 1.2)).empty());
    }

    TEST_CASE("a cross aisle's people stand on its floor, wherever the floor comes from") {
        for (const bool arcs : {false, true}) {
            SeatPlanInput in;
            in.hall.width_m = 20.0;
            in.hall.length_m = 30.0;
            SeatBlock block;
            block.rows = 5;
            block.seats_per_row = 15;
            block.row_radius_m = arcs ? 18.0 : 0.0;
            block.cross_aisles = {{2, 1.4}};
            in.seating = {block};
            const auto lines = cross_aisle_lines(in, 0.45);
            REQUIRE(lines.size() == 1);
            CHECK(lines[0].row_behind == 2);
            const SeatPlan plan = place_seats(in);
            const glm::dvec3 ahead = plan.rows[1].centre_floor;
            const double off_m = (1.0 - kTreadAheadFraction) * block.row_spacing_m + 0.7;
            tests::check_close(lines[0].middle.z, ahead.z + off_m,
                               tests::absolute(1e-12, "rounding"));
            for (const PlaceAlong& place : lines[0].standing) {
                CHECK(place.floor.y == ahead.y);
                const double from_centre =
                    std::hypot(place.floor.x, place.floor.z - arc_centre_back(block));
                if (arcs)
                    tests::check_close(from_centre, 18.0 + lines[0].middle.z - 5.0,
                                       tests::absolute(1e-9, "rounding of an arc"));
            }
        }
    }

    TEST_CASE("a cross aisle on the hall's profile lies on the profile") {
        SeatPlanInput in;
        in.hall.floor = FloorMode::by_profile;
        in.hall.floor_profile = {{0.0, 0.0}, {20.0, 4.0}};
        SeatBlock block;
        block.rows = 4;
        block.cross_aisles = {{2, 1.0}};
        in.seating = {block};
        const auto lines = cross_aisle_lines(in, 0.45);
        REQUIRE(lines.size() == 1);
        tests::check_close(lines[0].middle.y, 0.2 * lines[0].middle.z,
                           tests::absolute(1e-12, "rounding"));
    }
}
