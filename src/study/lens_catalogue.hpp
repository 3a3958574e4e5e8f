// SPDX-License-Identifier: MIT
#pragma once

#include "picture/lens_pick.hpp"
#include "room/layout_file.hpp"
#include "study/study.hpp"

#include <optional>
#include <span>
#include <string>
#include <vector>

namespace rakeline::study {

/// What ListedLens::list says of the lenses that the layout has.
inline constexpr const char* kOwnLenses = "layout";

/// A lens that could be bought or is there, and where it is listed.
struct ListedLens {
    room::Lens lens;
    std::string list;  ///< kOwnLenses, or the name of a series
};

/// The layout's own lenses, then those of the series in the order given, less the ones that are
/// there already: a layout copies its lenses from a series.
std::vector<ListedLens> lens_catalogue(const room::Layout& layout,
                                       std::span<const room::Series> series);

/// The lenses alone, in the catalogue's order.
std::vector<room::Lens> lenses_of(std::span<const ListedLens> catalogue);

/// picture::pick_lens for a projector and format of the study.
std::optional<picture::LensPick> pick_lens(const Study& study,
                                           std::span<const ListedLens> catalogue,
                                           int projector,
                                           int format);

}  // namespace rakeline::study
