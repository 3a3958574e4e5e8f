// SPDX-License-Identifier: MIT
#include "sight/rake_search.hpp"

#include "base/assert.hpp"

#include <algorithm>
#include <cmath>
#include <tuple>

namespace rakeline::sight {
namespace {

/// The best floor found up to a row in one state.
struct Cell {
    int height = -1;  ///< of that row over the first, in steps; -1: none
    int sum = 0;      ///< of the heights so far
    int flights = 0;  ///< so far
    int from = -1;    ///< its state one row ahead

    bool reached() const { return height >= 0; }
    bool better_than(const Cell& other) const {
        if (!other.reached()) return true;
        return std::tie(height, sum, flights) < std::tie(other.height, other.sum, other.flights);
    }
};

using Layer = std::vector<Cell>;  ///< all states of one row

class Search {
public:
    Search(const RakeRows& rows, const RiserRules& rules, double wanted_c_m)
        : rows_(rows), rules_(rules), wanted_(wanted_c_m) {
        const int last = static_cast<int>(rows.rows.size()) - 1;
        runs_ = std::min(rules.flight_rows, std::max(last, 1));
        counts_ = rules.flights_most.value_or(1);
        for (int n = 1; n <= last; ++n)
            risers_ = std::max(risers_, rules.riser_most[index(n)] + 1);
    }

    std::optional<std::vector<int>> run() {
        if (rows_.rows.empty() || !under_cap(0, 0)) return std::nullopt;
        const int count = static_cast<int>(rows_.rows.size());
        if (count == 1) return std::vector<int>{0};
        layers_.push_back(first_layer());
        for (int n = 2; n < count; ++n)
            layers_.push_back(next_layer(n));
        return best_risers();
    }

    double size() const {
        return static_cast<double>(rows_.rows.size()) * counts_ * runs_ * risers_;
    }

private:
    static std::size_t index(int i) { return static_cast<std::size_t>(i); }

    /// `flights` counts from 0 and stays 0 where they are free; `run` from 1 to runs_.
    int state(int flights, int run, int riser) const {
        return (flights * runs_ + run - 1) * risers_ + riser;
    }
    int riser_of(int state) const { return state % risers_; }

    double eye(int height) const {
        return rows_.rows.front().floor_m + rules_.step_m * height + rows_.eye_height_m;
    }

    bool under_cap(int n, int height) const {
        const double floor = rows_.rows.front().floor_m + rules_.step_m * height;
        return floor <= rules_.floor_most_m[index(n)] + kRakeRounding_m;
    }
    bool allowed(int n, int riser, int height) const {
        return riser <= rules_.riser_most[index(n)] && under_cap(n, height);
    }

    /// Eye height over which a line of row `n` looks, the row ahead standing at `height` after a
    /// riser of `riser`.
    double eye_looked_over(const SightOver& over, int n, int height, int riser) const {
        if (!over.ahead) return over.ahead_eye_m;
        RL_ASSERT(*over.ahead == n - 1 || *over.ahead == n - 2);
        return eye(*over.ahead == n - 1 ? height : height - riser);
    }

    /// The least riser that gives row `n` what it should clear.
    int least_riser(int n, int height, int riser) const {
        double needed = eye(height);
        for (const SightOver& over : rows_.rows[index(n)].over) {
            const double c = over.wanted_share * wanted_ - kRakeRounding_m;
            const double ahead = eye_looked_over(over, n, height, riser);
            needed =
                std::max(needed, (ahead + c - (1.0 - over.share) * over.focus_up_m) / over.share);
        }
        const double steps = std::ceil((needed - eye(height)) / rules_.step_m);
        return static_cast<int>(std::min(steps, static_cast<double>(risers_)));
    }

    Layer empty_layer() const { return Layer(index(counts_ * runs_ * risers_)); }

    Layer first_layer() const {
        Layer out = empty_layer();
        for (int riser = least_riser(1, 0, 0); riser < risers_; ++riser) {
            if (allowed(1, riser, riser)) out[index(state(0, 1, riser))] = {riser, riser, 1, -1};
        }
        return out;
    }

    /// The flight goes on with its riser.
    void go_on(int n, const Layer& before, Layer& out) const {
        for (int s = 0; s < static_cast<int>(before.size()); ++s) {
            const Cell& cell = before[index(s)];
            const int riser = riser_of(s);
            if (!cell.reached() || least_riser(n, cell.height, riser) > riser) continue;
            const int height = cell.height + riser;
            const Cell next{height, cell.sum + height, cell.flights, s};
            if (!allowed(n, riser, next.height)) continue;
            const int run = s / risers_ % runs_ + 1;
            const int flights = s / risers_ / runs_;
            Cell& there = out[index(state(flights, std::min(run + 1, runs_), riser))];
            if (next.better_than(there)) there = next;
        }
    }

    /// A new flight begins with row `n`, from the best floor that bears its riser.
    void begin_flight(int n, const Layer& before, int flights, Layer& out) const {
        const int counted = rules_.flights_most ? flights + 1 : flights;
        if (counted >= counts_) return;
        std::vector<Cell> from_riser(index(risers_));
        for (int riser = 0; riser < risers_; ++riser) {
            const int s = state(flights, runs_, riser);
            const Cell& cell = before[index(s)];
            if (!cell.reached()) continue;
            const int least = least_riser(n, cell.height, riser);
            const Cell start{cell.height, cell.sum, cell.flights + 1, s};
            if (least < risers_ && start.better_than(from_riser[index(least)]))
                from_riser[index(least)] = start;
        }
        Cell best;
        for (int riser = 0; riser < risers_; ++riser) {
            const Cell& here = from_riser[index(riser)];
            if (here.reached() && here.better_than(best)) best = here;
            if (!best.reached()) continue;
            const int height = best.height + riser;
            const Cell next{height, best.sum + height, best.flights, best.from};
            Cell& there = out[index(state(counted, 1, riser))];
            if (allowed(n, riser, next.height) && next.better_than(there)) there = next;
        }
    }

    Layer next_layer(int n) const {
        Layer out = empty_layer();
        go_on(n, layers_.back(), out);
        for (int flights = 0; flights < counts_; ++flights)
            begin_flight(n, layers_.back(), flights, out);
        return out;
    }

    /// From the lowest last row back to the first.
    std::optional<std::vector<int>> best_risers() const {
        const Layer& last = layers_.back();
        int best = -1;
        for (int s = 0; s < static_cast<int>(last.size()); ++s) {
            const bool whole_flight = s / risers_ % runs_ + 1 == runs_;
            if (!last[index(s)].reached() || !whole_flight) continue;
            if (best < 0 || last[index(s)].better_than(last[index(best)])) best = s;
        }
        if (best < 0) return std::nullopt;
        std::vector<int> risers(layers_.size() + 1, 0);
        for (std::size_t layer = layers_.size(); layer-- > 0;) {
            risers[layer + 1] = riser_of(best);
            best = layers_[layer][index(best)].from;
        }
        return risers;
    }

    const RakeRows& rows_;
    const RiserRules& rules_;
    double wanted_;
    int runs_ = 1;               ///< rows of a flight that count
    int counts_ = 1;             ///< flights that count
    int risers_ = 1;             ///< risers that may be, 0 and up
    std::vector<Layer> layers_;  ///< of rows 1 and up
};

}  // namespace

std::optional<std::vector<int>> lowest_risers(const RakeRows& rows,
                                              const RiserRules& rules,
                                              double wanted_c_m) {
    RL_ASSERT(rules.step_m > 0.0 && rules.flight_rows >= 1);
    RL_ASSERT(rules.riser_most.size() == rows.rows.size());
    RL_ASSERT(rules.floor_most_m.size() == rows.rows.size());
    return Search(rows, rules, wanted_c_m).run();
}

double search_size(const RakeRows& rows, const RiserRules& rules) {
    return Search(rows, rules, 0.0).size();
}

}  // namespace rakeline::sight
