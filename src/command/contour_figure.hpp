// SPDX-License-Identifier: MIT
#pragma once

#include "drawing/drawing.hpp"

#include <string>

namespace rakeline::command {

/// The figure of every seat called `id`, for the projector and format of a drawing (the first
/// unless chosen); null where `id` is empty. Problems: another view than the plan, a figure that
/// there is not (with the nearest that there is) or that has no value there.
base::Result<const study::Figure*> contour_figure(const study::Study& study,
                                                  const std::string& id,
                                                  const std::string& view,
                                                  const drawing::DrawingChoice& choice);

}  // namespace rakeline::command
