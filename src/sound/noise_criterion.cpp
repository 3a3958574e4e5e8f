// SPDX-License-Identifier: MIT
#include "sound/noise_criterion.hpp"

#include "base/assert.hpp"

#include <algorithm>
#include <array>

namespace rakeline::sound {
namespace {

constexpr int kFirst = 15;
constexpr int kStep = 5;
constexpr std::array<double, 8> kBands_hz = {63, 125, 250, 500, 1000, 2000, 4000, 8000};
/// A row a curve, NC-15 to NC-50, dB.
constexpr std::array<std::array<double, 8>, 8> kCurves = {{
    {47, 36, 29, 22, 17, 14, 12, 11},
    {51, 40, 33, 26, 22, 19, 17, 16},
    {54, 44, 37, 31, 27, 24, 22, 21},
    {57, 48, 41, 35, 31, 29, 28, 27},
    {60, 52, 45, 40, 36, 34, 33, 32},
    {64, 56, 50, 45, 41, 39, 38, 37},
    {67, 60, 54, 49, 46, 44, 43, 42},
    {71, 64, 58, 54, 51, 49, 48, 47},
}};

}  // namespace

std::optional<double> noise_criterion_db(int criterion, double frequency_hz) {
    const int last = kFirst + kStep * (static_cast<int>(kCurves.size()) - 1);
    RL_ASSERT(criterion >= kFirst && criterion <= last);
    const auto* found = std::find(kBands_hz.begin(), kBands_hz.end(), frequency_hz);
    if (found == kBands_hz.end()) return std::nullopt;
    const auto band = static_cast<std::size_t>(found - kBands_hz.begin());
    const auto below = static_cast<std::size_t>((criterion - kFirst) / kStep);
    const std::size_t above = std::min(below + 1, kCurves.size() - 1);
    const double share = static_cast<double>((criterion - kFirst) % kStep) / kStep;
    return kCurves[below][band] + share * (kCurves[above][band] - kCurves[below][band]);
}

}  // namespace rakeline::sound
