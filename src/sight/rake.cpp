// SPDX-License-Identifier: MIT
#include "sight/rake.hpp"

#include "base/assert.hpp"
#include "sight/rake_search.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace rakeline::sight {
namespace {

constexpr double kMostStates = 2e7;  // some seconds, and 300 MB

double unbounded() {
    return std::numeric_limits<double>::infinity();
}

/// The rules for the risers under all restrictions up to `last`.
RiserRules rules_of(const RakeRows& rows, const RakeOptions& options, Restriction last) {
    const auto holds = [last](Restriction r) { return r <= last; };
    RiserRules rules;
    rules.step_m = options.riser_step_m;
    if (holds(Restriction::flights)) {
        rules.flight_rows = options.flight_rows;
        rules.flights_most = options.flights_most;
    }
    for (const RakeRow& row : rows.rows) {
        const bool stands = &row == &rows.rows.front();  // no rake moves the first row
        double riser = kGreatestRiser_m;
        if (holds(Restriction::riser))
            riser = std::min(riser, options.riser_most_m.value_or(riser));
        if (holds(Restriction::slope) && options.slope_most_rad)
            riser = std::min(riser, std::tan(*options.slope_most_rad) * row.spacing_m);
        double cap = unbounded();
        if (!stands && holds(Restriction::ceiling) && options.headroom_m)
            cap = row.ceiling_m - *options.headroom_m;
        if (!stands && holds(Restriction::beam) && options.beam_headroom_m && row.beam_m)
            cap = std::min(cap, *row.beam_m - *options.beam_headroom_m);
        rules.riser_most.push_back(
            static_cast<int>(std::floor((riser + kRakeRounding_m) / options.riser_step_m)));
        rules.floor_most_m.push_back(cap);
    }
    return rules;
}

std::vector<double> floor_of(const RakeRows& rows,
                             const RiserRules& rules,
                             const std::vector<int>& risers) {
    std::vector<double> floor;
    int height = 0;
    for (const int riser : risers) {
        height += riser;
        floor.push_back(rows.rows.front().floor_m + rules.step_m * height);
    }
    return floor;
}

std::optional<int> worst_row(const std::vector<std::optional<RowSight>>& sights, double wanted_m) {
    std::optional<int> worst;
    double least = unbounded();
    // The first row stands where it is, whatever it sees.
    for (std::size_t n = 1; n < sights.size(); ++n) {
        if (!sights[n]) continue;
        const double spare = sights[n]->c_m - sights[n]->wanted_share * wanted_m;
        if (spare >= least - kRakeRounding_m) continue;  // of equals the foremost
        least = spare;
        worst = static_cast<int>(n);
    }
    return worst;
}

RakeStage stage_of(const RakeRows& rows,
                   Restriction restriction,
                   std::vector<double> floor_m,
                   double wanted_c_m) {
    RakeStage stage;
    stage.restriction = restriction;
    stage.floor_m = std::move(floor_m);
    if (stage.floor_m.empty()) {
        stage.meets = false;
        return stage;
    }
    stage.sights = row_sights(rows, stage.floor_m, wanted_c_m);
    stage.least_row = worst_row(stage.sights, wanted_c_m);
    stage.meets = stage.spare_m(wanted_c_m) >= -2.0 * kRakeRounding_m;
    return stage;
}

/// Risers for the greatest C, up to the wanted one, that every row can have. Nothing where not even
/// a level floor is allowed.
std::optional<std::vector<int>> nearest_risers(const RakeRows& rows,
                                               const RiserRules& rules,
                                               double wanted_c_m) {
    if (auto risers = lowest_risers(rows, rules, wanted_c_m)) return risers;
    constexpr double kAnyC_m = -1e3;  // no hall is as high
    auto best = lowest_risers(rows, rules, kAnyC_m);
    if (!best) return std::nullopt;
    double low = kAnyC_m;
    double high = wanted_c_m;
    while (high - low > 1e-6) {
        const double middle = 0.5 * (low + high);
        auto risers = lowest_risers(rows, rules, middle);
        (risers ? low : high) = middle;
        if (risers) best = std::move(risers);
    }
    return best;
}

std::vector<Restriction> restrictions_of(const RakeOptions& o) {
    std::vector<Restriction> out{Restriction::step};
    if (o.flight_rows > 1 || o.flights_most) out.push_back(Restriction::flights);
    if (o.riser_most_m) out.push_back(Restriction::riser);
    if (o.slope_most_rad) out.push_back(Restriction::slope);
    if (o.headroom_m) out.push_back(Restriction::ceiling);
    if (o.beam_headroom_m) out.push_back(Restriction::beam);
    return out;
}

/// The first row whose headroom a level floor does not leave.
std::optional<int> row_without_headroom(const RakeRows& rows, const RiserRules& rules) {
    for (std::size_t n = 0; n < rows.rows.size(); ++n) {
        if (rows.rows.front().floor_m > rules.floor_most_m[n] + kRakeRounding_m)
            return static_cast<int>(n);
    }
    return std::nullopt;
}

}  // namespace

double RakeStage::spare_m(double wanted_c_m) const {
    if (!least_row) return 0.0;
    const auto& sight = sights[static_cast<std::size_t>(*least_row)];
    return sight->c_m - sight->wanted_share * wanted_c_m;
}

std::vector<double> exact_floor(const RakeRows& rows, double wanted_c_m) {
    std::vector<double> floor;
    for (const RakeRow& row : rows.rows) {
        if (floor.empty()) {
            floor.push_back(row.floor_m);
            continue;
        }
        double eye = -unbounded();
        for (const SightOver& over : row.over) {
            const double c = over.wanted_share * wanted_c_m;
            const double ahead = eye_ahead(rows, over, floor);
            eye = std::max(eye, (ahead + c - (1.0 - over.share) * over.focus_up_m) / over.share);
        }
        floor.push_back(row.over.empty() ? floor.back() : eye - rows.eye_height_m);
    }
    return floor;
}

RakePlan plan_rake(const RakeRows& rows, const RakeOptions& options) {
    RL_ASSERT(rows.rows.size() >= 2 && option_faults(options).empty());
    const double wanted = options.wanted_c_m;
    RakePlan plan{options, rows, {}, {}};
    plan.stages.push_back(stage_of(rows, Restriction::exact, exact_floor(rows, wanted), wanted));
    for (const Restriction restriction : restrictions_of(options)) {
        const RiserRules rules = rules_of(rows, options, restriction);
        const auto risers = nearest_risers(rows, rules, wanted);
        if (!risers) plan.blocked_row = row_without_headroom(rows, rules);
        auto floor = risers ? floor_of(rows, rules, *risers) : std::vector<double>{};
        plan.stages.push_back(stage_of(rows, restriction, std::move(floor), wanted));
        if (!risers) break;
    }
    return plan;
}

bool is_searchable(const RakeRows& rows, const RakeOptions& options) {
    return search_size(rows, rules_of(rows, options, Restriction::flights)) <= kMostStates;
}

}  // namespace rakeline::sight
