// SPDX-License-Identifier: MIT
#include "desk/curve_worker.hpp"

#include <utility>

namespace rakeline::desk {

std::optional<CurveAnswer> try_curves(const CurveQuestion& question, const std::stop_token& stop) {
    auto help = study::curve_trials(*question.study, question.projector, question.format, stop);
    if (stop.stop_requested()) return std::nullopt;
    return CurveAnswer{question, std::move(help)};
}

}  // namespace rakeline::desk
