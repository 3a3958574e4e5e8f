// SPDX-License-Identifier: MIT
#pragma once

#include <optional>

namespace rakeline::sound {

/// Greatest octave-band level of background noise under noise criterion curve NC-`criterion`, dB re
/// 20 uPa, at the octave bands from 63 Hz to 8 kHz; nothing at other frequencies. Curves between
/// the tabled ones (every 5) are interpolated; `criterion` from 15 to 50.
/// Source: NC curves of L. L. Beranek, 1957, as tabled in handbooks, from memory.
/// Example: NC-25 at 1 kHz -> 27 dB.
std::optional<double> noise_criterion_db(int criterion, double frequency_hz);

}  // namespace rakeline::sound
