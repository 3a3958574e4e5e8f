// SPDX-License-Identifier: MIT
#include "picture/opening.hpp"
#include "study/sound_cells.hpp"

#include <algorithm>
#include <string>
#include <vector>

/// When and from where the channels are heard.
namespace rakeline::study {
namespace {

using base::Unit;

const sound::ChannelArrivals& arrivals_of(const Cell& c) {
    return c.study.sound.arrival.seats.at(static_cast<std::size_t>(c.index));
}

void record(const char* symbol, const char* meaning, const std::optional<double>& s, Working& w) {
    if (s) w.input(symbol, meaning, *s, Unit::second);
}

void record_screen(const sound::ChannelArrivals& a, Working& w) {
    record("t_L", "left: r / c and its delay", a.left_s, w);
    record("t_C", "centre", a.centre_s, w);
    record("t_R", "right", a.right_s, w);
}

std::optional<double> arrival_spread(const Cell& c, Working& w) {
    record_screen(arrivals_of(c), w);
    return arrivals_of(c).spread_s();
}

std::optional<double> outer_lead(const Cell& c, Working& w) {
    record_screen(arrivals_of(c), w);
    return arrivals_of(c).outer_lead_s();
}

std::optional<double> screen_lead(const Cell& c, Working& w) {
    record_screen(arrivals_of(c), w);
    record("t_S", "the first surround", arrivals_of(c).surround_s, w);
    return arrivals_of(c).screen_lead_s();
}

/// "A1, A2, A3 and 9 more".
std::string names_of(const Study& study, const std::vector<std::size_t>& seats) {
    constexpr std::size_t kMostNames = 60;
    std::string text;
    for (std::size_t i = 0; i < std::min(seats.size(), kMostNames); ++i)
        text += (i > 0 ? ", " : "") + study.seats.seats.at(seats[i]).name;
    if (seats.size() > kMostNames)
        text += " and " + std::to_string(seats.size() - kMostNames) + " more";
    return text;
}

/// Seats that have a value of some kind, and those of them where it is as wanted.
struct SeatsOf {
    std::vector<std::size_t> with, without;

    template <class Value, class Holds>
    SeatsOf(const Study& study, Value value, Holds holds) {
        const auto& all = study.sound.arrival.seats;
        for (std::size_t s = 0; s < all.size(); ++s)
            if (const std::optional<double> x = (all[s].*value)())
                (holds(*x) ? with : without).push_back(s);
    }
    std::optional<double> share(Working& w) const {
        if (with.empty() && without.empty()) return std::nullopt;
        const auto n = static_cast<double>(with.size());
        return w.input("n", "such seats", n, Unit::count) /
               w.input("N", "all seats", n + static_cast<double>(without.size()), Unit::count);
    }
};

std::optional<double> outer_first_share(const Cell& c, Working& w) {
    w.input("dt", "from which the first draws the sound to itself", sound::kPrecedence_s,
            Unit::second);
    const SeatsOf seats(c.study, &sound::ChannelArrivals::outer_lead_s,
                        [](double s) { return s > sound::kPrecedence_s; });
    if (!seats.with.empty() && w.recording()) w.note("so at " + names_of(c.study, seats.with));
    return seats.share(w);
}

std::optional<double> screen_first_share(const Cell& c, Working& w) {
    const SeatsOf seats(c.study, &sound::ChannelArrivals::screen_lead_s,
                        [](double s) { return s > 0.0; });
    if (!seats.without.empty() && w.recording())
        w.note("not so at " + names_of(c.study, seats.without));
    return seats.share(w);
}

/// From a loudspeaker to the reference seat.
double reference_m(const Study& study, std::size_t loudspeaker) {
    return study.sound.loudspeakers.at(loudspeaker)
        .paths.at(static_cast<std::size_t>(*study.reference_seat))
        .distance_m;
}

/// The longest of these of screen loudspeakers and sub-basses.
double farthest_m(const Study& study) {
    double most = 0.0;
    for (std::size_t i = 0; i < study.layout().loudspeakers.size(); ++i)
        if (study.layout().loudspeakers[i].channel != room::Channel::surround)
            most = std::max(most, reference_m(study, i));
    return most;
}

std::optional<double> delay_suggested(const Cell& c, Working& w) {
    const auto& all = c.study.sound.arrival.suggested_delay_s;
    if (all.empty()) return std::nullopt;
    const auto i = static_cast<std::size_t>(c.loudspeaker);
    const room::Loudspeaker& l = c.study.layout().loudspeakers.at(i);
    if (w.recording()) {
        const bool surround = l.channel == room::Channel::surround;
        w.input("r_max", "to the reference seat, the farthest of screen and sub-bass",
                farthest_m(c.study), Unit::metre);
        w.input("r", "to the reference seat, this one", reference_m(c.study, i), Unit::metre);
        w.input("c", "speed of sound, in metres a second", air_of(c.study).sound_speed_m_s(),
                Unit::ratio);
        w.input("m", "after the screen", surround ? sound::kSurroundMargin_s : 0.0, Unit::second);
        w.input("t_set", "as set", l.delay_s, Unit::second);
    }
    return all.at(i);
}

/// The centre loudspeaker that is heard first at the seat.
const room::Loudspeaker* centre_of(const Cell& c) {
    const auto& all = c.study.layout().loudspeakers;
    const auto seat = static_cast<std::size_t>(c.index);
    const room::Loudspeaker* first = nullptr;
    double least_m = 0.0;
    for (std::size_t i = 0; i < all.size(); ++i) {
        if (all[i].channel != room::Channel::centre) continue;
        const double r = c.study.sound.loudspeakers.at(i).paths.at(seat).distance_m;
        if (first && r >= least_m) continue;
        first = &all[i];
        least_m = r;
    }
    return first;
}

std::optional<sound::ImageOffset> offset_of(const Cell& c, Working& w) {
    const room::Loudspeaker* centre = centre_of(c);
    if (!centre) return std::nullopt;
    const auto& opening = c.study.picture.openings.at(static_cast<std::size_t>(c.format));
    const glm::dvec3 picture = geometry::point_at(c.study.picture.surface, opening.uv.centre());
    w.input("y_C", "the centre loudspeaker's height", centre->up_m, Unit::metre);
    w.input("x_C", "its place across", centre->across_m, Unit::metre);
    w.input("y_P", "height of the picture's centre", picture.y, Unit::metre);
    w.input("x_P", "its place across", picture.x, Unit::metre);
    return sound::image_offset(c.study.seats.seats.at(static_cast<std::size_t>(c.index)).eye,
                               {centre->across_m, centre->up_m, centre->back_m}, picture);
}

template <double sound::ImageOffset::*part>
std::optional<double> image_offset(const Cell& c, Working& w) {
    const auto offset = offset_of(c, w);
    return offset ? std::optional(*offset.*part) : std::nullopt;
}

constexpr Per kS{.seat = true};
constexpr Per kFs{.format = true, .seat = true};
constexpr const char* kPaths = "derived: direct paths, delays as set";

}  // namespace

std::span<const FigureDefinition> arrival_figures() {
    static const std::vector<FigureDefinition> entries = {
        {"sound.arrival_spread", Subject::sound, "Arrival spread", Unit::second, kS,
         "Latest minus earliest of the left, centre and right channels, with the delays set.",
         "max t - min t, t = r / c + delay", kPaths,
         "The screen channels arrive {value} apart at seat {seat}", arrival_spread},
        {"sound.outer_lead", Subject::sound, "Side before centre", Unit::second, kS,
         "By how much the nearer of left and right is heard before the centre; below zero the "
         "centre comes first.",
         "t_C - min(t_L, t_R)", kPaths,
         "A side channel arrives {value} before the centre at seat {seat}", outer_lead},
        {"sound.outer_first_share",
         Subject::sound,
         "Seats drawn to a side",
         Unit::fraction,
         {},
         "Seats at which left or right is heard more than 1 ms before the centre: what both play "
         "seems to come from the side.",
         "n / N",
         "precedence from about 1 ms: Wallach, Newman and Rosenzweig, 1949, from memory",
         "{value} of the seats hear a side channel first",
         outer_first_share},
        {"sound.screen_lead", Subject::sound, "Screen before surround", Unit::second, kS,
         "By how much the first screen channel is heard before the first surround, with the "
         "delays set; below zero a surround comes first.",
         "t_S - min(t_L, t_C, t_R)", kPaths, "The screen leads by {value} at seat {seat}",
         screen_lead},
        {"sound.screen_first_share",
         Subject::sound,
         "Seats led by the screen",
         Unit::fraction,
         {},
         "Seats at which a screen channel is heard before any surround, with the delays set.",
         "n / N",
         kPaths,
         "{value} of the seats hear the screen first",
         screen_first_share},
        {"sound.delay_suggested",
         Subject::sound,
         "Delay suggested",
         Unit::second,
         {.loudspeaker = true},
         "With all of them the screen loudspeakers and sub-basses arrive together at the reference "
         "seat, and the surrounds 15 ms after.",
         "max(0, (r_max - r) / c + m)",
         "derived: direct paths; the surrounds' 15 ms: common practice, no source",
         "{loudspeaker} wants a delay of {value}",
         delay_suggested},
        {"sound.image_across", Subject::sound, "Centre image across", Unit::radian, kFs,
         "Bearing of the centre loudspeaker less that of the picture's centre; positive to the "
         "right.",
         "atan((x_C - x) / dz) - atan((x_P - x) / dz')", "derived: directions from the eye",
         "The centre is heard {value} beside the picture's centre at seat {seat} in {format}",
         image_offset<&sound::ImageOffset::across_rad>},
        {"sound.image_up", Subject::sound, "Centre image up", Unit::radian, kFs,
         "Elevation of the centre loudspeaker less that of the picture's centre.",
         "e_C - e_P, elevations from the eye", "derived: directions from the eye",
         "The centre is heard {value} above the picture's centre at seat {seat} in {format}",
         image_offset<&sound::ImageOffset::up_rad>},
    };
    return entries;
}

}  // namespace rakeline::study
