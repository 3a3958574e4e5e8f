// SPDX-License-Identifier: MIT
#include "drawing/line_parts.hpp"

#include "support/check.hpp"

using namespace rakeline;
using tests::check_close;

namespace {

const std::vector<glm::dvec2> kCorner{{0.0, 0.0}, {4.0, 0.0}, {4.0, 3.0}};
const tests::Tolerance kExact = tests::absolute(1e-12, "a few roundings");

}  // namespace

TEST_SUITE("drawing/line_parts") {
    TEST_CASE("a gap takes its own length out of a line and nothing else") {
        check_close(drawing::length_of(kCorner), 7.0, kExact);
        for (double from = 0.25; from < 6.0; from += 0.5) {
            INFO(from);
            const auto [before, after] = drawing::around_gap(kCorner, from, from + 0.75);
            check_close(drawing::length_of(before), from, kExact);
            check_close(drawing::length_of(after), 7.0 - from - 0.75, kExact);
            CHECK(before.front() == kCorner.front());
            CHECK(after.back() == kCorner.back());
        }
    }

    TEST_CASE("a gap of no length leaves two parts that meet") {
        const auto [before, after] = drawing::around_gap(kCorner, 3.5, 3.5);
        CHECK(glm::length(before.back() - after.front()) < 1e-12);
        check_close(before.back().x, 3.5, kExact);
    }

    TEST_CASE("what runs through a box is left out, in steps") {
        const auto runs = drawing::outside(kCorner, {1.0, 2.0, -1.0, 1.0}, 0.01);
        REQUIRE(runs.size() == 2);
        check_close(drawing::length_of(runs[0]), 1.0, tests::absolute(0.011, "one step"));
        check_close(drawing::length_of(runs[1]), 5.0, tests::absolute(0.011, "one step"));
        CHECK(drawing::outside(kCorner, {9.0, 10.0, 0.0, 1.0}, 0.01).size() == 1);
    }
}
