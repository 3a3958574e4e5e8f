// SPDX-License-Identifier: MIT
#pragma once

#include "study/study.hpp"

/// Private to study/: what the figures of light look at.
namespace rakeline::study {

/// The light of the cell's projector and format, or null.
const light::PictureLight* light_of(const Cell& cell);

/// Records the luminance of points of the picture toward a seat.
void record_points(const light::PictureLight& light,
                   int seat,
                   std::initializer_list<light::PicturePoint> points,
                   Working& working);

/// The limits in force on the reference reading for this projector's kind of source: the window
/// that every seat is counted against.
std::vector<const room::Limit*> reference_windows(const Study& study, int projector);

/// How the sheet under the room's reference reading bears on stereo: nothing unless it keeps
/// polarisation.
void note_stereo(const Cell& cell, Working& working);

/// What a derivation has to say wherever lamp, current or duct are named.
void note_lamp_caution(const Cell& cell, Working& working);
void note_exhaust_caution(Working& working);

/// A figure's function with the caution under its derivation.
template <std::optional<double> (*evaluate)(const Cell&, Working&)>
std::optional<double> of_lamp(const Cell& cell, Working& working) {
    const std::optional<double> value = evaluate(cell, working);
    if (value) note_lamp_caution(cell, working);
    return value;
}
template <std::optional<double> (*evaluate)(const Cell&, Working&)>
std::optional<double> of_exhaust(const Cell& cell, Working& working) {
    const std::optional<double> value = evaluate(cell, working);
    if (value) note_exhaust_caution(working);
    return value;
}

/// What the eye should get in stereo, by whose word.
void note_stereo_sources(Working& working);

}  // namespace rakeline::study
