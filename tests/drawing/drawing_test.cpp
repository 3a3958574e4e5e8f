// SPDX-License-Identifier: MIT
#include "drawing/drawing.hpp"

#include "support/check.hpp"

using namespace rakeline;
using drawing::Shows;
using tests::check_close;

namespace {

constexpr Shows kSeat{Shows::Kind::seat, 7};
constexpr Shows kHall{Shows::Kind::hall, 0};
const tests::Tolerance kExact = tests::absolute(1e-12, "a few roundings");

drawing::Drawing seat_on_floor() {
    drawing::Drawing d;
    d.items.push_back(
        drawing::Fill{.points = {{0, 0}, {0.5, 0}, {0.5, 0.5}, {0, 0.5}}, .shows = kSeat});
    d.items.push_back(
        drawing::Fill{.points = {{-5, -5}, {5, -5}, {5, 5}, {-5, 5}}, .shows = kHall});
    return d;
}

}  // namespace

TEST_SUITE("drawing/drawing") {
    TEST_CASE("a dimension states the distance of its ends unless it has a length of its own") {
        drawing::Dimension d;
        d.from = {1.0, 1.0};
        d.to = {4.0, 5.0};
        check_close(drawing::length_m(d), 5.0, kExact);
        d.length_m = 6.5;
        check_close(drawing::length_m(d), 6.5, kExact);
    }

    TEST_CASE("a dimension line stands off to the left of its direction") {
        drawing::Dimension d;
        d.from = {0.0, 0.0};
        d.to = {0.0, 2.0};
        d.offset_m = 0.5;
        const drawing::Segment line = drawing::dimension_line(d);
        check_close(line.from.x, -0.5, kExact);
        check_close(line.to.x, -0.5, kExact);
        check_close(line.to.y, 2.0, kExact);
    }

    TEST_CASE("a dimension of no length stays where it is") {
        drawing::Dimension d;
        d.from = d.to = {3.0, 4.0};
        d.offset_m = 1.0;
        CHECK(drawing::dimension_line(d).from == glm::dvec2(3.0, 4.0));
    }

    TEST_CASE("a click on a seat selects it although a larger fill lies over it") {
        CHECK(drawing::shown_at(seat_on_floor(), {0.25, 0.25}, 0.05) == kSeat);
    }

    TEST_CASE("a click beside the seat selects what lies there") {
        CHECK(drawing::shown_at(seat_on_floor(), {3.0, 3.0}, 0.05) == kHall);
    }

    TEST_CASE("a click just outside a seat still reaches it") {
        CHECK(drawing::shown_at(seat_on_floor(), {0.53, 0.25}, 0.05) == kSeat);
        CHECK(drawing::shown_at(seat_on_floor(), {0.60, 0.25}, 0.05) == kHall);
    }

    TEST_CASE("a click on nothing shows nothing") {
        CHECK(drawing::shown_at(seat_on_floor(), {50.0, 3.0}, 0.05) == Shows{});
    }

    TEST_CASE("of two lines within reach the nearer is selected") {
        drawing::Drawing d;
        d.items.push_back(drawing::Line{.points = {{0, 0}, {10, 0}}, .shows = kSeat});
        d.items.push_back(drawing::Line{.points = {{0, 1}, {10, 1}}, .shows = kHall});
        CHECK(drawing::shown_at(d, {5.0, 0.4}, 2.0) == kSeat);
        CHECK(drawing::shown_at(d, {5.0, 0.6}, 2.0) == kHall);
    }

    TEST_CASE("the closing side of an outline can be clicked, that of an open line can't") {
        drawing::Line line{.points = {{0, 0}, {4, 0}, {4, 4}, {0, 4}}, .shows = kSeat};
        drawing::Drawing d;
        d.items = {line};
        CHECK(drawing::shown_at(d, {0.0, 2.0}, 0.1) == Shows{});
        line.closed = true;
        d.items = {line};
        CHECK(drawing::shown_at(d, {0.0, 2.0}, 0.1) == kSeat);
    }
}
