// SPDX-License-Identifier: MIT
#include "report/canvas.hpp"

#include "base/assert.hpp"
#include "base/units.hpp"

#include <algorithm>
#include <cmath>

namespace rakeline::report {
namespace {

constexpr double kPointsPerInch = 72.0;

double weight_pt(drawing::Weight weight) {
    switch (weight) {
        case drawing::Weight::cut:
            return 1.8;
        case drawing::Weight::seen:
            return 1.0;
        case drawing::Weight::helper:
            return 0.5;
    }
    return 1.0;
}

}  // namespace

double points_per_metre(double scale_denominator) {
    return kPointsPerInch / base::kMetresPerInch / scale_denominator;
}

Placement fitted(const drawing::Drawing& drawing, const Box& box) {
    const glm::dvec2 extent = drawing.high - drawing.low;
    RL_ASSERT(extent.x > 0.0 && extent.y > 0.0);
    return {box, std::min(box.width / extent.x, box.height / extent.y)};
}

void Canvas::paint(const drawing::Drawing& drawing, const Placement& placement) {
    RL_ASSERT(placement.points_per_m > 0.0);
    const glm::dvec2 middle = 0.5 * (drawing.low + drawing.high);
    const Box& box = placement.box;
    points_per_m_ = placement.points_per_m;
    up_ = drawing.y_down ? 1.0 : -1.0;
    origin_ = {box.x + 0.5 * box.width - middle.x * points_per_m_,
               box.y + 0.5 * box.height - up_ * middle.y * points_per_m_};
    cairo_save(to_);
    cairo_set_line_join(to_, CAIRO_LINE_JOIN_MITER);
    cairo_set_line_cap(to_, CAIRO_LINE_CAP_BUTT);
    for (const drawing::Item& item : drawing.items)
        std::visit([this](const auto& x) { paint_item(x); }, item);
    cairo_restore(to_);
}

glm::dvec2 Canvas::at(glm::dvec2 p) const {
    return origin_ + points_per_m_ * glm::dvec2(p.x, up_ * p.y);
}

void Canvas::trace(const std::vector<glm::dvec2>& points, bool closed) {
    cairo_new_path(to_);
    for (const glm::dvec2& point : points) {
        const glm::dvec2 p = at(point);
        cairo_line_to(to_, p.x, p.y);
    }
    if (closed) cairo_close_path(to_);
}

void Canvas::set_ink(const Rgb& rgb, double strength) {
    cairo_set_source_rgba(to_, rgb.r, rgb.g, rgb.b, strength);
}

void Canvas::stroke(double weight_pt, bool dashed) {
    constexpr double kDash[] = {3.0, 2.5};
    cairo_set_dash(to_, kDash, dashed ? 2 : 0, 0.0);
    cairo_set_line_width(to_, weight_pt);
    cairo_stroke(to_);
}

void Canvas::paint_item(const drawing::Line& line) {
    if (line.points.size() < 2) return;
    trace(line.points, line.closed);
    // Grid lines must not compete with what they measure.
    const bool faint =
        line.ink == drawing::Ink::quiet && line.weight == drawing::Weight::helper && !line.dashed;
    set_ink(colour(theme_, line.ink), faint ? 0.45 : 1.0);
    stroke(weight_pt(line.weight), line.dashed);
}

void Canvas::paint_item(const drawing::Fill& fill) {
    if (fill.points.size() < 3) return;
    trace(fill.points, true);
    set_ink(colour(theme_, fill.ink), fill.strength);
    cairo_fill(to_);
}

/// A mesh pattern: PDF keeps it as a shading of triangles, sharp at any size.
void Canvas::paint_item(const drawing::Shading& shading) {
    cairo_pattern_t* mesh = cairo_pattern_create_mesh();
    for (const auto& triangle : shading.triangles) {
        cairo_mesh_pattern_begin_patch(mesh);
        for (unsigned i = 0; i < 3; ++i) {
            const glm::dvec2 p = at(shading.points[static_cast<std::size_t>(triangle[i])]);
            i == 0 ? cairo_mesh_pattern_move_to(mesh, p.x, p.y)
                   : cairo_mesh_pattern_line_to(mesh, p.x, p.y);
        }
        for (unsigned i = 0; i < 3; ++i) {
            const Rgb c = drawing::cividis(shading.places[static_cast<std::size_t>(triangle[i])]);
            cairo_mesh_pattern_set_corner_color_rgb(mesh, i, c.r, c.g, c.b);
        }
        cairo_mesh_pattern_end_patch(mesh);
    }
    cairo_set_source(to_, mesh);
    cairo_pattern_destroy(mesh);
    cairo_paint(to_);
}

void Canvas::text_on_ground(double x, double y, const std::string& text, const TextStyle& style) {
    const TextSize size = lettering_.measured(text, style);
    double left = x;
    if (style.anchor == drawing::Anchor::centre) left -= 0.5 * size.width;
    if (style.anchor == drawing::Anchor::right) left -= size.width;
    cairo_rectangle(to_, left - 1.5, y + 0.5, size.width + 3.0, size.height - 1.0);
    set_ink(theme_.ground, 0.82);
    cairo_fill(to_);
    lettering_.draw(to_, x, y, text, style);
}

void Canvas::paint_item(const drawing::Label& label) {
    const bool stands_out = label.ink == drawing::Ink::missed;
    TextStyle style{.size_pt = kLettering_pt * label.size, .anchor = label.anchor};
    style.colour = colour(theme_, label.ink);
    if (stands_out) style.strength = Strength::medium;
    const glm::dvec2 p = at(label.at);
    const double half = 0.5 * lettering_.measured(label.text, style).height;
    cairo_save(to_);
    cairo_translate(to_, p.x, p.y);
    if (label.vertical) cairo_rotate(to_, -0.5 * base::kPi);
    if (label.on_ground || (stands_out && label.text.size() > 3)) {
        text_on_ground(0.0, -half, label.text, style);
    } else {
        lettering_.draw(to_, 0.0, -half, label.text, style);
    }
    cairo_restore(to_);
}

void Canvas::extension(glm::dvec2 from, glm::dvec2 to) {
    const double length = glm::length(to - from);
    if (length < 4.0) return;
    const glm::dvec2 along = (to - from) / length;
    const glm::dvec2 a = from + 2.0 * along;
    const glm::dvec2 b = to + 3.0 * along;
    cairo_move_to(to_, a.x, a.y);
    cairo_line_to(to_, b.x, b.y);
    set_ink(theme_.quiet, 0.6);
    stroke(0.4);
}

void Canvas::tick(glm::dvec2 at, glm::dvec2 along) {
    const glm::dvec2 slash = 2.4 * (along + glm::dvec2(-along.y, along.x)) * std::sqrt(0.5);
    cairo_move_to(to_, at.x - slash.x, at.y - slash.y);
    cairo_line_to(to_, at.x + slash.x, at.y + slash.y);
    set_ink(theme_.quiet);
    stroke(0.9);
}

/// Above the middle of the line and along it; where the line is too short, level and to the left of
/// an upright one, above a level one.
void Canvas::dimension_text(glm::dvec2 a, glm::dvec2 b, const std::string& text) {
    TextStyle style{.size_pt = kLettering_pt, .anchor = drawing::Anchor::centre};
    style.colour = theme_.quiet;
    const TextSize size = lettering_.measured(text, style);
    const glm::dvec2 middle = 0.5 * (a + b);
    if (size.width + 4.0 > glm::length(b - a)) {
        const bool upright = std::abs(b.y - a.y) > std::abs(b.x - a.x);
        if (!upright) return text_on_ground(middle.x, middle.y - size.height - 3.0, text, style);
        style.anchor = drawing::Anchor::right;
        return text_on_ground(middle.x - 6.0, middle.y - 0.5 * size.height, text, style);
    }
    // Reads from the left or from below; a line that leans a little past upright still from below.
    constexpr double kMost = base::radians(80.0);
    double angle = std::atan2(b.y - a.y, b.x - a.x);
    if (angle >= kMost) angle -= base::kPi;
    if (angle < kMost - base::kPi) angle += base::kPi;
    cairo_save(to_);
    cairo_translate(to_, middle.x, middle.y);
    cairo_rotate(to_, angle);
    text_on_ground(0.0, -size.height - 0.5, text, style);
    cairo_restore(to_);
}

void Canvas::paint_item(const drawing::Dimension& dimension) {
    const drawing::Segment line = drawing::dimension_line(dimension);
    const glm::dvec2 a = at(line.from);
    const glm::dvec2 b = at(line.to);
    if (glm::length(b - a) < 0.5) return;
    extension(at(dimension.from), a);
    extension(at(dimension.to), b);
    cairo_move_to(to_, a.x, a.y);
    cairo_line_to(to_, b.x, b.y);
    set_ink(theme_.quiet);
    stroke(0.5);
    const glm::dvec2 along = glm::normalize(b - a);
    tick(a, along);
    tick(b, along);
    dimension_text(a, b, drawing::dimension_text(dimension, units_));
}

}  // namespace rakeline::report
