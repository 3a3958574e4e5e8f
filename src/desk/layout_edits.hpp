// SPDX-License-Identifier: MIT
#pragma once

#include "room/fields.hpp"
#include "room/layout.hpp"

#include <string>
#include <vector>

/// What an edit drags along, so that one change of mind is one edit.
namespace rakeline::desk {

/// Where a format or lens was given another name, whoever used the old name uses the new one.
void follow_renames(const room::Layout& before, room::Layout& after);

/// Copies element `from` of a list into a new one at its end, field by field. Its name, where it
/// has one, gets the first free number after it.
void duplicate_element(room::ListAccess& items, std::size_t from);

/// `name` with the first number after it that none of `taken` has: "Left" -> "Left 2".
std::string free_name(const std::string& name, const std::vector<std::string>& taken);

}  // namespace rakeline::desk
