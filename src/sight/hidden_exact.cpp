// SPDX-License-Identifier: MIT
#include "sight/hidden_exact.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace rakeline::sight::hidden {
namespace {

constexpr double kEndless = std::numeric_limits<double>::infinity();
/// A wall that is seen edge-on to this (sine of the angle in plan) hides nothing.
constexpr double kEdgeOn = 1e-9;

double root(double x) {
    return std::sqrt(x);
}

double dot(PlanPoint a, PlanPoint b) {
    return a.x * b.x + a.z * b.z;
}

struct Slab {
    double bottom = kEndless, top = -kEndless;  ///< y from the eye; bottom > top: nothing
};

Slab of_cone(const HeadCone<double>& cone, PlanPoint d) {
    const double left = dot({cone.left_x, cone.left_z}, d);
    const double right = dot({cone.right_x, cone.right_z}, d);
    if (left <= 0.0 || right <= 0.0) return {};
    const double middle = dot({cone.b_x, cone.b_z}, d);
    const double half = root(left * right);
    return {middle - half, middle + half};
}

/// A head that the generator through the eye meets: the line d + y up enters the cone once, at the
/// root of a y^2 - 2 b y - q = 0 that stays finite as a goes through 0.
Slab of_overhead(const Shadow& shadow, const Tilt& tilt, PlanPoint d) {
    const Sphere<double> s = sphere_of(shadow.head, tilt.cosine, tilt.sine);
    const glm::dvec3 up{0.0, s.up_y, s.up_z};
    const glm::dvec3 e{d.x, d.z * s.back_y, d.z * s.back_z};
    const glm::dvec3 p{shadow.head.x, s.y, s.z};
    const double r = shadow.head.radius;
    const double b = s.up_dot_centre * glm::dot(e, p) - glm::dot(up, e) * s.power;
    const double q = glm::dot(e, p) * glm::dot(e, p) - glm::dot(e, e) * s.power;
    const glm::dvec3 across = glm::cross(up, e);
    const double side = glm::dot(across, p);
    const double inside = s.power * std::max(0.0, r * r * glm::dot(across, across) - side * side);
    if (shadow.kind == Shadow::Kind::over) return {-q / (b + root(inside)), kEndless};
    return {-kEndless, -q / (b - root(inside))};
}

Slab of_wall(const Shadow& shadow, PlanPoint d) {
    const HeadCone<double>& wall = shadow.cone;
    if (dot({wall.left_x, wall.left_z}, d) <= 0.0) return {};
    if (dot({wall.right_x, wall.right_z}, d) <= 0.0) return {};
    const double edge = dot({wall.b_x, wall.b_z}, d);
    if (shadow.kind == Shadow::Kind::wall_below) return {-kEndless, edge};
    return {edge, kEndless};
}

Slab slab(const Shadow& shadow, const Tilt& tilt, PlanPoint d) {
    switch (shadow.kind) {
        case Shadow::Kind::cone:
            return of_cone(shadow.cone, d);
        case Shadow::Kind::over:
        case Shadow::Kind::under:
            return of_overhead(shadow, tilt, d);
        case Shadow::Kind::around:
            return {-kEndless, kEndless};
        case Shadow::Kind::wall_below:
        case Shadow::Kind::wall_above:
            return of_wall(shadow, d);
    }
    return {};
}

/// In units of |d|: 1 is on the picture surface.
double plan_distance(const Shadow& shadow, PlanPoint d) {
    const bool wall =
        shadow.kind == Shadow::Kind::wall_below || shadow.kind == Shadow::Kind::wall_above;
    if (wall) return 1.0 / dot(shadow.facing, d);
    return dot({shadow.head.x, shadow.head.z}, d) / dot(d, d);
}

}  // namespace

Shadows::Shadows(const HiddenInput& in, const PictureColumns& columns, int eye)
    : columns_(&columns), eye_(in_patch_frame(in.surface, in.eyes[static_cast<std::size_t>(eye)])) {
    const double eye_up = in.eyes[static_cast<std::size_t>(eye)].y;
    for (std::size_t i = 0; i < in.heads.size(); ++i) {
        if (in.heads[i].eye == eye) continue;
        add_head(in_patch_frame(in.surface, in.heads[i].centre), in.heads[i], static_cast<int>(i));
    }
    for (std::size_t i = 0; i < in.walls.size(); ++i) {
        const Wall& wall = in.walls[i];
        const bool below = wall.hides == WallHides::below;
        const bool counts =
            below ? eye_up > wall.base_m : eye_up < std::min(wall.from.y, wall.to.y);
        if (wall.eye == eye || !counts) continue;
        add_wall(in_patch_frame(in.surface, wall.from), in_patch_frame(in.surface, wall.to),
                 wall.hides, static_cast<int>(in.heads.size() + i));
    }
}

void Shadows::add_head(const glm::dvec3& centre, const Head& head, int blocker) {
    if (columns_->flat && (centre.z <= 0.0 || eye_.z <= 0.0)) return;  // behind the surface
    const glm::dvec3 c = centre - eye_;
    const Tilt& tilt = columns_->tilt;
    Shadow shadow;
    shadow.blocker = blocker;
    shadow.head = {c.x, c.y, c.z, head.radius_m, head.half_height_m};
    const Sphere<double> sphere = sphere_of(shadow.head, tilt.cosine, tilt.sine);
    shadow.cone = head_cone(shadow.head, tilt.cosine, tilt.sine, root);
    if (sphere.power <= 0.0) {
        shadow.kind = Shadow::Kind::around;
    } else if (shadow.cone.outside <= 0.0) {
        shadow.kind = sphere.up_dot_centre > 0.0 ? Shadow::Kind::over : Shadow::Kind::under;
    }
    shadows_.push_back(shadow);
}

void Shadows::add_wall(const glm::dvec3& from, const glm::dvec3& to, WallHides hides, int blocker) {
    if (columns_->flat && (from.z + to.z <= 0.0 || eye_.z <= 0.0)) return;
    glm::dvec3 a = from - eye_;
    glm::dvec3 b = to - eye_;
    double turn = a.x * b.z - a.z * b.x;  // > 0 where a is to the left of b as the eye sees them
    if (turn < 0.0) {
        std::swap(a, b);
        turn = -turn;
    }
    if (turn <= kEdgeOn * std::hypot(a.x, a.z) * std::hypot(b.x, b.z)) return;
    // The plane through the eye and the edge, solved for y; and the two ends.
    Shadow shadow;
    shadow.kind = hides == WallHides::below ? Shadow::Kind::wall_below : Shadow::Kind::wall_above;
    shadow.blocker = blocker;
    shadow.cone.b_x = (a.y * b.z - a.z * b.y) / turn;
    shadow.cone.b_z = (a.x * b.y - a.y * b.x) / turn;
    shadow.cone.left_x = -a.z;
    shadow.cone.left_z = a.x;
    shadow.cone.right_x = b.z;
    shadow.cone.right_z = -b.x;
    shadow.facing = {(b.z - a.z) / turn, (a.x - b.x) / turn};
    shadows_.push_back(shadow);
}

void Shadows::stretches(std::size_t j, std::vector<Stretch>& out) const {
    out.clear();
    const PlanPoint place = columns_->places[j];
    const PlanPoint d{place.x - eye_.x, place.z - eye_.z};
    const double low = columns_->bottom_m - eye_.y;
    for (const Shadow& shadow : shadows_)
        add(shadow, d, low, out);
}

void Shadows::add(const Shadow& shadow, PlanPoint d, double low, std::vector<Stretch>& out) const {
    const Slab hidden = slab(shadow, columns_->tilt, d);
    const double bottom = std::max(hidden.bottom - low, 0.0);
    const double top = std::min(hidden.top - low, columns_->height_m);
    if (!(bottom < top)) return;
    const double distance = plan_distance(shadow, d);
    // A flat surface has all that was let in between itself and the eye.
    if (!columns_->flat && distance >= 1.0 && shadow.kind != Shadow::Kind::around) return;
    out.push_back({bottom, top, distance, shadow.blocker});
}

std::vector<ClearInterval> merged(std::vector<Stretch>& stretches) {
    std::ranges::sort(stretches, {}, &Stretch::bottom_m);
    std::vector<ClearInterval> out;
    for (const Stretch& s : stretches) {
        if (out.empty() || s.bottom_m > out.back().top_m) {
            out.push_back({s.bottom_m, s.top_m});
        } else {
            out.back().top_m = std::max(out.back().top_m, s.top_m);
        }
    }
    return out;
}

}  // namespace rakeline::sight::hidden
