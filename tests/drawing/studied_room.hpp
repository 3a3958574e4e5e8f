// SPDX-License-Identifier: MIT
#pragma once

#include "drawing/drawing.hpp"
#include "support/demo_rooms.hpp"

#include <map>
#include <vector>

/// Demo rooms studied once for all cases of a test program, and ways into a drawing.
namespace rakeline::tests {

inline const study::Study& studied(const std::string& name) {
    static std::map<std::string, study::Study> kept;
    auto found = kept.find(name);
    if (found == kept.end())
        found = kept.emplace(name, study::compute_study(demo_brief(name))).first;
    return found->second;
}

template <class T>
std::vector<T> items_of(const drawing::Drawing& drawing) {
    std::vector<T> found;
    for (const drawing::Item& item : drawing.items)
        if (const T* x = std::get_if<T>(&item)) found.push_back(*x);
    return found;
}

/// The dimension with this prefix, or nothing.
inline std::optional<drawing::Dimension> dimension(const drawing::Drawing& drawing,
                                                   const std::string& prefix) {
    for (const auto& d : items_of<drawing::Dimension>(drawing))
        if (d.prefix == prefix) return d;
    return std::nullopt;
}

inline double figure_value(const study::Study& study,
                           const char* id,
                           const study::Place& place = {}) {
    const study::Figure* figure = study::find_figure(study, id, place);
    REQUIRE_MESSAGE(figure, id);
    return figure->values.at(0).si;
}

/// Whether every point of every item lies within the drawing's bounds.
inline bool bounds_hold_all(const drawing::Drawing& drawing) {
    const auto in = [&](glm::dvec2 p) {
        return p.x >= drawing.low.x && p.x <= drawing.high.x && p.y >= drawing.low.y &&
               p.y <= drawing.high.y;
    };
    bool all = !drawing.items.empty();
    for (const auto& line : items_of<drawing::Line>(drawing))
        for (const auto& p : line.points)
            all = all && in(p);
    for (const auto& fill : items_of<drawing::Fill>(drawing))
        for (const auto& p : fill.points)
            all = all && in(p);
    for (const auto& shading : items_of<drawing::Shading>(drawing))
        for (const auto& p : shading.points)
            all = all && in(p);
    for (const auto& label : items_of<drawing::Label>(drawing))
        all = all && in(label.at);
    for (const auto& d : items_of<drawing::Dimension>(drawing)) {
        const drawing::Segment line = drawing::dimension_line(d);
        all = all && in(d.from) && in(d.to) && in(line.from) && in(line.to);
    }
    return all;
}

}  // namespace rakeline::tests
