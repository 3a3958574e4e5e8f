// SPDX-License-Identifier: MIT
#include "drawing/eye_shapes.hpp"

#include "base/units.hpp"

#include <algorithm>
#include <cmath>

namespace rakeline::drawing {
namespace {

double in_plan(const glm::dvec3& v) {
    return std::hypot(v.x, v.z);
}

/// Nearest point of the wall's edge in plan.
double nearest_in_plan(const glm::dvec3& a, const glm::dvec3& b) {
    const glm::dvec2 from(a.x, a.z), along(b.x - a.x, b.z - a.z);
    const double length2 = glm::dot(along, along);
    const double t = length2 > 0.0 ? std::clamp(-glm::dot(from, along) / length2, 0.0, 1.0) : 0.0;
    return glm::length(from + t * along);
}

void add_between(std::vector<glm::dvec3>& line, const glm::dvec3& to, int pieces) {
    const glm::dvec3 from = line.back();
    for (int i = 1; i <= pieces; ++i)
        line.push_back(glm::mix(from, to, static_cast<double>(i) / pieces));
}

}  // namespace

std::vector<glm::dvec3> silhouette(const sight::Head& head, const glm::dvec3& eye, int corners) {
    const double kappa = head.radius_m / head.half_height_m;
    const glm::dvec3 stretch(1.0, kappa, 1.0);
    const glm::dvec3 toward = stretch * (eye - head.centre);
    const double d = glm::length(toward);
    const double r = head.radius_m;
    if (d <= r) return {};
    const glm::dvec3 axis = toward / d;
    const glm::dvec3 other =
        std::abs(axis.y) < 0.9 ? glm::dvec3(0.0, 1.0, 0.0) : glm::dvec3(1.0, 0.0, 0.0);
    const glm::dvec3 right = glm::normalize(glm::cross(other, axis));
    const glm::dvec3 up = glm::cross(axis, right);
    const glm::dvec3 middle = r * r / d * axis;
    const double radius = r * std::sqrt(1.0 - r * r / (d * d));
    std::vector<glm::dvec3> out;
    for (int i = 0; i < corners; ++i) {
        const double angle = 2.0 * base::kPi * i / corners;
        const glm::dvec3 on = middle + radius * (std::cos(angle) * right + std::sin(angle) * up);
        out.push_back(head.centre + on / stretch);
    }
    return out;
}

std::vector<glm::dvec3> rim(const sight::Wall& wall) {
    constexpr int kAlong = 24, kUp = 10;
    const double length = glm::distance(wall.from, wall.to);
    const int along = std::max(kAlong, static_cast<int>(length / 0.05));
    if (wall.hides == sight::WallHides::above) {
        std::vector<glm::dvec3> line{wall.from};
        add_between(line, wall.to, along);
        return line;
    }
    std::vector<glm::dvec3> line{{wall.from.x, wall.base_m, wall.from.z}};
    add_between(line, wall.from, kUp);
    add_between(line, wall.to, along);
    add_between(line, {wall.to.x, wall.base_m, wall.to.z}, kUp);
    return line;
}

bool hides_from(const sight::Wall& wall, double eye_up_m) {
    if (wall.hides == sight::WallHides::below) return eye_up_m > wall.base_m;
    return eye_up_m < std::min(wall.from.y, wall.to.y);
}

Occluders::Occluders(const sight::Blockers& house, const glm::dvec3& eye, int own_seat)
    : eye_(eye) {
    for (const sight::Head& head : house.heads) {
        if (head.eye == own_seat) continue;
        const glm::dvec3 from = head.centre - eye;
        const double kappa = head.radius_m / head.half_height_m;
        heads_.push_back({glm::dvec3(1.0, kappa, 1.0) * from, head.radius_m, kappa, in_plan(from)});
    }
    for (const sight::Wall& wall : house.walls) {
        if (wall.eye == own_seat) continue;
        if (!hides_from(wall, eye.y)) continue;
        const glm::dvec3 from = wall.from - eye, to = wall.to - eye;
        const bool below = wall.hides == sight::WallHides::below;
        walls_.push_back({from, to, below, nearest_in_plan(from, to)});
    }
    // The nearest cover most, so that a search ends early.
    std::ranges::sort(heads_, {}, &Head::plan_m);
    std::ranges::sort(walls_, {}, &Wall::nearest_m);
}

double Occluders::plan_distance(const glm::dvec3& p) const {
    return in_plan(p - eye_);
}

bool Occluders::meets(const Head& head, const glm::dvec3& d) const {
    const glm::dvec3 l(d.x, head.kappa * d.y, d.z);
    const double along = glm::dot(l, head.centre);
    if (along <= 0.0) return false;
    const double power = glm::dot(head.centre, head.centre) - head.radius_m * head.radius_m;
    return along * along > glm::dot(l, l) * power;
}

bool Occluders::meets(const Wall& wall, const glm::dvec3& d, double within_m) const {
    // In plan: t d = from + s (to - from).
    const glm::dvec3 edge = wall.to - wall.from;
    const double turn = d.x * edge.z - d.z * edge.x;
    if (std::abs(turn) < 1e-12) return false;
    const double t = (wall.from.x * edge.z - wall.from.z * edge.x) / turn;
    const double s = (wall.from.x * d.z - wall.from.z * d.x) / turn;
    if (t <= 0.0 || s <= 0.0 || s >= 1.0 || t * in_plan(d) >= within_m) return false;
    const double height = t * d.y;
    const double top = wall.from.y + s * edge.y;
    return wall.below ? height < top : height > top;
}

bool Occluders::cover(const glm::dvec3& p, double within_m) const {
    constexpr double kSame_m = 1e-6;
    const glm::dvec3 d = p - eye_;
    const double nearer_m = within_m - kSame_m;
    for (const Head& head : heads_) {
        if (head.plan_m >= nearer_m) break;
        if (meets(head, d)) return true;
    }
    for (const Wall& wall : walls_) {
        if (wall.nearest_m >= nearer_m) break;
        if (meets(wall, d, nearer_m)) return true;
    }
    return false;
}

std::vector<std::vector<glm::dvec3>> Occluders::free_runs(const std::vector<glm::dvec3>& line,
                                                          std::optional<double> within_m) const {
    std::vector<std::vector<glm::dvec3>> out;
    std::vector<glm::dvec3> run;
    const auto end_run = [&] {
        if (run.size() > 1) out.push_back(run);
        run.clear();
    };
    for (const glm::dvec3& p : line) {
        if (cover(p, within_m.value_or(plan_distance(p))))
            end_run();
        else
            run.push_back(p);
    }
    end_run();
    return out;
}

}  // namespace rakeline::drawing
