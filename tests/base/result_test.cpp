// SPDX-License-Identifier: MIT
#include "base/result.hpp"

#include <doctest/doctest.h>

using namespace rakeline::base;

TEST_SUITE("base/result") {
    TEST_CASE("a problem prints what it knows: file, line, place, fault and mend") {
        Problem problem{"rooms/x.json", 41, "screen.radius_m", "3.2 is too small", "use 0"};
        CHECK(text(problem) == "rooms/x.json:41: screen.radius_m: 3.2 is too small; use 0");
        problem.line = 0;
        CHECK(text(problem) == "rooms/x.json: screen.radius_m: 3.2 is too small; use 0");
        problem.file.clear();
        CHECK(text(problem) == "screen.radius_m: 3.2 is too small; use 0");
        problem.mend.clear();
        problem.where.clear();
        CHECK(text(problem) == "3.2 is too small");
        CHECK(text(Problems{problem, problem}) == "3.2 is too small\n3.2 is too small\n");
        CHECK(text(Problems{}).empty());
    }

    TEST_CASE("a result holds a value or problems, never both") {
        Result<std::string> good("value");
        REQUIRE(good);
        CHECK(*good == "value");
        CHECK(good->size() == 5);
        *good = "other";
        CHECK(*good == "other");

        const Result<std::string> bad(Problem{"f", 1, {}, "what", "mend"});
        REQUIRE_FALSE(bad);
        CHECK(bad.problems() == Problems{{"f", 1, {}, "what", "mend"}});

        const Result<int> many(Problems{{"f", 1, {}, "a", {}}, {"f", 2, {}, "b", {}}});
        REQUIRE_FALSE(many);
        CHECK(many.problems().size() == 2);
    }
}
