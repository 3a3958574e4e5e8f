// SPDX-License-Identifier: MIT
#include "study/sound_cells.hpp"

#include <vector>

/// The gap between each screen channel and the sheet, and the equalisation that undoes both.
namespace rakeline::study {
namespace {

using base::Unit;
using sound::ChannelSheet;
using sound::Thirds;

std::size_t third(const Cell& c) {
    return static_cast<std::size_t>(c.index);
}

void record_gap(const Cell& c, const ChannelSheet& channel, Working& w) {
    w.input("d", "front to sheet along the axis", channel.gap.along_m, Unit::metre);
    w.input("i", "angle of the axis at the sheet", channel.gap.incidence_rad, Unit::radian);
    w.input("c", "speed of sound", air_of(c.study).sound_speed_m_s(), Unit::ratio);
}

template <double ChannelSheet::*kValue>
std::optional<double> of_gap(const Cell& c, Working& w) {
    const ChannelSheet* channel = channel_of(c);
    if (!channel) return std::nullopt;
    record_gap(c, *channel, w);
    return channel->*kValue;
}

std::optional<double> gap(const Cell& c, Working& w) {
    const ChannelSheet* channel = channel_of(c);
    if (!channel) return std::nullopt;
    const room::Loudspeaker& l =
        c.study.layout().loudspeakers.at(static_cast<std::size_t>(c.loudspeaker));
    w.input("z", "acoustic centre, from the screen wall", l.back_m, Unit::metre);
    w.note("the acoustic centre counts as the front");
    return channel->gap.along_m;
}

/// What each pass to and fro leaves, at the third.
void record_loop(const Cell& c, const ChannelSheet& channel, Working& w) {
    if (!w.recording()) return;
    const double hz = w.input("f", "frequency", sound::kThirds.at(third(c)), Unit::hertz);
    record_gap(c, channel, w);
    const room::Layout& layout = c.study.layout();
    const auto relative =
        sound::relative_impedance(sound::sheet_of(layout.screen), hz, air_of(c.study));
    w.input("|R_s|", "sheet's reflection",
            std::abs(sound::reflection_factor(relative, std::cos(channel.gap.incidence_rad))),
            Unit::ratio);
    w.input("|R_b|", "baffle's reflection", sound::baffle_reflection(layout.acoustics.baffle, hz),
            Unit::ratio);
}

std::optional<double> gap_ripple(const Cell& c, Working& w) {
    const ChannelSheet* channel = channel_of(c);
    if (!channel) return std::nullopt;
    record_gap(c, *channel, w);
    w.note("the greatest of the ripple by third octaves, 200 Hz to 10 kHz");
    return channel->ripple_db;
}

template <Thirds ChannelSheet::*kValues>
std::optional<double> of_gap_third(const Cell& c, Working& w) {
    const ChannelSheet* channel = channel_of(c);
    if (!channel) return std::nullopt;
    record_loop(c, *channel, w);
    return (channel->*kValues).at(third(c));
}

void record_boost(const Cell& c, const ChannelSheet& channel, Working& w) {
    constexpr std::size_t kMiddle = sound::third_at(1000.0);
    const room::Playback& playback = c.study.layout().playback;
    w.input("i", "angle at the sheet, reference seat", channel.incidence_rad, Unit::radian);
    w.input("T", "sheet's loss there", channel.loss_db.at(third(c)), Unit::decibel);
    w.input("G", "what the gap adds", channel.gap_level_db.at(third(c)), Unit::decibel);
    w.input("T_1k", "sheet's loss at 1 kHz", channel.loss_db.at(kMiddle), Unit::decibel);
    w.input("G_1k", "what the gap adds at 1 kHz", channel.gap_level_db.at(kMiddle), Unit::decibel);
    w.input("H", "house curve", sound::house_curve_db(playback.house_curve, third(c)),
            Unit::decibel);
}

std::optional<double> boost(const Cell& c, Working& w) {
    const ChannelSheet* channel = channel_of(c);
    if (!channel || !channel->equalisation.boost_db.at(third(c))) return std::nullopt;
    record_boost(c, *channel, w);
    w.note(
        "to start from: what a meter in the room says goes first. Loudspeaker, air and room are "
        "not in it");
    return channel->equalisation.boost_db.at(third(c));
}

std::optional<double> headroom(const Cell& c, Working& w) {
    const ChannelSheet* channel = channel_of(c);
    if (!channel) return std::nullopt;
    w.input("f", "made good up to", c.study.layout().playback.equalise_to_hz, Unit::hertz);
    w.note("the greatest boost from 1 kHz up; as power a factor 10^(B/10)");
    return channel->equalisation.headroom_db;
}

constexpr Per kL{.loudspeaker = true};
constexpr Per kLb{.loudspeaker = true, .band = true};
constexpr const char* kPasses =
    "derived: plane waves to and fro between sheet and baffle; random-incidence absorption for "
    "the baffle, common practice, no source";
constexpr const char* kHouse =
    "derived: sheet and gap; house curve ISO 2969 and SMPTE ST 202 as reported";

std::vector<FigureDefinition> gap_entries() {
    return {
        {"sound.gap", Subject::sound, "Gap to the screen", Unit::metre, kL,
         "From the loudspeaker's front to the sheet, along its axis.", "d, axis meets sheet",
         "derived: position and axis", "{loudspeaker} stands {value} behind the sheet", gap},
        {"sound.gap_spacing", Subject::sound, "Ripple's spacing", Unit::hertz, kL,
         "From one peak of the gap's ripple to the next.", "c / (2 d cos(i)^2)", kPasses,
         "The gap of {loudspeaker} ripples every {value}", of_gap<&ChannelSheet::spacing_hz>},
        {"sound.gap_notch", Subject::sound, "First dip", Unit::hertz, kL,
         "The lowest frequency at which sheet and baffle send the sound back against itself.",
         "2 pi f 2 d cos(i)^2 / c = pi + arg R_s(f)", kPasses,
         "The gap of {loudspeaker} has its first dip at {value}", of_gap<&ChannelSheet::dip_hz>},
        {"sound.gap_ripple", Subject::sound, "Gap's ripple", Unit::decibel, kL,
         "Peak over neighbouring dip, the greatest from 200 Hz to 10 kHz.",
         "20 lg((1 + |R_s R_b|) / (1 - |R_s R_b|))", kPasses,
         "The gap of {loudspeaker} ripples by {value}", gap_ripple},
        {"sound.gap_near", Subject::sound, "Gap with no dip to 10 kHz", Unit::metre, kL,
         "Up to this distance along the axis the first dip lies above 10 kHz.",
         "d of a first dip at 10 kHz", kPasses,
         "{loudspeaker} would have no dip up to 10 kHz within {value} of the sheet",
         of_gap<&ChannelSheet::dip_above_m>, false, false},
        {"sound.gap_far", Subject::sound, "Gap with its dip under 200 Hz", Unit::metre, kL,
         "From this distance along the axis on the first dip lies below 200 Hz, and the ripple is "
         "fine.",
         "d of a first dip at 200 Hz", kPasses,
         "{loudspeaker} would have its first dip under 200 Hz from {value} behind the sheet",
         of_gap<&ChannelSheet::dip_below_m>, false, false},
    };
}

std::vector<FigureDefinition> third_entries() {
    return {
        {"sound.gap_level", Subject::sound, "What the gap adds", Unit::decibel, kLb,
         "Level over a third octave behind the sheet over that without a baffle.",
         "10 lg mean |1 / (1 - R_s R_b e^(-j 2 pi f 2 d cos(i)^2 / c))|^2", kPasses,
         "The gap of {loudspeaker} adds {value} at {band}",
         of_gap_third<&ChannelSheet::gap_level_db>, true, false},
        {"sound.gap_ripple_third", Subject::sound, "Gap's ripple by thirds", Unit::decibel, kLb,
         "Peak over the dip beside it near this third octave, where the gap is deep enough for "
         "both.",
         "20 lg((1 + |R_s R_b|) / (1 - |R_s R_b|))", kPasses,
         "The gap of {loudspeaker} ripples by {value} at {band}",
         of_gap_third<&ChannelSheet::gap_ripple_db>, true, false},
        {"sound.equalisation", Subject::sound, "Equalisation for the screen", Unit::decibel, kLb,
         "Boost by third octaves that makes good what sheet and gap take on the way to the "
         "reference seat, relative to 1 kHz; where the house curve asks for less treble, that much "
         "less.",
         "B = (T - G) - (T_1k - G_1k) + H", kHouse,
         "{loudspeaker} wants {value} at {band} for the screen", boost, true},
        {"sound.equalisation_headroom", Subject::sound, "Headroom for the screen", Unit::decibel,
         kL, "The greatest boost from 1 kHz up to where the screen is made good.",
         "max B over 1 kHz to f", kHouse,
         "Making good the screen costs {loudspeaker} {value} of headroom", headroom},
    };
}

}  // namespace

std::span<const FigureDefinition> gap_figures() {
    static const std::vector<FigureDefinition> entries = [] {
        std::vector<FigureDefinition> all;
        for (auto& part : {gap_entries(), third_entries()})
            all.insert(all.end(), part.begin(), part.end());
        return all;
    }();
    return entries;
}

}  // namespace rakeline::study
