// SPDX-License-Identifier: MIT
#include "study/register.hpp"

#include <vector>

namespace rakeline::study {

std::span<const FigureDefinition> figure_register() {
    static const std::vector<FigureDefinition> all = [] {
        std::vector<FigureDefinition> joined;
        for (const auto part :
             {room_figures(), seating_figures(), wheelchair_room_figures(), picture_figures(),
              light_figures(), sight_figures(), sheet_figures(), gap_figures(), sound_figures(),
              coverage_figures(), cabinet_figures(), arrival_figures(), acoustics_figures(),
              reflection_figures(), hole_figures()}) {
            joined.insert(joined.end(), part.begin(), part.end());
        }
        return joined;
    }();
    return all;
}

const FigureDefinition* find_definition(std::string_view id) {
    for (const FigureDefinition& definition : figure_register()) {
        if (definition.id == id) return &definition;
    }
    return nullptr;
}

}  // namespace rakeline::study
