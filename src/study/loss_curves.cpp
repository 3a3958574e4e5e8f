// SPDX-License-Identifier: MIT
#include "study/loss_curves.hpp"

#include "base/units.hpp"
#include "study/figure_values.hpp"
#include "study/sound_cells.hpp"

#include <algorithm>
#include <cmath>

namespace rakeline::study {
namespace {

constexpr double kLow_hz = 20.0;
constexpr double kHigh_hz = 20000.0;
constexpr double kAngles_deg[] = {0.0, 30.0, 45.0, 60.0, 75.0};

/// 24 an octave, and no farther apart than `most_hz`; both ends are among them.
std::vector<double> frequencies(double most_hz) {
    const double ratio = std::pow(2.0, 1.0 / 24.0) - 1.0;
    std::vector<double> out;
    for (double hz = kLow_hz; hz < kHigh_hz; hz += std::min(hz * ratio, most_hz))
        out.push_back(hz);
    out.push_back(kHigh_hz);
    return out;
}

void add_band(const sound::Sheet& sheet, const sound::Air& air, LossCurves& out) {
    for (const double hz : out.hz) {
        const sound::LossBand band = sound::loss_band(sheet, hz, air);
        out.least_db.push_back(band.least_db);
        out.most_db.push_back(band.most_db);
        out.apart_db.push_back(sound::loss_apart_db(sheet, hz, air));
    }
}

void add_marks(const Study& study, LossCurves& out) {
    const double at_500 = study.sound.screen_loss_db.at(sound::third_at(500.0));
    const auto add = [&](const char* id, double hz) {
        const Figure* figure = find_figure(study, id);
        if (!figure) return;
        for (const int i : figure->limits) {
            const auto& most = study.brief->limits.limits.at(static_cast<std::size_t>(i)).most;
            if (most) out.marks.push_back({hz, *most, *most + at_500, figure->worst});
        }
    };
    add("sound.treble_loss_6k", 6000.0);
    add("sound.treble_loss_8k", 8000.0);
}

std::optional<int> chosen_channel(const Study& study, std::optional<int> wanted) {
    const auto& channels = study.sound.sheet.channels;
    const auto has = [&](std::size_t i) { return i < channels.size() && channels[i].has_value(); };
    if (wanted && *wanted >= 0 && has(static_cast<std::size_t>(*wanted))) return wanted;
    std::optional<int> first;
    for (std::size_t i = 0; i < channels.size(); ++i) {
        if (!has(i)) continue;
        if (!first) first = static_cast<int>(i);
        if (study.layout().loudspeakers[i].channel == room::Channel::centre)
            return static_cast<int>(i);
    }
    return first;
}

ChannelCurves channel_curves(const Study& study, int loudspeaker) {
    const sound::ChannelSheet& channel =
        *study.sound.sheet.channels.at(static_cast<std::size_t>(loudspeaker));
    const sound::Sheet sheet = sound::sheet_of(study.layout().screen);
    const sound::Air air = air_of(study);
    const room::OctaveAbsorption& baffle = study.layout().acoustics.baffle;
    constexpr double kARipple = 12.0;
    ChannelCurves out{loudspeaker, frequencies(channel.spacing_hz / kARipple), {}, {}};
    for (const double hz : out.hz) {
        const auto relative = sound::relative_impedance(sheet, hz, air);
        const double loss = sound::transmission_loss_db(relative, std::cos(channel.incidence_rad));
        const auto loop =
            sound::loop_factor(relative, sound::baffle_reflection(baffle, hz), channel.gap);
        out.loss_db.push_back(loss);
        out.with_gap_db.push_back(loss - sound::gap_level_db(loop, hz, channel.gap, air));
    }
    return out;
}

}  // namespace

LossCurves loss_curves(const Study& study, std::optional<int> loudspeaker) {
    const sound::Sheet sheet = sound::sheet_of(study.layout().screen);
    const sound::Air air = air_of(study);
    LossCurves out;
    out.hz = frequencies(kHigh_hz);
    for (const double degrees : kAngles_deg)
        out.angles.push_back({base::radians(degrees), {}});
    for (const double hz : out.hz) {
        const auto relative = sound::relative_impedance(sheet, hz, air);
        for (AngleCurve& curve : out.angles)
            curve.loss_db.push_back(
                sound::transmission_loss_db(relative, std::cos(curve.angle_rad)));
    }
    if (study.sound.sheet.band) add_band(sheet, air, out);
    out.measured = sheet.loss_table;
    add_marks(study, out);
    if (const auto chosen = chosen_channel(study, loudspeaker))
        out.channel = channel_curves(study, *chosen);
    return out;
}

}  // namespace rakeline::study
