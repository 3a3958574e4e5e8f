// SPDX-License-Identifier: MIT
#pragma once

#include "picture/picture_map.hpp"
#include "room/layout.hpp"

#include <optional>

/// Regular patterns on the sheet: its holes, and the pixels thrown on it. All in the surface
/// coordinates (u, v) of geometry/patch.hpp, metres; frequencies in cycles per metre.
namespace rakeline::sound {

/// Steps from one point of a pattern to two of its neighbours; not in line.
struct Lattice {
    glm::dvec2 a{0.0};
    glm::dvec2 b{0.0};
    bool operator==(const Lattice&) const = default;
};

/// The frequencies that a pattern is made of: i a + j b for whole i and j, where reciprocal a does
/// one cycle along the lattice's a and none along its b. Source: definition of the reciprocal
/// lattice.
struct Reciprocal {
    glm::dvec2 a{0.0};
    glm::dvec2 b{0.0};
    glm::dvec2 at(int i, int j) const {
        return static_cast<double>(i) * a + static_cast<double>(j) * b;
    }
};
Reciprocal reciprocal(const Lattice& lattice);

/// The shortest of its frequencies, that of the pattern's widest rows, cycles/m.
double lowest_frequency(const Reciprocal& reciprocal);

/// Centres of the holes: rows at 90 degrees (square, woven) or 60 (staggered), turned clockwise by
/// the perforation's angle as seen from the seats. The perforation must have holes.
Lattice hole_lattice(const room::Perforation& perforation);

/// Pixels of `pixel_m` in the gate as they stand on the sheet round a place: turned, sheared and
/// stretched by keystone, curvature and squeeze. Nothing where the lens does not reach.
std::optional<Lattice> pixel_lattice(const picture::PictureMap& map, double pixel_m, glm::dvec2 uv);

}  // namespace rakeline::sound
