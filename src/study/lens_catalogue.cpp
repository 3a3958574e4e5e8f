// SPDX-License-Identifier: MIT
#include "study/lens_catalogue.hpp"

#include "study/slices.hpp"

#include <algorithm>

namespace rakeline::study {

std::vector<ListedLens> lens_catalogue(const room::Layout& layout,
                                       std::span<const room::Series> series) {
    std::vector<ListedLens> out;
    for (const room::Lens& lens : layout.lenses)
        out.push_back({lens, kOwnLenses});
    for (const room::Series& one : series) {
        for (const room::Lens& lens : one.lenses) {
            const bool there = std::any_of(out.begin(), out.end(),
                                           [&](const auto& has) { return has.lens == lens; });
            if (!there) out.push_back({lens, one.name});
        }
    }
    return out;
}

std::vector<room::Lens> lenses_of(std::span<const ListedLens> catalogue) {
    std::vector<room::Lens> lenses;
    for (const ListedLens& listed : catalogue)
        lenses.push_back(listed.lens);
    return lenses;
}

std::optional<picture::LensPick> pick_lens(const Study& study,
                                           std::span<const ListedLens> catalogue,
                                           int projector,
                                           int format) {
    return picture::pick_lens(picture_slice(study.layout(), study.seats), projector, format,
                              lenses_of(catalogue));
}

}  // namespace rakeline::study
