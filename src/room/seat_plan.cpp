// SPDX-License-Identifier: MIT
#include "room/seat_plan.hpp"

#include "base/assert.hpp"
#include "room/platforms.hpp"
#include "room/rows.hpp"

#include <algorithm>
#include <cctype>
#include <cmath>

namespace rakeline::room {
namespace {

constexpr int kLetters = 26;

char upper(char c) {
    return static_cast<char>(std::toupper(static_cast<unsigned char>(c)));
}

bool same_name(std::string_view a, std::string_view b) {
    return std::equal(a.begin(), a.end(), b.begin(), b.end(),
                      [](char p, char q) { return upper(p) == upper(q); });
}

bool is_wheelchair(const SeatBlock& block, const std::string& letter, int number) {
    return std::ranges::any_of(block.wheelchair_places, [&](const WheelchairPlace& place) {
        return place.seat == number && same_name(place.row, letter);
    });
}

void add_seats(const SeatPlanInput& in,
               const SeatBlock& block,
               const RowLine& line,
               int row_of_block,
               SeatPlan& plan) {
    const int row = static_cast<int>(plan.rows.size()) - 1;
    const std::string& letter = plan.rows.back().letter;
    int number = block.first_seat_number;
    for (const double along_m : seat_offsets(block, row_of_block, line.seats)) {
        const PlaceAlong place = place_along(block, line, along_m);
        Seat seat;
        seat.floor = place.floor;
        seat.facing = place.facing;
        seat.name = letter + std::to_string(number);
        seat.row = row;
        seat.number = number;
        seat.wheelchair = is_wheelchair(block, letter, number);
        seat.floor.y = floor_under(in, block, line, seat.floor.z);
        seat.eye = seat.floor;
        seat.eye.y +=
            seat.wheelchair ? in.audience.wheelchair_eye_height_m : in.audience.eye_height_m;
        plan.seats.push_back(seat);
        ++number;
    }
}

Row row_record(const SeatPlanInput& in, const RowLine& line, int block, int n, SeatPlan& plan) {
    const SeatBlock& described = in.seating[static_cast<std::size_t>(block)];
    const int index = static_cast<int>(plan.rows.size());
    Row row;
    row.letter = row_letter(row_index(described.first_row).value_or(0) + n);
    row.block = block;
    row.first_seat = static_cast<int>(plan.seats.size());
    row.seat_count = line.seats;
    row.centre_floor = {described.across_m, line.up_m, line.back_m};
    row.centre_eye = row.centre_floor + glm::dvec3(0.0, in.audience.eye_height_m, 0.0);
    if (n >= 1) row.row_in_front = index - 1;
    if (n >= 2) row.second_row_in_front = index - 2;
    return row;
}

/// A distance in whole nanometres: two seats as far from the middle as each other are equal,
/// whatever the last bits of their places say, and the first of them is taken.
long long nanometres(double metres) {
    return std::llround(std::abs(metres) * 1e9);
}

/// The row nearest to the middle between the first and the last of all rows; of equals the first.
int middle_row(const std::vector<Row>& rows) {
    const auto back = [](const Row& row) { return row.centre_eye.z; };
    const auto [first, last] = std::ranges::minmax_element(rows, {}, back);
    const double middle = 0.5 * (back(*first) + back(*last));
    const auto off_middle = [&](const Row& row) { return nanometres(back(row) - middle); };
    return static_cast<int>(std::ranges::min_element(rows, {}, off_middle) - rows.begin());
}

/// Whether the seats of `row` stand to both sides of `across_m`.
bool spans(const SeatPlan& plan, const Row& row, double across_m, double reach_m) {
    if (row.seat_count == 0) return false;
    const auto first = static_cast<std::size_t>(row.first_seat);
    const auto last = first + static_cast<std::size_t>(row.seat_count) - 1;
    return plan.seats[first].floor.x - reach_m <= across_m &&
           across_m <= plan.seats[last].floor.x + reach_m;
}

/// The nearest row of another block on the floor that stands before the middle of this one.
std::optional<int> row_of_block_ahead(const SeatPlanInput& in,
                                      const SeatPlan& plan,
                                      const Row& row) {
    const auto block = [&](const Row& r) -> const SeatBlock& {
        return in.seating[static_cast<std::size_t>(r.block)];
    };
    std::optional<int> nearest;
    for (std::size_t i = 0; i < plan.rows.size(); ++i) {
        const Row& other = plan.rows[i];
        if (other.block == row.block || block(other).raised) continue;
        if (other.centre_eye.z + 0.5 * block(row).row_spacing_m > row.centre_eye.z) continue;
        if (!spans(plan, other, row.centre_floor.x, 0.5 * block(other).seat_pitch_m)) continue;
        if (nearest &&
            plan.rows[static_cast<std::size_t>(*nearest)].centre_eye.z >= other.centre_eye.z) {
            continue;
        }
        nearest = static_cast<int>(i);
    }
    return nearest;
}

/// First rows look over the block ahead of them, where there is one; a balcony's over its own
/// front.
void link_blocks(const SeatPlanInput& in, SeatPlan& plan) {
    for (Row& row : plan.rows) {
        const SeatBlock& block = in.seating[static_cast<std::size_t>(row.block)];
        if (!row.row_in_front && !block.raised)
            row.row_in_front = row_of_block_ahead(in, plan, row);
    }
    for (Row& row : plan.rows) {
        if (!row.row_in_front) continue;
        row.second_row_in_front =
            plan.rows[static_cast<std::size_t>(*row.row_in_front)].row_in_front;
    }
}

}  // namespace

SeatPlan place_seats(const SeatPlanInput& in) {
    SeatPlan plan;
    std::vector<std::vector<RowLine>> lines;
    for (const SeatBlock& block : in.seating) {
        const int block_index = static_cast<int>(lines.size());
        lines.push_back(row_lines(in, block));
        for (int n = 0; n < static_cast<int>(lines.back().size()); ++n) {
            const RowLine& line = lines.back()[static_cast<std::size_t>(n)];
            plan.rows.push_back(row_record(in, line, block_index, n, plan));
            add_seats(in, block, line, n, plan);
        }
    }
    link_blocks(in, plan);
    plan.platforms = platforms(in, lines);
    return plan;
}

std::optional<int> find_seat(const SeatPlan& plan, std::string_view name) {
    const auto found = std::ranges::find_if(
        plan.seats, [&](const Seat& seat) { return same_name(seat.name, name); });
    if (found == plan.seats.end()) return std::nullopt;
    return static_cast<int>(found - plan.seats.begin());
}

std::optional<int> reference_seat(const SeatPlan& plan, const Audience& audience) {
    if (const auto chosen = find_seat(plan, audience.reference_seat)) return chosen;
    if (plan.rows.empty()) return std::nullopt;
    const Row& row = plan.rows[static_cast<std::size_t>(middle_row(plan.rows))];
    const auto first = plan.seats.begin() + row.first_seat;
    const auto off_centre = [&](const Seat& seat) {
        return nanometres(seat.floor.x - row.centre_floor.x);
    };
    const auto found = std::ranges::min_element(first, first + row.seat_count, {}, off_centre);
    return static_cast<int>(found - plan.seats.begin());
}

std::string row_letter(int index) {
    RL_ASSERT(index >= 0);
    std::string letters;
    for (int rest = index + 1; rest > 0; rest = (rest - 1) / kLetters) {
        letters.insert(letters.begin(), static_cast<char>('A' + (rest - 1) % kLetters));
    }
    return letters;
}

std::optional<int> row_index(std::string_view letter) {
    // Four letters are more rows than a room can have, and keep the number within an int.
    if (letter.empty() || letter.size() > 4) return std::nullopt;
    int index = 0;
    for (const char c : letter) {
        const int place = upper(c) - 'A';
        if (place < 0 || place >= kLetters) return std::nullopt;
        index = index * kLetters + place + 1;
    }
    return index - 1;
}

double half_width_at(const Hall& hall, double back_m) {
    return 0.5 * hall.width_m + back_m * std::tan(hall.splay_rad);
}

double profile_height(const std::vector<FloorPoint>& profile, double back_m) {
    if (profile.empty()) return 0.0;
    if (back_m <= profile.front().back_m) return profile.front().up_m;
    for (std::size_t i = 1; i < profile.size(); ++i) {
        const FloorPoint& a = profile[i - 1];
        const FloorPoint& b = profile[i];
        if (back_m > b.back_m) continue;
        const double length = b.back_m - a.back_m;
        const double t = length > 0.0 ? (back_m - a.back_m) / length : 1.0;
        return a.up_m + t * (b.up_m - a.up_m);
    }
    return profile.back().up_m;
}

}  // namespace rakeline::room
