// SPDX-License-Identifier: MIT
#pragma once

#include "sound/air.hpp"

namespace rakeline::sound {

/// Attenuation by the air, dB per metre, for a pure tone.
///
///     alpha = 8.686 f^2 { 1.84e-11 (T/T0)^(1/2) / p
///             + (T/T0)^(-5/2) [ 0.01275 e^(-2239.1/T) / (fO + f^2/fO)
///                             + 0.1068 e^(-3352/T) / (fN + f^2/fN) ] }          [dB/m]
///     fO = p (24 + 40400 h (0.02 + h)/(0.391 + h))              oxygen relaxes, Hz
///     fN = p (T/T0)^(-1/2) (9 + 280 h e^(-4.170 ((T/T0)^(-1/3) - 1)))   nitrogen, Hz
///       f  frequency, Hz             T  temperature, K; T0 = 293.15
///       p  pressure over 101325 Pa   h  molar concentration of water vapour, %
///     h = H 10^C / p, C = -6.8346 (273.16/T)^1.261 + 4.6151, H relative humidity, %
///
/// Holds within 10 % for 0.05 < h < 5 %, -20 to 50 degC, below 200 kPa, f/p up to 10 MHz.
/// Source: ISO 9613-1:1993, equations 3 to 5 and annex B.
/// Example: 20 degC, 50 %, 10 kHz -> 0.1588 dB/m.
double air_absorption_db_per_m(double frequency_hz, const Air& air);

}  // namespace rakeline::sound
