// SPDX-License-Identifier: MIT
#pragma once

#include "picture/picture_study.hpp"

#include <optional>

/// Whether a lens reaches what a picture asks of it in the gate: the one measure by which a fitted
/// lens is judged and a catalogue is ranked.
namespace rakeline::picture {

/// What a picture asks of any lens that is to make it.
struct LensDemand {
    double throw_m = 0.0;
    double wide_gate_m = 0.0;   ///< gate or imager width in use times the squeeze
    double shift_across = 0.0;  ///< in gate widths, to the right positive
    double shift_up = 0.0;      ///< in gate heights
    /// Smallest image circle over the shifted gate: twice the distance from the lens axis to the
    /// gate's farthest corner, 2 hypot(a / 2 + |s_a|, h / 2 + |s_h|), s the shift in metres.
    double image_circle_m = 0.0;
};

LensDemand lens_demand(const ProjectedPicture& picture, const room::FormatUse& use);

struct LensReach {
    std::optional<double> throw_ratio_short;  ///< throw over picture width, at the short end;
    std::optional<double> throw_ratio_long;   ///< at the long end. Nothing where f >= throw
    double shift_across_short = 0.0;  ///< wanted over what the lens has, in gate widths; 0: enough
    double shift_up_short = 0.0;      ///< in gate heights
    double field_lost = 0.0;          ///< share of the gate pushed off the opening by that, 0 ... 1
    double image_circle_spare_m = 0.0;  ///< its image circle less the one wanted

    double shift_short() const;  ///< the greater of the two, in its own direction's gate size
    bool enough() const;         ///< of shift and image circle
};

/// Source: derived. A picture that lacks a shift of s gate heights stands s of its height off the
/// opening, so 1 - s of it is left there, and of both directions the product. Throw ratios by the
/// thin lens (throw.hpp).
LensReach lens_reach(const room::Lens& lens, const LensDemand& demand);

}  // namespace rakeline::picture
