// SPDX-License-Identifier: MIT
#pragma once

#include "drawing/drawing.hpp"

#include <glm/mat4x4.hpp>

#include <vector>

/// The room as triangles for the 3D view: plain data, no graphics calls.
namespace rakeline::drawing {

enum class Material {
    floor,
    step_edge,
    wall,
    ceiling,
    booth_wall,
    port,
    masking,
    screen_back,
    screen,
    seat,
    loudspeaker,
    projector,
    beam
};

struct Vertex {
    glm::dvec3 position{0.0};
    glm::dvec3 normal{0.0, 1.0, 0.0};
    glm::dvec2 uv{0.0};  ///< screen: 0..1 across and up the opening; else free
};

/// Triangles of one thing.
struct Part {
    Material material = Material::floor;
    Shows shows;
    std::vector<Vertex> vertices;
    std::vector<unsigned> indices;  ///< counter-clockwise from outside
};

/// One seat's place: column-major room-from-seat, and the seat's index.
struct SeatInstance {
    glm::dmat4 room_from_seat{1.0};
    int seat = 0;
};

struct RoomMesh {
    std::vector<Part> parts;  ///< opaque
    std::vector<Part> beams;  ///< translucent volumes, one a projector and format chosen
    Part seat;                ///< one seat about the origin, facing -z
    std::vector<SeatInstance> seats;
};

RoomMesh room_mesh(const study::Study& study, const DrawingChoice& choice);

}  // namespace rakeline::drawing
