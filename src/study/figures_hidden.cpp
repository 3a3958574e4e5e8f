// SPDX-License-Identifier: MIT
#include "study/sight_cells.hpp"
#include "study/slices.hpp"

#include <vector>

namespace rakeline::study {
namespace {

using base::Unit;

const sight::SeatHidden& hidden_of(const Cell& c) {
    return sight_of(c).hidden.at(static_cast<std::size_t>(c.index));
}

/// Who stands in front, largest share first, so that a reader sees what to change.
void record_hiding(const Cell& c, Working& w) {
    if (!w.recording()) return;
    record_eye(c, w);
    const room::Audience& audience = c.study.layout().audience;
    w.input("b", "breadth of every head", audience.head_breadth_m, Unit::millimetre);
    w.input("e", "eye to crown of every head", audience.eye_to_crown_m, Unit::millimetre);
    constexpr std::size_t kMost = 6;
    std::vector<sight::HidingShare> shares =
        sight::seat_hiding_shares(sight_input(c.study), c.format, c.index);
    if (shares.size() > kMost) shares.resize(kMost);
    for (const sight::HidingShare& share : shares) {
        w.note((share.wall
                    ? std::string("a seat's back or a balcony")
                    : "the head in seat " +
                          c.study.seats.seats.at(static_cast<std::size_t>(share.index)).name) +
               " hides " + base::quantity_text(share.fraction, Unit::fraction));
    }
}

std::optional<double> hidden(const Cell& c, Working& w) {
    record_hiding(c, w);
    return hidden_of(c).hidden_fraction;
}

std::optional<double> clear_above(const Cell& c, Working& w) {
    record_eye(c, w);
    return hidden_of(c).clear_above_m;
}

}  // namespace

std::span<const FigureDefinition> hidden_figures() {
    static const std::vector<FigureDefinition> entries = {
        {"sight.hidden", Subject::sight, "Picture hidden", Unit::fraction, kFormatSeat,
         "Part of the picture's area that heads, seat backs and balconies in front hide in a full "
         "house of equal people; what two hide together counts once.",
         "area of the union of silhouettes / area of the picture",
         "derived: silhouettes on the picture surface; head and seat shapes: common practice, no "
         "source",
         "{value} of {format} is hidden from seat {seat}", hidden},
        {"sight.clear_above", Subject::sight, "Clear from", Unit::millimetre, kFormatSeat,
         "Height over the picture's lower edge from which nothing is hidden anywhere across it.",
         "greatest height of any silhouette over the lower edge",
         "derived: silhouettes on the picture surface",
         "From seat {seat} {format} is whole only from {value} up", clear_above},
    };
    return entries;
}

}  // namespace rakeline::study
