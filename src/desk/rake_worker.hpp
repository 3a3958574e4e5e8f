// SPDX-License-Identifier: MIT
#pragma once

#include "desk/background.hpp"
#include "study/rake_plan.hpp"

#include <memory>

/// The rake solver behind the window: a large room's floor can take longer than a frame.
namespace rakeline::desk {

/// A floor that is asked for.
struct RakeQuestion {
    std::shared_ptr<const study::Study> study;
    int block = 0;
    sight::RakeOptions options;
    bool operator==(const RakeQuestion&) const = default;
};

struct RakeAnswer {
    RakeQuestion question;
    base::Result<sight::RakePlan> plan;
    base::Result<std::optional<sight::ReverseRake>> sill;
    base::Result<std::optional<sight::SpacingRange>> spacing;
};

RakeAnswer solve_rake(const RakeQuestion& question);

using RakeWorker = Background<RakeQuestion, RakeAnswer>;

}  // namespace rakeline::desk
