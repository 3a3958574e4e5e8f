// SPDX-License-Identifier: MIT
#include "study/coverage_cells.hpp"

#include <algorithm>
#include <vector>

/// How evenly the loudspeakers cover the seats, what they have to be driven with, and where their
/// axes go.
namespace rakeline::study {
namespace {

using base::Unit;

std::size_t at(int index) {
    return static_cast<std::size_t>(index);
}

std::optional<double> level_reference(const Cell& c, Working&) {
    return coverage_of(c).reference_db.at(at(c.index));
}

std::optional<double> seats_within(const Cell& c, Working& w) {
    if (const auto reference = coverage_of(c).reference_db.at(at(c.index)))
        w.input("L_ref", "level at the reference seat", *reference, Unit::decibel);
    w.input("w", "window to either side", sound::kLevelWindow_db, Unit::decibel);
    return coverage_of(c).within_fraction.at(at(c.index));
}

std::optional<double> surround_level(const Cell& c, Working& w) {
    const auto& array = c.study.sound.coverage.surrounds;
    if (!array) return std::nullopt;
    const auto& all = c.study.layout().loudspeakers;
    for (std::size_t i = 0; w.recording() && i < all.size(); ++i) {
        if (all[i].channel != room::Channel::surround) continue;
        const auto& levels = c.study.sound.loudspeakers.at(i).level_db.at(at(c.band));
        w.input("L_i", all[i].name.c_str(), levels.at(at(c.index)), Unit::decibel);
    }
    return array->level_db.at(at(c.band)).at(at(c.index));
}

std::optional<double> surround_spread(const Cell& c, Working& w) {
    const auto& array = c.study.sound.coverage.surrounds;
    if (!array) return std::nullopt;
    const auto& levels = array->level_db.at(at(c.index));
    if (w.recording() && !levels.empty()) {
        const auto [least, most] = std::minmax_element(levels.begin(), levels.end());
        w.input("max L", "loudest seat", *most, Unit::decibel);
        w.input("min L", "quietest seat", *least, Unit::decibel);
    }
    return array->spread_db.at(at(c.index));
}

/// The sum that the amplifier's power comes from; null without a reference seat.
const sound::Drive* record_drive(const Cell& c, Working& w) {
    const auto& drive = coverage_of(c).drive;
    if (!drive) return nullptr;
    const bool alone = sound::is_screen_channel(loudspeaker_of(c).channel);
    w.input("P_r", "rated power", loudspeaker_of(c).power_w, Unit::watt);
    w.input("L_peak", "peak wanted at the reference seat", drive->target_db, Unit::decibel);
    w.input("E", "most that equalising the sheet adds", drive->boost_db, Unit::decibel);
    w.input("L",
            alone ? "level at the reference seat at rated power"
                  : "the same of all on this channel, energies added",
            drive->level_db, Unit::decibel);
    return &*drive;
}

std::optional<double> amplifier_power(const Cell& c, Working& w) {
    const sound::Drive* drive = record_drive(c, w);
    return drive ? std::optional(drive->amplifier_power_w) : std::nullopt;
}

std::optional<double> thermal_power(const Cell& c, Working& w) {
    const auto& drive = coverage_of(c).drive;
    if (!drive) return std::nullopt;
    w.input("P", "for the peak", drive->amplifier_power_w, Unit::watt);
    w.input("C", "crest factor", c.study.layout().playback.crest_factor_db, Unit::decibel);
    return drive->thermal_power_w;
}

std::optional<double> headroom(const Cell& c, Working& w) {
    const auto& drive = coverage_of(c).drive;
    if (!drive) return std::nullopt;
    w.input("P_a", "what its amplifier can give", loudspeaker_of(c).amplifier_w, Unit::watt);
    w.input("P", "for the peak", drive->amplifier_power_w, Unit::watt);
    return drive->headroom_db;
}

std::optional<double> thermal_margin(const Cell& c, Working& w) {
    const auto& drive = coverage_of(c).drive;
    if (!drive) return std::nullopt;
    w.input("P_r", "rated power", loudspeaker_of(c).power_w, Unit::watt);
    w.input("P_long", "over the long term", drive->thermal_power_w, Unit::watt);
    return drive->thermal_margin_db;
}

/// Where the axes of screen channels go; nothing for others.
const sound::AxisAim* aim_of(const Cell& c) {
    const auto& aim = coverage_of(c).aim;
    return aim && sound::is_screen_channel(loudspeaker_of(c).channel) ? &*aim : nullptr;
}

std::optional<double> axis_depth(const Cell& c, Working& w) {
    const sound::AxisAim* aim = aim_of(c);
    if (!aim) return std::nullopt;
    if (w.recording()) {
        const auto& seats = c.study.seats.seats;
        const auto [front, back] = std::minmax_element(
            seats.begin(), seats.end(),
            [](const room::Seat& a, const room::Seat& b) { return a.eye.z < b.eye.z; });
        w.input("z", "back to the seat nearest to the axis", seats.at(at(aim->seat)).eye.z,
                Unit::metre);
        w.input("z_1", "back to the first seat", front->eye.z, Unit::metre);
        w.input("z_n", "back to the last seat", back->eye.z, Unit::metre);
        w.note("Seat " + seats.at(at(aim->seat)).name + " is the nearest to the axis.");
    }
    return aim->depth_fraction;
}

std::optional<double> axis_miss(const Cell& c, Working& w) {
    const sound::AxisAim* aim = aim_of(c);
    if (!aim) return std::nullopt;
    if (w.recording())
        w.note("Seat " + c.study.seats.seats.at(at(aim->seat)).name +
               " is the nearest to the axis.");
    return aim->off_axis_rad;
}

}  // namespace

std::span<const FigureDefinition> coverage_figures() {
    static const std::vector<FigureDefinition> entries = {
        {"sound.level_reference",
         Subject::sound,
         "Level at the reference seat",
         Unit::decibel,
         {.loudspeaker = true, .band = true},
         "Direct sound at rated power at the reference seat, dB re 20 uPa.",
         "S + 10 lg P - 20 lg r + D - T - a r",
         "inverse square law; ISO 9613-1:1993 for the air",
         "{loudspeaker} gives {value} at the reference seat at {band}",
         level_reference,
         false,
         false},
        {"sound.seats_within",
         Subject::sound,
         "Seats within 3 dB",
         Unit::fraction,
         {.loudspeaker = true, .band = true},
         "Share of the seats whose direct level is within 3 dB of the reference seat's.",
         "share of seats with |L - L_ref| <= w",
         "derived: over all seats; the window is ours",
         "{loudspeaker} keeps {value} of the seats near the reference level at {band}",
         seats_within},
        {"sound.surround_level",
         Subject::sound,
         "Surround level",
         Unit::decibel,
         {.band = true, .seat = true},
         "Direct sound of all surrounds, each at rated power, energies added, dB re 20 uPa.",
         "10 lg sum 10^(L_i / 10)",
         "common practice, no source: separate sources add by energy",
         "The surrounds give {value} at seat {seat}, {band}",
         surround_level},
        {"sound.surround_spread",
         Subject::sound,
         "Surround spread",
         Unit::decibel,
         {.band = true},
         "Highest minus lowest seat, of all surrounds together.",
         "max L - min L",
         "derived: over all seats",
         "The surrounds differ by {value} between seats at {band}",
         surround_spread},
        {"sound.amplifier_power",
         Subject::sound,
         "Amplifier power",
         Unit::watt,
         {.loudspeaker = true},
         "For the channel's peak at the reference seat, in the 1 kHz octave (63 Hz for sub-bass), "
         "with what equalising the sheet adds. Sub-basses, and surrounds, share their channel's. "
         "Free "
         "field: floor and walls near a sub-bass lift it, which is left as reserve.",
         "P_r 10^((L_peak + E - L) / 10)",
         "derived: level is proportional to 10 lg of power",
         "{loudspeaker} needs {value} for the peak",
         amplifier_power},
        {"sound.thermal_power",
         Subject::sound,
         "Long-term power",
         Unit::watt,
         {.loudspeaker = true},
         "Heat that the loudspeaker has to bear while the programme's peaks reach their level.",
         "P 10^(-C / 10)",
         "derived: the crest factor is peak over long-term level",
         "{loudspeaker} bears {value} over the long term",
         thermal_power,
         false,
         false},
        {"sound.headroom",
         Subject::sound,
         "Amplifier headroom",
         Unit::decibel,
         {.loudspeaker = true},
         "What its amplifier can give over what the peak needs.",
         "10 lg(P_a / P)",
         "derived",
         "{loudspeaker} has {value} of amplifier headroom at the peak",
         headroom},
        {"sound.thermal_margin",
         Subject::sound,
         "Long-term margin",
         Unit::decibel,
         {.loudspeaker = true},
         "Rated power over the long-term power.",
         "10 lg(P_r / P_long)",
         "derived",
         "{loudspeaker} has {value} between its rating and its long-term power",
         thermal_margin},
        {"sound.axis_depth",
         Subject::sound,
         "Axis lands at",
         Unit::fraction,
         {.loudspeaker = true},
         "How far back in the seating the axis of a screen loudspeaker points, by the seat nearest "
         "to it: 0 % first seat, 100 % last.",
         "(z - z_1) / (z_n - z_1)",
         "derived",
         "{loudspeaker} is aimed {value} of the way back through the seats",
         axis_depth},
        {"sound.axis_miss",
         Subject::sound,
         "Axis off the seats",
         Unit::radian,
         {.loudspeaker = true},
         "Angle between the axis of a screen loudspeaker and the seat nearest to it.",
         "least angle from the axis to an ear",
         "derived",
         "The axis of {loudspeaker} passes the nearest seat by {value}",
         axis_miss,
         false,
         false},
    };
    return entries;
}

}  // namespace rakeline::study
