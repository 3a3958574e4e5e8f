// SPDX-License-Identifier: MIT
/// Luminance of 500 seats, nine points, two formats on one core, against a plain loop written from
/// the formula: L = E G / pi, G = matte + (peak - matte) 2^-(a/w)^2, a by the arc cosine between
/// the way to the eye and the mirrored ray. Both start from the same pictures. Prints; checks
/// nothing.
#include "bench/light_bench.hpp"

#include "bench/timing.hpp"
#include "light/curvature_help.hpp"
#include "light/lit_room.hpp"

#include <cstdio>

namespace rakeline::bench {
namespace {

constexpr int kRows = 20;
constexpr int kSeats = 25;

struct Timed {
    picture::PictureInput pictures;
    picture::PictureStudy study;
    light::LightInput input;
};

Timed timed_room(const room::ScreenSurface& surface, double radius_m) {
    Timed out;
    tests::LitRoom r = tests::square_on_room(14.0, 1.85);
    r.screen.surface = surface;
    r.screen.radius_m = radius_m;
    r.projector.up_m += 2.5;
    r.projector.flux.corner_fraction = 0.8;
    room::Format wide;
    wide.name = "2.39";
    wide.aspect_ratio = 2.39;
    r.format.name = "1.85";
    r.projector.formats.front().format = "1.85";
    r.projector.formats.push_back(r.projector.formats.front());
    r.projector.formats.back().format = "2.39";
    r.projector.formats.back().pixels_high = 836;
    out.pictures.screen = r.screen;
    out.pictures.formats = {r.format, wide};
    out.pictures.projectors = {r.projector};
    out.pictures.booth_wall_back_m = r.booth_wall_back_m;
    out.study = picture::study_picture(out.pictures);
    for (int i = 0; i < kRows * kSeats; ++i)
        out.input.eyes.emplace_back(0.6 * (i % kSeats - 12), 1.2 + 0.15 * (i / kSeats),
                                    5.0 + 0.9 * (i / kSeats));
    out.input.screen = r.screen;
    out.input.projectors = {r.projector};
    return out;
}

/// The formula, scalar by scalar.
double plain_gain(const room::ScreenSurface& s,
                  const double* in,
                  const double* n,
                  const double* e) {
    const double length = std::sqrt(e[0] * e[0] + e[1] * e[1] + e[2] * e[2]);
    const double facing = in[0] * n[0] + in[1] * n[1] + in[2] * n[2];
    double cosine = 0.0;
    for (int k = 0; k < 3; ++k)
        cosine += (in[k] - 2.0 * facing * n[k]) * e[k] / length;
    const double a = std::acos(std::min(1.0, std::max(-1.0, cosine)));
    const double q = (0.5 * s.peak_gain - s.matte_gain) / (s.peak_gain - s.matte_gain);
    const double w = s.half_gain_angle_rad / std::sqrt(-std::log2(q));
    return s.matte_gain + (s.peak_gain - s.matte_gain) * std::pow(2.0, -(a / w) * (a / w));
}

double plain_sum(const Timed& room, const std::vector<light::PictureLight>& lit) {
    double sum = 0.0;
    for (std::size_t f = 0; f < room.study.pictures.size(); ++f) {
        const auto& opening = room.study.openings[f];
        const glm::dvec3 lens = room.study.pictures[f].map.pose().lens;
        for (int p = 0; p < light::kPointCount; ++p) {
            const glm::dvec2 at = light::point_place(static_cast<light::PicturePoint>(p));
            const glm::dvec3 place =
                picture::opening_point(room.study.surface, opening, at.x, at.y);
            const glm::dvec3 normal = geometry::normal_at(
                room.study.surface, geometry::coordinates_of(room.study.surface, place));
            const glm::dvec3 incoming = glm::normalize(place - lens);
            const double lux = lit[f].illuminance_lx[static_cast<std::size_t>(p)];
            for (const glm::dvec3& eye : room.input.eyes) {
                const double to_eye[3] = {eye.x - place.x, eye.y - place.y, eye.z - place.z};
                sum += lux / base::kPi *
                       plain_gain(room.input.screen.surface, &incoming.x, &normal.x, to_eye);
            }
        }
    }
    return sum;
}

std::vector<light::PictureLight> readings(const Timed& room) {
    std::vector<light::PictureLight> out;
    for (const auto& picture : room.study.pictures)
        out.push_back(light::read_picture(room.input, room.study, picture));
    return out;
}

double sum_of(const std::vector<light::PictureLight>& lights) {
    double sum = 0.0;
    for (const light::PictureLight& light : lights) {
        for (int seat = 0; seat < kRows * kSeats; ++seat) {
            for (int p = 0; p < light::kPointCount; ++p)
                sum += light::luminance_cdm2(light, seat, static_cast<light::PicturePoint>(p));
        }
    }
    return sum;
}

void print_lobe(const char* name, const room::ScreenSurface& surface, double radius_m) {
    const Timed room = timed_room(surface, radius_m);
    const auto lit = readings(room);
    double ours = 0.0;
    double plain = 0.0;
    const double ours_ms = median_ms(
        own_ms, [&] { ours = sum_of(readings(room)); }, 21, 100.0);
    std::printf("    %-24s ours %6.3f ms", name, ours_ms);
    if (surface.gain_table.empty() && surface.lobe == room::LobeKind::mirror) {
        const double plain_ms = median_ms(
            own_ms, [&] { plain = plain_sum(room, lit); }, 21, 100.0);
        std::printf(", plain loop %6.3f ms: %4.2f times as fast, sums apart by %.1e", plain_ms,
                    plain_ms / ours_ms, std::abs(ours / plain - 1.0));
    }
    std::printf("\n");
}

void print_rest(const room::ScreenSurface& surface) {
    const Timed room = timed_room(surface, 40.0);
    const double all = median_ms(
        wall_ms, [&] { light::study_light(room.input, room.study); }, 5, 100.0);
    const double trials = median_ms(
        wall_ms, [&] { light::curvature_help({.pictures = room.pictures, .light = room.input}); },
        3, 100.0);
    std::printf("    with hot spots %.1f ms, all trials of curve and tilt %.0f ms (on the wall)\n",
                all, trials);
}

}  // namespace

void light_pace() {
    std::printf("\nluminance, %d seats, nine points, two formats, one thread\n", kRows * kSeats);
    room::ScreenSurface lobe;
    lobe.lobe = room::LobeKind::mirror;
    lobe.peak_gain = 1.8;
    lobe.matte_gain = 0.45;
    lobe.half_gain_angle_rad = base::radians(26.0);
    print_lobe("lobe, flat", lobe, 0.0);
    print_lobe("lobe, curved", lobe, 40.0);
    room::ScreenSurface table = lobe;
    table.gain_table = {{0.0, 1.8}, {0.2, 1.6}, {0.4, 1.1}, {0.7, 0.7}, {1.2, 0.5}};
    print_lobe("measured gains, curved", table, 40.0);
    print_lobe("matte, curved", {}, 40.0);
    print_rest(table);
}

}  // namespace rakeline::bench
