// SPDX-License-Identifier: MIT
#include "study/coverage_cells.hpp"

#include <vector>

/// The room that cabinets have: figures of planning, which stand in for no rigging.
namespace rakeline::study {
namespace {

using base::Unit;

void record_cabinet(const Cell& c, Working& w) {
    const room::Loudspeaker& l = loudspeaker_of(c);
    w.input("x", "acoustic centre across", l.across_m, Unit::metre);
    w.input("y", "acoustic centre up", l.up_m, Unit::metre);
    w.input("z", "acoustic centre back", l.back_m, Unit::metre);
    w.input("W", "cabinet width", l.cabinet_width_m, Unit::metre);
    w.input("H", "cabinet height", l.cabinet_height_m, Unit::metre);
    w.input("D", "cabinet depth", l.cabinet_depth_m, Unit::metre);
    w.input("M", "mass", l.mass_kg, Unit::kilogram);
    w.note(
        "Caution: fixings, suspensions and what carries this mass are for a structural engineer "
        "and a licensed rigger under local codes.");
}

template <std::optional<double> sound::CabinetRoom::*member>
std::optional<double> cabinet_value(const Cell& c, Working& w) {
    record_cabinet(c, w);
    return cabinet_room_of(c).*member;
}

std::optional<double> source_height(const Cell& c, Working& w) {
    const room::Screen& screen = c.study.layout().screen;
    w.input("y", "acoustic centre up", loudspeaker_of(c).up_m, Unit::metre);
    w.input("s", "frame's lower edge before tilt", screen.sill_m, Unit::metre);
    w.input("h", "frame's height along the sheet", screen.height_m, Unit::metre);
    return cabinet_room_of(c).height_fraction;
}

FigureDefinition clearance(const char* id,
                           const char* label,
                           const char* meaning,
                           const char* formula,
                           const char* sentence,
                           std::optional<double> (*evaluate)(const Cell&, Working&)) {
    return {id,
            Subject::sound,
            label,
            Unit::metre,
            {.loudspeaker = true},
            meaning,
            formula,
            "derived: the cabinet as a box whose front's middle is the acoustic centre",
            sentence,
            evaluate};
}

}  // namespace

std::span<const FigureDefinition> cabinet_figures() {
    using Room = sound::CabinetRoom;
    static const std::vector<FigureDefinition> entries = {
        {"sound.source_height",
         Subject::sound,
         "Height in the picture",
         Unit::fraction,
         {.loudspeaker = true},
         "Height of a screen channel's acoustic centre, behind the screen, in the frame: 0 % lower "
         "edge, 100 % upper.",
         "(y - s) / h",
         "derived",
         "{loudspeaker} stands at {value} of the picture's height",
         source_height},
        clearance(
            "sound.cabinet_to_sheet", "Front to sheet",
            "Nearest point of the cabinet's front to the sheet; below zero it stands through.",
            "least distance square to the sheet", "{loudspeaker} stands {value} from the sheet",
            cabinet_value<&Room::to_sheet_m>),
        clearance("sound.cabinet_to_wall", "Back to screen wall",
                  "Nearest point of the cabinet to the screen wall; below zero it stands in it.",
                  "least z of its corners", "{loudspeaker} stands {value} from the screen wall",
                  cabinet_value<&Room::to_wall_m>),
        clearance("sound.cabinet_in_picture", "Inside the picture's height",
                  "Room between the cabinet's top or foot and the frame's edge, whichever is less.",
                  "min(top of frame - top, foot - foot of frame)",
                  "{loudspeaker} stays {value} within the picture's height",
                  cabinet_value<&Room::inside_picture_m>),
        clearance("sound.cabinet_apart", "To the next cabinet",
                  "Gap between planes that part it from the nearest other cabinet; below zero they "
                  "reach into each other.",
                  "widest gap along faces and edges",
                  "{loudspeaker} stands {value} from another cabinet",
                  cabinet_value<&Room::apart_m>),
        clearance("sound.cabinet_over_heads", "Over heads",
                  "A surround's lowest corner over a standing person at the seat nearest in plan.",
                  "least y of its corners - floor - standing height",
                  "{loudspeaker} hangs {value} over a standing person",
                  cabinet_value<&Room::over_heads_m>),
    };
    return entries;
}

}  // namespace rakeline::study
