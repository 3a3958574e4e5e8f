// SPDX-License-Identifier: MIT
#pragma once

#include "room/layout_file.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <string>
#include <string_view>
#include <vector>

/// Looking at what a text was refused for.
namespace rakeline::tests {

inline const std::string kFile = "rooms/x.json";

inline std::vector<std::string> lines_of(const std::string& text) {
    std::vector<std::string> lines(1);
    for (const char c : text) {
        if (c == '\n') {
            lines.emplace_back();
        } else {
            lines.back() += c;
        }
    }
    return lines;
}

/// Problems of a layout text; empty where it reads.
inline base::Problems problems_of(std::string_view text) {
    const auto result = room::read_layout(text, kFile);
    return result ? base::Problems{} : result.problems();
}

/// The only problem of a text.
inline base::Problem only_problem(std::string_view text) {
    const base::Problems problems = problems_of(text);
    INFO(base::text(problems));
    REQUIRE(problems.size() == 1);
    return problems.front();
}

inline bool contains(const std::string& text, std::string_view part) {
    return text.find(part) != std::string::npos;
}

/// What a rule should say of a layout.
struct Refusal {
    std::string where;
    std::string what;  ///< part of it
    std::string mend;  ///< part of it
};

/// Writes the layout, reads the text, and checks that exactly this is refused, on the line of the
/// field itself.
inline void check_refused(const room::Layout& layout, const Refusal& expected) {
    const std::string text = room::write_layout(layout);
    const base::Problem found = only_problem(text);
    INFO(base::text(found));
    CHECK(found.file == kFile);
    CHECK(found.where == expected.where);
    CHECK(contains(found.what, expected.what));
    CHECK(contains(found.mend, expected.mend));
    // A list's own entry starts with its brace; every other path ends with a key on the line.
    const std::string key =
        expected.where.ends_with(']') ? "{" : expected.where.substr(expected.where.rfind('.') + 1);
    REQUIRE(found.line > 1);
    CHECK(contains(lines_of(text).at(static_cast<std::size_t>(found.line - 1)), key));
}

}  // namespace rakeline::tests
