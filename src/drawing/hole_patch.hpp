// SPDX-License-Identifier: MIT
#pragma once

#include "drawing/drawing.hpp"

namespace rakeline::drawing {

/// A piece of the sheet as large as 20 x 12 pixels, in metres about its middle as seen from the
/// seats: pixels with the gaps between them, holes, both at true scale, and the beat that they
/// make, at the place of the opening where it is seen most (its centre where there is none). Where
/// the beat's period fits, a dimension stands across its bands. Refused for film, without holes,
/// and where the pair gives no picture.
base::Result<Drawing> hole_patch(const study::Study& study, const DrawingChoice& choice);

}  // namespace rakeline::drawing
