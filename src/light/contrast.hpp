// SPDX-License-Identifier: MIT
#pragma once

/// What stray light and the hall leave of the machine's contrast.
namespace rakeline::light {

/// Luminances at the picture's centre toward the reference seat, cd/m2.
struct Veil {
    double white_cdm2 = 0.0;        ///< L, of a full white picture, the hall's answer not in it
    double machine_contrast = 1.0;  ///< C, white over black of machine and lens alone, over 0
    double bounce_cdm2 = 0.0;       ///< B, what the hall sends back of the full white picture
    double stray_cdm2 = 0.0;        ///< S, of house lights
};

/// A black picture: K = (L + B) / C + S.
double black_cdm2(const Veil& veil);

/// Full white over full black as a meter reads them, (L + B + S) / K; C where S = 0. Nothing is
/// assumed about the meter. Source: definition of sequential contrast.
double sequential_contrast(const Veil& veil);

/// White over black squares of a chessboard, half of it white, whose mean light is m = (1 + 1/C)/2
/// of a white picture's: (L + m B + S) / (L / C + m B + S). Light that strays inside the lens from
/// white to black squares is not in it. Source: definition; derived.
double in_picture_contrast(const Veil& veil);

}  // namespace rakeline::light
