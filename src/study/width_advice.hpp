// SPDX-License-Identifier: MIT
#pragma once

#include "study/study.hpp"

#include <string>
#include <vector>

/// How wide a format's picture may be: the widths at which a share of the seats keeps every limit
/// on its viewing angles, and each limit is kept by that share of the seats that it holds (a rule
/// for the last row is not kept by the rows in front of it). Results of a trial and no figures:
/// they are of screens that nobody has chosen yet.
///
/// The screen is tried larger and smaller as a whole: the frame and all openings in proportion, the
/// frame's lower edge on its sill, its setback, radius and tilt as they are. Seats that follow the
/// screen (a floor of equal clearance) are placed anew. What is held is what the limits say of the
/// figures of viewing angles (angle_figures), by the functions of the register itself; a seat that
/// is near its limit keeps it.
namespace rakeline::study {

/// One bound that ends a range of widths, or is missed at a width.
struct WidthStop {
    int limit = 0;           ///< index in the LimitSet
    bool least = false;      ///< its lower bound, else its upper one
    std::vector<int> seats;  ///< that miss it: of a range's end, one millimetre beyond it only
    bool operator==(const WidthStop&) const = default;
};

/// Widths of the opening, chord, at which enough seats keep all limits; whole millimetres.
struct WidthRange {
    double least_m = 0.0;
    double most_m = 0.0;
    std::vector<WidthStop> below, above;  ///< what ends it; empty where the room does
    bool operator==(const WidthRange&) const = default;
};

struct WidthAdvice {
    int format = 0;        ///< index in the layout
    double share = 0.9;    ///< of the seats
    int wanted = 0;        ///< seats that make that share of all
    int seats = 0;         ///< all of them
    int limits = 0;        ///< how many limits hold viewing angles
    double now_m = 0.0;    ///< as the layout stands
    int kept_now = 0;      ///< seats that keep all limits there
    double least_m = 0.0;  ///< the widths searched: what check_layout lets stand
    double most_m = 0.0;
    std::string why_most;            ///< what the room has against a wider one
    std::vector<WidthRange> ranges;  ///< rising and apart; empty: at no width
    /// The most seats that keep all limits at any width, the widest width where they do, and what
    /// is missed there by which seats.
    int kept_best = 0;
    double best_m = 0.0;
    std::vector<WidthStop> missed_best;
    bool operator==(const WidthAdvice&) const = default;
};

/// Found by scanning in steps of 0.25 m and halving wherever the count can pass the wanted one, to
/// the millimetre. Exact where no seat crosses one bound twice within a step; the angles of a room
/// rise or fall with the width, most of them everywhere. Problems: a share outside 0 ... 1, a room
/// without seats.
base::Result<WidthAdvice> width_advice(const Study& study, int format, double share);

/// The layout with its screen in proportion, so that the format's opening is `width_m` wide.
/// Problems: what check_layout finds in the new layout.
base::Result<room::Layout> with_picture_width(const room::Layout& layout,
                                              int format,
                                              double width_m);

}  // namespace rakeline::study
