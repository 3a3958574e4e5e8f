// SPDX-License-Identifier: MIT
#pragma once

#include "drawing/drawing.hpp"
#include "study/meter_check.hpp"

namespace rakeline::drawing {

/// A residual of this share of the fitted value draws a disc of the full radius, a lettering line.
inline constexpr double kFullResidual = 0.10;

/// The screen unrolled flat, seen from the seats (surface coordinates), with every reading and how
/// far it is from the fit: a disc whose radius grows with the residual's share of the fitted value
/// (kFullResidual at most), strong where brighter, faint with a dashed rim where darker, in the
/// missed colour from two standard uncertainties on; the value read above it, the residual below.
/// Without dimensions (the choice) the residual stands alone, and no legend.
/// The fitted hot spot is a cross where it falls on the picture.
Drawing meter_face(const study::Study& study,
                   const DrawingChoice& choice,
                   const study::MeterCheck& check);

}  // namespace rakeline::drawing
