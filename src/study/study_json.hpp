// SPDX-License-Identifier: MIT
#pragma once

#include "study/study.hpp"

#include <optional>
#include <string>

namespace rakeline::study {

/// One object: `figures`, a list of {id, subject, unit, value | values, projector?, format?,
/// loudspeaker?, band_hz?, limit?, holds?}, `values` keyed by seat name, row letter or band centre
/// in Hz; `findings`; and `crowd`, null where none was drawn. SI, angles in degrees. `format`: only
/// figures of this format, or per none.
std::string study_json(const Study& study, std::optional<int> format = {});

/// The register as a list of {id, subject, label, unit, per, meaning, formula, source}.
std::string register_json();

}  // namespace rakeline::study
