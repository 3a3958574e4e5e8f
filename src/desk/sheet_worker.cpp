// SPDX-License-Identifier: MIT
#include "desk/sheet_worker.hpp"

#include <utility>

namespace rakeline::desk {

std::optional<SheetAnswer> try_sheets(const SheetQuestion& question, const std::stop_token& stop) {
    auto trials = study::sheet_trials(*question.study, question.catalogue, stop);
    if (!trials) return std::nullopt;
    return SheetAnswer{question, std::move(*trials)};
}

}  // namespace rakeline::desk
