// SPDX-License-Identifier: MIT
#include "sight/people.hpp"
#include "study/sight_cells.hpp"

#include <algorithm>
#include <vector>

namespace rakeline::study {
namespace {

using base::Unit;
using sight::Chance;

constexpr Per kFormat{.format = true};

const sight::FormatCrowd* crowd_of(const Cell& c) {
    if (!c.study.crowd || c.study.seats.seats.empty()) return nullptr;
    return &c.study.crowd->formats.at(static_cast<std::size_t>(c.format));
}

/// Who was drawn, and what has to be known about them.
void record_people(const Cell& c, Working& w) {
    if (!w.recording()) return;
    const sight::CrowdStudy& study = *c.study.crowd;
    const room::Crowd& crowd = study.crowd;
    const double people =
        static_cast<double>(study.drawn) * static_cast<double>(c.study.seats.seats.size());
    w.input("N", "people drawn for the whole room", people, Unit::count);
    w.input("w", "share of women", crowd.women_fraction, Unit::fraction);
    w.input("t", "share of the seats that are taken", crowd.taken_fraction, Unit::fraction);
    w.input("h", "cushion over the floor", crowd.seat_height_m, Unit::metre);
    w.input("s", "slump under bolt upright", crowd.slump_m, Unit::millimetre);
    w.input("q", "seed of the random numbers", crowd.seed, Unit::count);
    w.note("ANSUR II measured soldiers, barefoot and bolt upright: no children, few old people");
    w.note("a wheelchair place's eye lies evenly anywhere in the audience's range");
    if (study.reached) return;
    w.note("stopped at " + std::to_string(study.drawn) +
           " crowds, the most that are drawn: some intervals are wider than was asked");
}

std::optional<double> share(const Cell& c, const Chance& chance, Working& w) {
    w.input("k", "crowds in which it is clear", chance.clear, Unit::count);
    w.input("n", "crowds that it was asked of", chance.drawn, Unit::count);
    record_people(c, w);
    return chance.share();
}

/// The ends of the interval rest on the count alone.
sight::Interval interval(const Cell& c, const Chance& chance, Working& w) {
    (void)share(c, chance, w);
    return sight::wilson_interval(chance);
}

const Chance& seat_chance(const Cell& c) {
    return crowd_of(c)->seats.at(static_cast<std::size_t>(c.index));
}

std::optional<double> clear_chance(const Cell& c, Working& w) {
    if (!crowd_of(c)) return std::nullopt;
    return share(c, seat_chance(c), w);
}

std::optional<double> clear_chance_low(const Cell& c, Working& w) {
    if (!crowd_of(c)) return std::nullopt;
    return interval(c, seat_chance(c), w).low;
}

std::optional<double> clear_chance_high(const Cell& c, Working& w) {
    if (!crowd_of(c)) return std::nullopt;
    return interval(c, seat_chance(c), w).high;
}

std::optional<double> room_chance(const Cell& c, Working& w) {
    const auto* crowd = crowd_of(c);
    if (!crowd) return std::nullopt;
    return share(c, crowd->room, w);
}

std::optional<double> room_chance_low(const Cell& c, Working& w) {
    const auto* crowd = crowd_of(c);
    if (!crowd) return std::nullopt;
    return interval(c, crowd->room, w).low;
}

std::optional<double> room_chance_high(const Cell& c, Working& w) {
    const auto* crowd = crowd_of(c);
    if (!crowd) return std::nullopt;
    return interval(c, crowd->room, w).high;
}

std::optional<double> seats_clear(const Cell& c, Working& w) {
    const auto* crowd = crowd_of(c);
    if (!crowd) return std::nullopt;
    double sum = 0.0;
    for (const Chance& chance : crowd->seats)
        sum += chance.share();
    const auto seats = static_cast<double>(crowd->seats.size());
    w.input("sum p", "chances of all seats, added up", sum, Unit::ratio);
    w.input("S", "seats", seats, Unit::count);
    record_people(c, w);
    return sum / seats;
}

std::optional<double> crowds_drawn(const Cell& c, Working& w) {
    const auto* crowd = crowd_of(c);
    if (!crowd) return std::nullopt;
    int most = crowd->room.drawn;
    for (const Chance& chance : crowd->seats)
        most = std::max(most, chance.drawn);
    w.input("n", "crowds for the chance that every seat is clear", crowd->room.drawn, Unit::count);
    w.input("d", "wanted half width of every interval", c.study.crowd->crowd.precision,
            Unit::fraction);
    record_people(c, w);
    return most;
}

constexpr const char* kPeople =
    "people: ANSUR II (NATICK/TR-15/007), normal within each sex; seating and independence: common "
    "practice, no source";
constexpr const char* kWilson =
    "Wilson 1927, 95 %, from memory; people: ANSUR II (NATICK/TR-15/007)";
constexpr const char* kLow =
    "(p + z²/2n - z sqrt(p(1 - p)/n + z²/4n²)) / (1 + z²/n), p = k/n, z = 1.960";
constexpr const char* kHigh =
    "(p + z²/2n + z sqrt(p(1 - p)/n + z²/4n²)) / (1 + z²/n), p = k/n, z = 1.960";

}  // namespace

std::span<const FigureDefinition> crowd_figures() {
    static const std::vector<FigureDefinition> entries = {
        {"sight.room_clear_chance", Subject::sight, "Every seat clear", Unit::fraction, kFormat,
         "Chance that a random audience leaves every seat at least 95 % of the picture's area.",
         "k / n", kPeople, "The chance that every seat sees at least 95 % of {format} is {value}",
         room_chance},
        {"sight.room_clear_chance_low", Subject::sight, "Every seat clear, from", Unit::fraction,
         kFormat, "Lower end of the 95 % interval of the chance that every seat is clear.", kLow,
         kWilson, "The chance that every seat sees at least 95 % of {format} may be {value}",
         room_chance_low},
        {"sight.room_clear_chance_high", Subject::sight, "Every seat clear, to", Unit::fraction,
         kFormat, "Upper end of the 95 % interval of the chance that every seat is clear.", kHigh,
         kWilson, "The chance that every seat sees at least 95 % of {format} may be {value}",
         room_chance_high},
        {"sight.seats_clear", Subject::sight, "Seats clear on average", Unit::fraction, kFormat,
         "Share of the seats that see at least 95 % of the picture's area, on average over random "
         "audiences.",
         "sum p / S", kPeople, "On average {value} of the seats see at least 95 % of {format}",
         seats_clear},
        {"sight.crowds_drawn", Subject::sight, "Crowds drawn", Unit::count, kFormat,
         "Random audiences drawn until every chance of this format was known well enough: the most "
         "that any seat, or the room, asked for.",
         "the least multiple of 100 at which the interval's half width is at most d",
         "derived: sequential counting in batches", "{value} crowds were drawn for {format}",
         crowds_drawn},
        {"sight.clear_chance", Subject::sight, "Clear chance", Unit::fraction, kFormatSeat,
         "Chance that whoever sits in the seat sees at least 95 % of the picture's area over a "
         "random audience.",
         "k / n", kPeople,
         "Whoever sits in seat {seat} sees at least 95 % of {format} with a chance of {value}",
         clear_chance},
        {"sight.clear_chance_low", Subject::sight, "Clear chance, from", Unit::fraction,
         kFormatSeat, "Lower end of the 95 % interval of the seat's chance of a clear view.", kLow,
         kWilson, "The chance of a clear view of {format} from seat {seat} may be {value}",
         clear_chance_low},
        {"sight.clear_chance_high", Subject::sight, "Clear chance, to", Unit::fraction, kFormatSeat,
         "Upper end of the 95 % interval of the seat's chance of a clear view.", kHigh, kWilson,
         "The chance of a clear view of {format} from seat {seat} may be {value}",
         clear_chance_high},
    };
    return entries;
}

bool needs_crowd(const FigureDefinition& definition) {
    return std::ranges::any_of(crowd_figures(), [&](const FigureDefinition& d) {
        return std::string_view(d.id) == definition.id;
    });
}

}  // namespace rakeline::study
