// SPDX-License-Identifier: MIT
#include "sight/rake_reverse.hpp"

#include "sight/rake_search.hpp"

#include <algorithm>
#include <cmath>

namespace rakeline::sight {
namespace {

using RowsAt = std::function<std::optional<RakeRows>(double)>;

/// The line of all rows, the first one's aside, with the least C over what it wants.
struct Tightest {
    double spare_m = 0.0;
    int row = 0;
    int format = 0;
};

std::vector<double> floors_of(const RakeRows& rows) {
    std::vector<double> out;
    for (const RakeRow& row : rows.rows)
        out.push_back(row.floor_m);
    return out;
}

std::optional<Tightest> tightest(const RowsAt& rows_at, double spacing_m, double wanted_m) {
    const auto rows = rows_at(spacing_m);
    if (!rows) return std::nullopt;
    const auto sights = row_sights(*rows, floors_of(*rows), wanted_m);
    std::optional<Tightest> out;
    for (std::size_t n = 1; n < sights.size(); ++n) {
        if (!sights[n]) continue;
        const double spare = sights[n]->c_m - sights[n]->wanted_share * wanted_m;
        if (!out || spare < out->spare_m) out = {spare, static_cast<int>(n), sights[n]->format};
    }
    return out;
}

bool works(const std::optional<Tightest>& at) {
    return at && at->spare_m >= -kRakeRounding_m;
}

/// Between a spacing that works and one that does not: the last that works, and who stops there.
ReverseRake end_between(const RowsAt& rows_at, double good, double bad, double wanted_m) {
    while (std::abs(good - bad) > 1e-7) {
        const double middle = 0.5 * (good + bad);
        (works(tightest(rows_at, middle, wanted_m)) ? good : bad) = middle;
    }
    const auto at = tightest(rows_at, bad, wanted_m);
    const auto who = at ? at : tightest(rows_at, good, wanted_m);
    return {good, who->row, who->format};
}

}  // namespace

std::optional<ReverseRake> lowest_sill(const RakeRows& rows, double wanted_c_m, double sill_m) {
    const std::vector<double> floors = floors_of(rows);
    std::optional<ReverseRake> out;
    for (std::size_t n = 1; n < rows.rows.size(); ++n) {
        for (const SightOver& over : rows.rows[n].over) {
            const double c =
                c_over(over, floors[n] + rows.eye_height_m, eye_ahead(rows, over, floors));
            const double sill = sill_m + (over.wanted_share * wanted_c_m - c) / (1.0 - over.share);
            if (!out || sill > out->value_m) out = {sill, static_cast<int>(n), over.format};
        }
    }
    return out;
}

std::optional<SpacingRange> spacing_range(const RowsAt& rows_at, double wanted_c_m) {
    constexpr int kSteps = 500;  // of 5 mm
    const auto spacing = [](int i) {
        return kLeastSpacing_m + (kGreatestSpacing_m - kLeastSpacing_m) * i / kSteps;
    };
    const auto good = [&](int i) { return works(tightest(rows_at, spacing(i), wanted_c_m)); };
    int first = 0;
    while (first <= kSteps && !good(first))
        ++first;
    if (first > kSteps) return std::nullopt;
    int last = first;
    while (last < kSteps && good(last + 1))
        ++last;
    const auto at = [&](int i) {
        const auto who = tightest(rows_at, spacing(i), wanted_c_m);
        return ReverseRake{spacing(i), who->row, who->format};
    };
    SpacingRange out{at(first), at(last), first == 0, last == kSteps};
    if (first > 0) out.least = end_between(rows_at, spacing(first), spacing(first - 1), wanted_c_m);
    if (last < kSteps)
        out.greatest = end_between(rows_at, spacing(last), spacing(last + 1), wanted_c_m);
    return out;
}

}  // namespace rakeline::sight
