// SPDX-License-Identifier: MIT
#include "drawing/screen_face.hpp"

#include <algorithm>

namespace rakeline::drawing {
namespace {

/// Lines of lettering are a tenth of the frame's height apart: far enough for the low strip of a
/// window, near enough for a page.
constexpr double kPitch = 0.1;
constexpr double kNotes = 4.2;  ///< width kept for the notes at the right, in such lines

geometry::Rectangle frame_of(const study::Study& study) {
    const room::Screen& screen = study.layout().screen;
    const double half =
        geometry::half_arc_of_chord(study.picture.surface, screen.width_m).value_or(0.0);
    return {.left = -half,
            .right = half,
            .bottom = -0.5 * screen.height_m,
            .top = 0.5 * screen.height_m};
}

geometry::Rectangle around(geometry::Rectangle box, const std::vector<glm::dvec2>& points) {
    for (const glm::dvec2& p : points) {
        box.left = std::min(box.left, p.x);
        box.right = std::max(box.right, p.x);
        box.bottom = std::min(box.bottom, p.y);
        box.top = std::max(box.top, p.y);
    }
    return box;
}

void add_masking_piece(Face& face, const geometry::Rectangle& piece) {
    constexpr double kMasking = 0.10;
    if (piece.width() <= 0.0 || piece.height() <= 0.0) return;
    face.add(Fill{corners(piece), Ink::quiet, kMasking, face.screen()});
}

/// Under all else, as wide as the frame.
void add_face_scale(Face& face) {
    const double height = kScaleLines * face.pitch_m, top = face.drawing.low.y;
    face.drawing.low.y -= height;
    add_luminance_scale(face.luminance->scale,
                        {face.frame.left, face.frame.right, top - height, top}, face.choice.units,
                        face.drawing);
}

Line outline(std::vector<glm::dvec2> points, Weight weight, Ink ink, Shows shows) {
    return {.points = std::move(points),
            .weight = weight,
            .ink = ink,
            .closed = true,
            .dashed = false,
            .shows = shows};
}

}  // namespace

void Face::add(Item item) {
    drawing.items.push_back(std::move(item));
}

study::Place Face::place() const {
    study::Place place;
    place.projector = chosen.projector;
    place.format = chosen.format;
    return place;
}

const study::Figure* Face::figure(const char* id) const {
    const study::Figure* found = study::find_figure(study, id, place());
    return found && study::value_at(*found) ? found : nullptr;
}

std::optional<double> Face::value(const char* id) const {
    const study::Figure* found = figure(id);
    return found ? study::value_at(*found) : std::nullopt;
}

std::string Face::text(const char* id) const {
    const study::Figure* found = figure(id);
    if (!found) return {};
    const std::string mark = study::verdict_mark(found->worst);
    return quantity(*study::value_at(*found), found->definition->unit) +
           (mark.empty() ? "" : " " + mark);
}

std::string Face::quantity(double si, base::Unit unit) const {
    return base::quantity_text(si, unit, choice.units);
}

std::vector<glm::dvec2> corners(const geometry::Rectangle& r) {
    return {{r.left, r.bottom}, {r.right, r.bottom}, {r.right, r.top}, {r.left, r.top}};
}

void add_face_masking(Face& face) {
    const geometry::Rectangle& f = face.frame;
    if (!face.chosen.opening) return add_masking_piece(face, f);
    const geometry::Rectangle& o = face.chosen.opening->uv;
    add_masking_piece(face, {f.left, o.left, f.bottom, f.top});
    add_masking_piece(face, {o.right, f.right, f.bottom, f.top});
    add_masking_piece(face, {o.left, o.right, f.bottom, o.bottom});
    add_masking_piece(face, {o.left, o.right, o.top, f.top});
}

void add_face_outlines(Face& face) {
    face.add(outline(corners(face.frame), Weight::seen, Ink::line, face.screen()));
    if (face.chosen.opening)
        face.add(
            outline(corners(face.chosen.opening->uv), Weight::cut, Ink::screen, face.screen()));
    if (face.chosen.picture)
        face.add(
            outline(face.chosen.picture->shape.outline, Weight::seen, Ink::beam, face.projector()));
}

Face face_of(const study::Study& study, const DrawingChoice& choice) {
    Face face{study, choice, chosen(study, choice), frame_of(study), {}, 0.0, {}};
    face.luminance = chosen_luminance(study, choice);
    face.pitch_m = kPitch * face.frame.height();
    face.outer = face.frame;
    if (face.chosen.picture) face.outer = around(face.outer, face.chosen.picture->shape.outline);
    return face;
}

Drawing screen_face(const study::Study& study, const DrawingChoice& choice) {
    Face face = face_of(study, choice);
    face.drawing.title = "The screen, flat";
    add_face_masking(face);
    if (!face.luminance) add_face_light(face);
    if (face.luminance) {
        add_face_luminance(face);
    } else if (choice.blur) {
        add_face_blur(face);
    } else {
        add_face_chart(face);
    }
    add_face_outlines(face);
    add_face_shortfall(face);
    if (choice.dimensions) {
        add_face_dimensions(face);
        add_face_notes(face);
    }
    set_bounds(face.drawing, choice.dimensions ? 0.5 * face.pitch_m : 0.2 * face.pitch_m);
    if (choice.dimensions) face.drawing.high.x += kNotes * face.pitch_m;
    if (choice.dimensions && face.luminance) add_face_scale(face);
    return face.drawing;
}

}  // namespace rakeline::drawing
