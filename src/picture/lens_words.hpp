// SPDX-License-Identifier: MIT
#pragma once

#include "base/quantity_text.hpp"
#include "picture/lens_pick.hpp"

#include <span>
#include <string>

/// A lens pick in plain sentences.
namespace rakeline::picture {

/// Why the first lens stands first, with its numbers.
std::string lens_reason(const LensPick& pick,
                        std::span<const room::Lens> catalogue,
                        base::UnitSystem system);

/// What a lens has to be that covers and fits here, whether or not the catalogue has it.
std::string lens_needed(const LensPick& pick, base::UnitSystem system);

/// What keeps a lens from covering or fitting, parted by commas; empty where nothing does.
std::string lens_faults(const LensChoice& choice, base::UnitSystem system);

}  // namespace rakeline::picture
