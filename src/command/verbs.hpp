// SPDX-License-Identifier: MIT
#pragma once

#include "base/result.hpp"
#include "study/study.hpp"

#include <CLI/CLI.hpp>
#include <functional>
#include <optional>
#include <string>

/// Private to command/: what the verbs share. Each verb is one file with one add_..._verb function,
/// which declares the verb's words and sets `action` to what it does.
namespace rakeline::command {

inline constexpr int kDone = 0;
inline constexpr int kLimitMissed = 1;
inline constexpr int kBadInput = 2;
inline constexpr int kMachineCannot = 3;

/// What the command line asked for, filled by the verb that was named.
struct Choice {
    std::string version;
    std::function<int()> action;
};

void add_study_verb(CLI::App& app, Choice& choice);
void add_check_verb(CLI::App& app, Choice& choice);
void add_figures_verb(CLI::App& app, Choice& choice);
void add_explain_verb(CLI::App& app, Choice& choice);
void add_draw_verb(CLI::App& app, Choice& choice);
void add_lens_verb(CLI::App& app, Choice& choice);
void add_report_verb(CLI::App& app, Choice& choice);
void add_rake_verb(CLI::App& app, Choice& choice);
void add_crowd_verb(CLI::App& app, Choice& choice);
void add_plate_verb(CLI::App& app, Choice& choice);
void add_change_verb(CLI::App& app, Choice& choice);
void add_meter_verb(CLI::App& app, Choice& choice);
void add_width_verb(CLI::App& app, Choice& choice);
void add_curve_verb(CLI::App& app, Choice& choice);
void add_aim_verb(CLI::App& app, Choice& choice);
void add_perforation_verb(CLI::App& app, Choice& choice);

/// Prints problems to standard error, one a line.
int refuse(const base::Problems& problems);
int refuse(const std::string& what, const std::string& mend);

/// Reads, studies; problems come back.
base::Result<study::Study> study_file(const std::string& path);

/// Index of a named thing of the layout, or a Problem with the nearest name. An empty name is no
/// choice.
base::Result<std::optional<int>> choose_format(const room::Layout& layout, const std::string& name);
base::Result<std::optional<int>> choose_projector(const room::Layout& layout,
                                                  const std::string& name);
base::Result<std::optional<int>> choose_loudspeaker(const room::Layout& layout,
                                                    const std::string& name);
base::Result<std::optional<int>> choose_seat(const study::Study& study, const std::string& name);
base::Result<std::optional<int>> choose_row(const study::Study& study, const std::string& letter);

/// "-" is standard output; else a file, written whole or not at all.
int put_output(const std::string& where, const std::string& bytes);

/// A new layout and where it goes: `from` is the file that was read, whose limits file the new one
/// names as seen from its own place.
int put_layout(room::Layout layout, const std::string& from, const std::string& output);

/// The series of screen sheets that is looked for beside a layout.
std::string sheet_series(const std::string& layout_path);

/// Whether writing a new layout would replace the one that is read.
bool same_file(const std::string& a, const std::string& b);

base::UnitSystem unit_system(bool imperial);

std::string today();  ///< by the local calendar, as ISO 8601 writes it

}  // namespace rakeline::command
