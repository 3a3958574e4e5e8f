// SPDX-License-Identifier: MIT
#pragma once

#include "study/study.hpp"

#include <optional>
#include <string>

/// Private to study/: a use that a machine could have for a format that it has none for.
namespace rakeline::study {

struct UseProposal {
    std::optional<room::FormatUse> use;
    std::string words;  ///< what it is and what it is taken from; without one, why there is none
};

/// See machine_change in format_change.hpp for the rules.
UseProposal propose_use(const Study& study, int projector, int format);

/// The study of a copy of the room in which the projector has this use too.
Study study_with(const Study& study, int projector, const room::FormatUse& use);

}  // namespace rakeline::study
