// SPDX-License-Identifier: MIT
#pragma once

#include "sound/perforation.hpp"

namespace rakeline::sound {

/// Attenuation by the air, dB per metre, for a pure tone. Source: ISO 9613-1:1993, equations 3
/// to 6.
double air_absorption_db_per_m(double frequency_hz, const Air& air);

}  // namespace rakeline::sound
