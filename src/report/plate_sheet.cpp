// SPDX-License-Identifier: MIT
#include "report/plate_sheet.hpp"

#include "base/quantity_text.hpp"

namespace rakeline::report {
namespace {

/// Three decimals: a micron is finer than any file.
std::string millimetres(double metres) {
    return base::quantity_text(metres, base::Unit::millimetre, base::UnitSystem::metric, 2);
}

}  // namespace

std::string plate_view_words(picture::PlateView view) {
    if (view == picture::PlateView::from_lamp) {
        return "Seen from the lamp: the picture is turned by half a turn, top below, left at "
               "right.";
    }
    return "Seen from the lens: the picture is upside down and mirrored, top below, left at left.";
}

PlateBox plate_box(const PlateSheet& sheet) {
    const auto outline = picture::outline_seen(sheet.plate, sheet.view);
    PlateBox box{1e3 * outline.at(0), 1e3 * outline.at(0)};
    for (const glm::dvec2 p : outline) {
        box.least_mm = glm::min(box.least_mm, 1e3 * p);
        box.most_mm = glm::max(box.most_mm, 1e3 * p);
    }
    return box;
}

std::vector<std::string> plate_words(const PlateSheet& sheet) {
    const picture::Plate& plate = sheet.plate;
    const picture::PlateExtent size = picture::plate_extent(plate);
    return {
        "Gate plate: opening to file",
        "Room: " + sheet.room,
        "Projector: " + sheet.projector,
        "Format: " + sheet.format,
        plate_view_words(sheet.view),
        "File from the lamp side.",
        "Opening over all: " + millimetres(size.width_m) + " wide, " + millimetres(size.height_m) +
            " high.",
        "Aperture, thin line: " + millimetres(plate.aperture_m.x) + " by " +
            millimetres(plate.aperture_m.y) + ".",
        "Filing allowance left standing all round: " + millimetres(plate.allowance_m) + ".",
        "Corner radius of the opening on the screen: " + millimetres(plate.corner_radius_m) + ".",
        "Units: millimetres. Scale 1:1" + std::string(sheet.tenfold ? ", and 10:1 below." : "."),
        "Caution: file a plate out of the machine only, with the lamp off and cold.",
        "A wrong or burred plate can scratch film: deburr, and try it on film of no value.",
        "(common practice, no source)",
    };
}

}  // namespace rakeline::report
