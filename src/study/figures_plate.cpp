// SPDX-License-Identifier: MIT
#include "study/picture_cells.hpp"

#include <vector>

/// The figures of a film gate's plate: the numbers to file to.
namespace rakeline::study {
namespace {

using base::Unit;
using picture::Plate;
using picture::PlateExtent;

/// Nothing for a digital projector, and where a plate is refused.
const Plate* plate_of(const Cell& c) {
    const picture::ProjectedPicture* p = picture_of(c);
    return p && p->plate && *p->plate ? &**p->plate : nullptr;
}

void plate_in(const Plate& plate, Working& w) {
    w.input("a", "aperture width", plate.aperture_m.x, Unit::millimetre);
    w.input("h", "aperture height", plate.aperture_m.y, Unit::millimetre);
    w.input("e", "left standing all round for filing by hand", plate.allowance_m, Unit::millimetre);
    w.input("r", "corner radius of the opening on the screen", plate.corner_radius_m,
            Unit::millimetre);
}

template <double PlateExtent::*kSize>
std::optional<double> size_of(const Cell& c, Working& w) {
    const Plate* plate = plate_of(c);
    if (!plate) return std::nullopt;
    plate_in(*plate, w);
    return picture::plate_extent(*plate).*kSize;
}

template <std::optional<double> PlateExtent::*kSide>
std::optional<double> side_of(const Cell& c, Working& w) {
    const Plate* plate = plate_of(c);
    if (!plate) return std::nullopt;
    plate_in(*plate, w);
    return picture::plate_extent(*plate).*kSide;
}

constexpr Per kPf{.projector = true, .format = true};
constexpr const char* kMap = "derived: exact gate-to-screen map, backward";

std::vector<FigureDefinition> size_entries() {
    constexpr const char* kFormula = "greatest less least, opening's border in the gate less e";
    return {
        {"picture.plate_width", Subject::picture, "Plate's opening, width", Unit::millimetre, kPf,
         "Greatest width of the opening to file in the gate plate, allowance left standing.",
         kFormula, kMap, "The plate of {projector} for {format} is {value} wide",
         size_of<&PlateExtent::width_m>},
        {"picture.plate_height", Subject::picture, "Plate's opening, height", Unit::millimetre, kPf,
         "Greatest height of the opening to file in the gate plate, allowance left standing.",
         kFormula, kMap, "The plate of {projector} for {format} is {value} high",
         size_of<&PlateExtent::height_m>},
    };
}

std::vector<FigureDefinition> side_entries() {
    constexpr const char* kMeaning =
        "How far this side of the opening to file stands from the aperture's middle, along the "
        "aperture's centre line; sides as the picture is seen from the seats, so turned by half a "
        "turn in the gate.";
    const auto entry = [&](const char* id, const char* label, auto evaluate) {
        return FigureDefinition{id,
                                Subject::picture,
                                label,
                                Unit::millimetre,
                                kPf,
                                kMeaning,
                                "distance, middle of the aperture to the side moved inward by e",
                                kMap,
                                "A side of the plate of {projector} for {format} stands {value} "
                                "from the aperture's middle",
                                evaluate};
    };
    return {
        entry("picture.plate_left", "Plate, picture's left", side_of<&PlateExtent::left_m>),
        entry("picture.plate_right", "Plate, picture's right", side_of<&PlateExtent::right_m>),
        entry("picture.plate_top", "Plate, picture's top", side_of<&PlateExtent::top_m>),
        entry("picture.plate_bottom", "Plate, picture's bottom", side_of<&PlateExtent::bottom_m>),
    };
}

}  // namespace

std::span<const FigureDefinition> plate_figures() {
    static const std::vector<FigureDefinition> entries = [] {
        std::vector<FigureDefinition> all = size_entries();
        for (const FigureDefinition& entry : side_entries())
            all.push_back(entry);
        return all;
    }();
    return entries;
}

}  // namespace rakeline::study
