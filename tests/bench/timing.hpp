// SPDX-License-Identifier: MIT
#pragma once

#include <algorithm>
#include <chrono>
#include <cmath>
#include <ctime>
#include <vector>

namespace rakeline::bench {

/// Of this thread alone, ms: what other programs take of the processor doesn't count.
inline double own_ms() {
    timespec now{};
    clock_gettime(CLOCK_THREAD_CPUTIME_ID, &now);
    return 1e3 * static_cast<double>(now.tv_sec) + 1e-6 * static_cast<double>(now.tv_nsec);
}

/// On the wall, ms: the one that tells what a second thread gains, on a machine that is idle.
inline double wall_ms() {
    const auto now = std::chrono::steady_clock::now().time_since_epoch();
    return std::chrono::duration<double, std::milli>(now).count();
}

/// Median time of `body` by `clock`, ms: at least `least_runs` runs and `least_ms` in all, after
/// one to warm up.
template <class Body>
double median_ms(double (*clock)(), const Body& body, std::size_t least_runs, double least_ms) {
    body();
    std::vector<double> times;
    double total = 0.0;
    while (times.size() < least_runs || total < least_ms) {
        const double start = clock();
        body();
        times.push_back(clock() - start);
        total += times.back();
    }
    const auto middle = times.begin() + static_cast<long>(times.size() / 2);
    std::nth_element(times.begin(), middle, times.end());
    return *middle;
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
