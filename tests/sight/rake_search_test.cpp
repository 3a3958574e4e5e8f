// SPDX-License-Identifier: MIT
#include "sight/rake_search.hpp"

#include "sight/random_rake.hpp"
#include "support/check.hpp"

#include <cmath>
#include <tuple>

using namespace rakeline;
using namespace rakeline::sight;
using tests::between;

namespace {

/// Tries every sequence of risers.
class EveryFloor {
public:
    EveryFloor(const RakeRows& rows, const RiserRules& rules, double wanted)
        : rows_(rows), rules_(rules), wanted_(wanted), risers_(rows.rows.size(), 0) {
        go(1);
    }
    int lowest = -1;
    int sum = 0;      ///< of all heights, the least of the lowest
    int flights = 0;  ///< the fewest of these

private:
    bool good() const {
        std::vector<double> floor;
        int height = 0;
        for (std::size_t n = 0; n < risers_.size(); ++n) {
            height += risers_[n];
            floor.push_back(rows_.rows.front().floor_m + rules_.step_m * height);
            if (floor.back() > rules_.floor_most_m[n] + kRakeRounding_m) return false;
        }
        for (std::size_t n = 1; n < floor.size(); ++n) {
            for (const SightOver& over : rows_.rows[n].over) {
                const double c =
                    c_over(over, floor[n] + rows_.eye_height_m, eye_ahead(rows_, over, floor));
                if (c < over.wanted_share * wanted_ - kRakeRounding_m) return false;
            }
        }
        return true;
    }
    /// Number of flights, or 0 where one is too short.
    int count_flights() const {
        int count = 1;
        int run = 1;
        const int all = static_cast<int>(risers_.size()) - 1;
        const int least = std::min(rules_.flight_rows, all);
        for (std::size_t n = 2; n < risers_.size(); ++n) {
            if (risers_[n] == risers_[n - 1]) {
                ++run;
                continue;
            }
            if (run < least) return 0;
            ++count;
            run = 1;
        }
        return run < least ? 0 : count;
    }
    void judge() {
        const int count = count_flights();
        if (count == 0 || (rules_.flights_most && count > *rules_.flights_most) || !good()) return;
        int height = 0;
        int heights = 0;
        for (const int riser : risers_)
            heights += height += riser;
        if (lowest >= 0 && std::tie(height, heights, count) >= std::tie(lowest, sum, flights)) {
            return;
        }
        lowest = height;
        sum = heights;
        flights = count;
    }
    void go(std::size_t n) {
        if (n == risers_.size()) return judge();
        for (risers_[n] = 0; risers_[n] <= rules_.riser_most[n]; ++risers_[n])
            go(n + 1);
        risers_[n] = 0;
    }

    const RakeRows& rows_;
    const RiserRules& rules_;
    double wanted_;
    std::vector<int> risers_;
};

int rise(const std::vector<int>& risers) {
    int out = 0;
    for (const int riser : risers)
        out += riser;
    return out;
}

int sum_of_heights(const std::vector<int>& risers) {
    int height = 0;
    int out = 0;
    for (const int riser : risers)
        out += height += riser;
    return out;
}

int flights_in(const std::vector<int>& risers) {
    int count = risers.size() > 1 ? 1 : 0;
    for (std::size_t n = 2; n < risers.size(); ++n)
        count += risers[n] != risers[n - 1];
    return count;
}

}  // namespace

TEST_SUITE("sight/rake_search") {
    TEST_CASE("property: the floor found is the lowest of all floors that could be tried") {
        std::mt19937 random(41);
        int found = 0;
        for (int round = 0; round < 400; ++round) {
            INFO("seed 41, round ", round);
            const auto over = random() % 2 ? RakeOver::row_in_front : RakeOver::second_row;
            const RakeRows rows = tests::random_rake_room(random, 2, 6).rows(over);
            RiserRules rules;
            rules.step_m = between(random, 0.04, 0.1);
            rules.flight_rows = 1 + static_cast<int>(random() % 3);
            if (random() % 2) rules.flights_most = 1 + static_cast<int>(random() % 3);
            const double cap = random() % 2 ? between(random, 0.5, 2.0) : 99.0;
            for (std::size_t n = 0; n < rows.rows.size(); ++n) {
                rules.riser_most.push_back(3 + static_cast<int>(random() % 5));
                rules.floor_most_m.push_back(rows.rows[0].floor_m + cap);
            }
            const double wanted = between(random, 0.0, 0.12);
            const EveryFloor all(rows, rules, wanted);
            const auto best = lowest_risers(rows, rules, wanted);
            REQUIRE(best.has_value() == (all.lowest >= 0));
            if (!best) continue;
            ++found;
            CHECK(rise(*best) == all.lowest);
            CHECK(sum_of_heights(*best) == all.sum);
            CHECK(flights_in(*best) == all.flights);
        }
        CHECK(found > 60);
        CHECK(found < 390);
    }

    TEST_CASE("property: what the search finds holds for the rules that it was given") {
        std::mt19937 random(42);
        for (int round = 0; round < 50; ++round) {
            INFO("seed 42, round ", round);
            const RakeRows rows =
                tests::random_rake_room(random, 8, 16).rows(RakeOver::row_in_front);
            RiserRules rules;
            rules.flight_rows = 3;
            rules.riser_most.assign(rows.rows.size(), 60);
            rules.floor_most_m.assign(rows.rows.size(), 99.0);
            const auto free = lowest_risers(rows, rules, 0.06);
            if (!free) continue;
            rules.flights_most = flights_in(*free);
            const auto same = lowest_risers(rows, rules, 0.06);
            REQUIRE(same.has_value());
            CHECK(*same == *free);
            if (*rules.flights_most == 1) continue;
            --*rules.flights_most;
            const auto fewer = lowest_risers(rows, rules, 0.06);
            if (fewer) CHECK(rise(*fewer) >= rise(*free));
        }
    }
}
