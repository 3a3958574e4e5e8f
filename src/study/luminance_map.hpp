// SPDX-License-Identifier: MIT
#pragma once

#include "light/luminance_map.hpp"
#include "study/study.hpp"

/// The screen's luminance as a chosen seat sees it, for those who draw it: where the figures give
/// nine points and the hot spot, this has the whole opening.
namespace rakeline::study {

/// What colours and contours of every seat's map are measured against, cd/m2.
struct LuminanceScale {
    double least_cdm2 = 0.0;
    double most_cdm2 = 1.0;                   ///< above the least
    std::optional<double> window_least_cdm2;  ///< of the limits on the reference reading
    std::optional<double> window_most_cdm2;
};

struct SeatLuminance {
    int projector = 0;
    int format = 0;
    int seat = 0;
    light::LuminanceMap map;
    LuminanceScale scale;
};

/// The scale for one projector in one format: it holds what any seat sees at the nine points and
/// the hot spot, the window of the limits in force, and `map`; at least a tenth of its greatest
/// value wide, and its ends are round. One scale for all seats, so that a colour means the same
/// luminance from each: a picture that is even within a few per cent looks even.
LuminanceScale luminance_scale(const Study& study,
                               int projector,
                               int format,
                               const light::LuminanceMap& map);

/// Nothing where the projector shows no picture in the format. The seat must exist.
std::optional<SeatLuminance> seat_luminance(const Study& study,
                                            int projector,
                                            int format,
                                            int seat);

}  // namespace rakeline::study
