// SPDX-License-Identifier: MIT
#include "base/units.hpp"
#include "drawing/seat_view.hpp"

#include <algorithm>
#include <cmath>

/// The words in and beside the drawing of a seat's view.
namespace rakeline::drawing {
namespace {

constexpr std::size_t kMostNames = 4;
constexpr double kLeastShare = 0.001;  ///< of the picture: less is not worth a name

struct Note {
    std::string text;
    Ink ink = Ink::quiet;
};

const study::Figure* figure_of(const EyeView& view, const char* id) {
    study::Place place;
    place.projector = view.choice.projector;
    place.format = view.format;
    return study::find_figure(view.study, id, place);
}

struct Words {
    const char* before;
    const char* after;
};

/// "hidden 8.3 % ✗"; nothing where the figure has no value for this seat.
void note(const EyeView& view, const Words& words, const char* id, std::vector<Note>& out) {
    const study::Figure* figure = figure_of(view, id);
    const auto value = figure ? study::value_at(*figure, view.seat) : std::nullopt;
    if (!value) return;
    const auto count = view.study.seats.seats.size();
    const study::Verdict verdict =
        verdicts_by_index(figure, count).at(static_cast<std::size_t>(view.seat));
    const std::string mark = study::verdict_mark(verdict);
    const bool calm = verdict < study::Verdict::near;
    const std::string text =
        base::quantity_text(*value, figure->definition->unit, view.choice.units);
    out.push_back({words.before + text + words.after + (mark.empty() ? "" : " " + mark),
                   calm ? Ink::quiet : verdict_ink(verdict)});
}

std::string name_of(const EyeView& view, const study::SeatShare& share) {
    if (!share.seat) return "balcony";
    return view.study.seats.seats.at(static_cast<std::size_t>(*share.seat)).name;
}

std::string share_text(const EyeView& view, const study::SeatShare& share) {
    return name_of(view, share) + " " + base::quantity_text(share.fraction, base::Unit::fraction);
}

std::vector<study::SeatShare> largest(const EyeView& view) {
    std::vector<study::SeatShare> shares = study::shares_by_seat(view.seen);
    std::erase_if(shares, [](const auto& s) { return s.fraction < kLeastShare; });
    if (shares.size() > kMostNames) shares.resize(kMostNames);
    return shares;
}

/// What the numbers can't say of themselves.
void note_place(const EyeView& view, std::vector<Note>& out) {
    const auto& hidden = view.study.sight.formats.at(static_cast<std::size_t>(view.format)).hidden;
    if (view.behind)
        out.push_back({"this eye is behind the picture", Ink::missed});
    else if (hidden.at(static_cast<std::size_t>(view.seat)).sees_back)
        out.push_back({"part of the screen turns its back to this eye", Ink::missed});
    const glm::dvec3 toward =
        geometry::point_at(view.surface(), view.opening().centre()) - view.sitter().eye;
    if (glm::dot(toward, view.sitter().facing) < 0.0)
        out.push_back({"the seat faces away; its eye is turned to the picture", Ink::near});
}

std::vector<Note> notes_of(const EyeView& view) {
    std::vector<Note> out;
    const auto& format = view.study.layout().formats.at(static_cast<std::size_t>(view.format));
    out.push_back({view.sitter().name + " · " + format.name, Ink::line});
    note_place(view, out);
    note(view, {"hidden ", ""}, "sight.hidden", out);
    note(view, {"clear from ", ""}, "sight.clear_above", out);
    for (const study::SeatShare& share : largest(view))
        out.push_back({"by " + share_text(view, share)});
    if (view.luminance) {
        note(view, {"centre ", ""}, "light.luminance", out);
        note(view, {"even to ", ", sides"}, "light.side_evenness", out);
        note(view, {"hot spot ", " of centre"}, "light.hot_spot_ratio", out);
    }
    note(view, {"picture ", " wide"}, "sight.subtended_width", out);
    note(view, {"picture ", " high"}, "sight.subtended_height", out);
    note(view, {"up to the top edge ", ""}, "sight.elevation_top", out);
    return out;
}

/// Where a seat's name stands: on its head, or the middle of its back where that is in the window.
std::optional<glm::dvec2> name_place(const EyeView& view, int seat) {
    const room::Seat& of = view.study.seats.seats.at(static_cast<std::size_t>(seat));
    if (const auto at = view.page.point(of.eye)) return at;
    return view.page.point(0.5 * (of.eye + of.floor));
}

/// Where along the window's width "eye level" stands clearest of the names.
double clearest_place(const EyeView& view) {
    const geometry::Rectangle& w = view.page.window();
    double best = 0.0, best_clear = -1.0;
    for (const double share : {0.09, 0.25, 0.42, 0.58, 0.75}) {
        const double middle = w.left + (share + 0.05) * w.width();
        double clear = w.width();
        for (const study::SeatShare& of : largest(view))
            if (const auto at = of.seat ? name_place(view, *of.seat) : std::nullopt)
                clear = std::min(clear, std::abs(at->x - middle));
        if (clear <= best_clear) continue;
        best = share;
        best_clear = clear;
    }
    return best;
}

}  // namespace

void add_eye_level(EyeView& view) {
    constexpr double kReach_m = 100.0;
    const glm::dvec3 eye = view.sitter().eye;
    glm::dvec3 ahead = geometry::point_at(view.surface(), view.opening().centre()) - eye;
    ahead.y = 0.0;
    if (glm::length(ahead) < 1e-6) return;
    ahead = glm::normalize(ahead);
    const glm::dvec3 side(-ahead.z, 0.0, ahead.x);
    const std::vector<glm::dvec3> level{eye + kReach_m * (ahead - 5.0 * side),
                                        eye + kReach_m * (ahead + 5.0 * side)};
    for (const std::vector<glm::dvec2>& piece : view.page.line(level)) {
        view.add(
            Line{.points = piece, .weight = Weight::helper, .ink = Ink::sight, .dashed = true});
        const geometry::Rectangle& w = view.page.window();
        view.add(Label{
            .at = piece.front() + glm::dvec2(clearest_place(view) * w.width(), 0.025 * w.height()),
            .text = "eye level",
            .anchor = Anchor::left,
            .ink = Ink::sight,
            .on_ground = view.luminance.has_value()});
    }
}

void add_eye_names(EyeView& view) {
    for (const study::SeatShare& share : largest(view)) {
        const auto at = share.seat ? name_place(view, *share.seat) : std::nullopt;
        if (!at) continue;
        view.add(Label{.at = *at,
                       .text = share_text(view, share),
                       .ink = Ink::missed,
                       .shows = {Shows::Kind::seat, *share.seat}});
    }
}

void add_eye_notes(EyeView& view) {
    constexpr double kLines = 14.0, kWidest = 0.085;
    const geometry::Rectangle& w = view.page.window();
    const std::vector<Note> notes = notes_of(view);
    const double pitch =
        w.height() * std::min(kWidest, 1.0 / std::max(kLines, static_cast<double>(notes.size())));
    glm::dvec2 at{w.right + 0.4 * pitch, w.top - 0.5 * pitch};
    for (const Note& n : notes) {
        view.add(Label{.at = at, .text = n.text, .anchor = Anchor::left, .ink = n.ink});
        at.y -= pitch;
    }
}

}  // namespace rakeline::drawing
