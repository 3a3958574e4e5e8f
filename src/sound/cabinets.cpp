// SPDX-License-Identifier: MIT
#include "sound/cabinets.hpp"

#include "sound/sound_study.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace rakeline::sound {
namespace {

/// Half of what a cabinet takes along a direction.
double half_extent(const Cabinet& c, const glm::dvec3& direction) {
    return 0.5 * (c.width_m * std::abs(glm::dot(c.axes.across, direction)) +
                  c.height_m * std::abs(glm::dot(c.axes.up, direction)) +
                  c.depth_m * std::abs(glm::dot(c.axes.forward, direction)));
}

double gap_along(const Cabinet& a, const Cabinet& b, const glm::dvec3& direction) {
    const glm::dvec3 between = a.at(0.0, 0.0, 0.5) - b.at(0.0, 0.0, 0.5);
    return std::abs(glm::dot(between, direction)) - half_extent(a, direction) -
           half_extent(b, direction);
}

std::array<glm::dvec3, 3> directions_of(const Cabinet& c) {
    return {c.axes.across, c.axes.up, c.axes.forward};
}

/// A flat front comes nearest to a curved sheet between its sides: looked for at ninths.
double to_sheet(const Cabinet& cabinet, const geometry::Patch& surface) {
    double least = std::numeric_limits<double>::infinity();
    for (int i = -4; i <= 4; ++i)
        for (const double up : {-1.0, 1.0})
            least = std::min(least, behind_sheet_m(surface, cabinet.at(0.25 * i, up, 0.0)));
    return least;
}

struct Span {
    double low = std::numeric_limits<double>::infinity();
    double high = -std::numeric_limits<double>::infinity();
};

Span span_of(const Cabinet& cabinet, int axis) {
    Span out;
    for (const glm::dvec3& corner : cabinet.corners()) {
        out.low = std::min(out.low, corner[axis]);
        out.high = std::max(out.high, corner[axis]);
    }
    return out;
}

/// Heights of the frame's lower and upper edge on the centre line.
Span frame_heights(const SoundInput& in) {
    const double half = 0.5 * in.screen_height_m;
    return {geometry::point_at(in.surface, {0.0, -half}).y,
            geometry::point_at(in.surface, {0.0, half}).y};
}

double over_heads(const SoundInput& in, const Cabinet& cabinet) {
    const glm::dvec3 middle = cabinet.at(0.0, 0.0, 0.5);
    const auto away = [&](const glm::dvec3& floor) {
        return (floor.x - middle.x) * (floor.x - middle.x) +
               (floor.z - middle.z) * (floor.z - middle.z);
    };
    const auto nearest =
        std::min_element(in.seat_floors.begin(), in.seat_floors.end(),
                         [&](const auto& a, const auto& b) { return away(a) < away(b); });
    return span_of(cabinet, 1).low - nearest->y - in.standing_height_m;
}

std::optional<double> nearest_other(const std::vector<Cabinet>& all, std::size_t which) {
    std::optional<double> out;
    for (std::size_t i = 0; i < all.size(); ++i) {
        if (i == which) continue;
        const double gap = gap_between(all[which], all[i]);
        out = std::min(out.value_or(gap), gap);
    }
    return out;
}

CabinetRoom room_of(const SoundInput& in, const std::vector<Cabinet>& all, std::size_t which) {
    const room::Loudspeaker& loudspeaker = in.loudspeakers[which];
    const Cabinet& cabinet = all[which];
    const Span frame = frame_heights(in);
    CabinetRoom out;
    out.apart_m = nearest_other(all, which);
    if (loudspeaker.behind_screen) {
        out.to_sheet_m = to_sheet(cabinet, in.surface);
        out.to_wall_m = span_of(cabinet, 2).low;
    }
    if (loudspeaker.behind_screen && is_screen_channel(loudspeaker.channel)) {
        const Span own = span_of(cabinet, 1);
        out.height_fraction = (loudspeaker.up_m - frame.low) / (frame.high - frame.low);
        out.inside_picture_m = std::min(frame.high - own.high, own.low - frame.low);
    }
    if (loudspeaker.channel == room::Channel::surround && !in.seat_floors.empty())
        out.over_heads_m = over_heads(in, cabinet);
    return out;
}

}  // namespace

glm::dvec3 Cabinet::at(double across, double up, double back) const {
    return front + 0.5 * across * width_m * axes.across + 0.5 * up * height_m * axes.up -
           back * depth_m * axes.forward;
}

std::array<glm::dvec3, 8> Cabinet::corners() const {
    std::array<glm::dvec3, 8> out;
    std::size_t i = 0;
    for (const double back : {0.0, 1.0})
        for (const double high : {-1.0, 1.0})
            for (const double side : {-1.0, 1.0})
                out.at(i++) = at(side, high, back);
    return out;
}

Cabinet cabinet_of(const room::Loudspeaker& loudspeaker) {
    return {.front = {loudspeaker.across_m, loudspeaker.up_m, loudspeaker.back_m},
            .axes = axes_of(loudspeaker),
            .width_m = loudspeaker.cabinet_width_m,
            .height_m = loudspeaker.cabinet_height_m,
            .depth_m = loudspeaker.cabinet_depth_m};
}

double gap_between(const Cabinet& a, const Cabinet& b) {
    double widest = -std::numeric_limits<double>::infinity();
    for (const Cabinet* own : {&a, &b})
        for (const glm::dvec3& direction : directions_of(*own))
            widest = std::max(widest, gap_along(a, b, direction));
    for (const glm::dvec3& edge : directions_of(a)) {
        for (const glm::dvec3& other : directions_of(b)) {
            const glm::dvec3 square = glm::cross(edge, other);
            const double length = glm::length(square);
            // Edges side by side: a face's own direction says the same.
            if (length > 1e-6) widest = std::max(widest, gap_along(a, b, square / length));
        }
    }
    return widest;
}

double behind_sheet_m(const geometry::Patch& surface, const glm::dvec3& point) {
    const glm::dvec3 from_centre = point - surface.centre;
    if (surface.flat()) return -glm::dot(from_centre, surface.normal);
    const glm::dvec3 from_axis = from_centre - surface.radius_m * surface.normal;
    const glm::dvec3 level = from_axis - glm::dot(from_axis, surface.up) * surface.up;
    return glm::length(level) - surface.radius_m;
}

std::vector<CabinetRoom> study_cabinets(const SoundInput& in) {
    std::vector<Cabinet> all;
    for (const room::Loudspeaker& loudspeaker : in.loudspeakers)
        all.push_back(cabinet_of(loudspeaker));
    std::vector<CabinetRoom> out;
    for (std::size_t i = 0; i < all.size(); ++i)
        out.push_back(room_of(in, all, i));
    return out;
}

}  // namespace rakeline::sound
