// SPDX-License-Identifier: MIT
#include "base/units.hpp"
#include "study/sound_cells.hpp"

#include <algorithm>
#include <vector>

/// What the sheet itself takes from the sound, by third octaves.
namespace rakeline::study {
namespace {

using base::Unit;
using sound::SheetStudy;
using sound::Thirds;

std::size_t third(const Cell& c) {
    return static_cast<std::size_t>(c.index);
}

const SheetStudy& sheet_of(const Cell& c) {
    return c.study.sound.sheet;
}

void record_band(const Cell& c, Working& w) {
    w.input("f", "frequency", sound::kThirds.at(third(c)), Unit::hertz);
}

std::optional<double> screen_loss(const Cell& c, Working& w) {
    record_band(c, w);
    record_sheet(c, w);
    return c.study.sound.screen_loss_db.at(third(c));
}

std::optional<double> loss_60(const Cell& c, Working& w) {
    record_band(c, w);
    w.input("i", "angle from the sheet's normal", base::radians(60.0), Unit::radian);
    record_sheet(c, w);
    return sheet_of(c).loss_60_db.at(third(c));
}

template <double sound::LossBand::*kEnd, sound::SheetForm sound::LossBand::*kForm>
std::optional<double> band_end(const Cell& c, Working& w) {
    if (!sheet_of(c).band) return std::nullopt;
    record_band(c, w);
    w.input("T", "loss by the form used", c.study.sound.screen_loss_db.at(third(c)), Unit::decibel);
    const sound::LossBand& band = sheet_of(c).band->at(third(c));
    w.note("here by " + sound::form_words(band.*kForm));
    w.note("used: " + sound::form_words({}) +
           ". Fok worked the interaction from the ratio of hole to pitch; the faces' resistance is "
           "that of Maa's later papers; the tube needs no approximation");
    return band.*kEnd;
}

std::optional<double> loss_apart(const Cell& c, Working& w) {
    if (!sheet_of(c).apart_db) return std::nullopt;
    record_band(c, w);
    record_sheet(c, w);
    w.note("the factor g of hole interaction is 1 here");
    return sheet_of(c).apart_db->at(third(c));
}

std::optional<double> loss_10k(const Cell& c, Working& w) {
    record_sheet(c, w);
    return sheet_of(c).loss_10k_db;
}

template <double SheetStudy::*kLoss>
std::optional<double> over_500(const Cell& c, Working& w) {
    record_sheet(c, w);
    w.input("T_500", "loss at 500 Hz", c.study.sound.screen_loss_db.at(sound::third_at(500.0)),
            Unit::decibel);
    return sheet_of(c).*kLoss;
}

/// The greatest angle at the sheet over all seats.
std::optional<double> steepest(const Cell& c) {
    if (!channel_of(c)) return std::nullopt;
    std::optional<double> most;
    const auto l = static_cast<std::size_t>(c.loudspeaker);
    for (const sound::DirectPath& path : c.study.sound.loudspeakers.at(l).paths)
        if (path.through_sheet) most = std::max(most.value_or(0.0), path.sheet_angle_rad);
    return most;
}

std::optional<double> sheet_angle(const Cell& c, Working&) {
    return steepest(c);
}

std::optional<double> loss_slant(const Cell& c, Working& w) {
    const std::optional<double> angle = steepest(c);
    if (!angle) return std::nullopt;
    record_band(c, w);
    w.input("i", "greatest angle of any seat", *angle, Unit::radian);
    record_sheet(c, w);
    return sound::screen_loss_db(sound::sheet_of(c.study.layout().screen),
                                 sound::kThirds.at(third(c)), *angle, air_of(c.study));
}

constexpr const char* kFormula =
    "T = 10 lg |1 + z cos(i) / (2 rho c)|^2, z of viscous holes in parallel with the limp sheet";
constexpr const char* kModel =
    "viscous tube and limp mass; Maa, and Fok's hole interaction, from memory; a measured loss "
    "stands in place of these";
constexpr const char* kConventions =
    "derived: Fok's factor of d/b or of the open area's root, Ingard's of the open area; faces "
    "sqrt(2)/32 or sqrt(2)/8; exact tube or Maa's: all from memory";

FigureDefinition by_thirds(const char* id,
                           const char* label,
                           const char* meaning,
                           const char* formula,
                           const char* source,
                           const char* sentence,
                           std::optional<double> (*evaluate)(const Cell&, Working&),
                           bool listed = false,
                           bool loudspeaker = false) {
    return {
        id,      Subject::sound, label,  Unit::decibel, {.loudspeaker = loudspeaker, .band = true},
        meaning, formula,        source, sentence,      evaluate,
        true,    listed};
}

std::vector<FigureDefinition> loss_entries() {
    return {
        by_thirds("sound.screen_loss", "Screen loss",
                  "Transmission loss of the screen at normal incidence, by third octaves.",
                  kFormula, kModel, "The screen takes {value} at {band}", screen_loss, true),
        by_thirds("sound.screen_loss_least", "Screen loss, least by convention",
                  "The least that published conventions of the same model give.",
                  "least of T over the conventions", kConventions,
                  "Another convention has the screen take {value} at {band}",
                  band_end<&sound::LossBand::least_db, &sound::LossBand::least_form>),
        by_thirds("sound.screen_loss_most", "Screen loss, most by convention",
                  "The most that published conventions of the same model give.",
                  "most of T over the conventions", kConventions,
                  "Another convention has the screen take {value} at {band}",
                  band_end<&sound::LossBand::most_db, &sound::LossBand::most_form>),
        by_thirds("sound.screen_loss_apart", "Screen loss, holes taken apart",
                  "If the air at one hole did not help its neighbours along; measured perforated "
                  "metal lies between this and the screen loss.",
                  "T with the interaction factor 1", kModel,
                  "Holes taken apart have the screen take {value} at {band}", loss_apart),
        by_thirds("sound.screen_loss_60", "Screen loss at 60°",
                  "Transmission loss of sound that meets the screen at 60 degrees from its normal.",
                  kFormula, kModel, "At 60° the screen takes {value} at {band}", loss_60),
    };
}

std::vector<FigureDefinition> treble_entries() {
    constexpr const char* kOver = "T(f) - T(500 Hz)";
    constexpr Per kRoom{};
    return {
        {"sound.screen_loss_10k", Subject::sound, "Screen loss at 10 kHz", Unit::decibel, kRoom,
         "Transmission loss of the screen at 10 kHz, normal incidence.", kFormula, kModel,
         "The screen takes {value} at 10 kHz", loss_10k},
        {"sound.treble_loss_6k", Subject::sound, "Screen loss at 6 kHz re 500 Hz", Unit::decibel,
         kRoom, "Transmission loss at 6 kHz over that at 500 Hz, normal incidence.", kOver, kModel,
         "The screen takes {value} more at 6 kHz than at 500 Hz",
         over_500<&SheetStudy::treble_6k_db>},
        {"sound.treble_loss_8k", Subject::sound, "Screen loss at 8 kHz re 500 Hz", Unit::decibel,
         kRoom, "Transmission loss at 8 kHz over that at 500 Hz, normal incidence.", kOver, kModel,
         "The screen takes {value} more at 8 kHz than at 500 Hz",
         over_500<&SheetStudy::treble_8k_db>},
    };
}

std::vector<FigureDefinition> slant_entries() {
    return {
        {"sound.sheet_angle",
         Subject::sound,
         "Greatest angle at the sheet",
         Unit::radian,
         {.loudspeaker = true},
         "Of the seats, the greatest angle from the sheet's normal at which the sound of this "
         "loudspeaker passes it.",
         "angle between path and normal",
         "derived: direct paths",
         "{loudspeaker} reaches a seat through the sheet at {value}",
         sheet_angle},
        by_thirds("sound.screen_loss_slant", "Screen loss at that angle",
                  "Transmission loss on the way to the seat at the greatest angle, which loses "
                  "least.",
                  kFormula, kModel, "{loudspeaker} loses {value} at the most slanted seat, {band}",
                  loss_slant, false, true),
    };
}

}  // namespace

std::span<const FigureDefinition> sheet_figures() {
    static const std::vector<FigureDefinition> entries = [] {
        std::vector<FigureDefinition> all;
        for (auto& part : {loss_entries(), treble_entries(), slant_entries()})
            all.insert(all.end(), part.begin(), part.end());
        return all;
    }();
    return entries;
}

}  // namespace rakeline::study
