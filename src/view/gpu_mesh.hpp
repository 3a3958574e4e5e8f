// SPDX-License-Identifier: MIT
#pragma once

#include "drawing/room_mesh.hpp"
#include "view/gpu_objects.hpp"
#include "view/scene.hpp"

#include <glm/vec4.hpp>

#include <span>

/// Buffers for the solid shaders, filled from a RoomMesh's parts; doubles narrow to floats here.
namespace rakeline::view {

/// What the pick pass writes for a thing: kind in the upper eight bits, index in the others. 0 is
/// nothing.
unsigned pick_code(const drawing::Shows& shows);
drawing::Shows shown_by(unsigned code);

/// sRGB, 0 to 1, to linear.
glm::vec3 linear_colour(const glm::vec3& srgb);

/// Parts that stand still, merged so that they draw in one call.
class StillMesh {
public:
    void load(std::span<const drawing::Part* const> parts);
    void draw() const;

private:
    GpuVertexArray array_;
    GpuBuffer vertices_;
    GpuBuffer indices_;
    int index_count_ = 0;
};

/// One part drawn at many places, with a colour each.
class InstancedMesh {
public:
    void load(const drawing::Part& part, std::span<const drawing::SeatInstance> places);
    /// Linear colour by seat; w 0 where the seat is not drawn.
    void paint(std::span<const glm::vec4> colour_of_seat);
    void draw() const;
    /// Only the place of one seat, if it is among these.
    void draw_seat(int seat) const;

private:
    void bind_places(std::size_t first) const;
    GpuVertexArray array_;
    GpuBuffer vertices_;
    GpuBuffer indices_;
    GpuBuffer places_;
    GpuBuffer paints_;
    std::vector<int> seats_;
    int index_count_ = 0;
};

}  // namespace rakeline::view
