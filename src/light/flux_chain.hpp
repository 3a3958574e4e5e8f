// SPDX-License-Identifier: MIT
#pragma once

#include "room/layout.hpp"

/// From the lamp to the lens.
namespace rakeline::light {

/// Flux out of the lens with the whole lit gate or imager in use, no film, shutter running, lens
/// and iris at their most (FormatUse::light_fraction comes after it).
struct FluxOut {
    double lamp_flux_lm = 0.0;  ///< of the lamp as it is now; 0 where the flux was measured
    double lens_flux_lm = 0.0;  ///< out of the lens
};

/// The flux measured, or the chain factor by factor:
///
///     lamp flux = V I * efficacy * ageing                               [lm]
///     lens flux = lamp flux * collection * shutter * gate * lens        [lm]
///
/// Source: definition of the factors (room::FluxChain). All factors are taken as given: a digital
/// machine's shutter fraction is 1 because its layout says so.
FluxOut flux_out(const room::FluxChain& chain);

}  // namespace rakeline::light
