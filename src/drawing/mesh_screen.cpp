// SPDX-License-Identifier: MIT
#include "drawing/mesh_shapes.hpp"

#include <algorithm>
#include <cmath>

/// The picture on its surface, the masking around it, and the back of both.
namespace rakeline::drawing {
namespace {

constexpr double kBorder_m = 0.35;  // black beyond the frame; common practice, no source
constexpr int kColumns = 32;        // of a curved sheet: chords under 0.1 % off the arc
constexpr int kRows = 2;

struct Sheet {
    geometry::Rectangle uv;  ///< what it covers, in surface coordinates
    double ahead_m = 0.0;    ///< toward the seats, from the surface
    bool back = false;       ///< seen from behind
};

void add_sheet(const geometry::Patch& surface, const Sheet& sheet, Part& part) {
    if (sheet.uv.width() <= 0.0 || sheet.uv.height() <= 0.0) return;
    const auto first = static_cast<unsigned>(part.vertices.size());
    for (int j = 0; j <= kRows; ++j) {
        for (int i = 0; i <= kColumns; ++i) {
            const glm::dvec2 part_uv(static_cast<double>(i) / kColumns,
                                     static_cast<double>(j) / kRows);
            const glm::dvec2 uv(sheet.uv.left + part_uv.x * sheet.uv.width(),
                                sheet.uv.bottom + part_uv.y * sheet.uv.height());
            const glm::dvec3 normal = geometry::normal_at(surface, uv);
            part.vertices.push_back({geometry::point_at(surface, uv) + sheet.ahead_m * normal,
                                     sheet.back ? -normal : normal, part_uv});
        }
    }
    for (unsigned j = 0; j < kRows; ++j) {
        for (unsigned i = 0; i < kColumns; ++i) {
            const unsigned a = first + j * (kColumns + 1) + i;
            const unsigned b = a + kColumns + 1;
            if (sheet.back) {
                part.indices.insert(part.indices.end(), {a, b + 1, a + 1, a, b, b + 1});
            } else {
                part.indices.insert(part.indices.end(), {a, a + 1, b + 1, a, b + 1, b});
            }
        }
    }
}

/// The frame with the black border around it.
geometry::Rectangle outer_rectangle(const study::Study& study) {
    const room::Screen& screen = study.layout().screen;
    const double half =
        geometry::half_arc_of_chord(study.picture.surface, screen.width_m).value_or(0.0);
    return {.left = -half - kBorder_m,
            .right = half + kBorder_m,
            .bottom = -0.5 * screen.height_m - kBorder_m,
            .top = 0.5 * screen.height_m + kBorder_m};
}

void add_masking(const geometry::Patch& surface,
                 const geometry::Rectangle& outer,
                 const geometry::Rectangle& opening,
                 RoomMesh& mesh) {
    Part masking{.material = Material::masking, .shows = {Shows::Kind::screen, 0}};
    const auto piece = [&](const geometry::Rectangle& uv) {
        add_sheet(surface, {.uv = uv, .ahead_m = kMaskingAhead_m}, masking);
    };
    piece({outer.left, opening.left, outer.bottom, outer.top});
    piece({opening.right, outer.right, outer.bottom, outer.top});
    piece({opening.left, opening.right, outer.bottom, opening.bottom});
    piece({opening.left, opening.right, opening.top, outer.top});
    mesh.parts.push_back(std::move(masking));
}

/// Illuminance of the first light known for the format, over its largest value.
void add_light(const study::Study& study, int format, RoomMesh& mesh) {
    // Rows from the bottom, each from the left.
    constexpr std::array<light::PicturePoint, 9> kOrder = {
        light::kBottomLeft, light::kBottom,  light::kBottomRight, light::kLeft,    light::kCentre,
        light::kRight,      light::kTopLeft, light::kTop,         light::kTopRight};
    const auto& pictures = study.picture.pictures;
    for (std::size_t i = 0; i < pictures.size() && i < study.light.lights.size(); ++i) {
        if (pictures[i].format != format) continue;
        const auto& lux = study.light.lights[i].illuminance_lx;
        const double most = *std::ranges::max_element(lux);
        if (!(most > 0.0)) continue;
        for (std::size_t k = 0; k < kOrder.size(); ++k) {
            mesh.picture_light[k] = lux[kOrder[k]] / most;
        }
        return;
    }
}

}  // namespace

void add_screen(const study::Study& study, std::optional<int> format, RoomMesh& mesh) {
    const geometry::Patch& surface = study.picture.surface;
    const geometry::Rectangle outer = outer_rectangle(study);
    Part back{.material = Material::screen_back, .shows = {Shows::Kind::screen, 0}};
    back.wall = {0.0, 0.0, 1.0};
    add_sheet(surface, {.uv = outer, .back = true}, back);
    mesh.parts.push_back(std::move(back));
    if (!format) {
        const geometry::Rectangle none{outer.right, outer.right, outer.bottom, outer.top};
        add_masking(surface, outer, none, mesh);
        return;
    }
    const picture::Opening& opening = study.picture.openings[static_cast<std::size_t>(*format)];
    Part sheet{.material = Material::screen, .shows = {Shows::Kind::screen, 0}};
    add_sheet(surface, {.uv = opening.uv}, sheet);
    mesh.parts.push_back(std::move(sheet));
    mesh.picture_size_m = {opening.uv.width(), opening.uv.height()};
    add_masking(surface, outer, opening.uv, mesh);
    add_light(study, *format, mesh);
}

}  // namespace rakeline::drawing
