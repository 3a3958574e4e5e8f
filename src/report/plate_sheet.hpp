// SPDX-License-Identifier: MIT
#pragma once

#include "picture/plate.hpp"

#include <string>
#include <vector>

/// The drawing from which a gate plate is filed, as an SVG or a DXF in millimetres. Both put the
/// middle of the aperture where the two centre lines cross.
namespace rakeline::report {

struct PlateSheet {
    picture::Plate plate;
    picture::PlateView view = picture::PlateView::from_lamp;
    std::string room;
    std::string projector;
    std::string format;
    bool tenfold = false;  ///< SVG: draw it ten times as large too
};

/// From where the plate is seen, and how the picture stands in it.
std::string plate_view_words(picture::PlateView view);

/// What stands beside the outline: whose plate it is, from where it is seen and how the picture
/// stands in it, what was allowed for, its size and scale, and the caution.
std::vector<std::string> plate_words(const PlateSheet& sheet);

/// Stands in both drawings at the edge where the picture has its top.
inline constexpr const char* kPictureTop = "picture's top";

/// SVG 1.1 with width, height and user units in mm; the outline is the path with the id "plate",
/// the tenfold one "plate_tenfold". Same bytes for the same sheet.
std::string plate_svg(const PlateSheet& sheet);

/// DXF R12 (AC1009), ASCII, in mm at full size: closed polylines on the layers OPENING and
/// APERTURE, lines on CENTRE, text on NOTES. R12 has no unit variable: a comment and a text say mm.
std::string plate_dxf(const PlateSheet& sheet);

/// Smallest box around points, mm: what a ruler laid on the print should read.
struct PlateBox {
    glm::dvec2 least_mm{0.0};
    glm::dvec2 most_mm{0.0};
    glm::dvec2 size_mm() const { return most_mm - least_mm; }
};
PlateBox plate_box(const PlateSheet& sheet);

}  // namespace rakeline::report
