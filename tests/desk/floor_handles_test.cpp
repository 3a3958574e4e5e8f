// SPDX-License-Identifier: MIT
#include "desk/floor_handles.hpp"

#include "desk/floor_drag.hpp"
#include "headless.hpp"
#include "room/layout_file.hpp"
#include "room/rows.hpp"
#include "support/check.hpp"

#include <doctest/doctest.h>

#include <array>
#include <cmath>
#include <random>

namespace rakeline::desk {
namespace {

using room::BlockFloor;
using tests::absolute;
using tests::check_close;

room::Layout demo_layout(const std::string& name) {
    return open_document(demo(name))->current()->layout;
}

/// The converted hall with its one block on a floor of this kind.
room::Layout on_floor(BlockFloor floor) {
    room::Layout layout = demo_layout("converted-hall-96");
    room::SeatBlock& block = layout.seating.front();
    layout.hall.floor = room::FloorMode::by_seating;
    block.floor = floor;
    block.slope_rad = base::radians(6.0);
    block.riser_m = 0.15;
    block.wanted_c_m = 0.06;
    if (floor == BlockFloor::flights) block.flights = {{2, 0.1}, {9, 0.14}};
    REQUIRE(room::check_layout(layout).empty());
    return layout;
}

constexpr std::array kFloors{BlockFloor::level, BlockFloor::slope, BlockFloor::stepped,
                             BlockFloor::equal_clearance, BlockFloor::flights};
constexpr std::array kMoved{RowsMoved::and_behind, RowsMoved::alone, RowsMoved::whole_block};

std::vector<double> floors(const room::Layout& layout) {
    std::vector<double> out;
    const room::SeatPlanInput in{layout.hall, layout.screen, layout.seating, layout.audience};
    for (const room::RowLine& row : room::row_lines(in, layout.seating.front()))
        out.push_back(row.up_m);
    return out;
}

FloorHandle handle_of(const room::Layout& layout, HandleOf of, int index = 0) {
    for (const FloorHandle& handle : floor_handles(layout, 0))
        if (handle.of == of && handle.index == index) return handle;
    FAIL("no such handle");
    return {};
}

FloorHandle spacing_of(const room::Layout& layout) {
    for (const FloorHandle& handle : floor_handles(layout, 0))
        if (handle.of == HandleOf::spacing) return handle;
    FAIL("no spacing handle");
    return {};
}

/// Where a handle of the first layout stands in the second.
glm::dvec2 place_in(const room::Layout& layout, const FloorHandle& handle) {
    for (const FloorHandle& other : floor_handles(layout, handle.block))
        if (other.same_as(handle)) return other.at;
    FAIL("the handle went");
    return {};
}

const auto kMicrometre = absolute(1e-6, "sums of a few metres; flights are kept to a picometre");

}  // namespace

TEST_SUITE_BEGIN("desk/floor_handles");

TEST_CASE("round trip: a handle put somewhere stands there, on every kind of floor") {
    for (const BlockFloor floor : kFloors) {
        const room::Layout layout = on_floor(floor);
        for (const FloorHandle& handle : floor_handles(layout, 0)) {
            for (const RowsMoved moved : kMoved) {
                INFO(static_cast<int>(floor), " ", handle_name(layout, handle), " ",
                     static_cast<int>(moved));
                const glm::dvec2 to = handle.at + glm::dvec2(0.013, 0.017);
                for (const HandleAxis axis : {HandleAxis::back, HandleAxis::up}) {
                    const bool back = axis == HandleAxis::back;
                    if (!(back ? handle.moves_back : handle.moves_up)) continue;
                    const double wanted = back ? to.x : to.y;
                    const auto made = with_number(layout, handle, axis, moved,
                                                  number_at(layout, handle, axis, moved, wanted));
                    REQUIRE(made);
                    const glm::dvec2 at = place_in(*made, handle);
                    check_close(back ? at.x : at.y, wanted, kMicrometre);
                }
            }
        }
    }
}

TEST_CASE("round trip: dragging to a number gives the layout that typing it gives") {
    std::mt19937 random(1889);
    std::uniform_real_distribution<double> by_m(-0.3, 0.3);
    for (const BlockFloor floor : kFloors) {
        const room::Layout layout = on_floor(floor);
        for (const FloorHandle& handle : floor_handles(layout, 0)) {
            for (const RowsMoved moved : kMoved) {
                DragWish wish{.rows = moved, .back = handle.moves_back, .up = !handle.moves_back};
                const HandleAxis axis = wish.back ? HandleAxis::back : HandleAxis::up;
                const Dragged drag = dragged(
                    layout, handle, handle.at + glm::dvec2(by_m(random), by_m(random)), wish);
                INFO(static_cast<int>(floor), " ", handle_name(layout, handle), " ",
                     static_cast<int>(moved));
                const bool went = drag.layout != layout;
                if (drag.stopped && !went) continue;
                // What the drag shows is what is typed. A row taken alone or with those behind it
                // shows its riser; the floor of the dragged layout is then one of flights.
                const double shown = went ? handle_number(drag.layout, handle, axis, moved).si
                                          : handle_number(layout, handle, axis, moved).si;
                const auto typed = with_number(layout, handle, axis, moved, shown);
                REQUIRE(typed);
                const auto a = floors(drag.layout), b = floors(*typed);
                REQUIRE(a.size() == b.size());
                for (std::size_t n = 0; n < a.size(); ++n)
                    check_close(a[n], b[n], kMicrometre);
                check_close(typed->seating.front().row_spacing_m,
                            drag.layout.seating.front().row_spacing_m, kMicrometre);
                check_close(typed->screen.sill_m, drag.layout.screen.sill_m, kMicrometre);
                check_close(typed->screen.height_m, drag.layout.screen.height_m, kMicrometre);
            }
        }
    }
}

TEST_CASE("a row is lifted with those behind it, alone, or with the whole block") {
    const room::Layout layout = on_floor(BlockFloor::stepped);
    const FloorHandle row = handle_of(layout, HandleOf::row, 3);
    const auto before = floors(layout);
    const glm::dvec2 to = row.at + glm::dvec2(0.0, 0.05);
    const auto lifted = [&](RowsMoved moved) {
        return dragged(layout, row, to, {.rows = moved, .snap = false}).layout;
    };
    const auto behind = floors(lifted(RowsMoved::and_behind));
    const auto alone = floors(lifted(RowsMoved::alone));
    const room::Layout whole = lifted(RowsMoved::whole_block);
    for (std::size_t n = 0; n < before.size(); ++n) {
        INFO("row ", n);
        check_close(behind[n], before[n] + (n >= 3 ? 0.05 : 0.0), kMicrometre);
        check_close(alone[n], before[n] + (n == 3 ? 0.05 : 0.0), kMicrometre);
        check_close(floors(whole)[n], static_cast<double>(n) * (0.15 + 0.05 / 3.0), kMicrometre);
    }
    CHECK(lifted(RowsMoved::and_behind).seating.front().floor == BlockFloor::flights);
    CHECK(whole.seating.front().floor == BlockFloor::stepped);
}

TEST_CASE("the rule of a slope or an equal-clearance floor is kept where the whole block moves") {
    for (const BlockFloor floor : {BlockFloor::slope, BlockFloor::equal_clearance}) {
        const room::Layout layout = on_floor(floor);
        const FloorHandle row = handle_of(layout, HandleOf::row, 5);
        const Dragged drag = dragged(layout, row, row.at + glm::dvec2(0.0, 0.1),
                                     {.rows = RowsMoved::whole_block, .snap = false});
        CHECK(drag.layout.seating.front().floor == floor);
        CHECK(drag.layout.seating.front().slope_rad >= layout.seating.front().slope_rad);
        CHECK(drag.layout.seating.front().wanted_c_m >= layout.seating.front().wanted_c_m);
        check_close(place_in(drag.layout, row).y, row.at.y + 0.1, kMicrometre);
    }
}

TEST_CASE("a dragged riser goes in whole steps of 10 mm or half an inch, and freely without them") {
    const room::Layout layout = on_floor(BlockFloor::stepped);
    const FloorHandle row = handle_of(layout, HandleOf::row, 2);
    const glm::dvec2 to = row.at + glm::dvec2(0.0, 0.0334);
    const auto riser = [&](const DragWish& wish) {
        const Dragged drag = dragged(layout, row, to, wish);
        return handle_number(drag.layout, row, HandleAxis::up, RowsMoved::and_behind).si;
    };
    check_close(riser({}), 0.18, kMicrometre);
    check_close(riser({.units = base::UnitSystem::imperial}), 14 * 0.0127, kMicrometre);
    check_close(riser({.snap = false}), 0.1834, kMicrometre);
}

TEST_CASE("the row spacing follows the last row, cross aisles left as they are") {
    room::Layout layout = on_floor(BlockFloor::stepped);
    layout.seating.front().cross_aisles = {{2, 1.3}};
    const FloorHandle spacing = spacing_of(layout);
    const double before = layout.seating.front().row_spacing_m;
    const Dragged drag =
        dragged(layout, spacing, spacing.at - glm::dvec2(0.02 * spacing.index, 0.0), {});
    check_close(drag.layout.seating.front().row_spacing_m, before - 0.02, kMicrometre);
}

TEST_CASE("a tilted screen's edges go where they are dragged") {
    room::Layout layout = on_floor(BlockFloor::stepped);
    layout.screen.tilt_rad = base::radians(5.0);
    for (const HandleOf of : {HandleOf::sill, HandleOf::screen_top}) {
        const FloorHandle handle = handle_of(layout, of);
        const glm::dvec2 to = handle.at - glm::dvec2(0.0, 0.07);
        const Dragged drag = dragged(layout, handle, to, {.snap = false});
        CHECK_FALSE(drag.stopped.has_value());
        check_close(place_in(drag.layout, handle).y, to.y, kMicrometre);
    }
}

TEST_CASE(
    "points of a floor by profile move back and up, and rows on it have no riser of their own") {
    room::Layout layout = on_floor(BlockFloor::stepped);
    layout.hall.floor = room::FloorMode::by_profile;
    layout.hall.floor_profile = {{0.0, 0.0}, {6.0, 0.1}, {layout.hall.length_m, 1.5}};
    for (const FloorHandle& handle : floor_handles(layout, 0)) {
        CHECK(handle.of != HandleOf::row);
        if (handle.of == HandleOf::first_row) CHECK_FALSE(handle.moves_up);
    }
    const FloorHandle point = handle_of(layout, HandleOf::profile_point, 1);
    const Dragged drag = dragged(layout, point, {7.0, 0.3}, {});
    check_close(drag.layout.hall.floor_profile[1].back_m, 7.0, kMicrometre);
    check_close(drag.layout.hall.floor_profile[1].up_m, 0.3, kMicrometre);
}

TEST_CASE("refuses: a handle stops at the last step that holds, and says why") {
    const room::Layout layout = on_floor(BlockFloor::stepped);
    const FloorHandle row = handle_of(layout, HandleOf::first_row);
    const Dragged drag = dragged(layout, row, row.at + glm::dvec2(100.0, 0.0), {.up = false});
    REQUIRE(drag.stopped.has_value());
    CHECK(drag.stopped->what.find("booth wall") != std::string::npos);
    CHECK(room::check_layout(drag.layout).empty());
    // One step more does not hold.
    const double at = drag.layout.seating.front().first_row_back_m;
    CHECK(at > layout.seating.front().first_row_back_m);
    CHECK_FALSE(with_number(layout, row, HandleAxis::back, RowsMoved::and_behind, at + 0.01));
}

TEST_CASE("property: wherever the hand goes, the layout holds") {
    std::mt19937 random(44);
    std::uniform_real_distribution<double> far_m(-12.0, 12.0);
    for (const char* name : {"grand-620", "steep-240", "converted-hall-96"}) {
        const room::Layout layout = demo_layout(name);
        for (int block = 0; block < static_cast<int>(layout.seating.size()); ++block) {
            for (const FloorHandle& handle : floor_handles(layout, block)) {
                const glm::dvec2 to = handle.at + glm::dvec2(far_m(random), far_m(random));
                INFO(name, " ", handle_name(layout, handle), " to ", to.x, " ", to.y);
                const DragWish wish{.rows = kMoved[random() % kMoved.size()],
                                    .snap = random() % 2 == 0};
                CHECK(room::check_layout(dragged(layout, handle, to, wish).layout).empty());
            }
        }
    }
}

TEST_CASE("a layout that can't be studied comes back as it is, with its reason") {
    room::Layout layout = on_floor(BlockFloor::stepped);
    layout.projectors.front().formats.front().format = "no such format";
    const FloorHandle sill = handle_of(layout, HandleOf::sill);
    const Dragged drag = dragged(layout, sill, sill.at + glm::dvec2(0.0, 0.1), {});
    CHECK(drag.layout == layout);
    REQUIRE(drag.stopped.has_value());
    CHECK(drag.stopped->where.find("projectors[0]") != std::string::npos);
}

TEST_SUITE_END();

}  // namespace rakeline::desk
