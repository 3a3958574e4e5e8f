// SPDX-License-Identifier: MIT
#pragma once

#include "room/layout.hpp"

#include <optional>
#include <string>
#include <vector>

/// Limits are data: each names the figure that it holds, the bound, and by whose rule.
namespace rakeline::room {

enum class Authority { standard, common_practice, yours };

/// Which of a figure's values the limit applies to.
enum class LimitScope {
    every,      ///< every seat, row or band
    first_row,  ///< seats of the row nearest the screen
    last_row,   ///< seats of the row farthest from it
    reference_seat,
    screen_channels,  ///< left, centre and right; of the sheet: while any stands behind
};

struct Limit {
    std::string figure;  ///< id in the register
    LimitScope scope = LimitScope::every;
    std::optional<SourceKind> source_kind;  ///< unset: film and digital alike
    std::optional<double> band_hz;          ///< unset: every band
    std::optional<double> least;            ///< SI
    std::optional<double> most;             ///< SI
    double near = 0.0;                      ///< within this of a bound counts as near, SI
    Authority authority = Authority::common_practice;
    std::string source;  ///< document and clause, or "common practice, no source"
    std::string mend;    ///< what would help, in a plain sentence
    bool operator==(const Limit&) const = default;
};

struct LimitSet {
    std::string name;
    std::string note;
    std::vector<Limit> limits;
    bool operator==(const LimitSet&) const = default;
};

}  // namespace rakeline::room
