// SPDX-License-Identifier: MIT
#pragma once

#include <cstddef>
#include <functional>

namespace rakeline::base {

/// Calls body(begin, end) over chunks of [0, count) on up to `threads` threads (0: as many as the
/// machine has) and returns when all are done. The body writes slot i for index i and nothing
/// else, so the result is the same, bit for bit, for every number of threads; sums are taken
/// afterwards, in order, by the caller. Counts below `least_chunk` run on the caller alone.
void parallel_chunks(std::size_t count,
                     std::size_t least_chunk,
                     const std::function<void(std::size_t begin, std::size_t end)>& body,
                     unsigned threads = 0);

}  // namespace rakeline::base
