// SPDX-License-Identifier: MIT
#include "study/study.hpp"

#include <vector>

/// The figures on the port: what opening each projector needs, and what the port leaves.
namespace rakeline::study {
namespace {

using base::Unit;
using geometry::Rectangle;

/// The opening that a projector needs.
std::optional<Rectangle> opening_needed(const Cell& c, Working& w) {
    const auto opening = picture::port_opening(c.study.picture, c.projector);
    if (!opening) return std::nullopt;
    w.note("the smallest upright rectangle over all formats of this projector");
    return opening;
}

std::optional<double> width_needed(const Cell& c, Working& w) {
    const auto opening = opening_needed(c, w);
    if (!opening) return std::nullopt;
    const double right = w.input("x_right", "light's right end", opening->right, Unit::metre);
    return right - w.input("x_left", "light's left end", opening->left, Unit::metre);
}

std::optional<double> height_needed(const Cell& c, Working& w) {
    const auto opening = opening_needed(c, w);
    if (!opening) return std::nullopt;
    const double top = w.input("y_top", "light's upper end", opening->top, Unit::metre);
    return top - w.input("y_bottom", "light's lower end", opening->bottom, Unit::metre);
}

std::optional<double> centre_across(const Cell& c, Working& w) {
    const auto opening = opening_needed(c, w);
    if (!opening) return std::nullopt;
    w.input("x_left", "light's left end", opening->left, Unit::metre);
    w.input("x_right", "light's right end", opening->right, Unit::metre);
    return opening->centre().x;
}

std::optional<double> centre_up(const Cell& c, Working& w) {
    const auto opening = opening_needed(c, w);
    if (!opening) return std::nullopt;
    w.input("y_bottom", "light's lower end", opening->bottom, Unit::metre);
    w.input("y_top", "light's upper end", opening->top, Unit::metre);
    return opening->centre().y;
}

/// What makes the light that wide: the pupil, or a note that there is none to go by.
void record_pupil(const Cell& c, const picture::ProjectedPicture& p, Working& w) {
    if (!p.lens) return w.note("no lens is chosen: its middle ray alone counts, no pupil");
    const room::Lens& lens = c.study.layout().lenses.at(static_cast<std::size_t>(*p.lens));
    w.input("f", "focal length in use", p.focal_length_used_m, Unit::millimetre);
    w.input("N", "f-number of the lens", lens.f_number, Unit::ratio);
}

std::optional<double> margin(const Cell& c, Working& w) {
    const auto* p = picture::find_picture(c.study.picture, c.projector, c.format);
    if (!p || !p->port_light) return std::nullopt;
    const room::Port& port =
        c.study.layout().projectors.at(static_cast<std::size_t>(c.projector)).port;
    const Rectangle rim = picture::port_rim(port);
    const Rectangle& light = *p->port_light;
    record_pupil(c, *p, w);
    w.input("d_left", "light to the port's left side", light.left - rim.left, Unit::millimetre);
    w.input("d_right", "to its right side", rim.right - light.right, Unit::millimetre);
    w.input("d_bottom", "to its lower side", light.bottom - rim.bottom, Unit::millimetre);
    w.input("d_top", "to its upper side", rim.top - light.top, Unit::millimetre);
    return picture::port_margin(port, light);
}

constexpr const char* kSource = "derived: cones from the lens's pupil of f / N to the picture";

FigureDefinition needed(const char* id,
                        const char* label,
                        Unit unit,
                        const char* meaning,
                        const char* formula,
                        const char* sentence,
                        std::optional<double> (*evaluate)(const Cell&, Working&)) {
    return {id,      Subject::picture, label,   unit,     {.projector = true},
            meaning, formula,          kSource, sentence, evaluate};
}

std::vector<FigureDefinition> entries() {
    return {
        needed("picture.port_width_needed", "Port width needed", Unit::millimetre,
               "Of the smallest opening in the booth wall that passes the light of all formats; "
               "glass frames and play come on top.",
               "x_right - x_left", "{projector} needs a port {value} wide", width_needed),
        needed("picture.port_height_needed", "Port height needed", Unit::millimetre,
               "Of the smallest opening in the booth wall that passes the light of all formats; "
               "glass frames and play come on top.",
               "y_top - y_bottom", "{projector} needs a port {value} high", height_needed),
        needed("picture.port_centre_across", "Port wanted at, across", Unit::metre,
               "Middle of that smallest opening, from the hall's centre line.",
               "(x_left + x_right) / 2", "{projector} wants its port at {value} across",
               centre_across),
        needed("picture.port_centre_up", "Port wanted at, up", Unit::metre,
               "Middle of that smallest opening, over the floor datum.", "(y_bottom + y_top) / 2",
               "{projector} wants its port at {value} up", centre_up),
        {"picture.port_margin",
         Subject::picture,
         "Port round the light",
         Unit::millimetre,
         {.projector = true, .format = true},
         "Least distance from the light to the port's rim; negative: the booth wall cuts in. "
         "Without a lens chosen, of the rays through its middle alone.",
         "least of d_left, d_right, d_bottom, d_top",
         kSource,
         "The port leaves {value} round the light of {projector} in {format}",
         margin},
    };
}

}  // namespace

std::span<const FigureDefinition> port_figures() {
    static const std::vector<FigureDefinition> all = entries();
    return all;
}

}  // namespace rakeline::study
