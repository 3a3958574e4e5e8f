// SPDX-License-Identifier: MIT
#include "sight/row_clearance.hpp"

#include "base/assert.hpp"

#include <algorithm>
#include <cmath>

namespace rakeline::sight {
namespace {

glm::dvec2 in_plan(const glm::dvec3& v) {
    return {v.x, v.z};
}

/// The lower edge of an opening as a curve over u, and one eye, both in plan.
struct Edge {
    const geometry::Patch& surface;
    const picture::Opening& opening;
    glm::dvec2 eye;

    glm::dvec3 point(double u) const { return geometry::point_at(surface, {u, opening.uv.bottom}); }
    double distance(double u) const { return glm::distance(in_plan(point(u)), eye); }

    /// Half the derivative of the squared distance: its sign says on which side the nearest is.
    double slope(double u) const {
        const glm::dvec3 normal = geometry::normal_at(surface, {u, opening.uv.bottom});
        const glm::dvec3 tangent = glm::cross(surface.up, normal);
        return glm::dot(in_plan(point(u)) - eye, in_plan(tangent));
    }
};

/// The zero of the slope between `low` (slope <= 0) and `high`, halved until doubles end.
double foot_between(const Edge& edge, double low, double high) {
    for (int i = 0; i < 64; ++i) {
        const double middle = 0.5 * (low + high);
        (edge.slope(middle) <= 0.0 ? low : high) = middle;
    }
    return 0.5 * (low + high);
}

/// In plan a tilted cylinder's edge is an arc of an ellipse, whose distance has no short closed
/// form: find the nearest of many samples, then the foot beside it.
double nearest_on_curve(const Edge& edge) {
    constexpr int kSteps = 64;
    const geometry::Rectangle& uv = edge.opening.uv;
    const auto u_at = [&](int i) { return uv.left + uv.width() * i / kSteps; };
    int best = 0;
    for (int i = 1; i <= kSteps; ++i) {
        if (edge.distance(u_at(i)) < edge.distance(u_at(best))) best = i;
    }
    const double low = u_at(std::max(best - 1, 0));
    const double high = u_at(std::min(best + 1, kSteps));
    if (edge.slope(low) >= 0.0) return low;
    if (edge.slope(high) <= 0.0) return high;
    return foot_between(edge, low, high);
}

std::optional<double> clearance_over(const room::SeatPlan& plan,
                                     const room::Row& row,
                                     std::optional<int> front_row,
                                     const glm::dvec3& focus) {
    if (!front_row) return std::nullopt;
    const room::Row& front = plan.rows.at(static_cast<std::size_t>(*front_row));
    return clearance(row.centre_eye, front.centre_eye, focus);
}

}  // namespace

double c_value(double distance_m, double front_eye_height_m, double tread_m, double riser_m) {
    RL_ASSERT(distance_m + tread_m != 0.0);
    return distance_m * (riser_m + front_eye_height_m) / (distance_m + tread_m) -
           front_eye_height_m;
}

double riser_for_c(double distance_m, double front_eye_height_m, double tread_m, double c_m) {
    RL_ASSERT(distance_m != 0.0);
    return (front_eye_height_m + c_m) * (distance_m + tread_m) / distance_m - front_eye_height_m;
}

glm::dvec3 nearest_focus(const geometry::Patch& surface,
                         const picture::Opening& opening,
                         const glm::dvec3& eye) {
    const Edge edge{surface, opening, in_plan(eye)};
    if (!surface.flat()) return edge.point(nearest_on_curve(edge));
    const double across = glm::dot(eye - surface.centre, surface.across);
    return edge.point(std::clamp(across, opening.uv.left, opening.uv.right));
}

std::optional<ClearanceTerms> clearance_terms(const glm::dvec3& rear,
                                              const glm::dvec3& front,
                                              const glm::dvec3& focus) {
    const glm::dvec2 to_focus = in_plan(focus - rear);
    const double rear_distance = glm::length(to_focus);
    if (rear_distance == 0.0) return std::nullopt;
    const double tread = glm::dot(in_plan(front - rear), to_focus) / rear_distance;
    if (!(tread > 0.0) || !(tread < rear_distance)) return std::nullopt;
    return ClearanceTerms{rear_distance - tread, front.y - focus.y, tread, rear.y - front.y};
}

std::optional<double> clearance(const glm::dvec3& rear,
                                const glm::dvec3& front,
                                const glm::dvec3& focus) {
    const auto terms = clearance_terms(rear, front, focus);
    if (!terms) return std::nullopt;
    return c_value(terms->distance_m, terms->front_eye_height_m, terms->tread_m, terms->riser_m);
}

std::vector<RowClearance> row_clearances(const geometry::Patch& surface,
                                         const picture::Opening& opening,
                                         const room::SeatPlan& plan,
                                         const std::vector<room::SeatBlock>& blocks) {
    std::vector<RowClearance> out;
    out.reserve(plan.rows.size());
    for (const room::Row& row : plan.rows) {
        RowClearance here;
        here.focus = nearest_focus(surface, opening, row.centre_eye);
        here.c_m = clearance_over(plan, row, row.row_in_front, here.focus);
        if (blocks.at(static_cast<std::size_t>(row.block)).staggered) {
            here.c_second_m = clearance_over(plan, row, row.second_row_in_front, here.focus);
        }
        out.push_back(here);
    }
    return out;
}

}  // namespace rakeline::sight
