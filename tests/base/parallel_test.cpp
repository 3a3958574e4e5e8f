// SPDX-License-Identifier: MIT
#include "base/parallel.hpp"

#include <doctest/doctest.h>

#include <atomic>
#include <cmath>
#include <cstring>
#include <thread>
#include <vector>

using rakeline::base::parallel_chunks;

namespace {

std::vector<double> computed(std::size_t count, unsigned threads) {
    std::vector<double> out(count, -1.0);
    parallel_chunks(
        count, 1,
        [&](std::size_t begin, std::size_t end) {
            for (std::size_t i = begin; i < end; ++i)
                out[i] = std::sin(static_cast<double>(i)) / (1.0 + static_cast<double>(i));
        },
        threads);
    return out;
}

}  // namespace

TEST_SUITE("base/parallel") {
    TEST_CASE("property: 1, 2, 3 and 7 threads give the same bits") {
        const std::vector<double> alone = computed(1001, 1);
        for (const unsigned threads : {2u, 3u, 7u, 0u}) {
            INFO(threads, " threads");
            const std::vector<double> shared = computed(1001, threads);
            CHECK(std::memcmp(alone.data(), shared.data(), alone.size() * sizeof(double)) == 0);
        }
    }

    TEST_CASE("property: every index is visited once, for any number of threads and items") {
        for (const std::size_t count : {0u, 1u, 2u, 6u, 7u, 8u, 100u}) {
            for (const unsigned threads : {1u, 2u, 3u, 7u}) {
                INFO(count, " items, ", threads, " threads");
                std::vector<std::atomic<int>> visits(count);
                parallel_chunks(
                    count, 1,
                    [&](std::size_t begin, std::size_t end) {
                        for (std::size_t i = begin; i < end; ++i)
                            ++visits[i];
                    },
                    threads);
                for (const auto& visit : visits)
                    CHECK(visit == 1);
            }
        }
    }

    TEST_CASE("small counts run on the caller alone, larger ones on as many as asked for") {
        const auto threads_used = [](std::size_t count) {
            std::atomic<int> calls = 0;
            std::atomic<int> elsewhere = 0;
            const auto caller = std::this_thread::get_id();
            parallel_chunks(
                count, 100,
                [&](std::size_t, std::size_t) {
                    ++calls;
                    if (std::this_thread::get_id() != caller) ++elsewhere;
                },
                3);
            CHECK(elsewhere == calls - 1);
            return calls.load();
        };
        CHECK(threads_used(99) == 1);
        CHECK(threads_used(199) == 1);
        CHECK(threads_used(200) == 2);
        CHECK(threads_used(100000) == 3);
    }
}
