// SPDX-License-Identifier: MIT
#include "study/picture_cells.hpp"

namespace rakeline::study {

const picture::ProjectedPicture* picture_of(const Cell& cell) {
    return picture::find_picture(cell.study.picture, cell.projector, cell.format);
}

const picture::Opening& opening_of(const Cell& cell) {
    return cell.study.picture.openings.at(static_cast<std::size_t>(cell.format));
}

const room::Projector& projector_of(const Cell& cell) {
    return cell.study.layout().projectors.at(static_cast<std::size_t>(cell.projector));
}

const room::FormatUse& use_of(const Cell& cell, const picture::ProjectedPicture& picture) {
    return projector_of(cell).formats.at(static_cast<std::size_t>(picture.use));
}

const room::Lens* fitted_lens(const Cell& cell, const picture::ProjectedPicture& picture) {
    if (!picture.lens) return nullptr;
    return &cell.study.layout().lenses.at(static_cast<std::size_t>(*picture.lens));
}

}  // namespace rakeline::study
