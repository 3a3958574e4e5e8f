// SPDX-License-Identifier: MIT
/// What one eye sees, and who stands before it: column by column in doubles.
#include "base/assert.hpp"
#include "sight/hidden.hpp"
#include "sight/hidden_exact.hpp"

#include <algorithm>
#include <functional>

namespace rakeline::sight {
namespace {

using hidden::Stretch;

std::vector<ClearInterval> gaps(const std::vector<ClearInterval>& hidden,
                                const geometry::Rectangle& opening) {
    std::vector<ClearInterval> out;
    double from = opening.bottom;
    for (const ClearInterval& h : hidden) {
        if (opening.bottom + h.bottom_m > from) out.push_back({from, opening.bottom + h.bottom_m});
        from = opening.bottom + h.top_m;
    }
    if (from < opening.top) out.push_back({from, opening.top});
    return out;
}

/// Credits every stretch with what the nearer ones leave of it.
void credit_column(std::vector<Stretch>& stretches, std::vector<double>& hidden_m) {
    std::ranges::stable_sort(stretches, {}, &Stretch::distance);
    std::vector<Stretch> nearer;
    double covered_m = 0.0;
    for (const Stretch& s : stretches) {
        nearer.push_back(s);
        double union_m = 0.0;
        for (const ClearInterval& h : hidden::merged(nearer))
            union_m += h.top_m - h.bottom_m;
        hidden_m[static_cast<std::size_t>(s.blocker)] += union_m - covered_m;
        covered_m = union_m;
    }
}

}  // namespace

ClearOutline clear_outline(const HiddenInput& in, int eye, int columns) {
    RL_ASSERT(eye >= 0 && static_cast<std::size_t>(eye) < in.eyes.size() && columns > 0);
    const auto frame = hidden::picture_columns(in.surface, in.opening, columns);
    const hidden::Shadows shadows(in, frame, eye);
    ClearOutline out{frame.left_m, frame.width_m / columns, {}};
    std::vector<Stretch> stretches;
    for (std::size_t j = 0; j < frame.places.size(); ++j) {
        shadows.stretches(j, stretches);
        out.columns.push_back(gaps(hidden::merged(stretches), in.opening.uv));
    }
    return out;
}

std::vector<HidingShare> hiding_shares(const HiddenInput& in, int eye, int columns) {
    RL_ASSERT(eye >= 0 && static_cast<std::size_t>(eye) < in.eyes.size() && columns > 0);
    const auto frame = hidden::picture_columns(in.surface, in.opening, columns);
    const hidden::Shadows shadows(in, frame, eye);
    std::vector<double> hidden_m(in.heads.size() + in.walls.size(), 0.0);
    std::vector<Stretch> stretches;
    for (std::size_t j = 0; j < frame.places.size(); ++j) {
        shadows.stretches(j, stretches);
        credit_column(stretches, hidden_m);
    }
    std::vector<HidingShare> out;
    for (std::size_t i = 0; i < hidden_m.size(); ++i) {
        if (hidden_m[i] <= 0.0) continue;
        const bool wall = i >= in.heads.size();
        const std::size_t index = wall ? i - in.heads.size() : i;
        out.push_back({wall, static_cast<int>(index), hidden_m[i] / (columns * frame.height_m)});
    }
    std::ranges::stable_sort(out, std::greater{}, &HidingShare::fraction);
    return out;
}

}  // namespace rakeline::sight
