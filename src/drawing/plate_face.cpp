// SPDX-License-Identifier: MIT
#include "drawing/parts.hpp"
#include "study/gate_plate.hpp"

#include <array>

namespace rakeline::drawing {
namespace {

using picture::PlateView;

constexpr int kExtraDecimals = 1;  ///< a plate is filed to 0.01 mm, no finer

struct Face {
    const picture::Plate& plate;
    PlateView view;
    base::UnitSystem units;
    Shows shows;
    Drawing drawing;

    glm::dvec2 seen(glm::dvec2 gate_m) const { return picture::seen(gate_m, view); }
    double height_m() const { return plate.aperture_m.y; }
    std::string number(double metres) const {
        return base::quantity(metres, base::Unit::millimetre, units, kExtraDecimals).number;
    }
    std::string unit() const { return base::quantity(0.0, base::Unit::millimetre, units).unit; }
    template <class T>
    void add(T item) {
        drawing.items.emplace_back(std::in_place_type<T>, std::move(item));
    }
    void label(glm::dvec2 at, std::string text, Anchor anchor, Ink ink = Ink::quiet) {
        add(Label{.at = at, .text = std::move(text), .anchor = anchor, .ink = ink, .shows = shows});
    }
};

/// The part that the light passes, and the metal's edge around it.
void add_opening(Face& f) {
    const auto outline = picture::outline_seen(f.plate, f.view);
    f.add(Fill{outline, Ink::beam, 0.12, f.shows});
    f.add(Line{.points = outline,
               .weight = Weight::seen,
               .ink = Ink::line,
               .closed = true,
               .shows = f.shows});
}

void add_aperture(Face& f) {
    const glm::dvec2 half = 0.5 * f.plate.aperture_m;
    f.add(Line{.points = {-half, {half.x, -half.y}, half, {-half.x, half.y}},
               .weight = Weight::helper,
               .ink = Ink::line,
               .closed = true,
               .dashed = true,
               .shows = f.shows});
}

/// Through the aperture's centre, a little past its edges.
void add_centre_lines(Face& f) {
    constexpr double kOverhang_m = 2.5e-4;
    const glm::dvec2 reach = 0.5 * f.plate.aperture_m + kOverhang_m;
    f.add(stroke({-reach.x, 0.0}, {reach.x, 0.0}, Weight::helper, Ink::quiet, f.shows));
    f.add(stroke({0.0, -reach.y}, {0.0, reach.y}, Weight::helper, Ink::quiet, f.shows));
}

/// The four corners as seen, counter-clockwise from the lower left. From the lamp the picture's top
/// right lies there, from the lens its top left.
std::array<glm::dvec2, 4> corners_seen(const Face& f) {
    static constexpr std::array<std::size_t, 4> kFromLamp{2, 3, 0, 1}, kFromLens{3, 2, 1, 0};
    std::array<glm::dvec2, 4> out{};
    for (std::size_t i = 0; i < 4; ++i) {
        const auto& order = f.view == PlateView::from_lamp ? kFromLamp : kFromLens;
        out[i] = f.seen(f.plate.corners_m[order[i]]);
    }
    return out;
}

/// Length of each side between its corners. Inside the opening: outside there is the aperture's
/// edge, and on paper at ten times no room.
void add_sides(Face& f, const std::array<glm::dvec2, 4>& corners) {
    for (std::size_t i = 0; i < 4; ++i) {
        Dimension d;
        d.from = corners[i];
        d.to = corners[(i + 1) % 4];
        d.offset_m = 0.13 * f.height_m();
        d.unit = base::Unit::millimetre;
        d.extra_decimals = kExtraDecimals;
        d.shows = f.shows;
        f.add(d);
    }
}

/// Where each corner lies from the aperture's centre: right and up are positive, as seen.
void add_corner_places(Face& f, const std::array<glm::dvec2, 4>& corners) {
    static constexpr std::array<glm::dvec2, 4> kInward{
        glm::dvec2(1.0, 1.0), {-1.0, 1.0}, {-1.0, -1.0}, {1.0, -1.0}};
    for (std::size_t i = 0; i < 4; ++i) {
        f.label(corners[i] + f.height_m() * glm::dvec2(0.15, 0.19) * kInward[i],
                f.number(corners[i].x) + ", " + f.number(corners[i].y),
                kInward[i].x > 0.0 ? Anchor::left : Anchor::right, Ink::line);
    }
}

/// Which edge is which of the picture, so that nobody files the plate upside down.
void add_picture_edges(Face& f, const std::array<glm::dvec2, 4>& corners) {
    const double in_m = 0.06 * f.height_m();
    const double along = 0.27;
    const bool top_above = f.seen({0.0, 1.0}).y > 0.0;
    const bool left_at_left = f.seen({-1.0, 0.0}).x < 0.0;
    const auto between = [&](std::size_t a, std::size_t b, double share) {
        return corners[a] + share * (corners[b] - corners[a]);
    };
    f.label(between(0, 1, along) + glm::dvec2(0.0, in_m),
            top_above ? "picture's bottom" : "picture's top", Anchor::centre, Ink::line);
    f.label(between(3, 2, along) - glm::dvec2(0.0, in_m),
            top_above ? "picture's top" : "picture's bottom", Anchor::centre, Ink::line);
    const auto upright = [&](glm::dvec2 at, bool left) {
        f.add(Label{.at = at,
                    .text = left ? "picture's left" : "picture's right",
                    .ink = Ink::line,
                    .vertical = true,
                    .shows = f.shows});
    };
    upright(between(0, 3, along) + glm::dvec2(in_m, 0.0), left_at_left);
    upright(between(1, 2, along) - glm::dvec2(in_m, 0.0), !left_at_left);
}

/// Around the crossing of the centre lines: from where one looks, and what the plate allows for.
void add_words(Face& f) {
    const double h = f.height_m();
    const std::string unit = " " + f.unit();
    const double right = 0.03 * h;
    f.label({right, 0.08 * h},
            f.view == PlateView::from_lamp ? "seen from the lamp" : "seen from the lens",
            Anchor::left, Ink::line);
    f.label({right, -0.07 * h}, "allowance " + f.number(f.plate.allowance_m) + unit, Anchor::left);
    f.label({right, -0.15 * h},
            "corners on the screen " +
                base::quantity_text(f.plate.corner_radius_m, base::Unit::millimetre, f.units),
            Anchor::left);
    f.label({-right, 0.08 * h}, "aperture, dashed", Anchor::right);
    f.label({-right, -0.07 * h},
            f.number(f.plate.aperture_m.x) + " × " + f.number(f.plate.aperture_m.y) + unit,
            Anchor::right);
}

}  // namespace

base::Result<Drawing> plate_face(const study::Study& study,
                                 const DrawingChoice& choice,
                                 PlateView view) {
    const Chosen pair = chosen(study, choice);
    if (pair.projector < 0 || pair.format < 0) {
        return base::Problem{.file = {},
                             .line = 0,
                             .where = {},
                             .what = "a plate is for one projector and one format",
                             .mend = "add a film projector and a format to the room"};
    }
    const auto plate = study::gate_plate(study, pair.projector, pair.format);
    if (!plate) return plate.problems();
    Face f{*plate, view, choice.units, showing(Shows::Kind::projector, pair.projector), {}};
    f.drawing.title = view == PlateView::from_lamp ? "Gate plate, seen from the lamp"
                                                   : "Gate plate, seen from the lens";
    add_opening(f);
    add_aperture(f);
    add_centre_lines(f);
    if (choice.dimensions) {
        const auto corners = corners_seen(f);
        add_sides(f, corners);
        add_corner_places(f, corners);
        add_picture_edges(f, corners);
        add_words(f);
    }
    set_bounds(f.drawing, 0.0);
    return f.drawing;
}

}  // namespace rakeline::drawing
