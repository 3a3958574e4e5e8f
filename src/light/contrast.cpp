// SPDX-License-Identifier: MIT
#include "light/contrast.hpp"

namespace rakeline::light {

double black_cdm2(const Veil& v) {
    return (v.white_cdm2 + v.bounce_cdm2) / v.machine_contrast + v.stray_cdm2;
}

double sequential_contrast(const Veil& v) {
    return (v.white_cdm2 + v.bounce_cdm2 + v.stray_cdm2) / black_cdm2(v);
}

double in_picture_contrast(const Veil& v) {
    const double mean = 0.5 * (1.0 + 1.0 / v.machine_contrast);
    const double veil_cdm2 = mean * v.bounce_cdm2 + v.stray_cdm2;
    return (v.white_cdm2 + veil_cdm2) / (v.white_cdm2 / v.machine_contrast + veil_cdm2);
}

}  // namespace rakeline::light
