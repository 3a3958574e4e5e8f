// SPDX-License-Identifier: MIT
#include "room/wheelchair_places.hpp"
#include "study/sight_cells.hpp"

#include <algorithm>
#include <vector>

/// Places for wheelchairs: how many, with whom beside them, and what they see. Local access law
/// decides; the table and the range of eye heights are one country's, as an example.
namespace rakeline::study {
namespace {

using base::Unit;

constexpr const char* kTable =
    "2010 ADA Standards, table 221.2.1.1, as reported: an example, local "
    "access law decides";
constexpr const char* kCompanions =
    "2010 ADA Standards, 221.3, from memory: an example, local access law decides";
constexpr const char* kRange =
    "derived: the C-value's form; range of eye heights: ADA figure A3, 43 to 51 in";
constexpr const char* kHidden =
    "derived: silhouettes on the picture surface; range of eye heights: ADA figure A3, 43 to 51 in";

double seat_count(const Cell& c, Working& w) {
    return w.input("n", "seats, wheelchair places included",
                   static_cast<double>(c.study.seats.seats.size()), Unit::count);
}

std::optional<double> places_wanted(const Cell& c, Working& w) {
    const auto wanted = room::wheelchair_places_wanted(static_cast<int>(seat_count(c, w)));
    if (!wanted) return std::nullopt;
    return static_cast<double>(*wanted);
}

std::optional<double> places_short(const Cell& c, Working& w) {
    const auto wanted = places_wanted(c, w);
    if (!wanted) return std::nullopt;
    const auto& seats = c.study.seats.seats;
    const double here = w.input(
        "p", "wheelchair places",
        static_cast<double>(std::ranges::count(seats, true, &room::Seat::wheelchair)), Unit::count);
    return std::max(0.0, w.input("q", "places wanted", *wanted, Unit::count) - here);
}

std::optional<double> companions_short(const Cell& c, Working& w) {
    const auto& seats = c.study.seats.seats;
    if (std::ranges::count(seats, true, &room::Seat::wheelchair) == 0) return std::nullopt;
    const auto alone = room::places_without_companion(c.study.seats, c.study.layout().seating);
    for (const int seat : alone)
        w.note(seats.at(static_cast<std::size_t>(seat)).name + " has no free seat beside it");
    return static_cast<double>(alone.size());
}

const sight::WheelchairSight* place_at(const Cell& c) {
    const auto& all = sight_of(c).wheelchairs;
    const auto found = std::ranges::find(all, c.index, &sight::WheelchairSight::seat);
    return found == all.end() ? nullptr : &*found;
}

std::optional<double> over_front(const std::optional<sight::OverRow>& over,
                                 double eye_m,
                                 Working& w) {
    if (!over) return std::nullopt;
    w.input("e", "eye over the floor", eye_m, Unit::metre);
    record_clearance(over->rear, over->front, over->focus, "eye", w);
    return over->c_m;
}

std::optional<double> c_low(const Cell& c, Working& w) {
    const auto* place = place_at(c);
    if (!place) return std::nullopt;
    return over_front(place->low, c.study.layout().audience.wheelchair_eye_low_m, w);
}

std::optional<double> c_high(const Cell& c, Working& w) {
    const auto* place = place_at(c);
    if (!place) return std::nullopt;
    return over_front(place->high, c.study.layout().audience.wheelchair_eye_high_m, w);
}

std::optional<double> hidden_low(const Cell& c, Working& w) {
    const auto* place = place_at(c);
    if (!place) return std::nullopt;
    w.input("e", "eye over the floor", c.study.layout().audience.wheelchair_eye_low_m, Unit::metre);
    return place->hidden_low_fraction;
}

std::optional<double> hidden_high(const Cell& c, Working& w) {
    const auto* place = place_at(c);
    if (!place) return std::nullopt;
    w.input("e", "eye over the floor", c.study.layout().audience.wheelchair_eye_high_m,
            Unit::metre);
    return place->hidden_high_fraction;
}

std::optional<double> hides(const Cell& c, Working& w) {
    const auto* place = place_at(c);
    if (!place || !place->behind) return std::nullopt;
    w.input("e", "eye over the floor", c.study.layout().audience.wheelchair_eye_high_m,
            Unit::metre);
    if (w.recording())
        w.note("from seat " +
               c.study.seats.seats.at(static_cast<std::size_t>(*place->behind)).name);
    return place->hides_fraction;
}

}  // namespace

std::span<const FigureDefinition> wheelchair_room_figures() {
    static const std::vector<FigureDefinition> entries = {
        {"room.wheelchair_places_wanted",
         Subject::room,
         "Wheelchair places wanted",
         Unit::count,
         {},
         "Wheelchair places for this many seats by one country's table; your local access law "
         "decides.",
         "by brackets of n: 25 1, 50 2, 150 4, 300 5, 500 6; then one more a 150, over 5000 a 200",
         kTable,
         "The table asks for {value} wheelchair places",
         places_wanted},
        {"room.wheelchair_places_short",
         Subject::room,
         "Wheelchair places short",
         Unit::count,
         {},
         "Wheelchair places that the room has too few by that table.",
         "q - p, 0 at least",
         kTable,
         "The room has {value} wheelchair places too few",
         places_short},
        {"room.companion_seats_short",
         Subject::room,
         "Companion seats short",
         Unit::count,
         {},
         "Wheelchair places that have no ordinary seat of their own beside them in the same row, "
         "with no aisle between.",
         "n",
         kCompanions,
         "Wheelchair places without a companion seat beside them: {value}",
         companions_short},
    };
    return entries;
}

std::span<const FigureDefinition> wheelchair_figures() {
    static const std::vector<FigureDefinition> entries = {
        {"sight.wheelchair_c_low", Subject::sight, "C-value, wheelchair low", Unit::millimetre,
         kFormatSeat,
         "What a wheelchair place sees over the eyes of the row in front, along its own sight "
         "line, at the low end of the range of eye heights.",
         "C = D (N + R) / (D + T) - R", kRange,
         "Wheelchair place {seat} sees {value} over the row in front with the lowest eyes in "
         "{format}",
         c_low},
        {"sight.wheelchair_c_high", Subject::sight, "C-value, wheelchair high", Unit::millimetre,
         kFormatSeat, "The same at the high end of the range of eye heights.",
         "C = D (N + R) / (D + T) - R", kRange,
         "Wheelchair place {seat} sees {value} over the row in front with the highest eyes in "
         "{format}",
         c_high},
        {"sight.wheelchair_hidden_low", Subject::sight, "Picture hidden, wheelchair low",
         Unit::fraction, kFormatSeat,
         "Part of the picture that a full house hides from a wheelchair place at the low end of "
         "the range of eye heights.",
         "area of the union of silhouettes / area of the picture", kHidden,
         "{value} of {format} is hidden from wheelchair place {seat} with the lowest eyes",
         hidden_low},
        {"sight.wheelchair_hidden_high", Subject::sight, "Picture hidden, wheelchair high",
         Unit::fraction, kFormatSeat, "The same at the high end of the range of eye heights.",
         "area of the union of silhouettes / area of the picture", kHidden,
         "{value} of {format} is hidden from wheelchair place {seat} with the highest eyes",
         hidden_high},
        {"sight.wheelchair_hides", Subject::sight, "Hidden by a tall wheelchair user",
         Unit::fraction, kFormatSeat,
         "Part of the picture that the highest eyes' head in a wheelchair place hides, and no one "
         "else does, from the seat in the row behind that loses most by it.",
         "hidden with the person less hidden without", kHidden,
         "Someone tall in wheelchair place {seat} hides {value} of {format} from the row behind",
         hides},
    };
    return entries;
}

}  // namespace rakeline::study
