// SPDX-License-Identifier: MIT
#pragma once

#include "sight/blockers.hpp"

#include <span>
#include <vector>

namespace rakeline::sight {

/// One of the seats that look, with its eye where it is tried.
struct Looking {
    int seat = 0;  ///< index in the plan: no one's own head or seat back hides anything from them
    glm::dvec3 eye{0.0};
};

/// The hidden fraction (hidden.hpp) for some of the seats of a house, each once at most, in order.
std::vector<double> hidden_from_some(const geometry::Patch& surface,
                                     const picture::Opening& opening,
                                     Blockers house,
                                     std::span<const Looking> looking);

}  // namespace rakeline::sight
