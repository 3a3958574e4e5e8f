// SPDX-License-Identifier: MIT
#include "light/stereo.hpp"
#include "study/light_cells.hpp"
#include "study/picture_cells.hpp"

#include <vector>

/// What is left of a digital machine's light behind stereo glasses.
namespace rakeline::study {
namespace {

using base::Unit;

/// At the eye with all the light that lens and iris let through: stereo is not shown dimmed.
/// Nothing for a sheet that does not keep polarisation, or for film, of whose stereo no source
/// speaks.
std::optional<double> at_the_eye(const Cell& c, Working& w, double share) {
    const light::PictureLight* l = light_of(c);
    const bool stereo = c.study.layout().screen.surface.keeps_polarisation &&
                        projector_of(c).kind == room::SourceKind::digital;
    if (!stereo || !l || !l->reference_cdm2) return std::nullopt;
    w.note("flat white at the reference seat, through glasses held square to the way there");
    w.note("the maker's own share, or a meter behind the glasses, goes before the one taken here");
    note_stereo_sources(w);
    const double flat =
        w.input("L", "reference reading, flat picture", *l->reference_cdm2, Unit::cd_per_m2);
    const double most = flat / w.input("k_set", "what the format's setting passes",
                                       l->setting_fraction, Unit::fraction);
    return most * w.input("s", "share that stereo system and glasses leave", share, Unit::fraction);
}

std::optional<double> stereo_low(const Cell& c, Working& w) {
    return at_the_eye(c, w, light::kStereoShareLeast);
}
std::optional<double> stereo_high(const Cell& c, Working& w) {
    return at_the_eye(c, w, light::kStereoShareMost);
}

constexpr Per kPf{.projector = true, .format = true};
constexpr const char* kShare =
    "share of 16 cd/m2 at the eye over 110 to 150 cd/m2 on the sheet: CST/FNCF booth guide 2010, "
    "p. 44, as reported";

}  // namespace

std::span<const FigureDefinition> stereo_figures() {
    static const std::vector<FigureDefinition> entries = {
        {"light.stereo_low", Subject::light, "Stereo at the eye, at least", Unit::cd_per_m2, kPf,
         "At the picture's centre toward the reference seat, behind stereo glasses, with lens and "
         "iris at their most; digital machines on a sheet that keeps polarisation.",
         "L / k_set s, s = 16/150", kShare,
         "{projector} leaves at least {value} at the eye in stereo, {format}", stereo_low},
        {"light.stereo_high", Subject::light, "Stereo at the eye, at most", Unit::cd_per_m2, kPf,
         "The same with a stereo system that leaves the eye more of the light.",
         "L / k_set s, s = 16/110", kShare,
         "{projector} leaves at most {value} at the eye in stereo, {format}", stereo_high},
    };
    return entries;
}

}  // namespace rakeline::study
