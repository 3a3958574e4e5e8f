// SPDX-License-Identifier: MIT
#include "sight/sight_study.hpp"

namespace rakeline::sight {

SightStudy study_sight(const SightInput& in) {
    SightStudy out;
    out.formats.reserve(in.openings.size());
    for (const picture::Opening& opening : in.openings) {
        FormatSight format;
        format.seats.reserve(in.seats.seats.size());
        for (const room::Seat& seat : in.seats.seats) {
            format.seats.push_back(viewing_angles(in.surface, opening, seat.eye));
        }
        format.rows = row_clearances(in.surface, opening, in.seats, in.blocks);
        out.formats.push_back(std::move(format));
    }
    return out;
}

}  // namespace rakeline::sight
