// SPDX-License-Identifier: MIT
#include "picture/throw.hpp"

#include "base/assert.hpp"

namespace rakeline::picture {

double picture_width(double gate_width_m, double throw_m, double focal_length_m) {
    RL_ASSERT(focal_length_m > 0.0);
    return gate_width_m * (throw_m - focal_length_m) / focal_length_m;
}

double focal_length(double gate_width_m, double throw_m, double picture_width_m) {
    RL_ASSERT(picture_width_m + gate_width_m > 0.0);
    return gate_width_m * throw_m / (picture_width_m + gate_width_m);
}

double focal_length_field(double gate_width_m, double throw_m, double picture_width_m) {
    RL_ASSERT(picture_width_m > 0.0);
    return gate_width_m * throw_m / picture_width_m;
}

double image_distance(double focal_length_m, double throw_m) {
    RL_ASSERT(focal_length_m > 0.0 && throw_m > focal_length_m);
    return focal_length_m * throw_m / (throw_m - focal_length_m);
}

}  // namespace rakeline::picture
