// SPDX-License-Identifier: MIT
#pragma once

#include "room/layout.hpp"

#include <optional>
#include <string>

/// A copy of unsaved edits beside the settings, never over the user's own file. One a running
/// program; what a program that has died left behind is offered at the next start.
namespace rakeline::desk {

struct RecoveryCopy {
    std::string copy;      ///< the file with the layout
    std::string original;  ///< the document's own path; empty if it never had one
};

/// Writes (or replaces) this program's copy. Failing to is no fault: the user's file stands.
void write_recovery(const room::Layout& layout, const std::string& original);

/// Removes this program's copy, if there is one.
void drop_recovery();

/// A copy left by a program that no longer runs.
std::optional<RecoveryCopy> find_recovery();
void drop_recovery(const RecoveryCopy& copy);

}  // namespace rakeline::desk
