// SPDX-License-Identifier: MIT
#pragma once

namespace rakeline::bench {

/// Prints how long luminance toward 500 seats takes, beside a plain loop over the formula.
void light_pace();

}  // namespace rakeline::bench
