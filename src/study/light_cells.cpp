// SPDX-License-Identifier: MIT
#include "study/light_cells.hpp"

#include "study/picture_cells.hpp"

namespace rakeline::study {

const light::PictureLight* light_of(const Cell& c) {
    const auto* p = picture::find_picture(c.study.picture, c.projector, c.format);
    if (!p) return nullptr;
    return &c.study.light.lights.at(static_cast<std::size_t>(p - c.study.picture.pictures.data()));
}

void record_points(const light::PictureLight& l,
                   int seat,
                   std::initializer_list<light::PicturePoint> points,
                   Working& w) {
    if (!w.recording()) return;
    static constexpr const char* kNames[] = {"L_centre",    "L_left",         "L_right",
                                             "L_top",       "L_bottom",       "L_top_left",
                                             "L_top_right", "L_bottom_right", "L_bottom_left"};
    for (const light::PicturePoint point : points) {
        w.input(kNames[point], "luminance there toward this seat",
                light::luminance_cdm2(l, seat, point), base::Unit::cd_per_m2);
    }
}

void note_lamp_caution(const Cell& c, Working& w) {
    if (projector_of(c).flux.lamp == room::LampKind::laser) {
        w.note(
            "caution: never look into beam or lens; its maker's trained service alone opens a "
            "laser "
            "source, a licensed electrician designs the circuit");
        return;
    }
    w.note(
        "caution: a xenon lamp is under pressure hot and cold and can burst, its currents and "
        "ignition voltages kill: trained people alone open a lamphouse, the maker's table goes "
        "first, a licensed electrician designs the circuit");
}

void note_exhaust_caution(Working& w) {
    w.note(
        "caution: heat, and ozone of some lamps, go up the duct: a licensed ventilation engineer "
        "and the fire authority settle exhaust, make-up air and fire separation");
}

void note_stereo_sources(Working& w) {
    w.note(
        "stereo, at the eye: sources disagree: about 16 cd/m2 (CST/FNCF booth guide 2010, p. 44, "
        "as reported), 24 cd/m2 (7 fL, 5 to 9; a trade page, as reported), 15 cd/m2 (4.5 fL, 3.5 "
        "to "
        "5.5; from memory)");
}

void note_stereo(const Cell& c, Working& w) {
    if (!c.study.layout().screen.surface.keeps_polarisation) return;
    w.note(
        "the sheet keeps polarisation, which changes no gain; this reading is of the flat "
        "picture, without stereo glasses or filters");
    note_stereo_sources(w);
}

}  // namespace rakeline::study
