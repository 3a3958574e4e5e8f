// SPDX-License-Identifier: MIT
#include "base/counted_random.hpp"

#include "base/special.hpp"

#include <cmath>

namespace rakeline::base {
namespace {

constexpr std::uint64_t kStep = 0x9e3779b97f4a7c15;  // 2^64 over the golden ratio, odd

std::uint64_t mixed(std::uint64_t x) {
    x = (x ^ (x >> 30)) * 0xbf58476d1ce4e5b9;
    x = (x ^ (x >> 27)) * 0x94d049bb133111eb;
    return x ^ (x >> 31);
}

}  // namespace

CountedRandom::CountedRandom(std::initializer_list<std::uint64_t> key) {
    bool first = true;
    for (const std::uint64_t word : key) {
        // A key of one word is SplitMix64 with that seed, as published.
        start_ = first ? word : mixed(start_ + kStep) ^ word;
        first = false;
    }
}

std::uint64_t CountedRandom::bits(std::uint64_t i) const {
    return mixed(start_ + (i + 1) * kStep);
}

double CountedRandom::uniform(std::uint64_t i) const {
    return std::ldexp(static_cast<double>(bits(i) >> 11) + 0.5, -53);
}

double CountedRandom::normal(std::uint64_t i) const {
    return normal_quantile(uniform(i));
}

}  // namespace rakeline::base
