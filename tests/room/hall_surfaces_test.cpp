// SPDX-License-Identifier: MIT
#include "room/hall_surfaces.hpp"

#include "base/files.hpp"
#include "base/units.hpp"
#include "room/layout_file.hpp"
#include "room/valid_room.hpp"
#include "support/check.hpp"

#include <cmath>
#include <random>

using namespace rakeline;
using namespace rakeline::room;
using tests::absolute;
using tests::check_close;
using tests::relative;

namespace {

const tests::Tolerance kRounding = relative(1e-12, "rounding of sums of a few products");

constexpr const char* kDemoRooms[] = {"converted-hall-96", "steep-240", "grand-620",
                                      "screening-24"};

Layout demo_layout(const std::string& name) {
    const std::string path = std::string(RAKELINE_SOURCE_DIR) + "/layouts/" + name + ".json";
    const auto brief = open_brief(path, base::read_text_file);
    if (!brief) FAIL(base::text(brief.problems()));
    return brief->layout;
}

HallSurfaces surfaces_of(const Layout& x) {
    const SeatPlan plan = place_seats(
        {.hall = x.hall, .screen = x.screen, .seating = x.seating, .audience = x.audience});
    return hall_surfaces(x.hall, plan, x.seating);
}

Layout bare_box(double width_m, double height_m, double length_m) {
    Layout x;
    x.hall.width_m = width_m;
    x.hall.height_m = height_m;
    x.hall.length_m = length_m;
    return x;
}

}  // namespace

TEST_SUITE("room/hall_surfaces") {
    TEST_CASE("a box without seats is a box") {
        const HallSurfaces s = surfaces_of(bare_box(10.0, 5.0, 20.0));
        check_close(s.volume_m3, 1000.0, kRounding);
        check_close(s.screen_wall_m2, 50.0, kRounding);
        check_close(s.side_walls_m2, 200.0, kRounding);
        check_close(s.rear_wall_m2, 50.0, kRounding);
        check_close(s.ceiling_m2, 200.0, kRounding);
        check_close(s.bare_floor_m2, 200.0, kRounding);
        CHECK(s.seated_floor_m2 == 0.0);
        check_close(s.total_m2(), 700.0, kRounding);
    }

    TEST_CASE("splayed walls are longer, the rear wall wider, the plan a trapezium") {
        Layout x = bare_box(10.0, 5.0, 20.0);
        x.hall.splay_rad = std::atan(0.1);  // two metres to each side at the booth
        const HallSurfaces s = surfaces_of(x);
        check_close(s.volume_m3, 5.0 * 20.0 * 12.0, kRounding);
        check_close(s.rear_wall_m2, 70.0, kRounding);
        check_close(s.side_walls_m2, 2.0 * 5.0 * std::hypot(20.0, 2.0), kRounding);
    }

    TEST_CASE("a demo room's raked floor comes off its air and its walls, by hand") {
        // Level to 6.2 m, up 0.12 m by 6.4 m, level to the booth at 9.4 m; 6.2 m wide, 3.3 m high.
        const Layout demo = demo_layout("screening-24");
        const HallSurfaces s = surfaces_of(demo);
        const double under_m2 = 0.2 * 0.06 + 3.0 * 0.12;  // of one side wall
        check_close(s.volume_m3, 6.2 * (9.4 * 3.3 - under_m2), kRounding);
        check_close(s.side_walls_m2, 2.0 * (9.4 * 3.3 - under_m2), kRounding);
        check_close(s.rear_wall_m2, 6.2 * (3.3 - 0.12), kRounding);
        check_close(s.screen_wall_m2, 6.2 * 3.3, kRounding);
        const double slope_more_m2 = 6.2 * (std::hypot(0.2, 0.12) - 0.2);
        check_close(s.bare_floor_m2 + s.seated_floor_m2, 6.2 * 9.4 + slope_more_m2, kRounding);
    }

    TEST_CASE("a balcony adds a floor and its underside, and takes no air") {
        const Layout demo = demo_layout("grand-620");
        Layout without = demo;
        std::erase_if(without.seating, [](const SeatBlock& b) { return b.raised; });
        without.audience.reference_seat.clear();
        const HallSurfaces with = surfaces_of(demo);
        const HallSurfaces less = surfaces_of(without);
        check_close(with.volume_m3, less.volume_m3, kRounding);
        check_close(with.side_walls_m2, less.side_walls_m2, kRounding);
        CHECK(with.ceiling_m2 > less.ceiling_m2 + 50.0);
        CHECK(with.seated_floor_m2 > less.seated_floor_m2);
        check_close(
            with.ceiling_m2 - less.ceiling_m2,
            with.bare_floor_m2 + with.seated_floor_m2 - less.bare_floor_m2 - less.seated_floor_m2,
            kRounding);
    }

    TEST_CASE("property: a higher ceiling adds plan by height, and walls all round") {
        std::mt19937 random(41);
        for (const char* name : kDemoRooms) {
            Layout x = demo_layout(name);
            const HallSurfaces before = surfaces_of(x);
            const double up = 0.1 + 0.01 * static_cast<double>(random() % 100);
            x.hall.height_m += up;
            const HallSurfaces after = surfaces_of(x);
            const double front = x.hall.width_m;
            const double rear = front + 2.0 * x.hall.length_m * std::tan(x.hall.splay_rad);
            INFO(name);
            check_close(after.volume_m3 - before.volume_m3,
                        up * 0.5 * (front + rear) * x.hall.length_m,
                        relative(1e-10, "difference of two volumes"));
            check_close(after.side_walls_m2 - before.side_walls_m2,
                        2.0 * up * x.hall.length_m / std::cos(x.hall.splay_rad),
                        relative(1e-10, "difference of two areas"));
            CHECK(after.bare_floor_m2 == before.bare_floor_m2);
            CHECK(after.seated_floor_m2 == before.seated_floor_m2);
        }
    }

    TEST_CASE(
        "property: what the floor takes from the air is no more than its highest step would") {
        for (const char* name : kDemoRooms) {
            const Layout x = demo_layout(name);
            const SeatPlan plan = place_seats(
                {.hall = x.hall, .screen = x.screen, .seating = x.seating, .audience = x.audience});
            double highest = 0.0;
            for (const Platform& p : plan.platforms)
                for (const glm::dvec3& corner : p.corners)
                    highest = std::max(highest, corner.y);
            const HallSurfaces s = surfaces_of(x);
            const double plan_m2 =
                x.hall.length_m * (x.hall.width_m + x.hall.length_m * std::tan(x.hall.splay_rad));
            CHECK(s.volume_m3 <= plan_m2 * x.hall.height_m * (1.0 + 1e-12));
            CHECK(s.volume_m3 >= plan_m2 * (x.hall.height_m - highest));
            CHECK(s.seated_floor_m2 > 0.0);
        }
    }

    TEST_CASE("seats cover no more floor than there is") {
        Layout x = tests::valid_room();
        for (SeatBlock& block : x.seating)
            block.seat_pitch_m = 1.0;
        x.hall.width_m = 6.0;
        const HallSurfaces s = surfaces_of(x);
        CHECK(s.bare_floor_m2 >= 0.0);
        CHECK(s.seated_floor_m2 <= s.ceiling_m2 * 1.2);
    }

    TEST_CASE("the largest level floor is found, balconies and slopes left out") {
        const auto level = [](const Layout& x) {
            return largest_level_floor(place_seats({.hall = x.hall,
                                                    .screen = x.screen,
                                                    .seating = x.seating,
                                                    .audience = x.audience}),
                                       x.seating);
        };
        const auto floor = level(demo_layout("screening-24"));
        REQUIRE(floor);
        CHECK(floor->up_m == 0.0);
        Layout slope = bare_box(10.0, 5.0, 20.0);
        slope.hall.floor = FloorMode::by_profile;
        slope.hall.floor_profile = {{0.0, 0.0}, {20.0, 1.0}};
        CHECK_FALSE(level(slope));
        const auto whole = level(bare_box(10.0, 5.0, 20.0));
        check_close(whole.value().area_m2, 200.0, kRounding);
    }
}
