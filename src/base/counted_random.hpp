// SPDX-License-Identifier: MIT
#pragma once

#include <cstdint>
#include <initializer_list>

/// Random numbers by counting: number `i` of a stream follows from the stream's key and `i` alone,
/// so that it is the same whoever asks for it, in whatever order and on whatever thread.
namespace rakeline::base {

/// A stream is SplitMix64 from a start that the key's words are mixed into one after the other.
/// Source: Steele, Lea and Flood, "Fast splittable pseudorandom number generators", 2014, with the
/// mixing constants of its 64-bit variant 13, from memory (held to known outputs in the tests).
class CountedRandom {
public:
    /// Streams of different keys have nothing to do with one another.
    explicit CountedRandom(std::initializer_list<std::uint64_t> key);

    std::uint64_t bits(std::uint64_t i) const;

    /// Evenly over (0, 1), never 0 or 1: the middle of one of 2^53 equal parts.
    double uniform(std::uint64_t i) const;

    /// By the standard normal distribution: its quantile at uniform(i). Within 8.3 of 0.
    double normal(std::uint64_t i) const;

private:
    std::uint64_t start_ = 0;
};

}  // namespace rakeline::base
