// SPDX-License-Identifier: MIT
#include "base/nearest_name.hpp"

#include <algorithm>
#include <utility>
#include <vector>

namespace rakeline::base {
namespace {

/// Optimal string alignment distance: letters added, left out or changed, and neighbours exchanged,
/// which is the commonest slip of the hand. By three rows of the usual table.
std::size_t edit_distance(std::string_view a, std::string_view b) {
    std::vector<std::size_t> before;  // row i - 2
    std::vector<std::size_t> above;   // row i - 1
    std::vector<std::size_t> row(b.size() + 1);
    for (std::size_t j = 0; j <= b.size(); ++j)
        row[j] = j;
    for (std::size_t i = 1; i <= a.size(); ++i) {
        before = std::exchange(above, row);
        row[0] = i;
        for (std::size_t j = 1; j <= b.size(); ++j) {
            const std::size_t changed = above[j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
            row[j] = std::min({above[j] + 1, row[j - 1] + 1, changed});
            const bool exchanged = i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1];
            if (exchanged) row[j] = std::min(row[j], before[j - 2] + 1);
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
