// SPDX-License-Identifier: MIT
/// Direct levels of 500 seats, 12 loudspeakers, nine octaves on one core, against a plain loop
/// written from the formula: angles by arc tangents, one sum of six terms a level. Both start from
/// the same layout. Prints; checks nothing.
#include "bench/sound_bench.hpp"

#include "base/special.hpp"
#include "base/units.hpp"
#include "bench/timing.hpp"
#include "sound/sound_study.hpp"

#include <cstdio>

namespace rakeline::bench {
namespace {

constexpr int kRows = 20;
constexpr int kSeats = 25;

room::Loudspeaker timed_loudspeaker(room::Channel channel, double across_m) {
    room::Loudspeaker l;
    l.channel = channel;
    l.across_m = across_m;
    l.up_m = 4.0;
    l.back_m = 0.5;
    l.pitch_rad = 0.1;
    return l;
}

/// Three horns and a sub-bass behind the sheet, eight surrounds of which half are pistons.
sound::SoundInput timed_sound_room(double radius_m) {
    sound::SoundInput in;
    in.surface = geometry::standing_patch({0, 3.5, 1.2}, radius_m, 0.0);
    in.sheet.perforation.pattern = room::PerforationPattern::square;
    in.loudspeakers = {timed_loudspeaker(room::Channel::left, -4.0),
                       timed_loudspeaker(room::Channel::centre, 0.0),
                       timed_loudspeaker(room::Channel::right, 4.0),
                       timed_loudspeaker(room::Channel::sub_bass, 1.0)};
    in.loudspeakers.back().directivity = room::Directivity::piston;
    for (int i = 0; i < 8; ++i) {
        const double side = i % 2 ? 1.0 : -1.0;
        room::Loudspeaker l = timed_loudspeaker(room::Channel::surround, side * 8.5);
        l.behind_screen = false;
        l.back_m = 8.0 + 3.0 * (i / 2);
        l.yaw_rad = -side * 0.5 * base::kPi;
        if (i >= 4) l.directivity = room::Directivity::piston;
        in.loudspeakers.push_back(l);
    }
    for (int i = 0; i < kRows * kSeats; ++i)
        in.ears.emplace_back(0.6 * (i % kSeats - 12), 1.2 + 0.15 * (i / kSeats),
                             5.0 + 0.9 * (i / kSeats));
    in.reference_seat = 13 * kSeats + 12;
    return in;
}

/// The formula of the directivity, angle by angle.
double plain_directivity(
    const room::Loudspeaker& l, double hz, double across, double up, double speed) {
    const double angle = std::acos(std::clamp(std::cos(across) * std::cos(up), -1.0, 1.0));
    const double k = 2.0 * base::kPi * hz / speed;
    if (l.directivity == room::Directivity::piston) {
        const double x = k * l.piston_radius_m * std::sin(std::min(angle, 0.5 * base::kPi));
        const double level =
            x < 1e-4 ? 0.0 : 20.0 * std::log10(std::abs(2.0 * base::bessel_j1(x) / x));
        return std::clamp(level, -30.0, 0.0);
    }
    const auto half = [&](double nominal) {
        const double held = 2.2150893677242323 * speed /
                            (2.0 * base::kPi * l.piston_radius_m * std::sin(0.5 * nominal));
        return 0.5 * nominal * std::max(1.0, held / hz);
    };
    const double roll = std::atan2(std::sin(up), std::sin(across) * std::cos(up));
    const double h = half(l.coverage_across_rad);
    const double v = half(l.coverage_up_rad);
    const double share = std::pow(std::cos(roll) / h, 2) + std::pow(std::sin(roll) / v, 2);
    return std::max(-6.020599913279624 * angle * angle * share, -30.0);
}

double plain_level(const sound::SoundInput& in,
                   const room::Loudspeaker& l,
                   const glm::dvec3& ear,
                   double hz,
                   std::complex<double> sheet,
                   double air_db_per_m) {
    const glm::dvec3 from(l.across_m, l.up_m, l.back_m);
    const glm::dvec3 way = ear - from;
    const double r = glm::length(way);
    const double x = way.x * std::cos(l.yaw_rad) - way.z * std::sin(l.yaw_rad);
    const double ahead = way.x * std::sin(l.yaw_rad) + way.z * std::cos(l.yaw_rad);
    const double z = ahead * std::cos(l.pitch_rad) - way.y * std::sin(l.pitch_rad);
    const double y = ahead * std::sin(l.pitch_rad) + way.y * std::cos(l.pitch_rad);
    const double speed = in.air.sound_speed_m_s();
    double level =
        l.sensitivity_db + 10.0 * std::log10(l.power_w) - 20.0 * std::log10(r) - air_db_per_m * r +
        plain_directivity(l, hz, std::atan2(x, z), std::atan2(y, std::hypot(x, z)), speed);
    if (!l.behind_screen) return level;
    for (const geometry::PatchHit& hit : geometry::hits(in.surface, {from, way})) {
        if (hit.t >= 1.0) break;
        const double cosine = std::abs(glm::dot(way, geometry::normal_at(in.surface, hit.uv))) / r;
        level -=
            10.0 * std::log10(std::norm(1.0 + sheet * std::cos(std::acos(std::min(cosine, 1.0)))));
        break;
    }
    return level;
}

double plain_sum(const sound::SoundInput& in) {
    double sum = 0.0;
    for (const double hz : sound::kOctaves) {
        const auto sheet = sound::relative_impedance(in.sheet, hz, in.air);
        const double air = sound::air_absorption_db_per_m(hz, in.air);
        for (const room::Loudspeaker& l : in.loudspeakers)
            for (const glm::dvec3& ear : in.ears)
                sum += plain_level(in, l, ear, hz, sheet, air);
    }
    return sum;
}

double sum_of(const std::vector<sound::LoudspeakerSound>& all) {
    double sum = 0.0;
    for (const sound::LoudspeakerSound& one : all)
        for (const auto& levels : one.level_db)
            for (const double level : levels)
                sum += level;
    return sum;
}

void print_room(const char* name, double radius_m) {
    const sound::SoundInput in = timed_sound_room(radius_m);
    double ours = 0.0;
    double plain = 0.0;
    const double ours_ms = median_ms(
        own_ms, [&] { ours = sum_of(sound::direct_levels(in, 1)); }, 21, 100.0);
    const double plain_ms = median_ms(
        own_ms, [&] { plain = plain_sum(in); }, 21, 100.0);
    std::printf(
        "    %-14s ours %6.3f ms, plain loop %6.3f ms: %4.2f times as fast, mean level "
        "apart by %.1e dB\n",
        name, ours_ms, plain_ms, plain_ms / ours_ms,
        std::abs(ours - plain) / (12.0 * 9.0 * kRows * kSeats));
}

}  // namespace

void sound_pace() {
    std::printf("\ndirect levels, %d seats, 12 loudspeakers, nine octaves, one thread\n",
                kRows * kSeats);
    print_room("flat sheet", 0.0);
    print_room("curved sheet", 30.0);
    const sound::SoundInput in = timed_sound_room(30.0);
    const double all = median_ms(
        wall_ms, [&] { sound::study_sound(in); }, 21, 100.0);
    std::printf("    with sheet, gap, surrounds, cabinets and arrival %.2f ms (on the wall)\n",
                all);
}

}  // namespace rakeline::bench
