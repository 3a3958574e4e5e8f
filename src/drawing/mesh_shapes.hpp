// SPDX-License-Identifier: MIT
#pragma once

#include "drawing/room_mesh.hpp"

#include <span>

/// Simple solids from which the room's mesh is put together. All faces counter-clockwise from
/// outside, normals unit.
namespace rakeline::drawing {

inline constexpr double kMaskingAhead_m = 0.02;  ///< masking in front of the sheet

/// A flat quadrilateral with its normal from its corners; `uv` per corner. Nothing is added where
/// the corners enclose no area.
void add_quad(Part& part,
              const std::array<glm::dvec3, 4>& corners,
              const std::array<glm::dvec2, 4>& uv = {});

/// Where a solid stands: column-major room-from-solid, without scale.
struct Box {
    glm::dvec3 low{0.0};  ///< in the solid's own frame
    glm::dvec3 high{0.0};
    double paint = 0.0;  ///< uv.x of all vertices
    bool ends = true;    ///< close the faces below and above
};
void add_box(Part& part, const Box& box, const glm::dmat4& room_from_box = glm::dmat4(1.0));

/// The box's twelve edges as ghosts of what hangs on a wall (inward normal `wall`).
void add_ghost(std::vector<Edge>& edges,
               const Box& box,
               const glm::dmat4& room_from_box,
               const glm::dvec3& wall);

/// A plate with rounded rims: the convex outline (counter-clockwise seen from +z) between z = 0 and
/// z = thickness, its rims bevelled.
struct Plate {
    std::span<const glm::dvec2> outline;
    double thickness_m = 0.1;
    double bevel_m = 0.02;
    double paint = 0.0;     ///< uv.x of all vertices
    bool back_face = true;  ///< close the face at z = 0
};
void add_plate(Part& part, const Plate& plate, const glm::dmat4& room_from_plate);

/// Corners rounded by `radius_m`, `steps` chords each; only the upper two if `top_only`.
struct RoundedRectangle {
    double width_m = 0.5;   ///< centred on x = 0
    double height_m = 0.5;  ///< from y = 0
    double radius_m = 0.1;
    int steps = 2;
    bool top_only = false;
};
std::vector<glm::dvec2> outline_of(const RoundedRectangle& shape);

struct Ellipsoid {
    glm::dvec3 centre{0.0};
    glm::dvec3 half{0.1};
    int around = 10;
    int along = 6;
};
void add_ellipsoid(Part& part, const Ellipsoid& shape);

/// Axes as columns (right, up, back) and an origin.
glm::dmat4 frame_at(const glm::dvec3& origin,
                    const glm::dvec3& right,
                    const glm::dvec3& up,
                    const glm::dvec3& back);

/// Height of the hall's ground: the lowest floor, at most the datum.
double lowest_floor_m(const study::Study& study);

/// Turned about x: +y toward +z.
glm::dmat4 leaning_at(const glm::dvec3& origin, double angle_rad);

}  // namespace rakeline::drawing
