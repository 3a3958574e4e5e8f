// SPDX-License-Identifier: MIT
#pragma once

#include "study/study.hpp"

#include <CLI/CLI.hpp>

/// Private to command/: the crowd, for the verbs whose figures want it.
namespace rakeline::command {

/// The study with its crowd drawn. Where that takes more than a second and standard error is a
/// terminal, a line there says how far it is.
study::Study with_sampled_crowd(study::Study study);

/// Reads, studies and, unless `left_out`, draws the crowd.
base::Result<study::Study> sampled_study_file(const std::string& path, bool left_out);

/// "--no-crowd".
void add_no_crowd(CLI::App& verb, bool& left_out);

}  // namespace rakeline::command
