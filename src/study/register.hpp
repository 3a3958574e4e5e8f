// SPDX-License-Identifier: MIT
#pragma once

#include "study/figure.hpp"
#include "study/working.hpp"

#include <optional>
#include <span>
#include <string_view>

/// The register of all figures: adding one is one entry with one function, in
/// figures_<subject>.cpp.
namespace rakeline::study {

struct Study;

/// Which value of a figure is meant. Indices as in Figure; `index` along the axis.
struct Cell {
    const Study& study;
    int projector = 0;
    int format = 0;
    int loudspeaker = 0;
    int band = 0;
    int index = 0;  ///< seat, row or band by the definition's axis
};

struct FigureDefinition {
    const char* id;  ///< "picture.throw_ratio"
    Subject subject;
    const char* label;  ///< in the window: "Throw ratio"
    base::Unit unit;
    Per per;
    const char* meaning;  ///< one plain sentence
    const char* formula;  ///< with the symbols that `evaluate` records
    const char* source;   ///< document, or "common practice, no source", or "derived: ..."
    /// What a finding says, with {value}, {seat}, {row}, {band}, {format}, {projector} and
    /// {loudspeaker} filled in.
    const char* sentence;
    /// The value, or nothing where it is not defined there (no row in front, no such picture).
    std::optional<double> (*evaluate)(const Cell& cell, Working& working);
    bool third_octaves = false;  ///< axis band runs over sound::kThirds instead of kOctaves
    /// In the window's column, the report and the study's text. Those that only stand behind
    /// another figure are reached by their id.
    bool listed = true;

    Axis axis() const {
        if (per.seat) return Axis::seat;
        if (per.row) return Axis::row;
        return per.band ? Axis::band : Axis::none;
    }
};

/// All figures, by subject in the order of the subjects, ids unique.
std::span<const FigureDefinition> figure_register();
const FigureDefinition* find_definition(std::string_view id);

/// Whether the figure has values only once a crowd is drawn (with_crowd).
bool needs_crowd(const FigureDefinition& definition);

/// Entries of one subject, by the files that define them.
std::span<const FigureDefinition> room_figures();
std::span<const FigureDefinition> seating_figures();  ///< the room's rows
std::span<const FigureDefinition> wheelchair_room_figures();
std::span<const FigureDefinition> picture_figures();
std::span<const FigureDefinition> shape_figures();  ///< parts of picture_figures
std::span<const FigureDefinition> lens_figures();
std::span<const FigureDefinition> focus_figures();
std::span<const FigureDefinition> plate_figures();
std::span<const FigureDefinition> covering_figures();
std::span<const FigureDefinition> aim_figures();
std::span<const FigureDefinition> beam_figures();
std::span<const FigureDefinition> port_figures();  ///< the last of them
std::span<const FigureDefinition> light_figures();
std::span<const FigureDefinition> luminance_figures();  ///< parts of light_figures
std::span<const FigureDefinition> chain_figures();
std::span<const FigureDefinition> reading_figures();
std::span<const FigureDefinition> lamp_life_figures();
std::span<const FigureDefinition> supply_figures();
std::span<const FigureDefinition> stereo_figures();
std::span<const FigureDefinition> stray_figures();
std::span<const FigureDefinition> lamp_figures();  ///< the last part of light_figures
std::span<const FigureDefinition> sight_figures();
std::span<const FigureDefinition> angle_figures();  ///< parts of sight_figures
std::span<const FigureDefinition> detail_figures();
std::span<const FigureDefinition> hidden_figures();
std::span<const FigureDefinition> crowd_figures();  ///< not there before a crowd is drawn
std::span<const FigureDefinition> row_figures();
std::span<const FigureDefinition> standing_figures();
std::span<const FigureDefinition> wheelchair_figures();
std::span<const FigureDefinition> sheet_figures();  ///< of sound, the screen
std::span<const FigureDefinition> gap_figures();
std::span<const FigureDefinition> sound_figures();
std::span<const FigureDefinition> coverage_figures();
std::span<const FigureDefinition> cabinet_figures();
std::span<const FigureDefinition> acoustics_figures();
std::span<const FigureDefinition> reflection_figures();
std::span<const FigureDefinition> arrival_figures();
std::span<const FigureDefinition> hole_figures();

}  // namespace rakeline::study
