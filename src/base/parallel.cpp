// SPDX-License-Identifier: MIT
#include "base/parallel.hpp"

#include "base/assert.hpp"

#include <algorithm>
#include <thread>
#include <vector>

namespace rakeline::base {
namespace {

/// Asked once: the library reads it from a file each time.
unsigned machine_threads() {
    static const unsigned count = std::max(1u, std::thread::hardware_concurrency());
    return count;
}

}  // namespace

void parallel_chunks(std::size_t count,
                     std::size_t least_chunk,
                     const std::function<void(std::size_t, std::size_t)>& body,
                     unsigned threads) {
    RL_ASSERT(least_chunk > 0);
    const std::size_t wanted = threads ? threads : machine_threads();
    const std::size_t parts = std::clamp<std::size_t>(count / least_chunk, 1, wanted);
    const auto edge = [&](std::size_t part) { return count * part / parts; };
    std::vector<std::jthread> helpers;
    helpers.reserve(parts - 1);
    for (std::size_t part = 1; part < parts; ++part) {
        helpers.emplace_back([&, part] { body(edge(part), edge(part + 1)); });
    }
    body(0, edge(1));
}

}  // namespace rakeline::base
