// SPDX-License-Identifier: MIT
#include "desk/rake_worker.hpp"

namespace rakeline::desk {

RakeAnswer solve_rake(const RakeQuestion& question) {
    const study::Study& study = *question.study;
    return {question, study::rake_plan(study, question.block, question.options),
            study::sill_for_floor(study, question.block, question.options),
            study::spacing_for_floor(study, question.block, question.options)};
}

}  // namespace rakeline::desk
