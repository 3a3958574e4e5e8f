// SPDX-License-Identifier: MIT
#pragma once

#include "study/figure.hpp"

#include <map>
#include <string>
#include <string_view>

/// Which fields of the layout each subject's editor shows, and which fields wait on another one.
/// Paths are as in files, list indices as "*": "projectors.*.flux.lamp".
namespace rakeline::desk {

/// Whether the field or part at `path` belongs to the subject's editor.
bool belongs(study::Subject subject, std::string_view path);

/// Whether something inside the part at `path` does.
bool holds_fields_of(study::Subject subject, std::string_view path);

/// Whether the field means anything, by the choices made beside it. `choices`: index chosen by
/// path, for all choices already walked over in the same part.
bool applies(std::string_view path, const std::map<std::string, int>& choices);

}  // namespace rakeline::desk
