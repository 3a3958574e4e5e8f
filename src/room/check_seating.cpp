// SPDX-License-Identifier: MIT
#include "room/check_seating.hpp"

#include "room/check_internal.hpp"
#include "room/field_fault.hpp"
#include "room/seat_plan.hpp"

#include <algorithm>
#include <cctype>
#include <charconv>
#include <map>
#include <set>

namespace rakeline::room {
namespace {

/// More than any hall has; every seat is studied against every format.
constexpr long long kMostSeats = 20000;

int seats_in_row(const SeatBlock& block, int row) {
    return block.seats_per_row + row * block.seats_added_per_row;
}

std::string letter_of(const SeatBlock& block, int row) {
    return row_letter(row_index(block.first_row).value_or(0) + row);
}

/// "A1 to A12".
std::string seats_of_row(const SeatBlock& block, int row) {
    const std::string letter = letter_of(block, row);
    const int last = block.first_seat_number + seats_in_row(block, row) - 1;
    return letter + std::to_string(block.first_seat_number) + " to " + letter +
           std::to_string(last);
}

bool has_seat(const SeatBlock& block, int letter, int number) {
    const int row = letter - row_index(block.first_row).value_or(0);
    return row >= 0 && row < block.rows && number >= block.first_seat_number &&
           number < block.first_seat_number + seats_in_row(block, row);
}

void check_rows(const SeatBlock& block, const std::string& path, Findings& out) {
    if (!row_index(block.first_row)) {
        out.add(path + ".first_row", quoted(block.first_row) + " is no row letter",
                "write A to Z, or AA, AB and so on");
    }
    const int last = block.rows - 1;
    if (seats_in_row(block, last) < 1) {
        out.add(path + ".seats_added_per_row",
                "row " + std::to_string(block.rows) + " of the block would have " +
                    std::to_string(seats_in_row(block, last)) + " seats",
                "take fewer seats off a row, or end the block sooner");
    }
}

void check_aisles(const SeatBlock& block, const std::string& path, Findings& out) {
    std::set<int> places;
    for (std::size_t i = 0; i < block.aisles.size(); ++i) {
        const int seat = block.aisles[i].after_seat;
        const std::string field = at(path + ".aisles", i, "after_seat");
        if (seat >= block.seats_per_row) {
            out.add(field,
                    "seat " + std::to_string(seat) +
                        " is not followed by another in a first row of " +
                        std::to_string(block.seats_per_row),
                    "put the aisle between two seats");
        } else if (!places.insert(seat).second) {
            out.add(field, "there is an aisle after seat " + std::to_string(seat) + " already",
                    "keep one of the two, and make it wider");
        }
    }
}

void check_cross_aisles(const SeatBlock& block, const std::string& path, Findings& out) {
    std::set<int> places;
    for (std::size_t i = 0; i < block.cross_aisles.size(); ++i) {
        const int row = block.cross_aisles[i].after_row;
        const std::string field = at(path + ".cross_aisles", i, "after_row");
        if (row >= block.rows) {
            out.add(field,
                    "row " + std::to_string(row) + " is not followed by another in a block of " +
                        std::to_string(block.rows) + " rows",
                    "put the cross aisle between two rows");
        } else if (!places.insert(row).second) {
            out.add(field, "there is a cross aisle after row " + std::to_string(row) + " already",
                    "keep one of the two, and make it wider");
        }
    }
}

void check_wheelchairs(const SeatBlock& block, const std::string& path, Findings& out) {
    std::set<std::pair<int, int>> places;
    for (std::size_t i = 0; i < block.wheelchair_places.size(); ++i) {
        const WheelchairPlace& place = block.wheelchair_places[i];
        const std::string name = place.row + std::to_string(place.seat);
        const std::string field = at(path + ".wheelchair_places", i);
        const auto letter = row_index(place.row);
        if (!letter || !has_seat(block, *letter, place.seat)) {
            out.add(field, "the block has no seat " + shortened(name),
                    "its rows run from " + seats_of_row(block, 0) + " to " +
                        seats_of_row(block, block.rows - 1));
        } else if (!places.emplace(*letter, place.seat).second) {
            out.add(field, shortened(name) + " is a wheelchair place already",
                    "keep one of the two");
        }
    }
}

/// Seat numbers of one row, and the block that it belongs to.
struct Span {
    std::size_t block = 0;
    int row = 0;
    int first = 0;
    int last = 0;
};

void check_doubled_seats(const std::vector<SeatBlock>& blocks, Findings& out) {
    std::map<int, std::vector<Span>> by_letter;
    std::set<std::pair<std::size_t, std::size_t>> told;
    for (std::size_t b = 0; b < blocks.size(); ++b) {
        const auto first_letter = row_index(blocks[b].first_row);
        if (!first_letter) continue;
        for (int row = 0; row < blocks[b].rows; ++row) {
            const int first = blocks[b].first_seat_number;
            const Span span{b, row, first, first + seats_in_row(blocks[b], row) - 1};
            auto& others = by_letter[*first_letter + row];
            for (const Span& other : others) {
                const bool overlap = span.first <= other.last && other.first <= span.last;
                if (!overlap || !told.emplace(other.block, b).second) continue;
                out.add(at("seating", b),
                        "its seats " + seats_of_row(blocks[b], row) + " share names with " +
                            at("seating", other.block),
                        "change first_row or first_seat_number, so that each seat has one name");
            }
            others.push_back(span);
        }
    }
}

long long seat_count(const std::vector<SeatBlock>& blocks) {
    long long count = 0;
    for (const SeatBlock& block : blocks) {
        for (int row = 0; row < block.rows; ++row)
            count += std::max(0, seats_in_row(block, row));
    }
    return count;
}

void check_reference(const Layout& layout, Findings& out) {
    const std::string& name = layout.audience.reference_seat;
    if (name.empty()) return;
    const auto digits = name.find_first_of("0123456789");
    const std::string tail = digits == std::string::npos ? "" : name.substr(digits);
    int number = 0;
    const auto [end, error] = std::from_chars(tail.data(), tail.data() + tail.size(), number);
    const auto letter = row_index(name.substr(0, digits));
    const bool is_name = letter && error == std::errc{} && end == tail.data() + tail.size();
    if (is_name && std::ranges::any_of(layout.seating, [&](const SeatBlock& block) {
            return has_seat(block, *letter, number);
        })) {
        return;
    }
    out.add("audience.reference_seat", "the room has no seat " + quoted(name),
            "name one by row letter and number, or leave it empty for the middle");
}

void check_block(const SeatBlock& block, const std::string& path, Findings& out) {
    check_rows(block, path, out);
    check_aisles(block, path, out);
    check_cross_aisles(block, path, out);
    check_wheelchairs(block, path, out);
}

}  // namespace

void check_seating(const Layout& layout, Findings& out) {
    check_names("seating", layout.seating, out);
    const std::size_t before = out.problems.size();
    for (std::size_t i = 0; i < layout.seating.size(); ++i)
        check_block(layout.seating[i], at("seating", i), out);
    check_doubled_seats(layout.seating, out);
    check_reference(layout, out);
    const long long count = seat_count(layout.seating);
    if (count > kMostSeats) {
        out.add("seating",
                std::to_string(count) + " seats are more than the 20000 that can be studied",
                "take out rows or seats");
    }
    if (out.problems.size() == before) check_seat_places(layout, out);
}

}  // namespace rakeline::room
