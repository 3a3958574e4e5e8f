// SPDX-License-Identifier: MIT
#pragma once

#include "sound/perforation.hpp"

/// How far published conventions differ in what a sheet loses.
namespace rakeline::sound {

struct LossBand {
    double least_db = 0.0;
    double most_db = 0.0;
    SheetForm least_form;  ///< that gives the least
    SheetForm most_form;
    bool operator==(const LossBand&) const = default;
};

/// Least and most over published_forms, at normal incidence. The form of the sheet itself does not
/// count. The perforation must have holes and no measured loss. Measured losses of perforated metal
/// (IPA's handbook) lie above the used form and under that of holes that do not interact: of two
/// plates, 0.9 dB in 0.5 to 1.1 dB and 4.4 dB in 1.5 to 5.4 dB at 10 kHz.
LossBand loss_band(const Sheet& sheet, double frequency_hz, const Air& air);

/// Loss at normal incidence if the holes did not know of each other: above the band, but for a few
/// mB in the bass, where a light sheet moves with its air.
double loss_apart_db(const Sheet& sheet, double frequency_hz, const Air& air);

}  // namespace rakeline::sound
