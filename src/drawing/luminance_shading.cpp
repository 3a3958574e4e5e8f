// SPDX-License-Identifier: MIT
#include "drawing/luminance_shading.hpp"

#include "base/number_text.hpp"
#include "drawing/contour_pen.hpp"
#include "drawing/palette.hpp"
#include "drawing/parts.hpp"
#include "drawing/value_contours.hpp"

#include <algorithm>
#include <cmath>

namespace rakeline::drawing {
namespace {

constexpr double kMostLevels = 12.0;
const Shows kScreen{Shows::Kind::screen, 0};

Shading shading_of(const study::SeatLuminance& luminance, const OpeningPage& page) {
    Shading out;
    out.shows = kScreen;
    std::vector<int> index;  // on the page, of each place; -1 off it
    for (const light::MapPlace& place : luminance.map.places) {
        const auto at = place.cdm2 > 0.0 ? page.point(place.halves) : std::nullopt;
        index.push_back(at ? static_cast<int>(out.points.size()) : -1);
        if (!at) continue;
        out.points.push_back(*at);
        out.places.push_back(palette_place(luminance.scale, place.cdm2));
    }
    for (const auto& [a, b, c] : luminance.map.triangles) {
        const std::array<int, 3> here{index[static_cast<std::size_t>(a)],
                                      index[static_cast<std::size_t>(b)],
                                      index[static_cast<std::size_t>(c)]};
        if (std::ranges::min(here) >= 0) out.triangles.push_back(here);
    }
    return out;
}

ValueMesh mesh_of(const light::LuminanceMap& map) {
    ValueMesh mesh;
    for (const light::MapPlace& place : map.places) {
        mesh.points.push_back(place.halves);
        mesh.values.push_back(place.cdm2);
    }
    mesh.triangles = map.triangles;
    return mesh;
}

}  // namespace

double palette_place(const study::LuminanceScale& scale, double cdm2) {
    return std::clamp((cdm2 - scale.least_cdm2) / (scale.most_cdm2 - scale.least_cdm2), 0.0, 1.0);
}

Ink ink_over(double palette_place) {
    return palette_place < kOverBright_from ? Ink::over_dark : Ink::over_bright;
}

std::vector<LuminanceLevel> luminance_levels(const study::LuminanceScale& scale,
                                             base::UnitSystem units) {
    const base::ShownScale shown = base::shown_scale(base::Unit::cd_per_m2, units);
    // Round ends are levels themselves.
    const double slack = 1e-9 * scale.most_cdm2;
    const std::vector<double> levels =
        round_levels((scale.least_cdm2 - slack) * shown.factor,
                     (scale.most_cdm2 + slack) * shown.factor, kMostLevels);
    if (levels.empty()) return {};
    const double step = levels.size() > 1 ? levels[1] - levels[0] : levels[0];
    const int decimals = std::max(0, static_cast<int>(std::ceil(-std::log10(step) - 1e-9)));
    std::vector<LuminanceLevel> out;
    for (const double level : levels)
        out.push_back({level / shown.factor, base::fixed_text(level, decimals)});
    return out;
}

void add_luminance(const study::SeatLuminance& luminance,
                   const OpeningPage& page,
                   base::UnitSystem units,
                   Drawing& drawing) {
    drawing.items.emplace_back(shading_of(luminance, page));
    const ValueMesh mesh = mesh_of(luminance.map);
    ContourPen pen(page.pitch_m, drawing);
    pen.keep_off(page.line({{-1, -1}, {1, -1}, {1, 1}, {-1, 1}, {-1, -1}}));
    for (const LuminanceLevel& level : luminance_levels(luminance.scale, units)) {
        const ContourLook look{.text = level.text,
                               .weight = Weight::helper,
                               .ink = ink_over(palette_place(luminance.scale, level.cdm2)),
                               .shows = kScreen};
        for (const auto& line : contours(mesh, level.cdm2))
            for (const auto& piece : page.line(line))
                pen.draw(piece, look);
    }
}

std::optional<study::SeatLuminance> chosen_luminance(const study::Study& study,
                                                     const DrawingChoice& choice) {
    const std::optional<int> seat = choice.seat ? choice.seat : study.reference_seat;
    const Chosen pair = chosen(study, choice);
    if (!choice.luminance || !seat || !pair.picture) return std::nullopt;
    return study::seat_luminance(study, pair.projector, pair.format, *seat);
}

}  // namespace rakeline::drawing
