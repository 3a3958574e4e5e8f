// SPDX-License-Identifier: MIT
#include "picture/focus.hpp"
#include "sight/picture_detail.hpp"
#include "study/picture_cells.hpp"
#include "study/sight_cells.hpp"

#include <vector>

/// How fine the picture is at every eye: pixels or line pairs in a degree, and against acuity.
namespace rakeline::study {
namespace {

using base::Unit;

constexpr Per kSeat{.projector = true, .format = true, .seat = true};
constexpr const char* kSource = "derived: true angle at the eye";

bool is_film(const Cell& c) {
    return projector_of(c).kind == room::SourceKind::film;
}

/// Angle at the eye of a piece of the gate, at the picture's centre and across it.
std::optional<double> angle_of(const Cell& c, Working& w, double element_m) {
    const auto* picture = picture_of(c);
    if (!picture) return std::nullopt;
    record_eye(c, w);
    const room::Seat& seat = c.study.seats.seats.at(static_cast<std::size_t>(c.index));
    return sight::element_angle(picture->map, element_m, seat.eye);
}

std::optional<double> per_angle(std::optional<double> angle, Working& w, const char* meaning) {
    if (!angle) return std::nullopt;
    return 1.0 / w.input("a", meaning, *angle, Unit::radian);
}

std::optional<double> pixels_per_degree(const Cell& c, Working& w) {
    if (is_film(c)) return std::nullopt;
    const double pitch =
        w.input("p", "pixel pitch", projector_of(c).imager.pixel_pitch_m, Unit::micrometre);
    return per_angle(angle_of(c, w, pitch), w, "one pixel at the eye");
}

/// One line of the finest pairs that the film is held to, in the gate.
double line_m(const Cell& c, Working& w) {
    return picture::film_detail(w.input("r", "line pairs a millimetre of film",
                                        projector_of(c).film_resolution_lp_mm, Unit::ratio));
}

std::optional<double> line_pairs_per_degree(const Cell& c, Working& w) {
    if (!is_film(c)) return std::nullopt;
    const double pair = 2.0 * line_m(c, w);
    return per_angle(angle_of(c, w, pair), w, "one line pair at the eye");
}

/// A pixel, or one line of a pair.
std::optional<double> detail_acuity(const Cell& c, Working& w) {
    const double element = is_film(c) ? line_m(c, w) : projector_of(c).imager.pixel_pitch_m;
    w.input("e", "pixel or line in the gate", element, Unit::micrometre);
    const auto angle = angle_of(c, w, element);
    if (!angle) return std::nullopt;
    return w.input("a", "the same at the eye", *angle, Unit::radian) / sight::kAcuity_rad;
}

}  // namespace

std::span<const FigureDefinition> detail_figures() {
    static const std::vector<FigureDefinition> entries = {
        {"sight.pixels_per_degree", Subject::sight, "Pixels in a degree", Unit::per_radian, kSeat,
         "Pixels across the picture's centre in a degree at the eye; a normal eye tells up to 60 "
         "apart. Digital projectors only.",
         "1 / a, a = angle(P(p/2) - eye, P(-p/2) - eye)", kSource,
         "{projector} in {format} has its pixels at {value} from seat {seat}", pixels_per_degree},
        {"sight.line_pairs_per_degree", Subject::sight, "Line pairs in a degree", Unit::per_radian,
         kSeat,
         "The finest line pairs that the film is held to, across the picture's centre, in a degree "
         "at the eye; a normal eye tells up to 30 apart. Film projectors only.",
         "1 / a, a = angle(P(1/2r) - eye, P(-1/2r) - eye)", kSource,
         "{projector} in {format} has its line pairs at {value} from seat {seat}",
         line_pairs_per_degree},
        {"sight.detail_acuity", Subject::sight, "Pixel or line against acuity", Unit::ratio, kSeat,
         "Angle of a pixel, or of a line of the film's finest pairs, over one minute of arc: above "
         "1 a normal eye can tell them apart.",
         "a / 1'", "one minute of arc: ISO 8596, visual acuity 1.0, from memory",
         "Seat {seat} sees the finest detail of {format} at {value} minutes of arc", detail_acuity},
    };
    return entries;
}

}  // namespace rakeline::study
