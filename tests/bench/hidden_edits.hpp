// SPDX-License-Identifier: MIT
#pragma once

#include "bench/hidden_rooms.hpp"
#include "bench/timing.hpp"
#include "sight/hidden_cache.hpp"
#include "sight/hidden_room.hpp"

#include <cstdio>

/// How much cheaper one edit is than all seats from scratch, on one thread.
namespace rakeline::bench {

inline double median(std::vector<double> values) {
    const auto middle = values.begin() + static_cast<long>(values.size() / 2);
    std::nth_element(values.begin(), middle, values.end());
    return *middle;
}

/// Seats [begin, end) with their people.
struct Part {
    std::size_t begin = 0, end = 0;
};

inline void raise(tests::SeatedRoom& room, Part part, double by_m) {
    for (std::size_t i = part.begin; i < part.end; ++i) {
        room.eyes[i].y += by_m;
        room.heads[i].centre.y += by_m;
        if (room.walls.empty()) continue;
        room.walls[i].from.y += by_m;
        room.walls[i].to.y += by_m;
    }
}

struct EditTimes {
    double first_ms = 0.0;    ///< the first time that the part is moved
    double again_ms = 0.0;    ///< every further time
    double bound_ms = 0.0;    ///< the seats that moved, from scratch: no cache can do without
    std::size_t changed = 0;  ///< other seats of which the first move changes the result
};

inline double scratch_ms(const tests::SeatedRoom& room, Part part) {
    const sight::HiddenInput in = room.input();
    const sight::hidden::Room ready(in, 128, sight::hidden::best_instruction_set());
    sight::hidden::SeatBlocks blocks;
    const auto seats = [&] {
        for (std::size_t i = part.begin; i < part.end; ++i)
            ready.blocks(ready.place(static_cast<int>(i)), ready.all_blocks(), false, blocks);
    };
    return median_ms(own_ms, seats, 9, 0.0);
}

inline EditTimes edit_times(const tests::SeatedRoom& room, Part part) {
    constexpr int kTimes = 15;
    EditTimes out;
    std::vector<double> first;
    std::vector<double> again;
    for (int time = 0; time < kTimes; ++time) {
        tests::SeatedRoom moved = room;
        sight::HiddenCache cache({128, 1});
        const auto before = cache.update(moved.input());
        for (int k = 0; k < 4; ++k) {
            raise(moved, part, 0.03);
            const double start = own_ms();
            const auto& after = cache.update(moved.input());
            (k == 0 ? first : again).push_back(own_ms() - start);
            if (k > 0) continue;
            out.changed = 0;
            for (std::size_t i = 0; i < after.size(); ++i)
                out.changed += (i < part.begin || i >= part.end) && after[i] != before[i] ? 1 : 0;
        }
    }
    out.first_ms = median(first);
    out.again_ms = median(again);
    out.bound_ms = scratch_ms(room, part);
    return out;
}

/// Medians over the parts of how many times cheaper; of the seats changed, their number.
inline void print_edits_of(const char* what,
                           const tests::SeatedRoom& room,
                           const std::vector<Part>& parts) {
    const auto all = [&] { sight::hidden_picture(room.input(), {128, 1}); };
    const double scratch = median_ms(own_ms, all, 9, 50.0);
    std::vector<double> first;
    std::vector<double> again;
    std::vector<double> bound;
    std::vector<double> changed;
    for (const Part part : parts) {
        const EditTimes times = edit_times(room, part);
        first.push_back(scratch / times.first_ms);
        again.push_back(scratch / times.again_ms);
        bound.push_back(scratch / times.bound_ms);
        changed.push_back(static_cast<double>(times.changed));
    }
    std::printf("      %-4s %6.1f | %6.1f | %6.1f | %4.0f\n", what, median(first), median(again),
                median(bound), median(changed));
}

inline void print_edits() {
    std::printf(
        "\nraised by 3 cm, 128 columns, one thread: times cheaper than from scratch, medians\n"
        "      first move | further moves | moved seats alone from scratch | others changed\n");
    constexpr std::size_t kRow = 25;
    for (const bool seat_backs : {false, true}) {
        for (TimedRoom timed : rooms_of(20, kRow)) {
            timed.shape.seat_backs = seat_backs;
            const auto room = tests::seated_room(timed.shape, 1);
            std::vector<Part> rows;
            std::vector<Part> seats;
            for (std::size_t i = 0; i < room.eyes.size(); i += kRow)
                rows.push_back({i, i + kRow});
            for (std::size_t k = 0; k < 60; ++k)
                seats.push_back({(k * 197) % room.eyes.size(), (k * 197) % room.eyes.size() + 1});
            std::printf("    %s%s\n", timed.name.c_str(), seat_backs ? ", seat backs" : "");
            print_edits_of("seat", room, seats);
            print_edits_of("row", room, rows);
        }
    }
}

}  // namespace rakeline::bench
