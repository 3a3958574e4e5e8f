// SPDX-License-Identifier: MIT
#pragma once

#include "desk/background.hpp"
#include "desk/same_brief.hpp"
#include "study/rake_plan.hpp"

#include <memory>

/// The rake solver behind the window: a large room's floor can take longer than a frame.
namespace rakeline::desk {

/// A floor that is asked for.
struct RakeQuestion {
    std::shared_ptr<const study::Study> study;
    int block = 0;
    sight::RakeOptions options;
    /// A study that differs from another in its crowd alone has the same floors.
    bool operator==(const RakeQuestion& other) const {
        return same_brief(study.get(), other.study.get()) && block == other.block &&
               options == other.options;
    }
};

struct RakeAnswer {
    RakeQuestion question;
    base::Result<sight::RakePlan> plan;
    base::Result<std::optional<sight::ReverseRake>> sill;
    base::Result<std::optional<sight::SpacingRange>> spacing;
};

/// Nothing where `stop` came first.
std::optional<RakeAnswer> solve_rake(const RakeQuestion& question, const std::stop_token& stop);

using RakeWorker = Background<RakeQuestion, RakeAnswer>;

}  // namespace rakeline::desk
