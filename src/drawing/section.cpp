// SPDX-License-Identifier: MIT
#include "base/number_text.hpp"
#include "base/units.hpp"
#include "drawing/beam_marks.hpp"
#include "drawing/loudspeaker_marks.hpp"
#include "drawing/parts.hpp"
#include "drawing/section_dimensions.hpp"
#include "drawing/section_floor.hpp"
#include "drawing/section_sight.hpp"

#include <algorithm>
#include <cmath>

namespace rakeline::drawing {
namespace {

using Kind = Shows::Kind;

glm::dvec2 on_section(const glm::dvec3& p) {
    return {p.z, p.y};
}

struct Section {
    const study::Study& study;
    const DrawingChoice& choice;
    Chosen chosen;
    Drawing drawing;

    const room::Layout& layout() const { return study.layout(); }
    void add(Item item) { drawing.items.push_back(std::move(item)); }
};

double lowest_floor(const study::Study& study) {
    double low = 0.0;
    for (const room::Platform& platform : study.seats.platforms)
        for (const glm::dvec3& corner : platform.corners)
            low = std::min(low, corner.y);
    return low;
}

double last_back(const room::Layout& layout) {
    double back = layout.hall.length_m;
    for (const room::Projector& projector : layout.projectors)
        back = std::max(back, projector.back_m);
    return back;
}

/// Quiet uprights every 2 m (10 ft) with their distance from the screen wall under them.
void add_scale(Section& s) {
    const bool metric = s.choice.units == base::UnitSystem::metric;
    const double step_m = metric ? 2.0 : 10.0 * base::kMetresPerFoot;
    const auto shown = base::shown_scale(base::Unit::metre, s.choice.units);
    const double low = lowest_floor(s.study) - 0.8;
    const int last = static_cast<int>(std::floor(last_back(s.layout()) / step_m + 1e-9));
    for (int i = 0; i <= last; ++i) {
        const double z = i * step_m;
        const bool in_hall = z <= s.layout().hall.length_m + 1e-9;
        s.add(stroke({z, low}, {z, in_hall ? s.layout().hall.height_m : low + 0.25}, Weight::helper,
                     Ink::quiet));
        std::string text = base::fixed_text(z * shown.factor, 0);
        if (i == last) text += std::string(" ") + shown.unit;
        s.add(Label{.at = {z, low - 0.30}, .text = text});
    }
}

void add_ceiling(Section& s) {
    const room::Hall& hall = s.layout().hall;
    const auto pieces = floor_pieces(s.study.seats);
    const double foot = pieces.empty() ? 0.0 : pieces.front().from.y;
    s.add(Line{.points = {{0.0, foot}, {0.0, hall.height_m}, {hall.length_m, hall.height_m}},
               .weight = Weight::cut,
               .ink = Ink::line,
               .shows = showing(Kind::hall)});
}

/// Floor height against the booth wall, where the wall begins.
double booth_foot(const Section& s) {
    double foot = 0.0;
    for (const FloorPiece& piece : floor_pieces(s.study.seats))
        if (std::abs(piece.to.x - s.layout().hall.length_m) < 0.05)
            foot = std::min(piece.to.y, foot == 0.0 ? piece.to.y : foot);
    return foot;
}

/// The wall with the chosen projector's port cut open; the other ports are seen.
void add_booth_wall(Section& s) {
    const room::Hall& hall = s.layout().hall;
    const double z = hall.length_m;
    double low = hall.height_m, high = hall.height_m;
    for (std::size_t i = 0; i < s.layout().projectors.size(); ++i) {
        const room::Port& port = s.layout().projectors[i].port;
        const double half = 0.5 * port.height_m;
        const bool cut = static_cast<int>(i) == s.chosen.projector;
        if (cut) low = port.up_m - half;
        if (cut) high = port.up_m + half;
        const auto frame = box({z, port.up_m}, {0.0, 1.0}, half, 0.08);
        s.add(Line{.points = frame,
                   .weight = cut ? Weight::seen : Weight::helper,
                   .ink = Ink::line,
                   .closed = true,
                   .shows = showing(Kind::projector, static_cast<int>(i))});
    }
    s.add(stroke({z, booth_foot(s)}, {z, low}, Weight::cut, Ink::line, showing(Kind::hall)));
    if (high < hall.height_m)
        s.add(stroke({z, high}, {z, hall.height_m}, Weight::cut, Ink::line, showing(Kind::hall)));
}

void add_surface(Section& s, double v_from, double v_to, Ink ink) {
    if (v_to - v_from < 1e-6) return;
    const geometry::Patch& patch = s.study.picture.surface;
    s.add(stroke(on_section(geometry::point_at(patch, {0.0, v_from})),
                 on_section(geometry::point_at(patch, {0.0, v_to})), Weight::cut, ink,
                 showing(Kind::screen)));
}

/// A curved screen's edge, seen in front of the surface that the section cuts.
void add_curved_edge(Section& s) {
    const geometry::Patch& patch = s.study.picture.surface;
    const auto half_arc = geometry::half_arc_of_chord(patch, s.layout().screen.width_m);
    if (patch.flat() || !half_arc) return;
    const double half = 0.5 * s.layout().screen.height_m;
    s.add(Line{.points = {on_section(geometry::point_at(patch, {0.0, -half})),
                          on_section(geometry::point_at(patch, {*half_arc, -half})),
                          on_section(geometry::point_at(patch, {*half_arc, half})),
                          on_section(geometry::point_at(patch, {0.0, half}))},
               .weight = Weight::helper,
               .ink = Ink::screen,
               .shows = showing(Kind::screen)});
}

/// Masking above and below the format's opening in quiet ink, the opening as screen, ticks at its
/// edges.
void add_screen(Section& s) {
    const double half = 0.5 * s.layout().screen.height_m;
    add_curved_edge(s);
    if (!s.chosen.opening) return add_surface(s, -half, half, Ink::screen);
    const geometry::Rectangle& uv = s.chosen.opening->uv;
    add_surface(s, -half, uv.bottom, Ink::quiet);
    add_surface(s, uv.top, half, Ink::quiet);
    add_surface(s, uv.bottom, uv.top, Ink::screen);
    for (const double v : {uv.bottom, uv.top}) {
        const glm::dvec2 at = on_section(geometry::point_at(s.study.picture.surface, {0.0, v}));
        s.add(stroke(at, at + glm::dvec2(0.25, 0.0), Weight::seen, Ink::screen,
                     showing(Kind::screen)));
    }
}

void add_beam(Section& s) {
    if (!s.chosen.picture) return;
    const Shows what = showing(Kind::projector, s.chosen.projector);
    std::vector<glm::dvec2> outline{on_section(s.chosen.picture->map.pose().lens)};
    for (const glm::dvec3& p : picture_line(*s.chosen.picture, {0.0, -1.0}, {0.0, 1.0}))
        outline.push_back(on_section(p));
    if (outline.size() < 3) return;
    s.add(Fill{outline, Ink::beam, 0.12, what});
    s.add(stroke(outline.front(), outline[1], Weight::helper, Ink::beam, what));
    s.add(stroke(outline.front(), outline.back(), Weight::helper, Ink::beam, what));
}

void add_projectors(Section& s) {
    for (std::size_t i = 0; i < s.layout().projectors.size(); ++i) {
        const room::Projector& projector = s.layout().projectors[i];
        const bool is_chosen = static_cast<int>(i) == s.chosen.projector;
        const Shows what = showing(Kind::projector, static_cast<int>(i));
        const glm::dvec2 lens{projector.back_m, projector.up_m};
        glm::dvec2 axis{1.0, 0.0};
        if (is_chosen && s.chosen.picture) {
            const glm::dvec2 back = -on_section(s.chosen.picture->map.pose().axis);
            axis = glm::length(back) > 0.0 ? glm::normalize(back) : axis;
        }
        s.add(Line{.points = box(lens + 0.45 * axis, axis, 0.45, 0.22),
                   .weight = is_chosen ? Weight::seen : Weight::helper,
                   .ink = Ink::line,
                   .closed = true,
                   .shows = what});
        s.add(Fill{disc(lens, 0.08), is_chosen ? Ink::near : Ink::line, 1.0, what});
    }
}

}  // namespace

Drawing long_section(const study::Study& study, const DrawingChoice& choice) {
    Section s{study, choice, chosen(study, choice), {}};
    s.drawing.title = "Long section";
    add_scale(s);
    add_beam(s);
    add_section_loudspeakers(study, choice, s.drawing);
    add_section_sight(study, choice, s.chosen, s.drawing);
    add_section_floor(study, s.drawing);
    add_ceiling(s);
    add_booth_wall(s);
    add_screen(s);
    add_section_port_needed(study, s.chosen, s.drawing);
    add_projectors(s);
    add_section_beam_marks(study, choice, s.chosen, s.drawing);
    if (choice.dimensions) add_section_dimensions(study, s.chosen, s.drawing);
    set_bounds(s.drawing, 0.03 * study.layout().hall.length_m);
    return s.drawing;
}

}  // namespace rakeline::drawing
