// SPDX-License-Identifier: MIT
#pragma once

#include "study/study.hpp"

#include <string>
#include <vector>

/// How documents say what a figure is of, what bounds it and how its values lie.
namespace rakeline::report {

/// "Film · 2.39", "Left · 1 kHz", empty for a figure of the whole room; parts joined by `between`.
std::string figure_of(const study::Study& study,
                      const study::Figure& figure,
                      const std::string& between = " · ");

/// Name of what a value is at: "seat C14", "row C", "1 kHz"; empty where the figure has one value.
std::string place_name(const study::Study& study, const study::Figure& figure, int index);

/// " (last row)": whom a limit is for; empty where it is for every value.
const char* scope_words(room::LimitScope scope);

/// "at least 120.0 mm", "40.0 to 60.0 cd/m²", with its scope: "... (last row)".
std::string limit_text(const room::Limit& limit, base::Unit unit, base::UnitSystem system);

/// All limits that apply to a figure, joined by "; "; "–" if there are none.
std::string limits_text(const study::Study& study,
                        const study::Figure& figure,
                        base::UnitSystem system);

/// Frequency of a band that a figure is for or runs along, "63 Hz", "1 kHz".
std::string band_text(double frequency_hz);

/// Smallest, middle and largest value of a figure. Of an even count the lower middle, so that all
/// three are values of a seat, row or band that can be named.
struct Spread {
    study::Value least;
    study::Value median;
    study::Value greatest;
};
std::optional<Spread> spread_of(const study::Figure& figure);

/// How many figures of a subject hold, come near, miss, or have no limit.
struct Tally {
    int holds = 0;
    int near = 0;
    int missed = 0;
    int no_limit = 0;
};
Tally tally(const study::Study& study, study::Subject subject);

}  // namespace rakeline::report
