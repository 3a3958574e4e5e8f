// SPDX-License-Identifier: MIT
#pragma once

#include "base/result.hpp"
#include "geometry/vector.hpp"
#include "room/layout.hpp"

#include <cstddef>
#include <string>
#include <utility>
#include <vector>

/// The rules between fields, part by part. All of them take values that suit their own fields
/// (check_field_ranges found nothing).
namespace rakeline::room {

/// Problems with field paths, before they get a file and lines.
struct Findings {
    base::Problems problems;

    void add(std::string where, std::string what, std::string mend) {
        problems.push_back({{}, 0, std::move(where), std::move(what), std::move(mend)});
    }
};

/// "lenses[2]", and "lenses[2].name".
std::string at(const std::string& list, std::size_t index);
std::string at(const std::string& list, std::size_t index, const char* key);

/// "12.35 m", for sentences.
std::string metres(double value_m);

/// Refuses an element without a name and one whose name another has already.
void check_name_list(const std::string& list, const std::vector<std::string>& names, Findings& out);
template <class T>
void check_names(const std::string& list, const std::vector<T>& items, Findings& out) {
    std::vector<std::string> names;
    for (const T& item : items)
        names.push_back(item.name);
    check_name_list(list, names, out);
}

/// Refuses frequencies that do not rise, in a list whose elements have the key frequency_hz.
template <class T>
void check_rising(const std::string& list, const std::vector<T>& points, Findings& out) {
    for (std::size_t i = 1; i < points.size(); ++i) {
        if (points[i].frequency_hz > points[i - 1].frequency_hz) continue;
        out.add(at(list, i, "frequency_hz"), "the frequencies do not rise",
                "order them from low to high, each frequency once");
    }
}

void check_hall(const Layout& layout, Findings& out);
void check_screen(const Layout& layout, Findings& out);
void check_perforation(const Perforation& holes, const std::string& path, Findings& out);
void check_surface(const ScreenSurface& surface, const std::string& path, Findings& out);
void check_loudspeaker(const Loudspeaker& speaker, const std::string& path, Findings& out);
void check_lens(const Lens& lens, const std::string& path, Findings& out);
void check_booth(const Layout& layout, Findings& out);
void check_seating(const Layout& layout, Findings& out);
void check_audience(const Layout& layout, Findings& out);
void check_loudspeakers(const Layout& layout, Findings& out);
void check_house_lights(const Layout& layout, Findings& out);

/// Refuses what stands beyond the booth wall, outside the side walls or above the ceiling; `path`
/// is that of the element with the keys across_m, up_m and back_m.
void check_within_hall(const Hall& hall,
                       const glm::dvec3& place,
                       const std::string& path,
                       Findings& out);

}  // namespace rakeline::room
