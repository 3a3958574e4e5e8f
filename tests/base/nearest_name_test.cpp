// SPDX-License-Identifier: MIT
#include "base/nearest_name.hpp"

#include <doctest/doctest.h>

#include <vector>

using rakeline::base::nearest_name;

TEST_SUITE("base/nearest_name") {
    TEST_CASE("the name with the fewest slips is found") {
        const std::vector<std::string> names = {"width_m", "length_m", "height_m", "splay_deg"};
        CHECK(nearest_name("width", names) == "width_m");
        CHECK(nearest_name("lenght_m", names) == "length_m");
        CHECK(nearest_name("splay_rad", names) == "splay_deg");
        CHECK(nearest_name("height_m", names) == "height_m");
    }

    TEST_CASE("two neighbours exchanged are one slip") {
        // Letter by letter, both names would be two changes away.
        const std::vector<std::string> names = {"length_m", "height_m"};
        CHECK(nearest_name("heigth_m", names) == "height_m");
    }

    TEST_CASE("the first of equally near names wins") {
        const std::vector<std::string> names = {"cat", "car"};
        CHECK(nearest_name("cap", names) == "cat");
    }

    TEST_CASE("nothing is near enough where more than half would change") {
        const std::vector<std::string> names = {"width_m", "length_m"};
        CHECK(nearest_name("colour", names).empty());
        CHECK(nearest_name("", std::vector<std::string>{"abc"}).empty());
        CHECK(nearest_name("abc", std::vector<std::string>{}).empty());
    }
}
