// SPDX-License-Identifier: MIT
#include "drawing/beam_marks.hpp"
#include "drawing/loudspeaker_marks.hpp"
#include "drawing/parts.hpp"
#include "drawing/plan_contours.hpp"
#include "drawing/plan_seats.hpp"

#include <algorithm>
#include <cmath>

namespace rakeline::drawing {
namespace {

using Kind = Shows::Kind;
using Points = std::vector<glm::dvec2>;

/// Room to page: across stays, back runs down.
glm::dvec2 on_plan(const glm::dvec3& p) {
    return {p.x, p.z};
}

struct Plan {
    const study::Study& study;
    const DrawingChoice& choice;
    Chosen chosen;
    Drawing drawing;

    const room::Layout& layout() const { return study.layout(); }
    const room::Hall& hall() const { return study.layout().hall; }
    void add(Item item) { drawing.items.push_back(std::move(item)); }
};

double standoff_m(const Plan& plan) {
    return 0.035 * std::max(plan.hall().width_m, plan.hall().length_m);
}

/// Edges of treads and aisles, quiet.
void add_floor(Plan& plan) {
    for (const room::Platform& platform : plan.study.seats.platforms) {
        if (plan.choice.raised && *plan.choice.raised != is_raised(plan.study, platform)) continue;
        const bool aisle = platform.kind == room::PlatformKind::cross_aisle;
        const Shows what = platform.row ? showing(Kind::row, *platform.row) : showing(Kind::hall);
        Points corners;
        for (const glm::dvec3& corner : platform.corners)
            corners.push_back(on_plan(corner));
        if (aisle) plan.add(Fill{corners, Ink::quiet, 0.10, what});
        Line edge = stroke(corners[0], corners[3], Weight::helper, Ink::quiet, what);
        if (platform.kind == room::PlatformKind::balcony_front) {
            edge = {.points = corners, .weight = Weight::seen, .ink = Ink::line, .closed = true};
            edge.shows = showing(Kind::hall);
        }
        plan.add(edge);
    }
}

/// Ends of the solid parts of the booth wall, from house left, port by port.
std::vector<double> wall_cuts(const Plan& plan, double half_width) {
    std::vector<std::pair<double, double>> gaps;
    for (const room::Projector& projector : plan.layout().projectors) {
        const room::Port& port = projector.port;
        gaps.emplace_back(port.across_m - 0.5 * port.width_m, port.across_m + 0.5 * port.width_m);
    }
    std::sort(gaps.begin(), gaps.end());
    std::vector<double> cuts{-half_width};
    for (const auto& [left, right] : gaps) {
        if (right <= cuts.back() || left >= half_width) continue;
        cuts.push_back(std::max(left, cuts.back()));
        cuts.push_back(std::min(right, half_width));
    }
    cuts.push_back(half_width);
    return cuts;
}

void add_walls(Plan& plan) {
    const room::Hall& hall = plan.hall();
    const double front = room::half_width_at(hall, 0.0);
    const double back = room::half_width_at(hall, hall.length_m);
    const double z = hall.length_m;
    plan.add(Line{.points = {{-back, z}, {-front, 0.0}, {front, 0.0}, {back, z}},
                  .weight = Weight::cut,
                  .ink = Ink::line,
                  .closed = false,
                  .dashed = false,
                  .shows = showing(Kind::hall)});
    const std::vector<double> cuts = wall_cuts(plan, back);
    for (std::size_t i = 0; i + 1 < cuts.size(); i += 2)
        plan.add(
            stroke({cuts[i], z}, {cuts[i + 1], z}, Weight::cut, Ink::line, showing(Kind::hall)));
}

/// Ports as two thin panes across the gap in the wall.
void add_ports(Plan& plan) {
    constexpr double kJamb_m = 0.08;
    const double z = plan.hall().length_m;
    for (std::size_t i = 0; i < plan.layout().projectors.size(); ++i) {
        const room::Port& port = plan.layout().projectors[i].port;
        const double left = port.across_m - 0.5 * port.width_m;
        const double right = port.across_m + 0.5 * port.width_m;
        plan.add(Line{.points = {{left, z - kJamb_m},
                                 {right, z - kJamb_m},
                                 {right, z + kJamb_m},
                                 {left, z + kJamb_m}},
                      .weight = Weight::seen,
                      .ink = Ink::line,
                      .closed = true,
                      .dashed = false,
                      .shows = showing(Kind::projector, static_cast<int>(i))});
    }
}

Points surface_line(const geometry::Patch& patch, double u_from, double u_to) {
    const int pieces = patch.flat() ? 1 : 32;
    Points points;
    for (int i = 0; i <= pieces; ++i) {
        const double u = u_from + (u_to - u_from) * i / pieces;
        points.push_back(on_plan(geometry::point_at(patch, {u, 0.0})));
    }
    return points;
}

void add_surface(Plan& plan, double u_from, double u_to, Ink ink) {
    if (u_to - u_from < 1e-6) return;
    plan.add(Line{.points = surface_line(plan.study.picture.surface, u_from, u_to),
                  .weight = Weight::cut,
                  .ink = ink,
                  .closed = false,
                  .dashed = false,
                  .shows = showing(Kind::screen)});
}

/// Masking left and right of the format's opening in quiet ink, the opening as screen.
void add_screen(Plan& plan) {
    const geometry::Patch& patch = plan.study.picture.surface;
    const auto half_arc = geometry::half_arc_of_chord(patch, plan.layout().screen.width_m);
    if (!half_arc) return;
    if (!plan.chosen.opening) {
        add_surface(plan, -*half_arc, *half_arc, Ink::screen);
        return;
    }
    const geometry::Rectangle& uv = plan.chosen.opening->uv;
    add_surface(plan, -*half_arc, uv.left, Ink::quiet);
    add_surface(plan, uv.right, *half_arc, Ink::quiet);
    add_surface(plan, uv.left, uv.right, Ink::screen);
}

void add_beam(Plan& plan) {
    if (!plan.chosen.picture) return;
    const Shows what = showing(Kind::projector, plan.chosen.projector);
    Points outline{on_plan(plan.chosen.picture->map.pose().lens)};
    for (const glm::dvec3& p : picture_line(*plan.chosen.picture, {-1.0, 0.0}, {1.0, 0.0}))
        outline.push_back(on_plan(p));
    if (outline.size() < 3) return;
    plan.add(Fill{outline, Ink::beam, 0.12, what});
    plan.add(stroke(outline.front(), outline[1], Weight::helper, Ink::beam, what));
    plan.add(stroke(outline.front(), outline.back(), Weight::helper, Ink::beam, what));
}

void add_projectors(Plan& plan) {
    for (std::size_t i = 0; i < plan.layout().projectors.size(); ++i) {
        const room::Projector& projector = plan.layout().projectors[i];
        const bool is_chosen = static_cast<int>(i) == plan.chosen.projector;
        const Shows what = showing(Kind::projector, static_cast<int>(i));
        const glm::dvec2 lens{projector.across_m, projector.back_m};
        const Weight weight = is_chosen ? Weight::seen : Weight::helper;
        plan.add(Line{.points = box(lens + glm::dvec2(0.0, 0.45), {0.0, 1.0}, 0.45, 0.25),
                      .weight = weight,
                      .ink = Ink::line,
                      .closed = true,
                      .dashed = false,
                      .shows = what});
        plan.add(Fill{disc(lens, 0.10), is_chosen ? Ink::near : Ink::line, 1.0, what});
        // Names of projectors side by side would run into each other on one line.
        plan.add(Label{.at = lens + glm::dvec2(0.0, 1.35 + 0.6 * static_cast<double>(i % 3)),
                       .text = projector.name,
                       .anchor = Anchor::centre,
                       .ink = Ink::quiet,
                       .vertical = false,
                       .size = 1.0,
                       .shows = what});
    }
}

Dimension dimension(glm::dvec2 from, glm::dvec2 to, double offset_m, const char* prefix) {
    Dimension d;
    d.from = from;
    d.to = to;
    d.offset_m = offset_m;
    d.prefix = prefix;
    return d;
}

void add_hall_dimensions(Plan& plan) {
    const room::Hall& hall = plan.hall();
    const double off = standoff_m(plan);
    const double front = room::half_width_at(hall, 0.0);
    const double widest = std::max(front, room::half_width_at(hall, hall.length_m));
    Dimension width = dimension({front, 0.0}, {-front, 0.0}, 2.4 * off, "hall ");
    width.shows = showing(Kind::hall);
    plan.add(width);
    Dimension length = dimension({-widest, 0.0}, {-widest, hall.length_m}, 1.2 * off, "hall ");
    length.shows = showing(Kind::hall);
    plan.add(length);
}

/// Chord of the format's opening, between its edges on the page.
void add_screen_dimension(Plan& plan) {
    if (!plan.chosen.opening) return;
    const picture::Opening& opening = *plan.chosen.opening;
    const geometry::Patch& patch = plan.study.picture.surface;
    const glm::dvec2 left = on_plan(geometry::point_at(patch, {opening.uv.left, 0.0}));
    const glm::dvec2 right = on_plan(geometry::point_at(patch, {opening.uv.right, 0.0}));
    Dimension d = dimension(right, left, right.y + 1.2 * standoff_m(plan), "picture ");
    d.length_m = opening.width_m;
    d.shows = showing(Kind::screen);
    plan.add(d);
}

/// Throw along the axis, drawn on the axis itself.
void add_throw_dimension(Plan& plan) {
    if (!plan.chosen.picture) return;
    const picture::ProjectedPicture& picture = *plan.chosen.picture;
    Dimension d =
        dimension(on_plan(picture.axis_point), on_plan(picture.map.pose().lens), 0.0, "throw ");
    d.length_m = picture.throw_m;
    d.shows = showing(Kind::projector, plan.chosen.projector);
    plan.add(d);
}

void add_first_row_dimension(Plan& plan) {
    if (plan.choice.raised == true) return;
    const auto& seats = plan.study.seats.seats;
    const study::Figure* figure = study::find_figure(plan.study, "room.first_row_distance");
    const auto distance = figure ? study::value_at(*figure) : std::nullopt;
    if (!distance || seats.empty()) return;
    const auto nearest = std::min_element(
        seats.begin(), seats.end(),
        [](const room::Seat& a, const room::Seat& b) { return a.eye.z < b.eye.z; });
    const double x = 0.25 * plan.layout().screen.width_m;
    const double screen = plan.study.picture.surface.centre.z;
    Dimension d = dimension({x, screen}, {x, screen + *distance}, 0.0, "first row ");
    d.shows = showing(Kind::row, nearest->row);
    plan.add(d);
}

}  // namespace

Drawing plan(const study::Study& study, const DrawingChoice& choice) {
    Plan plan{study, choice, chosen(study, choice), {}};
    plan.drawing.title = !choice.raised ? "Plan" : *choice.raised ? "Plan, balcony" : "Plan, floor";
    plan.drawing.y_down = true;
    // Contours are about the seats: the light and the sound that pass over them stay away.
    const bool calm = wants_contours(choice);
    add_floor(plan);
    if (!calm) add_beam(plan);
    add_walls(plan);
    add_ports(plan);
    add_screen(plan);
    add_plan_seats(study, choice, plan.drawing);
    add_plan_contours(study, choice, plan.drawing);
    if (!calm) {
        add_plan_loudspeakers(study, choice, plan.drawing);
        add_plan_port_needed(study, plan.chosen, plan.drawing);
        add_projectors(plan);
        add_plan_beam_marks(study, choice, plan.chosen, plan.drawing);
    }
    if (choice.dimensions) {
        add_hall_dimensions(plan);
        add_screen_dimension(plan);
        if (!calm) add_throw_dimension(plan);
        add_first_row_dimension(plan);
    }
    set_bounds(plan.drawing, standoff_m(plan));
    return plan.drawing;
}

}  // namespace rakeline::drawing
