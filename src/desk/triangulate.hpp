// SPDX-License-Identifier: MIT
#pragma once

#include <glm/vec2.hpp>

#include <array>
#include <cstddef>
#include <span>
#include <vector>

namespace rakeline::desk {

/// Triangles (indices into `polygon`) that fill a simple polygon of either direction, by cutting
/// ears. A polygon that crosses itself gives some of its triangles.
std::vector<std::array<std::size_t, 3>> triangulate(std::span<const glm::dvec2> polygon);

}  // namespace rakeline::desk
