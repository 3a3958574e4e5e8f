// SPDX-License-Identifier: MIT
#include "desk/seat_steps.hpp"

#include <cmath>

namespace rakeline::desk {
namespace {

/// Unit, in plan.
glm::dvec3 direction_of(SeatStep step) {
    switch (step) {
        case SeatStep::left:
            return {-1.0, 0.0, 0.0};
        case SeatStep::right:
            return {1.0, 0.0, 0.0};
        case SeatStep::front:
            return {0.0, 0.0, -1.0};
        case SeatStep::behind:
            return {0.0, 0.0, 1.0};
        case SeatStep::here:
            break;
    }
    return {0.0, 0.0, 0.0};
}

}  // namespace

std::optional<int> seat_beside(const room::SeatPlan& plan, int seat, SeatStep step) {
    constexpr double kLeast_m = 0.05, kAsideShare = 0.5, kAsideCost = 2.0;
    const glm::dvec3 along = direction_of(step);
    const glm::dvec3 from = plan.seats.at(static_cast<std::size_t>(seat)).floor;
    std::optional<int> best;
    double best_cost = 0.0;
    for (std::size_t i = 0; i < plan.seats.size(); ++i) {
        const glm::dvec3 to = plan.seats[i].floor - from;
        const double ahead = glm::dot(to, along);
        const double aside = glm::length(to - ahead * along);  // a balcony's rise is aside too
        if (ahead < kLeast_m || aside > kAsideShare * ahead) continue;
        const double cost = ahead + kAsideCost * aside;
        if (best && cost >= best_cost) continue;
        best = static_cast<int>(i);
        best_cost = cost;
    }
    return best;
}

void take_seat_step(Workspace& w, const study::Study& study) {
    const SeatStep step = w.step.value_or(SeatStep::here);
    if (!w.step || study.seats.seats.empty()) return;
    w.step.reset();
    if (w.selected.kind != drawing::Shows::Kind::seat)
        w.selected = {drawing::Shows::Kind::seat, study.reference_seat.value_or(0)};
    else if (const auto next = seat_beside(study.seats, w.selected.index, step))
        w.selected.index = *next;
}

}  // namespace rakeline::desk
