// SPDX-License-Identifier: MIT
#include "sound/coverage_study.hpp"

#include "base/assert.hpp"
#include "sound/sound_study.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace rakeline::sound {
namespace {

/// Energy of a level, and back, by the exponential, which costs a third of a power of ten.
double energy_of(double level_db) {
    return std::exp(level_db * (0.1 * std::numbers::ln10));
}

double level_of(double energy) {
    return 10.0 * std::log10(energy);
}

/// Whether both play the same signal and are heard as one.
bool play_together(room::Channel a, room::Channel b) {
    return a == b && !is_screen_channel(a);
}

/// Level of all that play with loudspeaker `which`, at the reference seat.
double level_together(const SoundInput& in,
                      const SoundStudy& study,
                      std::size_t which,
                      std::size_t seat) {
    const room::Channel channel = in.loudspeakers[which].channel;
    const std::size_t band = power_band(channel);
    const auto level = [&](std::size_t i) { return study.loudspeakers[i].level_db[band][seat]; };
    if (is_screen_channel(channel)) return level(which);
    double energy = 0.0;
    for (std::size_t i = 0; i < in.loudspeakers.size(); ++i)
        if (play_together(channel, in.loudspeakers[i].channel)) energy += energy_of(level(i));
    return level_of(energy);
}

double target_db(const SoundInput& in, room::Channel channel) {
    if (channel == room::Channel::sub_bass) return in.peak_level_db + in.playback.sub_bass_gain_db;
    if (channel == room::Channel::surround) return in.playback.surround_peak_level_db;
    return in.peak_level_db;
}

Drive drive_of(const SoundInput& in, const SoundStudy& study, std::size_t which, std::size_t seat) {
    const room::Loudspeaker& loudspeaker = in.loudspeakers[which];
    const auto& sheet = study.sheet.channels.at(which);
    Drive out;
    out.target_db = target_db(in, loudspeaker.channel);
    out.level_db = level_together(in, study, which, seat);
    out.boost_db = sheet ? sheet->equalisation.headroom_db : 0.0;
    const double more_db = out.target_db + out.boost_db - out.level_db;
    out.amplifier_power_w = loudspeaker.power_w * std::pow(10.0, 0.1 * more_db);
    out.thermal_power_w =
        out.amplifier_power_w * std::pow(10.0, -0.1 * in.playback.crest_factor_db);
    out.headroom_db = 10.0 * std::log10(loudspeaker.amplifier_w / out.amplifier_power_w);
    out.thermal_margin_db = 10.0 * std::log10(loudspeaker.power_w / out.thermal_power_w);
    return out;
}

double within_window(const std::vector<double>& levels, double reference_db) {
    const auto count = std::count_if(levels.begin(), levels.end(), [&](double level) {
        return std::abs(level - reference_db) <= kLevelWindow_db;
    });
    return static_cast<double>(count) / static_cast<double>(levels.size());
}

AxisAim aim_of(const SoundInput& in, const std::vector<DirectPath>& paths) {
    const auto nearest = std::min_element(paths.begin(), paths.end(), [](auto& a, auto& b) {
        return a.off_axis.angle_rad < b.off_axis.angle_rad;
    });
    const auto [front, back] = std::minmax_element(
        in.ears.begin(), in.ears.end(), [](const auto& a, const auto& b) { return a.z < b.z; });
    AxisAim out;
    out.seat = static_cast<int>(nearest - paths.begin());
    out.off_axis_rad = nearest->off_axis.angle_rad;
    const double depth = back->z - front->z;
    const double z = in.ears[static_cast<std::size_t>(out.seat)].z;
    if (depth > 0.0) out.depth_fraction = (z - front->z) / depth;
    return out;
}

LoudspeakerCoverage coverage_of(const SoundInput& in, const SoundStudy& study, std::size_t which) {
    LoudspeakerCoverage out;
    const LoudspeakerSound& sound = study.loudspeakers[which];
    if (!in.ears.empty()) out.aim = aim_of(in, sound.paths);
    if (!in.reference_seat) return out;
    const auto seat = static_cast<std::size_t>(*in.reference_seat);
    for (std::size_t b = 0; b < kOctaves.size(); ++b) {
        out.reference_db[b] = sound.level_db[b].at(seat);
        out.within_fraction[b] = within_window(sound.level_db[b], *out.reference_db[b]);
    }
    out.drive = drive_of(in, study, which, seat);
    return out;
}

std::optional<SurroundArray> surround_array(const SoundInput& in, const SoundStudy& study) {
    std::vector<const LoudspeakerSound*> array;
    for (std::size_t i = 0; i < in.loudspeakers.size(); ++i)
        if (in.loudspeakers[i].channel == room::Channel::surround)
            array.push_back(&study.loudspeakers[i]);
    if (array.empty()) return std::nullopt;
    SurroundArray out;
    for (std::size_t b = 0; b < kOctaves.size(); ++b) {
        out.level_db[b].reserve(in.ears.size());
        for (std::size_t seat = 0; seat < in.ears.size(); ++seat) {
            double energy = 0.0;
            for (const LoudspeakerSound* one : array)
                energy += energy_of(one->level_db[b][seat]);
            out.level_db[b].push_back(level_of(energy));
        }
        out.spread_db[b] = spread_of(out.level_db[b]);
    }
    return out;
}

}  // namespace

CoverageStudy study_coverage(const SoundInput& in, const SoundStudy& study) {
    CoverageStudy out;
    for (std::size_t i = 0; i < in.loudspeakers.size(); ++i)
        out.loudspeakers.push_back(coverage_of(in, study, i));
    out.surrounds = surround_array(in, study);
    return out;
}

std::size_t power_band(room::Channel channel) {
    const double wanted = channel == room::Channel::sub_bass ? 63.0 : 1000.0;
    const auto* found = std::find(kOctaves.begin(), kOctaves.end(), wanted);
    RL_ASSERT(found != kOctaves.end());
    return static_cast<std::size_t>(found - kOctaves.begin());
}

std::optional<double> spread_of(const std::vector<double>& levels) {
    if (levels.empty()) return std::nullopt;
    const auto [low, high] = std::minmax_element(levels.begin(), levels.end());
    return *high - *low;
}

}  // namespace rakeline::sound
