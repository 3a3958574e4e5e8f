// SPDX-License-Identifier: MIT
#pragma once

#include "study/study.hpp"

/// Fine curves of what the sheet and the gap behind it take, for drawings. They are the functions
/// that the figures sample by third octaves.
namespace rakeline::study {

struct AngleCurve {
    double angle_rad = 0.0;  ///< from the sheet's normal
    std::vector<double> loss_db;
};

/// One loudspeaker through its gap and the sheet.
struct ChannelCurves {
    int loudspeaker = 0;
    std::vector<double> hz;           ///< close enough together for the gap's ripple
    std::vector<double> loss_db;      ///< of the sheet alone, on the way to the reference seat
    std::vector<double> with_gap_db;  ///< the same less what the gap adds
};

/// A limit on the loss over that at 500 Hz, as the loss itself.
struct LossMark {
    double hz = 0.0;
    double over_db = 0.0;  ///< the limit
    double loss_db = 0.0;  ///< the limit and the loss at 500 Hz
    Verdict verdict = Verdict::holds;
};

struct LossCurves {
    std::vector<double> hz;  ///< 20 Hz to 20 kHz
    std::vector<AngleCurve> angles;
    std::vector<double> least_db,
        most_db;                   ///< over published conventions; empty where there are none
    std::vector<double> apart_db;  ///< holes taken apart; empty like these
    std::vector<room::LossPoint> measured;
    std::vector<LossMark> marks;
    std::optional<ChannelCurves>
        channel;  ///< nothing where no screen channel stands behind the sheet
};

/// `loudspeaker` counts if it is a screen channel behind the sheet; else the first centre one, else
/// the first of any.
LossCurves loss_curves(const Study& study, std::optional<int> loudspeaker);

}  // namespace rakeline::study
