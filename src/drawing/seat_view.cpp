// SPDX-License-Identifier: MIT
#include "drawing/seat_view.hpp"

#include "drawing/hidden_regions.hpp"

#include <algorithm>
#include <cmath>

namespace rakeline::drawing {
namespace {

constexpr double kHatches = 60.0;     ///< over the opening's width
constexpr double kNotesWidth = 0.62;  ///< of the window's height, kept at its right

base::Problem refusal(std::string what, std::string mend) {
    return {.file = {}, .line = 0, .where = {}, .what = std::move(what), .mend = std::move(mend)};
}

geometry::Rectangle frame_of(const study::Study& study) {
    const room::Screen& screen = study.layout().screen;
    const double half =
        geometry::half_arc_of_chord(study.picture.surface, screen.width_m).value_or(0.0);
    return {-half, half, -0.5 * screen.height_m, 0.5 * screen.height_m};
}

void add_lines(EyeView& view, const std::vector<glm::dvec3>& points, const Line& like) {
    for (std::vector<glm::dvec2>& piece : view.page.line(points)) {
        Line line = like;
        line.points = std::move(piece);
        view.add(line);
    }
}

void add_middle_lines(EyeView& view) {
    const geometry::Rectangle& o = view.opening();
    const Line middle{.points = {}, .weight = Weight::helper, .ink = Ink::quiet};
    const glm::dvec2 c = o.centre();
    add_lines(view, on_surface(view.surface(), {{o.left, c.y}, {o.right, c.y}}), middle);
    add_lines(view, on_surface(view.surface(), {{c.x, o.bottom}, {c.x, o.top}}), middle);
}

void add_closed(EyeView& view, std::vector<glm::dvec3> points, const Line& like) {
    if (points.empty()) return;
    points.push_back(points.front());
    add_lines(view, points, like);
}

void add_fill(EyeView& view, const std::vector<glm::dvec3>& points, const Fill& like) {
    Fill fill = like;
    fill.points = view.page.outline(points);
    if (fill.points.size() > 2) view.add(fill);
}

Shows of_screen() {
    return {Shows::Kind::screen, 0};
}

Shows of_seat(int eye) {
    return eye < 0 ? Shows{Shows::Kind::hall, 0} : Shows{Shows::Kind::seat, eye};
}

glm::dvec3 picture_centre(const study::Study& study, int format) {
    const auto& opening = study.picture.openings.at(static_cast<std::size_t>(format)).uv;
    return geometry::point_at(study.picture.surface, opening.centre());
}

/// Farthest first, so that the nearest is on top.
struct Standing {
    const sight::Head* head = nullptr;
    const sight::Wall* wall = nullptr;
    double plan_m = 0.0;
};

std::vector<Standing> standing(const EyeView& view) {
    std::vector<Standing> out;
    for (const sight::Head& head : view.seen.house.heads)
        if (head.eye != view.seat && view.before_picture(head.centre))
            out.push_back({&head, nullptr, view.occluders.plan_distance(head.centre)});
    for (const sight::Wall& wall : view.seen.house.walls) {
        const glm::dvec3 middle = 0.5 * (wall.from + wall.to);
        if (wall.eye != view.seat && hides_from(wall, view.sitter().eye.y) &&
            view.before_picture(middle))
            out.push_back({nullptr, &wall, view.occluders.plan_distance(middle)});
    }
    std::ranges::stable_sort(out, std::greater{}, &Standing::plan_m);
    return out;
}

void add_head(EyeView& view, const Standing& one) {
    const std::vector<glm::dvec3> outline = silhouette(*one.head, view.sitter().eye);
    if (outline.empty() || view.page.outline(outline).empty()) return;
    const Shows shows = of_seat(one.head->eye);
    // Nothing to see, but a click anywhere on the head selects its seat.
    add_fill(view, outline, {.points = {}, .ink = Ink::line, .strength = 0.0, .shows = shows});
    std::vector<glm::dvec3> round = outline;
    round.push_back(round.front());
    for (const auto& run : view.occluders.free_runs(round, one.plan_m))
        add_lines(view, run,
                  {.points = {}, .weight = Weight::seen, .ink = Ink::line, .shows = shows});
}

void add_wall(EyeView& view, const Standing& one) {
    const Shows shows = of_seat(one.wall->eye);
    const Weight weight = one.wall->eye < 0 ? Weight::cut : Weight::helper;
    const std::vector<glm::dvec3> line = rim(*one.wall);
    if (view.page.line(line).empty()) return;
    for (const auto& run : view.occluders.free_runs(line))
        add_lines(view, run, {.points = {}, .weight = weight, .ink = Ink::line, .shows = shows});
}

/// The height from which nothing is hidden, from edge to edge.
void add_clear_height(EyeView& view, double clear_above_m) {
    const geometry::Rectangle& o = view.opening();
    const double v = o.bottom + clear_above_m;
    if (clear_above_m <= 0.0 || v >= o.top) return;
    const double inset = 0.02 * o.width();
    if (const auto at = view.page.point(geometry::point_at(view.surface(), {o.right - inset, v})))
        view.add(Label{.at = *at + glm::dvec2(0.0, 0.025 * view.page.window().height()),
                       .text = "clear from here up",
                       .anchor = Anchor::right,
                       .ink = Ink::holds,
                       .on_ground = view.luminance.has_value()});
    add_lines(view, on_surface(view.surface(), {{o.left, v}, {o.right, v}}),
              {.points = {},
               .weight = Weight::seen,
               .ink = Ink::holds,
               .dashed = true,
               .shows = of_screen()});
}

}  // namespace

bool EyeView::before_picture(const glm::dvec3& place) const {
    if (behind) return false;
    return !surface().flat() || glm::dot(place - surface().centre, surface().normal) > 0.0;
}

std::vector<glm::dvec3> on_surface(const geometry::Patch& surface,
                                   const std::vector<glm::dvec2>& line) {
    constexpr double kPieces = 48.0;
    std::vector<glm::dvec3> out;
    for (std::size_t i = 0; i < line.size(); ++i) {
        out.push_back(geometry::point_at(surface, line[i]));
        if (i + 1 == line.size() || surface.flat()) continue;
        for (double k = 1.0; k < kPieces; ++k)
            out.push_back(geometry::point_at(surface, glm::mix(line[i], line[i + 1], k / kPieces)));
    }
    return out;
}

std::vector<glm::dvec3> sheet_outline(const geometry::Patch& surface,
                                      const geometry::Rectangle& r) {
    std::vector<glm::dvec3> out = on_surface(surface, {{r.left, r.bottom}, {r.right, r.bottom}});
    const auto top = on_surface(surface, {{r.right, r.top}, {r.left, r.top}});
    out.insert(out.end(), top.begin(), top.end());
    return out;
}

void add_eye_sheet(EyeView& view) {
    const geometry::Rectangle f = frame_of(view.study), o = view.opening();
    for (const geometry::Rectangle& piece : {geometry::Rectangle{f.left, o.left, f.bottom, f.top},
                                             {o.right, f.right, f.bottom, f.top},
                                             {o.left, o.right, f.bottom, o.bottom},
                                             {o.left, o.right, o.top, f.top}})
        if (piece.width() > 0.0 && piece.height() > 0.0)
            add_fill(view, sheet_outline(view.surface(), piece),
                     {.points = {}, .ink = Ink::quiet, .strength = 0.10, .shows = of_screen()});
    add_fill(view, sheet_outline(view.surface(), o),
             {.points = {}, .ink = Ink::screen, .strength = 0.10, .shows = of_screen()});
    if (view.luminance)
        add_eye_luminance(view);
    else
        add_middle_lines(view);
    add_closed(view, sheet_outline(view.surface(), f),
               {.points = {}, .weight = Weight::seen, .ink = Ink::line, .shows = of_screen()});
    add_closed(view, sheet_outline(view.surface(), o),
               {.points = {}, .weight = Weight::cut, .ink = Ink::screen, .shows = of_screen()});
}

void add_eye_hidden(EyeView& view) {
    const geometry::Rectangle& o = view.opening();
    const auto placed = [&](const std::vector<glm::dvec2>& line) {
        std::vector<glm::dvec3> out;
        for (const glm::dvec2& uv : line)
            out.push_back(geometry::point_at(view.surface(), uv));
        return out;
    };
    const auto regions = hidden_regions(view.seen.clear, o);
    // A click goes through the mark, to who hides it.
    for (const HiddenRegion& region : regions)
        add_fill(view, placed(outline_of(region)),
                 {.points = {}, .ink = Ink::missed, .strength = 0.34});
    const Line stroke{.points = {}, .weight = Weight::helper, .ink = Ink::missed};
    if (!regions.empty())
        for (const auto& line : hatching(regions, o.width() / kHatches))
            add_lines(view, placed(line), stroke);
    for (const HiddenRegion& region : regions) {
        Line edge{.points = {}, .weight = Weight::seen, .ink = Ink::missed};
        add_lines(view, placed(region.high), edge);
        if (region.low.front().y > o.bottom || region.low.back().y > o.bottom)
            add_lines(view, placed(region.low), edge);
    }
    const auto& hidden = view.study.sight.formats.at(static_cast<std::size_t>(view.format)).hidden;
    add_clear_height(view, hidden.at(static_cast<std::size_t>(view.seat)).clear_above_m);
}

void add_eye_people(EyeView& view) {
    for (const Standing& one : standing(view))
        if (one.head)
            add_head(view, one);
        else
            add_wall(view, one);
}

base::Result<Drawing> seat_view(const study::Study& study, const DrawingChoice& choice) {
    const Chosen all = chosen(study, choice);
    if (study.seats.seats.empty())
        return refusal("the room has no seats", "add a seating block to see from its seats");
    if (all.format < 0)
        return refusal("the room has no format, so a seat has no picture", "add a format");
    if (!choice.seat || *choice.seat < 0 ||
        static_cast<std::size_t>(*choice.seat) >= study.seats.seats.size())
        return refusal("no seat is chosen", "choose a seat to see the picture from it");
    const int seat = *choice.seat;
    const room::Seat& sitter = study.seats.seats.at(static_cast<std::size_t>(seat));
    const geometry::Patch& surface = study.picture.surface;
    EyeView view{study,
                 choice,
                 seat,
                 all.format,
                 EyeProjection(sitter.eye, picture_centre(study, all.format), -surface.normal),
                 study::seat_view(study, all.format, seat),
                 Occluders({}, sitter.eye, seat),
                 surface.flat() && glm::dot(sitter.eye - surface.centre, surface.normal) <= 0.0,
                 chosen_luminance(study, choice),
                 {}};
    view.occluders = Occluders(view.seen.house, sitter.eye, seat);
    view.drawing.title = "From seat " + sitter.name;
    view.page.frame(sheet_outline(surface, view.opening()), {0.05, 0.05, 0.16, 0.05});
    add_eye_sheet(view);
    add_eye_people(view);
    add_eye_hidden(view);
    add_eye_level(view);
    add_eye_names(view);
    const geometry::Rectangle& w = view.page.window();
    const glm::dvec2 rim(0.005 * std::max(w.width(), w.height()));  // for lines along the border
    view.drawing.low = glm::dvec2(w.left, w.bottom) - rim;
    view.drawing.high = glm::dvec2(w.right, w.top) + rim;
    if (choice.dimensions) {
        add_eye_notes(view);
        view.drawing.high.x += kNotesWidth * w.height();
        if (view.luminance) add_eye_scale(view);
    }
    return view.drawing;
}

}  // namespace rakeline::drawing
