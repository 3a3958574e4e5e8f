// SPDX-License-Identifier: MIT
#include "study/hall_cells.hpp"
#include "study/sound_cells.hpp"

#include <string>
#include <vector>

/// What comes back from the walls after the direct sound.
namespace rakeline::study {
namespace {

using base::Unit;
using sound::Reflection;

const sound::SeatReflections* heard_of(const Cell& c) {
    const auto& seats = hall_of(c).reflections.at(static_cast<std::size_t>(c.loudspeaker));
    return seats.empty() ? nullptr : &seats.at(static_cast<std::size_t>(c.index));
}

std::string way_of(const Reflection& r) {
    std::string way = "by way of the " + std::string(sound::wall_name(r.first));
    if (r.second) way += ", then the " + std::string(sound::wall_name(*r.second));
    return way;
}

void record(const Cell& c, const Reflection& r, Working& w) {
    if (!w.recording()) return;
    const auto& paths =
        c.study.sound.loudspeakers.at(static_cast<std::size_t>(c.loudspeaker)).paths;
    const double direct_m = paths.at(static_cast<std::size_t>(c.index)).distance_m;
    const double speed = air_of(c.study).sound_speed_m_s();
    w.input("r", "direct path", direct_m, Unit::metre);
    w.input("r'", "reflected path", direct_m + r.delay_s * speed, Unit::metre);
    w.input("dt", "later than the direct sound", r.delay_s, Unit::second);
    w.input("dL", "level against the direct sound", r.level_db, Unit::decibel);
    w.note(way_of(r));
    w.note("flat walls by image sources, one or two reflections; levels of the 1 kHz octave");
}

std::optional<double> first_delay(const Cell& c, Working& w) {
    const sound::SeatReflections* heard = heard_of(c);
    if (!heard || !heard->first) return std::nullopt;
    record(c, *heard->first, w);
    return heard->first->delay_s;
}

std::optional<double> strongest(const Cell& c, Working& w) {
    const sound::SeatReflections* heard = heard_of(c);
    if (!heard || !heard->strongest) return std::nullopt;
    record(c, *heard->strongest, w);
    return heard->strongest->level_db;
}

std::optional<double> echo(const Cell& c, Working& w) {
    const sound::SeatReflections* heard = heard_of(c);
    if (!heard || !heard->echo) return std::nullopt;
    record(c, *heard->echo, w);
    return heard->echo->level_db;
}

template <std::optional<sound::Flutter> sound::FlutterPairs::*pair>
std::optional<double> flutter(const Cell& c, Working& w) {
    const auto& f = hall_of(c).flutter.*pair;
    if (!f) return std::nullopt;
    w.input("L", "apart", f->apart_m, Unit::metre);
    w.input("dt", "a clap comes back every 2 L / c", f->every_s, Unit::second);
    w.input("f", "octave band in which most is left", f->frequency_hz, Unit::hertz);
    w.input("1 - a_1", "sent back by the one", f->first_return, Unit::fraction);
    w.input("1 - a_2", "sent back by the other", f->second_return, Unit::fraction);
    return f->kept_db;
}

constexpr Per kLs{.loudspeaker = true, .seat = true};
constexpr const char* kImages =
    "image sources, J. B. Allen and D. A. Berkley, 1979; level derived: inverse square law";
constexpr const char* kFlutter =
    "derived: two facing walls; parallel within 5°, common practice, no source";
constexpr const char* kKept = "10 lg((1 - a_1) (1 - a_2))";

}  // namespace

std::span<const FigureDefinition> reflection_figures() {
    static const std::vector<FigureDefinition> entries = {
        {"sound.reflection_first_delay", Subject::sound, "First reflection after", Unit::second,
         kLs,
         "Time from the direct sound to the first reflection of side walls, rear wall or ceiling "
         "that is no more than 20 dB weaker.",
         "dt = (r' - r) / c", kImages,
         "A reflection of {loudspeaker} follows after {value} at seat {seat}", first_delay},
        {"sound.reflection_strongest", Subject::sound, "Strongest reflection", Unit::decibel, kLs,
         "Against the direct sound, 1 kHz octave: distance, walls and the loudspeaker's beam.",
         "20 lg(r / r') + 10 lg((1 - a_1) (1 - a_2)) + D' - D", kImages,
         "A reflection of {loudspeaker} has {value} against the direct sound at seat {seat}",
         strongest},
        {"sound.echo", Subject::sound, "Late reflection", Unit::decibel, kLs,
         "The strongest of those 50 ms and more after the direct sound, against it, 1 kHz octave: "
         "heard as an echo where it is strong.",
         "20 lg(r / r') + 10 lg((1 - a_1) (1 - a_2)) + D' - D", kImages,
         "An echo of {loudspeaker} has {value} against the direct sound at seat {seat}", echo},
        {"sound.flutter_sides",
         Subject::sound,
         "Flutter, side walls",
         Unit::decibel,
         {},
         "What is left of a clap that has run once to and fro between the side walls, where they "
         "are "
         "parallel.",
         kKept,
         kFlutter,
         "Between the side walls a clap flutters: {value} on every round",
         flutter<&sound::FlutterPairs::sides>},
        {"sound.flutter_length",
         Subject::sound,
         "Flutter, front to rear",
         Unit::decibel,
         {},
         "What is left of a clap that has run once to and fro between screen wall and rear wall.",
         kKept,
         kFlutter,
         "Between screen wall and rear wall a clap flutters: {value} on every round",
         flutter<&sound::FlutterPairs::length>},
        {"sound.flutter_height",
         Subject::sound,
         "Flutter, floor to ceiling",
         Unit::decibel,
         {},
         "What is left of a clap that has run once to and fro between the ceiling and the largest "
         "level floor "
         "without seats.",
         kKept,
         kFlutter,
         "Between ceiling and bare floor a clap flutters: {value} on every round",
         flutter<&sound::FlutterPairs::height>},
    };
    return entries;
}

}  // namespace rakeline::study
