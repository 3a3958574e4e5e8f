// SPDX-License-Identifier: MIT
#pragma once

namespace rakeline::bench {

/// Prints how long the levels of 12 loudspeakers at 500 seats take, beside a plain loop over the
/// formula.
void sound_pace();

}  // namespace rakeline::bench
