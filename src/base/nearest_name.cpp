// SPDX-License-Identifier: MIT
#include "base/nearest_name.hpp"

#include <algorithm>
#include <vector>

namespace rakeline::base {
namespace {

/// Levenshtein distance by the two-row method.
std::size_t edit_distance(std::string_view a, std::string_view b) {
    std::vector<std::size_t> row(b.size() + 1);
    for (std::size_t j = 0; j <= b.size(); ++j)
        row[j] = j;
    for (std::size_t i = 1; i <= a.size(); ++i) {
        std::size_t diagonal = row[0];
        row[0] = i;
        for (std::size_t j = 1; j <= b.size(); ++j) {
            const std::size_t substitution = diagonal + (a[i - 1] == b[j - 1] ? 0 : 1);
            diagonal = row[j];
            row[j] = std::min({row[j] + 1, row[j - 1] + 1, substitution});
        }
    }
    return row[b.size()];
}

}  // namespace

std::string nearest_name(std::string_view word, std::span<const std::string> names) {
    std::string best;
    std::size_t best_distance = std::max<std::size_t>(word.size() / 2, 2) + 1;
    for (const std::string& name : names) {
        const std::size_t distance = edit_distance(word, name);
        if (distance < best_distance) {
            best = name;
            best_distance = distance;
        }
    }
    return best;
}

}  // namespace rakeline::base
