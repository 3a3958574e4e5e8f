// SPDX-License-Identifier: MIT
#pragma once

#include "room/layout_file.hpp"
#include "sound/lattice_turn.hpp"
#include "study/study.hpp"

#include <span>
#include <stop_token>

/// Other sheets in the study's room, set against each other: what the sound loses, what the light
/// loses, and what is seen of the holes.
namespace rakeline::study {

/// Name of the sheet that the layout has among the trials.
inline constexpr const char* kPresentSheet = "as it hangs";

struct SheetTrial {
    room::SheetChoice sheet;
    double loss_10k_db = 0.0;  ///< 10 kHz, straight through
    double open_area = 0.0;    ///< light that falls into holes
    double light_over_present =
        1.0;  ///< (1 - open area) over that of the sheet that hangs: of holes alone
    std::optional<double> hole_minutes;  ///< a hole from the nearest seat, minutes of arc
    std::optional<double> hole_seats;    ///< share of the seats to which it is more than one
    /// Beat with the pixels, times the eye's threshold, worst picture and eye: above 1 seen; 0
    /// where none is coarser than pixels and holes. Nothing without holes or digital pictures.
    std::optional<double> beat;
};

/// What a beat and the holes come to for somebody in the seats.
enum class SheetSight { unseen, holes_seen, beat_seen };
SheetSight sight_of(const SheetTrial& trial);

struct SheetTrials {
    std::vector<SheetTrial> trials;         ///< the present sheet, then the catalogue in its order
    std::optional<sound::TurnAdvice> turn;  ///< of the present sheet's holes
};

/// Loss by sound/perforation.hpp, or as measured of the sheet that hangs; beats at the luminance
/// that the pictures have now. Nothing where `stop` came first.
std::optional<SheetTrials> sheet_trials(const Study& study,
                                        std::span<const room::SheetChoice> catalogue,
                                        const std::stop_token& stop = {});

/// The sheets of all series, in their order.
std::vector<room::SheetChoice> sheet_catalogue(std::span<const room::Series> series);

/// The layout with the sheet's holes, thickness and mass. A measured loss is of the sheet that is
/// taken down, and goes with it; the gain of the surface stays as it is.
room::Layout with_sheet(room::Layout layout, const room::SheetChoice& sheet);

/// The layout with its holes turned as advised.
room::Layout with_turn(room::Layout layout, const sound::TurnAdvice& advice);

}  // namespace rakeline::study
