// SPDX-License-Identifier: MIT
#pragma once

#include "desk/background.hpp"
#include "desk/same_brief.hpp"
#include "study/perforation_choice.hpp"

#include <memory>
#include <optional>
#include <vector>

/// Screen sheets set against each other behind the window: the angles that their holes could hang
/// at, over all pictures, take longer than a frame.
namespace rakeline::desk {

struct SheetQuestion {
    std::shared_ptr<const study::Study> study;
    std::vector<room::SheetChoice> catalogue;
    bool operator==(const SheetQuestion& other) const {
        return same_brief(study.get(), other.study.get()) && catalogue == other.catalogue;
    }
};

struct SheetAnswer {
    SheetQuestion question;
    study::SheetTrials trials;
};

/// Nothing where `stop` came first.
std::optional<SheetAnswer> try_sheets(const SheetQuestion& question, const std::stop_token& stop);

using SheetWorker = Background<SheetQuestion, SheetAnswer>;

}  // namespace rakeline::desk
