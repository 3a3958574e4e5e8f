// SPDX-License-Identifier: MIT
#pragma once

#include "base/quantity_text.hpp"
#include "study/lens_json.hpp"

#include <string>

namespace rakeline::command {

/// One pick as plain text: what is asked of a lens, the ranked table with a line below each lens
/// that doesn't do, the sentence why the first is first, and what lens would be needed.
std::string lens_text(const room::Layout& layout,
                      const picture::LensPick& pick,
                      std::span<const study::ListedLens> catalogue,
                      base::UnitSystem system);

}  // namespace rakeline::command
