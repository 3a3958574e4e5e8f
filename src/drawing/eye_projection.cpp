// SPDX-License-Identifier: MIT
#include "drawing/eye_projection.hpp"

#include <algorithm>
#include <limits>

namespace rakeline::drawing {
namespace {

constexpr double kShortest_m = 0.05;  // nearer than this the target gives no direction

struct Bounds {
    glm::dvec2 low{std::numeric_limits<double>::infinity()};
    glm::dvec2 high{-std::numeric_limits<double>::infinity()};

    void take(glm::dvec2 p) {
        low = glm::min(low, p);
        high = glm::max(high, p);
    }
    bool empty() const { return low.x > high.x; }
};

/// Tangents of a point's direction, held to the widest field; one beside or behind the eye counts
/// as at the edge on its side.
glm::dvec2 tangents(const glm::dvec3& seen) {
    const double ahead = std::max(seen.z, EyeProjection::kNearest_m);
    const glm::dvec2 widest(EyeProjection::kWidestTangent);
    return glm::clamp(glm::dvec2(seen) / ahead, -widest, widest);
}

}  // namespace

EyeProjection::EyeProjection(const glm::dvec3& eye,
                             const glm::dvec3& target,
                             const glm::dvec3& if_vertical)
    : eye_(eye), distance_m_(std::max(glm::distance(eye, target), kShortest_m)) {
    const glm::dvec3 up(0.0, 1.0, 0.0);
    const glm::dvec3 toward = target - eye;
    ahead_ = glm::length(toward) < kShortest_m ? if_vertical : glm::normalize(toward);
    glm::dvec3 side = glm::cross(ahead_, up);
    if (glm::length(side) < 1e-6) side = glm::cross(if_vertical, up);
    right_ = glm::normalize(side);
    up_ = glm::cross(right_, ahead_);
    const double widest = kWidestTangent * distance_m_;
    window_ = {-widest, widest, -widest, widest};
}

void EyeProjection::frame(std::span<const glm::dvec3> points, const geometry::Rectangle& margin) {
    Bounds bounds;
    for (const glm::dvec3& p : points)
        bounds.take(tangents(seen(p)));
    if (bounds.empty()) return;
    const glm::dvec2 size = bounds.high - bounds.low;
    const double extent = std::max({size.x, size.y, 0.02});
    const auto held = [&](double tangent) {
        return distance_m_ * std::clamp(tangent, -kWidestTangent, kWidestTangent);
    };
    window_ = {.left = held(bounds.low.x - margin.left * extent),
               .right = held(bounds.high.x + margin.right * extent),
               .bottom = held(bounds.low.y - margin.bottom * extent),
               .top = held(bounds.high.y + margin.top * extent)};
}

glm::dvec3 EyeProjection::seen(const glm::dvec3& p) const {
    const glm::dvec3 from = p - eye_;
    return {glm::dot(from, right_), glm::dot(from, up_), glm::dot(from, ahead_)};
}

glm::dvec2 EyeProjection::on_page(const glm::dvec3& s) const {
    return distance_m_ / s.z * glm::dvec2(s);
}

std::vector<EyeProjection::Side> EyeProjection::sides() const {
    const geometry::Rectangle& w = window_;
    const double d = distance_m_;
    return {{{0.0, 0.0, 1.0}, kNearest_m},
            {{d, 0.0, -w.left}, 0.0},
            {{-d, 0.0, w.right}, 0.0},
            {{0.0, d, -w.bottom}, 0.0},
            {{0.0, -d, w.top}, 0.0}};
}

std::vector<glm::dvec2> EyeProjection::outline(std::span<const glm::dvec3> points) const {
    std::vector<glm::dvec3> in;
    for (const glm::dvec3& p : points)
        in.push_back(seen(p));
    for (const Side& side : sides()) {  // Sutherland and Hodgman, in space
        std::vector<glm::dvec3> out;
        for (std::size_t i = 0; i < in.size(); ++i) {
            const glm::dvec3& a = in[i];
            const glm::dvec3& b = in[(i + 1) % in.size()];
            const double of_a = glm::dot(side.normal, a) - side.offset;
            const double of_b = glm::dot(side.normal, b) - side.offset;
            if (of_a >= 0.0) out.push_back(a);
            if ((of_a >= 0.0) != (of_b >= 0.0)) out.push_back(glm::mix(a, b, of_a / (of_a - of_b)));
        }
        in = std::move(out);
    }
    std::vector<glm::dvec2> page;
    for (const glm::dvec3& s : in)
        page.push_back(on_page(s));
    return page;
}

std::vector<std::vector<glm::dvec2>> EyeProjection::line(std::span<const glm::dvec3> points) const {
    const std::vector<Side> all = sides();
    std::vector<std::vector<glm::dvec2>> out;
    bool joined = false;  // to the segment before
    for (std::size_t i = 0; i + 1 < points.size(); ++i) {
        const glm::dvec3 a = seen(points[i]), b = seen(points[i + 1]);
        double from = 0.0, to = 1.0;
        for (const Side& side : all) {
            const double of_a = glm::dot(side.normal, a) - side.offset;
            const double of_b = glm::dot(side.normal, b) - side.offset;
            if (of_a < 0.0 && of_b < 0.0) to = -1.0;
            if (of_a < 0.0 && of_b >= 0.0) from = std::max(from, of_a / (of_a - of_b));
            if (of_a >= 0.0 && of_b < 0.0) to = std::min(to, of_a / (of_a - of_b));
        }
        if (from > to) {
            joined = false;
            continue;
        }
        if (!joined || from > 0.0) out.push_back({on_page(glm::mix(a, b, from))});
        out.back().push_back(on_page(glm::mix(a, b, to)));
        joined = to == 1.0;
    }
    return out;
}

std::optional<glm::dvec2> EyeProjection::point(const glm::dvec3& p) const {
    const glm::dvec3 s = seen(p);
    for (const Side& side : sides())
        if (glm::dot(side.normal, s) < side.offset) return std::nullopt;
    return on_page(s);
}

}  // namespace rakeline::drawing
