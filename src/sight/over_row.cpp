// SPDX-License-Identifier: MIT
#include "sight/over_row.hpp"

#include "sight/row_clearance.hpp"

#include <algorithm>

namespace rakeline::sight {
namespace {

/// A sight line that meets the very end of an eye line still meets it, whatever the last bits say.
constexpr double kTouch_m = 1e-6;

double cross_in_plan(const glm::dvec3& a, const glm::dvec3& b) {
    return a.x * b.z - a.z * b.x;
}

glm::dvec3 rightward(const room::Seat& seat) {
    return {-seat.facing.z, 0.0, seat.facing.x};
}

/// The row's eyes from house left, with the ends of its outermost seats.
std::vector<glm::dvec3> eye_line(const room::SeatPlan& plan,
                                 const std::vector<room::SeatBlock>& blocks,
                                 const room::Row& row) {
    std::vector<glm::dvec3> line;
    if (row.seat_count == 0) return line;
    const auto seat = [&](int i) -> const room::Seat& {
        return plan.seats.at(static_cast<std::size_t>(row.first_seat + i));
    };
    const double reach_m = 0.5 * blocks.at(static_cast<std::size_t>(row.block)).seat_pitch_m;
    line.push_back(seat(0).eye - reach_m * rightward(seat(0)));
    for (int i = 0; i < row.seat_count; ++i)
        line.push_back(seat(i).eye);
    const room::Seat& last = seat(row.seat_count - 1);
    line.push_back(last.eye + reach_m * rightward(last));
    return line;
}

/// Where the line from `rear` to `focus` crosses the stretch from `a` to `b` in plan.
struct Crossing {
    double along = 0.0;  ///< share of the way from rear eye to focus
    glm::dvec3 at{0.0};
};

std::optional<Crossing> crossing(const glm::dvec3& rear,
                                 const glm::dvec3& focus,
                                 const glm::dvec3& a,
                                 const glm::dvec3& b) {
    const glm::dvec3 sight = focus - rear;
    const glm::dvec3 stretch = b - a;
    const double turn = cross_in_plan(sight, stretch);
    if (turn == 0.0) return std::nullopt;  // side by side
    const double along = cross_in_plan(a - rear, stretch) / turn;
    const double part = cross_in_plan(a - rear, sight) / turn;
    const double touch = kTouch_m / glm::length(stretch);
    if (along <= 0.0 || along >= 1.0 || part < -touch || part > 1.0 + touch) return std::nullopt;
    return Crossing{along, a + std::clamp(part, 0.0, 1.0) * stretch};
}

}  // namespace

std::optional<OverRow> over_row(const geometry::Patch& surface,
                                const picture::Opening& opening,
                                const room::SeatPlan& plan,
                                const std::vector<room::SeatBlock>& blocks,
                                const glm::dvec3& rear,
                                int front_row) {
    const room::Row& front = plan.rows.at(static_cast<std::size_t>(front_row));
    const std::vector<glm::dvec3> line = eye_line(plan, blocks, front);
    const glm::dvec3 focus = nearest_focus(surface, opening, rear);
    std::optional<Crossing> nearest;
    for (std::size_t i = 1; i < line.size(); ++i) {
        const auto here = crossing(rear, focus, line[i - 1], line[i]);
        if (here && (!nearest || here->along < nearest->along)) nearest = here;
    }
    if (!nearest) return std::nullopt;
    const auto c_m = clearance(rear, nearest->at, focus);
    if (!c_m) return std::nullopt;
    return OverRow{rear, nearest->at, focus, *c_m};
}

}  // namespace rakeline::sight
