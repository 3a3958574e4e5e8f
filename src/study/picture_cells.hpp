// SPDX-License-Identifier: MIT
#pragma once

#include "study/study.hpp"

/// Private to study/: what the figures per projector and format look at.
namespace rakeline::study {

/// The picture of the cell's projector and format, or null.
const picture::ProjectedPicture* picture_of(const Cell& cell);
const picture::Opening& opening_of(const Cell& cell);
const room::Projector& projector_of(const Cell& cell);

/// How the projector makes the picture's format.
const room::FormatUse& use_of(const Cell& cell, const picture::ProjectedPicture& picture);

/// The lens that the layout fits for the picture, or null.
const room::Lens* fitted_lens(const Cell& cell, const picture::ProjectedPicture& picture);

}  // namespace rakeline::study
