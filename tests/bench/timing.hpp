// SPDX-License-Identifier: MIT
#pragma once

#include <algorithm>
#include <chrono>
#include <cmath>
#include <vector>

namespace rakeline::bench {

/// Median time of `body` in ms: at least `least_runs` runs and `least_ms` in all, after one to warm
/// up.
template <class Body>
double median_ms(const Body& body, std::size_t least_runs = 5, double least_ms = 200.0) {
    using Clock = std::chrono::steady_clock;
    body();
    std::vector<double> times;
    double total = 0.0;
    while (times.size() < least_runs || total < least_ms) {
        const auto start = Clock::now();
        body();
        times.push_back(std::chrono::duration<double, std::milli>(Clock::now() - start).count());
        total += times.back();
    }
    std::nth_element(times.begin(), times.begin() + static_cast<long>(times.size() / 2),
                     times.end());
    return times[times.size() / 2];
}

struct Errors {
    double rms = 0.0, worst = 0.0;
};

inline Errors errors(const std::vector<double>& values, const std::vector<double>& truth) {
    Errors out;
    for (std::size_t i = 0; i < values.size(); ++i) {
        const double off = values[i] - truth[i];
        out.rms += off * off;
        out.worst = std::max(out.worst, std::abs(off));
    }
    out.rms = std::sqrt(out.rms / static_cast<double>(values.size()));
    return out;
}

}  // namespace rakeline::bench
