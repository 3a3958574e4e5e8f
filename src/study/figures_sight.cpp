// SPDX-License-Identifier: MIT
#include "study/register.hpp"

#include <vector>

namespace rakeline::study {

std::span<const FigureDefinition> sight_figures() {
    static const std::vector<FigureDefinition> entries = [] {
        std::vector<FigureDefinition> all;
        for (const auto part :
             {angle_figures(), detail_figures(), hidden_figures(), crowd_figures(), row_figures(),
              standing_figures(), wheelchair_figures()})
            all.insert(all.end(), part.begin(), part.end());
        return all;
    }();
    return entries;
}

}  // namespace rakeline::study
