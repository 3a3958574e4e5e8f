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
        if (room.walls.size() < room.eyes.size()) continue;  // no seat backs
        room.walls[i].from.y += by_m;
        room.walls[i].to.y += by_m;
    }
}

/// ms of all the seats that move, from scratch: no cache can do without.
inline double scratch_ms(const tests::SeatedRoom& room, Part part) {
    const sight::HiddenInput in = room.input();
    const sight::hidden::Room ready(in, 128, sight::hidden::best_instruction_set());
    sight::hidden::SeatBlocks blocks;
    const auto seats = [&] {
        for (std::size_t i = part.begin; i < part.end; ++i)
            ready.blocks(ready.place(static_cast<int>(i)), ready.all_blocks(), false, blocks);
    };
    return median_ms(own_ms, seats, 9, 1.0);
}

/// One room under edits, up and down by turns.
class Edited {
public:
    explicit Edited(const tests::SeatedRoom& room) : room_(room), cache_({128, 1}) {
        cache_.update(room_.input());
    }

    double move_ms(Part part, bool up) {
        raise(room_, part, up ? 0.03 : -0.03);
        const double start = own_ms();
        cache_.update(room_.input());
        return own_ms() - start;
    }

    /// Median over its moves, each after a move of another part.
    std::vector<double> first_ms(const std::vector<Part>& parts) {
        std::vector<std::vector<double>> times(parts.size());
        for (int turn = 0; turn < 16; ++turn) {
            for (std::size_t k = 0; k < parts.size(); ++k)
                times[k].push_back(move_ms(parts[k], turn % 2 == 0));
        }
        std::vector<double> out;
        for (const auto& some : times)
            out.push_back(median(some));
        return out;
    }

    /// Of all but the first of many moves of the same part.
    double further_ms(Part part) {
        std::vector<double> times;
        move_ms(part, true);
        for (int turn = 1; turn < 32; ++turn)
            times.push_back(move_ms(part, turn % 2 == 0));
        return median(times);
    }

    /// Seats beside the part whose result a move changes.
    std::size_t others_changed(Part part) {
        const auto before = cache_.update(room_.input());
        move_ms(part, true);
        const auto after = cache_.update(room_.input());
        move_ms(part, false);
        std::size_t out = 0;
        for (std::size_t i = 0; i < after.size(); ++i)
            out += (i < part.begin || i >= part.end) && after[i] != before[i] ? 1U : 0U;
        return out;
    }

private:
    tests::SeatedRoom room_;
    sight::HiddenCache cache_;
};

/// Medians over the parts.
inline void print_edits_of(const char* what,
                           const tests::SeatedRoom& room,
                           const std::vector<Part>& parts) {
    const auto all = [&] { sight::hidden_picture(room.input(), {128, 1}); };
    const double scratch = median_ms(own_ms, all, 9, 50.0);
    Edited edited(room);
    std::vector<double> first;
    for (const double ms : edited.first_ms(parts))
        first.push_back(scratch / ms);
    std::vector<double> further;
    std::vector<double> bound;
    std::vector<double> changed;
    for (const Part part : parts) {
        further.push_back(scratch / edited.further_ms(part));
        bound.push_back(scratch / scratch_ms(room, part));
        changed.push_back(static_cast<double>(edited.others_changed(part)));
    }
    std::printf("      %-4s %10.1f | %13.1f | %11.1f | %6.0f\n", what, median(first),
                median(further), median(bound), median(changed));
}

inline void print_edits() {
    std::printf(
        "\nraised or lowered by 3 cm, 128 columns, one thread: times cheaper than from scratch\n"
        "(medians); those who moved alone, from scratch; how many others it changes\n"
        "           first move | further moves | moved alone | others\n");
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
