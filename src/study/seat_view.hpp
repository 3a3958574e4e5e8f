// SPDX-License-Identifier: MIT
#pragma once

#include "sight/blockers.hpp"
#include "study/study.hpp"

/// What one seat sees of one format's picture in a full house, for those who draw it: where the
/// figures give the area alone, this has its shape and who hides how much.
namespace rakeline::study {

struct SeatView {
    sight::Blockers house;  ///< heads are those of the seats, in their order
    sight::ClearOutline clear;
    std::vector<sight::HidingShare> shares;  ///< largest first; indices in `house`
};

/// `columns` across the picture: a drawing wants about one for every two of its pixels. `format`
/// and `seat` must exist.
SeatView seat_view(const Study& study, int format, int seat, int columns = 512);

/// What one seat, with the head and the back of who sits in it, hides of another's picture.
struct SeatShare {
    std::optional<int> seat;  ///< none: all balconies together
    double fraction = 0.0;    ///< of the picture's area
};

/// The shares put together by seat, the largest first.
std::vector<SeatShare> shares_by_seat(const SeatView& view);

}  // namespace rakeline::study
