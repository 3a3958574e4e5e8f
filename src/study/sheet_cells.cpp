// SPDX-License-Identifier: MIT
#include "study/sheet_cells.hpp"

#include "base/number_text.hpp"

#include <algorithm>
#include <cmath>

namespace rakeline::study {
namespace {

using base::UnitSystem;

SheetCell number_cell(const std::string& source, double si, base::Unit unit, int extra = 0) {
    return {.sources = {source},
            .metric = base::quantity_text(si, unit, UnitSystem::metric, extra),
            .imperial = base::quantity_text(si, unit, UnitSystem::imperial, extra),
            .si = si,
            .unit = unit,
            .extra_decimals = extra};
}

const UseField& field_of(const SheetPlace& place, const std::string& key) {
    return place.fields.at(key);
}

/// The number of "20.96 mm".
std::string number_of(const std::string& text) {
    return text.substr(0, text.find(' '));
}

/// Figures that show where the picture reaches past each edge.
struct Edge {
    const char* id;
    const char* name;
};
constexpr Edge kEdges[] = {{"picture.overfill_left", "left"},
                           {"picture.overfill_right", "right"},
                           {"picture.overfill_top", "top"},
                           {"picture.overfill_bottom", "bottom"}};

}  // namespace

std::optional<SheetPlace> sheet_place(const Study& study, int projector, int format) {
    const auto use = find_use(study.layout(), projector, format);
    if (!use) return std::nullopt;
    return SheetPlace{study, projector, format, use_fields(study.layout(), projector, *use)};
}

SheetCell figure_cell(const SheetPlace& place, std::string_view id) {
    const Figure* figure = find_figure(place.study, id,
                                       {.projector = place.projector,
                                        .format = place.format,
                                        .loudspeaker = {},
                                        .seat = {},
                                        .row = {},
                                        .band = {}});
    if (!figure || figure->definition->axis() != Axis::none) return {};
    const bool in_gate = id.starts_with("picture.plate_") || id.starts_with("picture.shift_");
    SheetCell cell = number_cell(std::string(id), figure->values.front().si,
                                 figure->definition->unit, in_gate ? 1 : 0);
    cell.verdict = figure->worst;
    return cell;
}

SheetCell field_cell(const SheetPlace& place, const std::string& key) {
    const UseField& field = field_of(place, key);
    if (!field.si) return {};
    const bool gate = key.starts_with("gate_");
    return number_cell(field.path, *field.si, field.unit, gate ? 1 : 0);
}

SheetCell pair_cell(const SheetCell& wide, const SheetCell& high) {
    if (wide.empty() || high.empty()) return {};
    SheetCell pair = high;
    pair.sources.insert(pair.sources.begin(), wide.sources.begin(), wide.sources.end());
    pair.metric = number_of(wide.metric) + " × " + high.metric;
    pair.imperial = number_of(wide.imperial) + " × " + high.imperial;
    pair.si.reset();
    pair.verdict = std::max(wide.verdict, high.verdict);
    return pair;
}

SheetCell lens_cell(const SheetPlace& place) {
    const UseField& field = field_of(place, "lens");
    const std::string words = field.text.empty() ? "none chosen" : field.text;
    return {.sources = {field.path}, .metric = words, .imperial = words, .si = {}};
}

SheetCell attachment_cell(const SheetPlace& place) {
    SheetCell cell = field_cell(place, "squeeze");
    if (cell.empty()) return {};
    cell.metric = *cell.si == 1.0 ? "out" : "in, " + base::exact_text(*cell.si) + "×";
    cell.imperial = cell.metric;
    return cell;
}

SheetCell aperture_cell(const SheetPlace& place) {
    if (place.machine().kind != room::SourceKind::film) return {};
    return pair_cell(field_cell(place, "gate_width_m"), field_cell(place, "gate_height_m"));
}

SheetCell filed_cell(const SheetPlace& place) {
    return pair_cell(figure_cell(place, "picture.plate_width"),
                     figure_cell(place, "picture.plate_height"));
}

SheetCell pixels_cell(const SheetPlace& place) {
    if (place.machine().kind != room::SourceKind::digital) return {};
    return pair_cell(field_cell(place, "pixels_wide"), field_cell(place, "pixels_high"));
}

SheetCell least_overfill_cell(const SheetPlace& place) {
    SheetCell least;
    const char* name = "";
    for (const Edge& edge : kEdges) {
        SheetCell cell = figure_cell(place, edge.id);
        if (cell.empty() || (!least.empty() && *least.si <= *cell.si)) continue;
        least = std::move(cell);
        name = edge.name;
    }
    if (least.empty()) return {};
    least.metric += std::string(", ") + name;
    least.imperial += std::string(", ") + name;
    return least;
}

bool read_alike(const SheetCell& a, const SheetCell& b) {
    if (a.metric == b.metric) return true;
    if (!a.si || !b.si) return false;
    const base::ShownScale scale = base::shown_scale(b.unit, UnitSystem::metric);
    const double last_digit = std::pow(10.0, -(scale.decimals + b.extra_decimals));
    return std::abs(*b.si - *a.si) * scale.factor < 0.5 * last_digit;
}

}  // namespace rakeline::study
