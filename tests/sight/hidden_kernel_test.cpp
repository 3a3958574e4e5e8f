// SPDX-License-Identifier: MIT
/// The fast kernel against the plain way, and against itself on other instruction sets.
#include "sight/hidden_room.hpp"
#include "sight/seated_room.hpp"
#include "support/check.hpp"

using namespace rakeline;
using sight::hidden::InstructionSet;
using tests::absolute;
using tests::check_close;

namespace {

std::vector<sight::SeatHidden> by_kernel(const tests::SeatedRoom& room,
                                         int columns,
                                         InstructionSet set) {
    const sight::HiddenInput in = room.input();
    const sight::hidden::Room ready(in, columns, set);
    std::vector<sight::SeatHidden> out;
    for (std::size_t i = 0; i < room.eyes.size(); ++i) {
        sight::hidden::SeatBlocks blocks;
        const sight::hidden::EyePlace place = ready.place(static_cast<int>(i));
        ready.blocks(place, ready.all_blocks(), false, blocks);
        out.push_back(ready.summed(place, blocks));
    }
    return out;
}

void check_against_plain_way(const tests::SeatedRoom& room, int columns) {
    const sight::HiddenInput in = room.input();
    const auto frame = sight::hidden::picture_columns(in.surface, in.opening, columns);
    const auto fast = by_kernel(room, columns, sight::hidden::best_instruction_set());
    for (std::size_t i = 0; i < fast.size(); ++i) {
        const auto plain = sight::hidden::exact_seat(in, frame, static_cast<int>(i));
        INFO("seat ", i);
        check_close(fast[i].hidden_fraction, plain.hidden_fraction,
                    absolute(1e-5, "single precision"));
        check_close(fast[i].clear_above_m, plain.clear_above_m,
                    absolute(1e-3, "single precision where an outline is all but upright"));
        CHECK(fast[i].sees_back == plain.sees_back);
    }
}

}  // namespace

TEST_SUITE("sight/hidden_kernel") {
    TEST_CASE("property: every instruction set gives the same bits") {
        for (unsigned seed = 1; seed <= 30; ++seed) {
            const auto room = tests::seated_room(tests::random_shape(seed), seed);
            for (const int columns : {8, 72, 128, 256}) {
                INFO("seed ", seed, " columns ", columns);
                const auto plain = by_kernel(room, columns, InstructionSet::plain);
                for (const auto set : {InstructionSet::sse42, InstructionSet::avx2}) {
                    if (!sight::hidden::has(set)) continue;
                    CHECK(by_kernel(room, columns, set) == plain);
                }
            }
        }
    }

    TEST_CASE("property: the kernel agrees with the plain way in doubles at every seat") {
        for (unsigned seed = 1; seed <= 40; ++seed) {
            INFO("seed ", seed);
            check_against_plain_way(tests::seated_room(tests::random_shape(seed), seed), 64);
        }
    }

    TEST_CASE("the kernel agrees with the plain way in full rooms of each rake") {
        for (const double rake : {0.0, 0.0873, 0.2094}) {
            tests::RoomShape shape;
            shape.rake_rad = rake;
            INFO("rake ", rake);
            check_against_plain_way(tests::seated_room(shape, 1), 128);
        }
    }

    TEST_CASE("more separate intervals than the kernel keeps go the plain way") {
        // Six small heads over one another: in the middle column they are six intervals.
        tests::SeatedRoom room = tests::seated_room({.rows = 1, .seats = 1}, 1);
        room.eyes[0] = {0.0, 3.0, 10.0};
        room.heads.clear();
        for (int i = 0; i < 6; ++i)
            room.heads.push_back({{0.0, 2.6 + 0.3 * i, 6.0}, 0.1, 0.1, -1});
        check_against_plain_way(room, 64);
        const auto outline = sight::clear_outline(room.input(), 0, 65);
        CHECK(outline.columns[32].size() >= 5);
    }
}
