// SPDX-License-Identifier: MIT
#include "room/wheelchair_places.hpp"

namespace rakeline::room {
namespace {

int parts_of(int over, int part) {
    return (over + part - 1) / part;
}

bool beside(const SeatPlan& plan, const std::vector<SeatBlock>& blocks, int a, int b) {
    const Seat& one = plan.seats[static_cast<std::size_t>(a)];
    const Seat& other = plan.seats[static_cast<std::size_t>(b)];
    const Row& row = plan.rows[static_cast<std::size_t>(one.row)];
    const double pitch_m = blocks[static_cast<std::size_t>(row.block)].seat_pitch_m;
    return glm::distance(one.floor, other.floor) < kBesidePitches * pitch_m;
}

}  // namespace

std::optional<int> wheelchair_places_wanted(int seats) {
    struct Bracket {
        int up_to;
        int places;
    };
    static constexpr Bracket kTable[] = {{25, 1}, {50, 2}, {150, 4}, {300, 5}, {500, 6}};
    if (seats < 4) return std::nullopt;
    for (const Bracket& bracket : kTable) {
        if (seats <= bracket.up_to) return bracket.places;
    }
    if (seats <= 5000) return 6 + parts_of(seats - 500, 150);
    return 36 + parts_of(seats - 5000, 200);
}

std::vector<int> places_without_companion(const SeatPlan& plan,
                                          const std::vector<SeatBlock>& blocks) {
    std::vector<int> alone;
    for (const Row& row : plan.rows) {
        const int last = row.first_seat + row.seat_count - 1;
        int taken = -1;  // the companion seat of the place before
        for (int seat = row.first_seat; seat <= last; ++seat) {
            const auto wheelchair = [&](int s) {
                return plan.seats[static_cast<std::size_t>(s)].wheelchair;
            };
            const auto is_free = [&](int s) {
                return s >= row.first_seat && s <= last && s != taken && !wheelchair(s) &&
                       beside(plan, blocks, seat, s);
            };
            if (!wheelchair(seat)) continue;
            if (is_free(seat - 1)) {
                taken = seat - 1;
            } else if (is_free(seat + 1)) {
                taken = seat + 1;
            } else {
                alone.push_back(seat);
            }
        }
    }
    return alone;
}

}  // namespace rakeline::room
