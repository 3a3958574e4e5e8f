// SPDX-License-Identifier: MIT
#pragma once

#include "picture/random_room.hpp"

#include <algorithm>
#include <limits>

/// The beam by trying points of the air, which knows nothing of its sides.
namespace rakeline::tests {

/// Whether a point of the hall is lit: within the gate's cone and not behind the screen.
inline bool lit(const picture::ProjectedPicture& picture, const glm::dvec3& p) {
    const picture::Pose& pose = picture.map.pose();
    const glm::dvec3 d = p - pose.lens;
    const double depth = glm::dot(d, pose.axis);
    if (depth <= 0.0) return false;
    const double scale = pose.image_distance_m / depth;
    const double x = scale * glm::dot(d, pose.right) / pose.squeeze - pose.shift_m.x;
    const double y = scale * glm::dot(d, pose.up) - pose.shift_m.y;
    if (std::abs(x) > 0.5 * picture.gate_size_m.x) return false;
    if (std::abs(y) > 0.5 * picture.gate_size_m.y) return false;
    const auto hit = geometry::front_hit(picture.map.surface(), {pose.lens, d});
    return hit && hit->t >= 1.0;
}

struct TriedColumn {
    double low_m = 0.0;  ///< lowest and highest lit height that was tried
    double high_m = 0.0;
};

/// Lit heights over (x, z) of `place`, tried in steps; nothing if none is.
inline std::optional<TriedColumn> tried_column(const picture::ProjectedPicture& picture,
                                               const glm::dvec3& place,
                                               double step_m) {
    double low = std::numeric_limits<double>::infinity();
    double high = -low;
    for (double y = -2.0; y < 30.0; y += step_m) {
        if (!lit(picture, {place.x, y, place.z})) continue;
        low = std::min(low, y);
        high = std::max(high, y);
    }
    if (high < low) return std::nullopt;
    return TriedColumn{low, high};
}

/// Lengths of a room and of all that stands in it, doubled.
inline picture::PictureInput doubled(picture::PictureInput in) {
    room::Projector& p = in.projectors.at(0);
    room::FormatUse& use = p.formats.at(0);
    for (double* x : {&in.screen.width_m, &in.screen.height_m, &in.screen.sill_m,
                      &in.screen.setback_m, &in.screen.radius_m, &in.booth_wall_back_m, &p.across_m,
                      &p.up_m, &p.back_m, &p.port.across_m, &p.port.up_m, &p.port.width_m,
                      &p.port.height_m, &use.gate_width_m, &use.gate_height_m})
        *x *= 2.0;
    for (room::Lens& lens : in.lenses) {
        lens.focal_length_m *= 2.0;
        lens.focal_length_long_m *= 2.0;
    }
    const auto grow = [](std::vector<room::Platform>& platforms) {
        for (room::Platform& platform : platforms)
            for (glm::dvec3& corner : platform.corners)
                corner *= 2.0;
    };
    grow(in.platforms);
    for (picture::Balcony& balcony : in.balconies) {
        grow(balcony.fronts);
        grow(balcony.floors);
        balcony.front_wall_m *= 2.0;
    }
    if (in.shell) {
        in.shell->width_m *= 2.0;
        in.shell->height_m *= 2.0;
    }
    return in;
}

/// The room as its mirror image in the centre line.
inline picture::PictureInput mirrored(picture::PictureInput in) {
    room::Projector& p = in.projectors.at(0);
    p.across_m = -p.across_m;
    p.port.across_m = -p.port.across_m;
    p.aim.yaw_rad = -p.aim.yaw_rad;
    p.aim.roll_rad = -p.aim.roll_rad;
    p.formats.at(0).shift_across = -p.formats.at(0).shift_across;
    const auto turn = [](std::vector<room::Platform>& platforms) {
        for (room::Platform& platform : platforms)
            for (glm::dvec3& corner : platform.corners)
                corner.x = -corner.x;
    };
    turn(in.platforms);
    for (picture::Balcony& balcony : in.balconies) {
        turn(balcony.fronts);
        turn(balcony.floors);
    }
    return in;
}

/// Lens level at 5 m up, 20 m before an upright flat screen at z = 1: picture 5 +- 2 m high, 8 m
/// wide. Lower side 5 - 0.1 d and upper side 5 + 0.1 d, sides +-0.2 d, at d = 21 - z.
inline picture::PictureInput room_with_level_beam() {
    picture::PictureInput in;
    in.screen.width_m = 8.0;
    in.screen.height_m = 4.0;
    in.screen.sill_m = 3.0;
    in.screen.setback_m = 1.0;
    in.formats = {{.name = "2.00", .aspect_ratio = 2.0, .opening_width_m = {}}};
    in.booth_wall_back_m = 20.5;
    room::Projector p;
    p.kind = room::SourceKind::film;
    p.up_m = 5.0;
    p.back_m = 21.0;
    room::FormatUse use;
    use.format = "2.00";
    use.gate_width_m = 0.02;
    use.gate_height_m = 0.01;
    p.formats = {use};
    in.projectors = {p};
    return in;
}

/// A quadrilateral of floor, counter-clockwise from above.
struct FloorAt {
    double front_m = 0.0;
    double back_m = 0.0;
    double front_up_m = 0.0;
    double back_up_m = 0.0;
    double left_m = -3.0;
    double right_m = 3.0;
};

inline room::Platform platform(const FloorAt& f) {
    room::Platform p;
    p.corners = {glm::dvec3(f.left_m, f.front_up_m, f.front_m),
                 glm::dvec3(f.left_m, f.back_up_m, f.back_m),
                 glm::dvec3(f.right_m, f.back_up_m, f.back_m),
                 glm::dvec3(f.right_m, f.front_up_m, f.front_m)};
    return p;
}

}  // namespace rakeline::tests
