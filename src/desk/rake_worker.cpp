// SPDX-License-Identifier: MIT
#include "desk/rake_worker.hpp"

#include <utility>

namespace rakeline::desk {

std::optional<RakeAnswer> solve_rake(const RakeQuestion& question, const std::stop_token& stop) {
    const study::Study& study = *question.study;
    auto plan = study::rake_plan(study, question.block, question.options);
    if (stop.stop_requested()) return std::nullopt;
    auto sill = study::sill_for_floor(study, question.block, question.options);
    if (stop.stop_requested()) return std::nullopt;
    auto spacing = study::spacing_for_floor(study, question.block, question.options);
    return RakeAnswer{question, std::move(plan), std::move(sill), std::move(spacing)};
}

}  // namespace rakeline::desk
