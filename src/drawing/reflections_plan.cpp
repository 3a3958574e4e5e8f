// SPDX-License-Identifier: MIT
#include "drawing/reflections_plan.hpp"

#include "drawing/parts.hpp"

#include <algorithm>

namespace rakeline::drawing {
namespace {

using sound::Reflection;

glm::dvec2 on_plan(const glm::dvec3& p) {
    return {p.x, p.z};
}

glm::dvec3 place_of(const room::Loudspeaker& l) {
    return {l.across_m, l.up_m, l.back_m};
}

base::Problem refusal(const char* what, const char* mend) {
    return {.file = {}, .line = 0, .where = {}, .what = what, .mend = mend};
}

/// One loudspeaker at one seat.
struct Heard {
    const room::Loudspeaker& loudspeaker;
    glm::dvec3 ear;
    sound::WallPlanes walls;
    base::UnitSystem units;
    Shows shows;

    std::optional<sound::ReflectedPath> path_of(const Reflection& r) const {
        for (const auto& path : sound::reflected_paths(walls, place_of(loudspeaker), ear))
            if (path.first == r.first && path.second == r.second) return path;
        return std::nullopt;
    }
};

std::string words_of(const Heard& heard, const Reflection& r) {
    return heard.loudspeaker.name + ": " +
           base::quantity_text(r.delay_s, base::Unit::second, heard.units) + ", " +
           base::quantity_text(r.level_db, base::Unit::decibel, heard.units) + ", " +
           (r.second ? sound::wall_name(r.first) + std::string(", then ") : std::string()) +
           sound::wall_name(r.second.value_or(r.first));
}

void add_path(const Heard& heard, const Reflection& r, bool strongest, Drawing& out) {
    const auto path = heard.path_of(r);
    if (!path) return;
    Line line{.points = {on_plan(place_of(heard.loudspeaker)), on_plan(path->at_first)},
              .weight = strongest ? Weight::cut : Weight::seen,
              .ink = Ink::sound,
              .closed = false,
              .dashed = !strongest,
              .shows = heard.shows};
    if (path->second) line.points.push_back(on_plan(path->at_second));
    line.points.push_back(on_plan(heard.ear));
    out.items.emplace_back(std::move(line));
}

/// What is heard in words, a line a loudspeaker before the screen wall. Each stands a little
/// farther across than the one before, so that a plan on its side keeps them apart too.
void add_words(
    const Heard& heard, const Reflection& r, int row, const room::Hall& hall, Drawing& out) {
    const double pitch = 0.028 * std::max(hall.width_m, hall.length_m);
    const double across = -room::half_width_at(hall, 0.0) + 1.1 * pitch * row;
    out.items.emplace_back(Label{.at = {across, -pitch * (row + 1.0)},
                                 .text = words_of(heard, r),
                                 .anchor = Anchor::left,
                                 .ink = Ink::sound,
                                 .shows = heard.shows});
}

/// The light and its machines stay away: this plan is about sound.
void leave_light_out(Drawing& drawing) {
    std::erase_if(drawing.items, [](const Item& item) {
        return std::visit([](const auto& x) { return x.shows.kind == Shows::Kind::projector; },
                          item);
    });
}

void add_heard(const Heard& heard, const sound::SeatReflections& seat, Drawing& out) {
    out.items.emplace_back(stroke(on_plan(place_of(heard.loudspeaker)), on_plan(heard.ear),
                                  Weight::helper, Ink::sound, heard.shows));
    if (seat.first && seat.first != seat.strongest) add_path(heard, *seat.first, false, out);
    if (seat.strongest) add_path(heard, *seat.strongest, true, out);
}

}  // namespace

base::Result<Drawing> reflections_plan(const study::Study& study,
                                       const DrawingChoice& choice,
                                       ReflectionWords words) {
    if (!choice.seat)
        return refusal("no seat is chosen whose reflections could be drawn",
                       "choose a seat in the plan or in the view");
    const room::Layout& layout = study.layout();
    const auto screen = [](const room::Loudspeaker& l) {
        return sound::is_screen_channel(l.channel);
    };
    if (!study.sound.hall ||
        std::none_of(layout.loudspeakers.begin(), layout.loudspeakers.end(), screen))
        return refusal("there is no loudspeaker of the screen to hear reflections of",
                       "add a left, centre or right loudspeaker");
    DrawingChoice calm = choice;
    calm.dimensions = false;
    Drawing drawing = plan(study, calm);
    drawing.title = "Reflections";
    leave_light_out(drawing);
    const auto seat = static_cast<std::size_t>(*choice.seat);
    int row = 0;
    const auto walls = sound::wall_planes({.width_m = layout.hall.width_m,
                                           .length_m = layout.hall.length_m,
                                           .height_m = layout.hall.height_m,
                                           .splay_rad = layout.hall.splay_rad});
    for (std::size_t i = 0; i < layout.loudspeakers.size(); ++i) {
        const auto& seats = study.sound.hall->reflections.at(i);
        if (seats.empty()) continue;
        const Heard heard{layout.loudspeakers[i], study.seats.seats.at(seat).eye, walls,
                          choice.units, showing(Shows::Kind::loudspeaker, static_cast<int>(i))};
        add_heard(heard, seats.at(seat), drawing);
        const auto& r = seats.at(seat).strongest;
        if (r && words == ReflectionWords::listed)
            add_words(heard, *r, row++, layout.hall, drawing);
    }
    set_bounds(drawing, 0.035 * std::max(layout.hall.width_m, layout.hall.length_m));
    return drawing;
}

}  // namespace rakeline::drawing
