// SPDX-License-Identifier: MIT
#include "drawing/beam_marks.hpp"

#include <algorithm>

/// The booth wall round one port, seen from the hall: the page's right is the house's left.
namespace rakeline::drawing {
namespace {

using geometry::Rectangle;

struct PortFace {
    const study::Study& study;
    const DrawingChoice& choice;
    Chosen chosen;
    Rectangle rim;                    ///< of the port, on the page
    std::optional<Rectangle> needed;  ///< on the page
    Rectangle wall;                   ///< that is drawn
    double pitch_m = 0.05;            ///< between lines of lettering
    Drawing drawing;

    const room::Layout& layout() const { return study.layout(); }
    Shows shows() const { return showing(Shows::Kind::projector, chosen.projector); }
    void add(Item item) { drawing.items.push_back(std::move(item)); }
};

/// Room to page, as somebody sees it who turns round in the hall.
Rectangle turned(const Rectangle& r) {
    return {.left = -r.right, .right = -r.left, .bottom = r.bottom, .top = r.top};
}

std::vector<glm::dvec2> corners_of(const Rectangle& r) {
    return {{r.left, r.bottom}, {r.right, r.bottom}, {r.right, r.top}, {r.left, r.top}};
}

Rectangle around(const Rectangle& a, const Rectangle& b) {
    return {.left = std::min(a.left, b.left),
            .right = std::max(a.right, b.right),
            .bottom = std::min(a.bottom, b.bottom),
            .top = std::max(a.top, b.top)};
}

void add_wall(PortFace& face) {
    constexpr double kWall = 0.12;
    const Rectangle& w = face.wall;
    const Rectangle& r = face.rim;
    for (const Rectangle& piece :
         {Rectangle{w.left, r.left, w.bottom, w.top}, Rectangle{r.right, w.right, w.bottom, w.top},
          Rectangle{r.left, r.right, w.bottom, r.bottom}, Rectangle{r.left, r.right, r.top, w.top}})
        face.add(Fill{corners_of(piece), Ink::quiet, kWall, showing(Shows::Kind::hall)});
}

Ink ink_of_light(study::Verdict verdict) {
    return verdict == study::Verdict::missed || verdict == study::Verdict::near
               ? verdict_ink(verdict)
               : Ink::beam;
}

void add_light(PortFace& face, const picture::ProjectedPicture& picture) {
    Chosen pair = face.chosen;
    pair.format = picture.format;
    const bool is_chosen = picture.format == face.chosen.format;
    const Ink ink = ink_of_light(verdict_of(face.study, pair, "picture.port_margin"));
    std::vector<glm::dvec2> outline = picture::port_outline(
        picture::port_beam(picture, face.layout().lenses, face.layout().hall.length_m));
    for (glm::dvec2& p : outline)
        p.x = -p.x;
    if (outline.empty()) return;
    if (is_chosen) face.add(Fill{outline, Ink::beam, 0.25, face.shows()});
    face.add(Line{.points = outline,
                  .weight = is_chosen ? Weight::seen : Weight::helper,
                  .ink = ink,
                  .closed = true,
                  .shows = face.shows()});
}

void add_dimension(
    PortFace& face, const char* prefix, glm::dvec2 from, glm::dvec2 to, double offset_m) {
    Dimension d;
    d.from = from;
    d.to = to;
    d.offset_m = offset_m;
    d.unit = base::Unit::millimetre;
    d.prefix = prefix;
    d.shows = face.shows();
    face.add(d);
}

/// The port's own size at the left and above, what is needed at the right (too short for words) and
/// below.
void add_dimensions(PortFace& face) {
    const Rectangle& r = face.rim;
    const Rectangle& w = face.wall;
    const double off = 1.2 * face.pitch_m;
    add_dimension(face, "port ", {r.left, r.top}, {r.right, r.top}, w.top - r.top + off);
    add_dimension(face, "port ", {r.left, r.bottom}, {r.left, r.top}, r.left - w.left + off);
    if (!face.needed) return;
    const Rectangle& n = *face.needed;
    add_dimension(face, "needed ", {n.left, n.bottom}, {n.right, n.bottom},
                  -(n.bottom - w.bottom + off));
    add_dimension(face, "", {n.right, n.bottom}, {n.right, n.top}, -(w.right - n.right + off));
}

std::string metres(const PortFace& face, double si) {
    return base::quantity_text(si, base::Unit::metre, face.choice.units);
}

/// "2.39   27.6 mm round the light ✓"
std::string margin_words(const PortFace& face, const picture::ProjectedPicture& picture) {
    study::Place place;
    place.projector = picture.projector;
    place.format = picture.format;
    const study::Figure* figure = study::find_figure(face.study, "picture.port_margin", place);
    const auto margin = figure ? study::value_at(*figure) : std::nullopt;
    if (!margin) return {};
    const std::string mark = study::verdict_mark(figure->worst);
    const double si = *margin;
    const std::string length =
        base::quantity_text(std::abs(si), base::Unit::millimetre, face.choice.units);
    return face.layout().formats.at(static_cast<std::size_t>(picture.format)).name + ": " +
           (si < 0.0 ? "wall cuts in by " + length : length + " round the light") +
           (mark.empty() ? "" : " " + mark);
}

void add_notes(PortFace& face) {
    glm::dvec2 at{face.wall.left, face.wall.bottom - 3.0 * face.pitch_m};
    const auto line = [&](const std::string& text, Ink ink) {
        face.add(Label{
            .at = at, .text = text, .anchor = Anchor::left, .ink = ink, .shows = face.shows()});
        at.y -= face.pitch_m;
    };
    const glm::dvec2 middle = face.rim.centre();
    line("port at " + metres(face, -middle.x) + " across, " + metres(face, middle.y) + " up",
         Ink::quiet);
    if (face.needed) {
        const glm::dvec2 wanted = face.needed->centre();
        line("wanted at " + metres(face, -wanted.x) + " across, " + metres(face, wanted.y) + " up",
             Ink::quiet);
    } else {
        line("no light of this projector passes the wall here", Ink::quiet);
    }
    for (const auto& picture : face.study.picture.pictures) {
        if (picture.projector != face.chosen.projector) continue;
        const std::string text = margin_words(face, picture);
        Chosen pair = face.chosen;
        pair.format = picture.format;
        const auto verdict = verdict_of(face.study, pair, "picture.port_margin");
        if (!text.empty())
            line(text, verdict == study::Verdict::no_limit ? Ink::quiet : verdict_ink(verdict));
    }
}

}  // namespace

Drawing port_face(const study::Study& study, const DrawingChoice& choice) {
    PortFace face{study, choice, chosen(study, choice), {}, {}, {}, 0.05, {}};
    face.drawing.title = "The port, seen from the hall";
    if (face.chosen.projector < 0) return face.drawing;
    const auto projector = static_cast<std::size_t>(face.chosen.projector);
    face.rim = turned(picture::port_rim(study.layout().projectors.at(projector).port));
    if (const auto opening = picture::port_opening(study.picture, face.chosen.projector))
        face.needed = turned(*opening);
    const Rectangle all = face.needed ? around(face.rim, *face.needed) : face.rim;
    const double extent = std::max(all.width(), all.height());
    face.pitch_m = 0.085 * extent;
    const double border = 0.12 * extent;
    face.wall = {all.left - border, all.right + border, all.bottom - border, all.top + border};
    add_wall(face);
    for (const auto& picture : study.picture.pictures)
        if (picture.projector == face.chosen.projector) add_light(face, picture);
    face.add(Line{.points = corners_of(face.rim),
                  .weight = Weight::cut,
                  .ink = Ink::line,
                  .closed = true,
                  .shows = face.shows()});
    if (face.needed)
        face.add(Line{.points = corners_of(*face.needed),
                      .weight = Weight::seen,
                      .ink = Ink::screen,
                      .closed = true,
                      .dashed = true,
                      .shows = face.shows()});
    if (choice.dimensions) {
        add_dimensions(face);
        add_notes(face);
    }
    set_bounds(face.drawing, face.pitch_m);
    return face.drawing;
}

}  // namespace rakeline::drawing
