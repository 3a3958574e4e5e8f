// SPDX-License-Identifier: MIT
#include "base/number_text.hpp"
#include "room/check_internal.hpp"
#include "room/field_fault.hpp"
#include "room/layout_file.hpp"
#include "room/seat_plan.hpp"

#include <cmath>
#include <map>

namespace rakeline::room {
namespace {

void check_profile(const std::vector<FloorPoint>& profile, Findings& out) {
    if (profile.size() < 2) {
        out.add("hall.floor_profile",
                "a floor by profile needs two points or more; there " +
                    std::string(profile.size() == 1 ? "is 1" : "are none"),
                "add points, or set hall.floor to by_seating");
    }
    for (std::size_t i = 1; i < profile.size(); ++i) {
        if (profile[i].back_m > profile[i - 1].back_m) continue;
        out.add(at("hall.floor_profile", i, "back_m"),
                metres(profile[i].back_m) + " is not beyond the point before it at " +
                    metres(profile[i - 1].back_m),
                "list the points from the screen wall to the booth");
    }
}

void check_limits_name(const Layout& layout, Findings& out) {
    if (!layout.limits_file.empty()) return;
    out.add("limits_file", "names no file of limits",
            "name one as seen from the layout's folder, for example practice/theatre.json");
}

}  // namespace

std::string at(const std::string& list, std::size_t index) {
    return list + "[" + std::to_string(index) + "]";
}

std::string at(const std::string& list, std::size_t index, const char* key) {
    return at(list, index) + "." + key;
}

std::string metres(double value_m) {
    // To the millimetre, without zeros at the end.
    return base::plain_text(std::round(value_m * 1000.0) / 1000.0) + " m";
}

void check_name_list(const std::string& list,
                     const std::vector<std::string>& names,
                     Findings& out) {
    std::map<std::string, std::size_t> first;
    for (std::size_t i = 0; i < names.size(); ++i) {
        if (names[i].empty()) {
            out.add(at(list, i, "name"), "has no name", "give it one of its own");
            continue;
        }
        const auto [holder, is_new] = first.emplace(names[i], i);
        if (is_new) continue;
        out.add(at(list, i, "name"),
                quoted(names[i]) + " is the name of " + at(list, holder->second) + " already",
                "give each a name of its own");
    }
}

void check_hall(const Layout& layout, Findings& out) {
    const Hall& hall = layout.hall;
    if (half_width_at(hall, hall.length_m) <= 0.0) {
        const double meet_m = -0.5 * hall.width_m / std::tan(hall.splay_rad);
        out.add("hall.splay_deg",
                "the side walls meet " + metres(meet_m) +
                    " from the screen wall, in front of the booth wall at " + metres(hall.length_m),
                "let them close in less");
    }
    if (hall.floor == FloorMode::by_profile) check_profile(hall.floor_profile, out);
}

base::Problems check_layout(const Layout& layout) {
    base::Problems problems = check_field_ranges(layout);
    if (!problems.empty()) return problems;
    Findings out;
    check_limits_name(layout, out);
    check_hall(layout, out);
    check_screen(layout, out);
    check_booth(layout, out);
    check_seating(layout, out);
    check_audience(layout, out);
    check_loudspeakers(layout, out);
    check_house_lights(layout, out);
    return out.problems;
}

}  // namespace rakeline::room
