// SPDX-License-Identifier: MIT
#pragma once

#include "base/assert.hpp"

#include <string>
#include <utility>
#include <variant>
#include <vector>

/// A fault that a user can cause comes back as a value: what is wrong, where, and what mends it.
namespace rakeline::base {

struct Problem {
    std::string file;   ///< file as the user named it; empty when there is none
    int line = 0;       ///< 1-based line in `file`; 0 when unknown
    std::string where;  ///< field path, for example "screen.radius_m" or "seating[1].rows"
    std::string what;   ///< what is wrong, with the value at fault
    std::string mend;   ///< what to do about it

    bool operator==(const Problem&) const = default;
};

using Problems = std::vector<Problem>;

/// "layouts/x.json:41: screen.radius_m: 3.2 is less than half the picture width 12.0; use 0 ..."
std::string text(const Problem& problem);

/// One line a problem.
std::string text(const Problems& problems);

/// A value, or the problems that stood in its way (at least one).
template <class T>
class [[nodiscard]] Result {
public:
    Result(T value) : held_(std::move(value)) {}
    Result(Problem problem) : held_(Problems{std::move(problem)}) {}
    Result(Problems problems) : held_(std::move(problems)) {
        RL_ASSERT(!std::get<Problems>(held_).empty());
    }

    explicit operator bool() const { return std::holds_alternative<T>(held_); }
    const T& operator*() const {
        RL_ASSERT(*this);
        return std::get<T>(held_);
    }
    T& operator*() {
        RL_ASSERT(*this);
        return std::get<T>(held_);
    }
    const T* operator->() const { return &**this; }
    const Problems& problems() const {
        RL_ASSERT(!*this);
        return std::get<Problems>(held_);
    }

private:
    std::variant<T, Problems> held_;
};

}  // namespace rakeline::base
