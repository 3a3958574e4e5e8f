// SPDX-License-Identifier: MIT
#pragma once

#include "picture/opening.hpp"

#include <random>

/// A picture that fills its frame, by a few numbers.
namespace rakeline::tests {

struct Shape {
    double width_m = 12.0;
    double height_m = 5.0;
    double sill_m = 0.5;
    double setback_m = 0.0;
    double radius_m = 0.0;
    double tilt_rad = 0.0;
};

struct Picture {
    geometry::Patch surface;
    picture::Opening opening;
};

inline picture::Opening opening_of(const room::Screen& screen, double aspect_ratio) {
    room::Format format;
    format.aspect_ratio = aspect_ratio;
    return picture::masked_opening(screen, format);
}

inline Picture picture_of(const Shape& shape) {
    room::Screen screen;
    screen.width_m = shape.width_m;
    screen.height_m = shape.height_m;
    screen.sill_m = shape.sill_m;
    screen.setback_m = shape.setback_m;
    screen.radius_m = shape.radius_m;
    screen.tilt_rad = shape.tilt_rad;
    return {picture::screen_patch(screen), opening_of(screen, shape.width_m / shape.height_m)};
}

/// The same on every machine, unlike the distributions of <random>.
inline double between(std::mt19937& random, double least, double most) {
    return least + (most - least) * static_cast<double>(random()) / 4294967295.0;
}

}  // namespace rakeline::tests
