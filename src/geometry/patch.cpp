// SPDX-License-Identifier: MIT
#include "geometry/patch.hpp"

#include "base/assert.hpp"

#include <algorithm>
#include <cmath>

namespace rakeline::geometry {
namespace {

/// Ray and points in the patch's own frame: (across, up, normal) from the centre.
glm::dvec3 patch_from_room(const Patch& p, const glm::dvec3& v) {
    return {glm::dot(v, p.across), glm::dot(v, p.up), glm::dot(v, p.normal)};
}

/// In front of the origin, and not so far off that the place is lost (a ray all but parallel).
bool reached(double t) {
    return t > 0.0 && std::isfinite(t);
}

void add_plane_hit(const Patch& patch, const Ray& ray, std::vector<PatchHit>& out) {
    const double slope = glm::dot(ray.direction, patch.normal);
    if (slope == 0.0) return;
    const double t = glm::dot(patch.centre - ray.origin, patch.normal) / slope;
    if (!reached(t)) return;
    out.push_back({t, coordinates_of(patch, ray.at(t)), slope < 0.0});
}

void add_cylinder_hits(const Patch& patch, const Ray& ray, std::vector<PatchHit>& out) {
    // In the patch frame the cylinder is x^2 + z (z - 2 r) = 0 (written so that a nearly flat
    // screen's r^2 never enters). The crossings are the roots of a t^2 + 2 b t + c = 0.
    const double r = patch.radius_m;
    const glm::dvec3 o = patch_from_room(patch, ray.origin - patch.centre);
    const glm::dvec3 d = patch_from_room(patch, ray.direction);
    const double a = d.x * d.x + d.z * d.z;
    const double b = o.x * d.x + (o.z - r) * d.z;
    const double c = o.x * o.x + o.z * (o.z - 2.0 * r);
    const double discriminant = b * b - a * c;
    if (a == 0.0 || discriminant < 0.0) return;
    // q holds the larger-magnitude root times a, so that neither root suffers cancellation.
    const double q = -(b + std::copysign(std::sqrt(discriminant), b));
    double roots[2] = {q / a, q != 0.0 ? c / q : 0.0};
    std::sort(roots, roots + 2);
    for (const double t : roots) {
        if (!reached(t)) continue;
        const glm::dvec3 p = o + t * d;
        if (p.z > r) continue;  // the half away from the screen wall is no part of the patch
        const double outward = p.x * d.x + (p.z - r) * d.z;
        out.push_back({t, coordinates_of(patch, ray.at(t)), outward > 0.0});
    }
}

}  // namespace

Patch standing_patch(const glm::dvec3& centre, double radius_m, double tilt_rad) {
    RL_ASSERT(radius_m >= 0.0);
    const double c = std::cos(tilt_rad);
    const double s = std::sin(tilt_rad);
    return {.centre = centre,
            .across = {1.0, 0.0, 0.0},
            .up = {0.0, c, -s},
            .normal = {0.0, s, c},
            .radius_m = radius_m};
}

glm::dvec3 point_at(const Patch& patch, glm::dvec2 uv) {
    if (patch.flat()) return patch.centre + uv.x * patch.across + uv.y * patch.up;
    const double angle = uv.x / patch.radius_m;
    // 1 - cos written with the half angle: exact for the small angles of a nearly flat screen.
    const double half_sine = std::sin(0.5 * angle);
    return patch.centre + patch.radius_m * std::sin(angle) * patch.across + uv.y * patch.up +
           patch.radius_m * 2.0 * half_sine * half_sine * patch.normal;
}

glm::dvec3 normal_at(const Patch& patch, glm::dvec2 uv) {
    if (patch.flat()) return patch.normal;
    const double angle = uv.x / patch.radius_m;
    return std::cos(angle) * patch.normal - std::sin(angle) * patch.across;
}

glm::dvec2 coordinates_of(const Patch& patch, const glm::dvec3& point) {
    const glm::dvec3 p = patch_from_room(patch, point - patch.centre);
    if (patch.flat()) return {p.x, p.y};
    return {patch.radius_m * std::atan2(p.x, patch.radius_m - p.z), p.y};
}

std::optional<double> half_arc_of_chord(const Patch& patch, double chord_m) {
    if (patch.flat()) return 0.5 * chord_m;
    const double sine = 0.5 * chord_m / patch.radius_m;
    if (sine > 1.0) return std::nullopt;
    return patch.radius_m * std::asin(sine);
}

double chord_of_half_arc(const Patch& patch, double half_arc_m) {
    if (patch.flat()) return 2.0 * half_arc_m;
    return 2.0 * patch.radius_m * std::sin(half_arc_m / patch.radius_m);
}

std::vector<PatchHit> hits(const Patch& patch, const Ray& ray) {
    std::vector<PatchHit> out;
    if (patch.flat()) {
        add_plane_hit(patch, ray, out);
    } else {
        add_cylinder_hits(patch, ray, out);
    }
    return out;
}

std::optional<PatchHit> front_hit(const Patch& patch, const Ray& ray) {
    for (const PatchHit& hit : hits(patch, ray)) {
        if (hit.from_front) return hit;
    }
    return std::nullopt;
}

}  // namespace rakeline::geometry
