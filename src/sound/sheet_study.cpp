// SPDX-License-Identifier: MIT
#include "sound/sheet_study.hpp"

#include "base/units.hpp"
#include "room/perforation.hpp"
#include "sound/sound_study.hpp"

#include <algorithm>
#include <cmath>

namespace rakeline::sound {
namespace {

bool is_screen_channel(const room::Loudspeaker& loudspeaker) {
    using room::Channel;
    const Channel channel = loudspeaker.channel;
    return loudspeaker.behind_screen &&
           (channel == Channel::left || channel == Channel::centre || channel == Channel::right);
}

/// z / (2 rho c) of the sheet, which every channel and angle shares.
using Impedances = std::array<std::complex<double>, kThirds.size()>;

Impedances impedances(const Sheet& sheet, const Air& air) {
    Impedances out;
    for (std::size_t i = 0; i < kThirds.size(); ++i)
        out.at(i) = relative_impedance(sheet, kThirds.at(i), air);
    return out;
}

Thirds losses_at(const Impedances& sheet, double angle_rad) {
    Thirds out{};
    for (std::size_t i = 0; i < kThirds.size(); ++i)
        out.at(i) = transmission_loss_db(sheet.at(i), std::cos(angle_rad));
    return out;
}

/// What the gap does, third by third.
void fill_gap(const SoundInput& in, const Impedances& sheet, ChannelSheet& out) {
    const double half_band = std::pow(2.0, 1.0 / 6.0);
    for (std::size_t i = 0; i < kThirds.size(); ++i) {
        const double hz = kThirds.at(i);
        const auto loop =
            loop_factor(sheet.at(i), baffle_reflection(in.acoustics.baffle, hz), out.gap);
        out.gap_level_db.at(i) =
            gap_band_level_db(loop, hz / half_band, hz * half_band, out.gap, in.air);
        out.gap_ripple_db.at(i) = gap_ripple_db(loop);
        if (hz >= kRippleFrom_hz && hz <= kRippleTo_hz)
            out.ripple_db = std::max(out.ripple_db, out.gap_ripple_db.at(i));
    }
    const GapSetting setting{in.sheet, in.air};
    out.spacing_hz = ripple_spacing_hz(out.gap, in.air);
    out.dip_hz = first_dip_hz(setting, out.gap);
    out.dip_above_m = distance_of_dip_m(setting, kRippleTo_hz, out.gap.incidence_rad);
    out.dip_below_m = distance_of_dip_m(setting, kRippleFrom_hz, out.gap.incidence_rad);
}

double incidence_to_reference(const SoundInput& in,
                              const room::Loudspeaker& loudspeaker,
                              const Gap& gap) {
    if (!in.reference_seat) return gap.incidence_rad;
    const glm::dvec3& ear = in.ears.at(static_cast<std::size_t>(*in.reference_seat));
    const DirectPath path = direct_path(loudspeaker, in.surface, ear);
    return path.through_sheet ? path.sheet_angle_rad : gap.incidence_rad;
}

std::optional<ChannelSheet> channel_sheet(const SoundInput& in,
                                          const Impedances& sheet,
                                          const room::Loudspeaker& loudspeaker) {
    if (!is_screen_channel(loudspeaker)) return std::nullopt;
    const std::optional<Gap> gap = gap_of(loudspeaker, in.surface);
    if (!gap) return std::nullopt;
    ChannelSheet out;
    out.gap = *gap;
    fill_gap(in, sheet, out);
    out.incidence_rad = incidence_to_reference(in, loudspeaker, *gap);
    out.loss_db = losses_at(sheet, out.incidence_rad);
    out.equalisation = equalisation(out.loss_db, out.gap_level_db, in.playback);
    return out;
}

void fill_band(const SoundInput& in, SheetStudy& out) {
    if (in.sheet.measured() || room::open_area(in.sheet.perforation) == 0.0) return;
    out.band.emplace();
    out.apart_db.emplace();
    for (std::size_t i = 0; i < kThirds.size(); ++i) {
        out.band->at(i) = loss_band(in.sheet, kThirds.at(i), in.air);
        out.apart_db->at(i) = loss_apart_db(in.sheet, kThirds.at(i), in.air);
    }
}

}  // namespace

Thirds loss_by_thirds(const Sheet& sheet, double angle_rad, const Air& air) {
    return losses_at(impedances(sheet, air), angle_rad);
}

SheetStudy study_sheet(const SoundInput& in) {
    const auto straight_db = [&](double hz) { return screen_loss_db(in.sheet, hz, 0.0, in.air); };
    SheetStudy out;
    out.loss_10k_db = straight_db(10000.0);
    out.treble_6k_db = straight_db(6000.0) - straight_db(500.0);
    out.treble_8k_db = straight_db(8000.0) - straight_db(500.0);
    const Impedances sheet = impedances(in.sheet, in.air);
    out.loss_60_db = losses_at(sheet, base::radians(60.0));
    fill_band(in, out);
    for (const room::Loudspeaker& loudspeaker : in.loudspeakers)
        out.channels.push_back(channel_sheet(in, sheet, loudspeaker));
    return out;
}

}  // namespace rakeline::sound
