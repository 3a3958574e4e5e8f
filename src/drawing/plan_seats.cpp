// SPDX-License-Identifier: MIT
#include "drawing/plan_seats.hpp"

#include "drawing/parts.hpp"
#include "drawing/plan_contours.hpp"

namespace rakeline::drawing {
namespace {

using Kind = Shows::Kind;

/// A seat's own axes on the page. The reference point lies under the eye, a hand's breadth in
/// front of the backrest.
struct SeatFrame {
    glm::dvec2 at{0.0};
    glm::dvec2 right{1.0, 0.0};
    glm::dvec2 ahead{0.0, -1.0};

    glm::dvec2 point(double right_m, double ahead_m) const {
        return at + right_m * right + ahead_m * ahead;
    }
};

SeatFrame frame_of(const room::Seat& seat) {
    const glm::dvec2 ahead{seat.facing.x, seat.facing.z};
    // Right of the facing in the room, f x up, is (-f.z, f.x) in (across, back).
    return {{seat.floor.x, seat.floor.z}, {-ahead.y, ahead.x}, ahead};
}

constexpr double kBehind_m = 0.14;  ///< backrest behind the eye
constexpr double kAhead_m = 0.34;   ///< front of the pan before it
constexpr double kGap_m = 0.03;     ///< left between neighbours on each side

std::vector<glm::dvec2> seat_shape(const SeatFrame& f, double half_width, bool wheelchair) {
    const double w = half_width;
    if (wheelchair)
        return {f.point(-w, -kBehind_m), f.point(w, -kBehind_m), f.point(w, kAhead_m),
                f.point(-w, kAhead_m)};
    const double chamfer = 0.3 * w;
    return {f.point(-w, -kBehind_m),        f.point(w, -kBehind_m),
            f.point(w, kAhead_m - chamfer), f.point(w - chamfer, kAhead_m),
            f.point(chamfer - w, kAhead_m), f.point(-w, kAhead_m - chamfer)};
}

/// The sign inside a seat: a cross where it misses, a triangle where it is near its limit.
std::vector<glm::dvec2> seat_mark(const SeatFrame& f, double half_width, study::Verdict verdict) {
    const double a = 0.55 * half_width;
    const double mid = 0.5 * (kAhead_m - kBehind_m);
    if (verdict == study::Verdict::missed)
        return {f.point(-a, mid - a), f.point(a, mid + a), f.point(0.0, mid), f.point(-a, mid + a),
                f.point(a, mid - a)};
    if (verdict == study::Verdict::near)
        return {f.point(-a, mid - a), f.point(a, mid - a), f.point(0.0, mid + a),
                f.point(-a, mid - a)};
    return {};
}

double half_width_of(const study::Study& study, const room::Seat& seat) {
    const int block = study.seats.rows.at(static_cast<std::size_t>(seat.row)).block;
    return 0.5 * study.layout().seating.at(static_cast<std::size_t>(block)).seat_pitch_m - kGap_m;
}

/// How a seat stands out. Under contours it is quiet, so that lines and numbers can be read.
struct SeatLook {
    study::Verdict verdict = study::Verdict::no_limit;
    bool selected = false;
    bool quiet = false;

    Ink ink() const {
        const bool plain = verdict == study::Verdict::no_limit;
        return plain && quiet ? Ink::quiet : verdict_ink(verdict);
    }
    double strength() const {
        if (selected) return 0.85;
        if (quiet) return 0.12;
        return verdict == study::Verdict::no_limit ? 0.10 : 0.30;
    }
};

void add_seat(const study::Study& study, int index, const SeatLook& look, Drawing& drawing) {
    const room::Seat& seat = study.seats.seats[static_cast<std::size_t>(index)];
    const SeatFrame frame = frame_of(seat);
    const double half = half_width_of(study, seat);
    const Shows what = showing(Kind::seat, index);
    const Ink ink = look.ink();
    const bool selected = look.selected;
    const auto shape = seat_shape(frame, half, seat.wheelchair);
    drawing.items.push_back(Fill{shape, selected ? Ink::near : ink, look.strength(), what});
    drawing.items.push_back(Line{.points = shape,
                                 .weight = selected ? Weight::cut : Weight::helper,
                                 .ink = selected ? Ink::near : ink,
                                 .closed = true,
                                 .dashed = seat.wheelchair,
                                 .shows = what});
    const auto mark = seat_mark(frame, half, look.verdict);
    if (!mark.empty())
        drawing.items.push_back(Line{.points = mark, .weight = Weight::seen, .ink = ink});
    if (study.reference_seat == index)
        drawing.items.push_back(Line{.points = disc(frame.point(0.0, 0.0), 0.40, 24),
                                     .weight = Weight::seen,
                                     .ink = Ink::near,
                                     .closed = true,
                                     .shows = what});
}

void add_row_letters(const study::Study& study, int row_number, Drawing& drawing) {
    const room::Row& row = study.seats.rows[static_cast<std::size_t>(row_number)];
    if (row.seat_count == 0) return;
    const auto first = static_cast<std::size_t>(row.first_seat);
    const auto last = first + static_cast<std::size_t>(row.seat_count) - 1;
    constexpr double kBeside_m = 0.30;
    for (const auto& [seat, side] : {std::pair{first, -1.0}, std::pair{last, 1.0}}) {
        const room::Seat& end = study.seats.seats[seat];
        const SeatFrame frame = frame_of(end);
        drawing.items.push_back(
            Label{.at = frame.point(side * (half_width_of(study, end) + kBeside_m), 0.1),
                  .text = row.letter,
                  .anchor = Anchor::centre,
                  .ink = Ink::quiet,
                  .shows = showing(Kind::row, row_number)});
    }
}

/// Dashes along both sides of every gap in a row that is wider than its seats stand apart; those
/// of row after row join to the sides of the aisle.
void add_aisles(const study::Study& study, int row_number, Drawing& drawing) {
    const room::Row& row = study.seats.rows[static_cast<std::size_t>(row_number)];
    const room::SeatBlock& block = study.layout().seating[static_cast<std::size_t>(row.block)];
    for (int i = 0; i + 1 < row.seat_count; ++i) {
        const auto at = static_cast<std::size_t>(row.first_seat + i);
        const room::Seat& left = study.seats.seats[at];
        const room::Seat& right = study.seats.seats[at + 1];
        if (glm::length(right.floor - left.floor) < 1.35 * block.seat_pitch_m) continue;
        for (const auto& [seat, side] : {std::pair{&left, 0.5}, std::pair{&right, -0.5}}) {
            const SeatFrame frame = frame_of(*seat);
            const double half_row = 0.5 * block.row_spacing_m;
            Line edge = stroke(frame.point(side * block.seat_pitch_m, -half_row),
                               frame.point(side * block.seat_pitch_m, half_row), Weight::helper,
                               Ink::quiet, showing(Kind::row, row_number));
            edge.dashed = true;
            drawing.items.push_back(edge);
        }
    }
}

}  // namespace

void add_plan_seats(const study::Study& study, const DrawingChoice& choice, Drawing& drawing) {
    const std::size_t count = study.seats.seats.size();
    const study::Figure* figure = choice.seat_figure;
    const bool per_seat =
        figure && figure->definition && figure->definition->axis() == study::Axis::seat;
    const auto verdicts = verdicts_by_index(per_seat ? figure : nullptr, count);
    const auto hidden = [&](int row) {
        return choice.raised && *choice.raised != is_raised(study, row);
    };
    for (std::size_t i = 0; i < count; ++i) {
        const int index = static_cast<int>(i);
        if (hidden(study.seats.seats[i].row)) continue;
        add_seat(study, index, {verdicts[i], choice.seat == index, wants_contours(choice)},
                 drawing);
    }
    for (std::size_t row = 0; row < study.seats.rows.size(); ++row) {
        if (hidden(static_cast<int>(row))) continue;
        add_row_letters(study, static_cast<int>(row), drawing);
        add_aisles(study, static_cast<int>(row), drawing);
    }
}

}  // namespace rakeline::drawing
