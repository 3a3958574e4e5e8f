// SPDX-License-Identifier: MIT
#include "study/sound_cells.hpp"

namespace rakeline::study {

using base::Unit;

const sound::ChannelSheet* channel_of(const Cell& c) {
    const auto& channel = c.study.sound.sheet.channels.at(static_cast<std::size_t>(c.loudspeaker));
    return channel ? &*channel : nullptr;
}

void record_sheet(const Cell& c, Working& w) {
    const room::Screen& s = c.study.layout().screen;
    if (!s.loss_table.empty()) {
        w.note("measured: cubic pieces over the logarithm of frequency, held beyond " +
               base::quantity_text(s.loss_table.front().frequency_hz, Unit::hertz) + " and " +
               base::quantity_text(s.loss_table.back().frequency_hz, Unit::hertz) +
               "; at an angle as of a mass that loses as much straight on, which is an assumption");
        return;
    }
    if (s.perforation.pattern != room::PerforationPattern::none) {
        w.input("d", "hole diameter", s.perforation.hole_diameter_m, Unit::millimetre);
        w.input("b", "hole pitch", s.perforation.pitch_m, Unit::millimetre);
        w.input("t", "sheet thickness", s.sheet_thickness_m, Unit::millimetre);
        w.note("by " + sound::form_words({}));
    }
    w.input("m", "sheet mass", s.sheet_mass_kg_m2, Unit::kg_per_m2);
}

sound::Air air_of(const Study& study) {
    const room::Hall& hall = study.layout().hall;
    return {.temperature_c = hall.temperature_c, .humidity_fraction = hall.humidity_fraction};
}

}  // namespace rakeline::study
