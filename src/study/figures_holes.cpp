// SPDX-License-Identifier: MIT
#include "room/perforation.hpp"
#include "sight/picture_detail.hpp"
#include "study/picture_cells.hpp"
#include "study/study.hpp"

#include <cmath>
#include <vector>

/// What is seen of the sheet's holes: the holes themselves, and the bands that they make with a
/// picture's pixels.
namespace rakeline::study {
namespace {

using base::Unit;

constexpr Per kPicture{.projector = true, .format = true};
constexpr Per kPictureSeat{.projector = true, .format = true, .seat = true};
constexpr const char* kAcuity = "acuity of one minute of arc, common practice, no source";
constexpr const char* kBeats = "spectra of superposed gratings: Amidror, from memory";

const room::Perforation& holes_of(const Cell& c) {
    return c.study.layout().screen.perforation;
}

std::optional<double> pitch_visible_from(const Cell& c, Working& w) {
    w.input("b", "pitch", holes_of(c).pitch_m, Unit::millimetre);
    return c.study.holes.pitch_visible_from_m;
}

std::optional<double> seats_that_see_holes(const Cell& c, Working& w) {
    const auto& all = c.study.holes.sheet_distance_m;
    if (const auto seat = c.study.holes.nearest_seat)
        w.input("D_min", "nearest seat to the sheet", all.at(static_cast<std::size_t>(*seat)),
                Unit::metre);
    if (c.study.sound.hole_visible_from_m)
        w.input("R", "holes seen within", *c.study.sound.hole_visible_from_m, Unit::metre);
    return c.study.holes.seats_that_see_holes;
}

/// Angle of `size` at the seat's nearest point of the sheet over `minutes` of arc.
std::optional<double> over_minutes(const Cell& c, Working& w, double size_m, double minutes) {
    if (!c.study.holes.pitch_visible_from_m) return std::nullopt;
    const double distance =
        w.input("D", "to the sheet's nearest point",
                c.study.holes.sheet_distance_m.at(static_cast<std::size_t>(c.index)), Unit::metre);
    return std::atan2(size_m, distance) / (minutes * sight::kAcuity_rad);
}

std::optional<double> hole_acuity(const Cell& c, Working& w) {
    return over_minutes(
        c, w, w.input("d", "hole diameter", holes_of(c).hole_diameter_m, Unit::millimetre), 1.0);
}

std::optional<double> pitch_acuity(const Cell& c, Working& w) {
    return over_minutes(c, w, w.input("b", "pitch", holes_of(c).pitch_m, Unit::millimetre), 2.0);
}

/// Why there is no beat where there is none.
void note_absence(const Cell& c, Working& w) {
    if (holes_of(c).pattern == room::PerforationPattern::none)
        w.note("a sheet without holes has nothing for pixels to beat with");
    else if (projector_of(c).kind == room::SourceKind::film)
        w.note("film has no pixels; its grain is irregular and makes no bands");
    else
        w.note("no combination up to order 3 is coarser than both the pixels and the holes");
}

const sound::PictureBeat* beat_of(const Cell& c, Working& w) {
    const auto* found = sound::find_beat(c.study.holes, c.projector, c.format);
    if (!found) {
        if (w.recording()) note_absence(c, w);
        return nullptr;
    }
    const sound::Beat& beat = found->beat;
    if (w.recording()) {
        w.input("p_a", "pixel across, there on the sheet", glm::length(found->pixels.a),
                Unit::millimetre);
        w.input("p_b", "pixel up, there on the sheet", glm::length(found->pixels.b),
                Unit::millimetre);
        w.input("b", "pitch of the holes", holes_of(c).pitch_m, Unit::millimetre);
        w.input("u", "place across, from the sheet's middle", found->uv.x, Unit::metre);
        w.input("v", "place up, from the sheet's middle", found->uv.y, Unit::metre);
        w.note("orders: pixels " + std::to_string(beat.pixel_i) + ", " +
               std::to_string(beat.pixel_j) + "; holes " + std::to_string(beat.hole_i) + ", " +
               std::to_string(beat.hole_j));
    }
    return found;
}

std::optional<double> beat_period(const Cell& c, Working& w) {
    const auto* found = beat_of(c, w);
    if (!found) return std::nullopt;
    return found->beat.period_m();
}

std::optional<double> beat_contrast(const Cell& c, Working& w) {
    const auto* found = beat_of(c, w);
    if (!found) return std::nullopt;
    w.input("s", "open area", room::open_area(holes_of(c)), Unit::fraction);
    w.input("P", "what the pixels have of their order",
            sound::pixel_amplitude(found->beat.pixel_i, found->beat.pixel_j), Unit::ratio);
    return found->beat.contrast;
}

std::optional<double> beat_seats(const Cell& c, Working& w) {
    const auto* found = beat_of(c, w);
    if (!found) return std::nullopt;
    return found->seats_that_see;
}

const sound::Seen* seen_of(const Cell& c, Working& w) {
    const auto* found = beat_of(c, w);
    return found ? &found->seen.at(static_cast<std::size_t>(c.index)) : nullptr;
}

std::optional<double> beat_cycles(const Cell& c, Working& w) {
    const auto* seen = seen_of(c, w);
    if (!seen) return std::nullopt;
    w.input("T", "period on the sheet", *beat_period(c, w), Unit::millimetre);
    return seen->cycles_per_radian;
}

std::optional<double> beat_visibility(const Cell& c, Working& w) {
    const auto* seen = seen_of(c, w);
    if (!seen) return std::nullopt;
    const auto* found = sound::find_beat(c.study.holes, c.projector, c.format);
    w.input("C", "contrast of the bands", found->beat.contrast, Unit::fraction);
    w.input("f", "cycles in a degree", seen->cycles_per_radian, Unit::per_radian);
    w.input("S", "contrast sensitivity", seen->visibility / found->beat.contrast, Unit::ratio);
    return seen->visibility;
}

std::vector<FigureDefinition> hole_entries() {
    return {
        {"sound.pitch_visible_from",
         Subject::sound,
         "Hole rows seen within",
         Unit::metre,
         {},
         "Distance within which rows of holes are told apart, two minutes of arc for one dark and "
         "one bright.",
         "b / tan 2'",
         kAcuity,
         "The rows of holes are seen from within {value}",
         pitch_visible_from,
         false,
         false},
        {"sound.holes_seen_share",
         Subject::sound,
         "Seats that see holes",
         Unit::fraction,
         {},
         "Share of the seats nearer to the sheet than the distance within which a hole is seen.",
         "seats with D < R, over all",
         kAcuity,
         "{value} of the seats see the holes",
         seats_that_see_holes},
        {"sound.hole_acuity",
         Subject::sound,
         "Hole against acuity",
         Unit::ratio,
         {.seat = true},
         "Angle of a hole at the sheet's nearest point over one minute of arc: above 1 a normal "
         "eye can see it.",
         "atan(d / D) / 1'",
         kAcuity,
         "Seat {seat} sees a hole at {value} minutes of arc",
         hole_acuity},
        {"sound.pitch_acuity",
         Subject::sound,
         "Hole rows against acuity",
         Unit::ratio,
         {.seat = true},
         "Angle of the pitch at the sheet's nearest point over two minutes of arc: above 1 a "
         "normal "
         "eye can tell the rows apart.",
         "atan(b / D) / 2'",
         kAcuity,
         "Seat {seat} sees the rows of holes at {value} times two minutes of arc",
         pitch_acuity,
         false,
         false},
    };
}

std::vector<FigureDefinition> beat_entries() {
    return {
        {"sound.beat_period", Subject::sound, "Beat with the pixels", Unit::millimetre, kPicture,
         "Period on the sheet of the bands that pixels make with holes: of orders up to 3, at the "
         "opening's centre and corners, the one that an eye sees most. Digital projectors only.",
         "1 / |i p_a* + j p_b* + h|, p* and h of the reciprocal lattices", kBeats,
         "{projector} in {format} beats with the holes at {value}", beat_period},
        {"sound.beat_contrast", Subject::sound, "Contrast of the beat", Unit::fraction, kPicture,
         "Modulation of those bands in an even white picture, whose lens draws the gaps between "
         "pixels sharp: 90 % of a pixel's area is lit.",
         "2 s / (1 - s) A P, A of the hole's Fourier transform",
         "Fourier coefficients of disc and square; lit area: common practice, no source",
         "{projector} in {format} beats with the holes at a contrast of {value}", beat_contrast,
         false, false},
        {"sound.beat_seats", Subject::sound, "Seats that see the beat", Unit::fraction, kPicture,
         "Share of the seats to which the bands' contrast is above a normal eye's threshold.",
         "seats with C S > 1, over all", "Barten 2004, as reported",
         "{value} of the seats see {projector} in {format} beat with the holes", beat_seats},
        {"sound.beat_cycles", Subject::sound, "Beat in a degree", Unit::per_radian, kPictureSeat,
         "Bands of the beat in a degree at the eye.", "D / T, crowded where seen from the side",
         "derived: true angle at the eye",
         "Seat {seat} has {value} bands of the beat of {projector} in {format}", beat_cycles, false,
         false},
        {"sound.beat_visibility", Subject::sound, "Beat over threshold", Unit::ratio, kPictureSeat,
         "Contrast of the bands times the eye's contrast sensitivity at the picture's luminance: "
         "above 1 they are seen.",
         "C S", "Barten 2004, as reported",
         "Seat {seat} sees the beat of {projector} in {format} at {value} times its threshold",
         beat_visibility},
    };
}

}  // namespace

std::span<const FigureDefinition> hole_figures() {
    static const std::vector<FigureDefinition> entries = [] {
        std::vector<FigureDefinition> joined = hole_entries();
        for (FigureDefinition& entry : beat_entries())
            joined.push_back(entry);
        return joined;
    }();
    return entries;
}

}  // namespace rakeline::study
