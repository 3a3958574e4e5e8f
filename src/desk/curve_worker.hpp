// SPDX-License-Identifier: MIT
#pragma once

#include "desk/background.hpp"
#include "desk/same_brief.hpp"
#include "study/curve_trials.hpp"

#include <memory>
#include <optional>

/// The trials of the screen's curve and tilt behind the window: eighty pictures with their light
/// take several frames.
namespace rakeline::desk {

struct CurveQuestion {
    std::shared_ptr<const study::Study> study;
    int projector = 0;
    int format = 0;
    bool operator==(const CurveQuestion& other) const {
        return same_brief(study.get(), other.study.get()) && projector == other.projector &&
               format == other.format;
    }
};

struct CurveAnswer {
    CurveQuestion question;
    std::optional<light::CurvatureHelp> help;  ///< nothing: there is nothing to try a curve on
};

/// Nothing where `stop` came first.
std::optional<CurveAnswer> try_curves(const CurveQuestion& question, const std::stop_token& stop);

using CurveWorker = Background<CurveQuestion, CurveAnswer>;

}  // namespace rakeline::desk
