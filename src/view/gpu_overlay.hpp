// SPDX-License-Identifier: MIT
#pragma once

#include "drawing/room_mesh.hpp"
#include "view/gpu_objects.hpp"

#include <span>

/// Buffers for what keeps its size on the display: edges, and signs over seats.
namespace rakeline::view {

/// The edges of light (beams, rims of pictures) or all others, each a strip made in the vertex
/// shader.
class EdgeLines {
public:
    void load(std::span<const drawing::Edge> edges, bool light);
    void draw() const;

private:
    GpuVertexArray array_;
    GpuBuffer edges_;
    int count_ = 0;
};

enum class MarkKind { cross, pointer };
struct Mark {
    glm::dvec3 place{0.0};
    MarkKind kind = MarkKind::cross;
};

class Marks {
public:
    void load(std::span<const Mark> marks);
    void draw() const;

private:
    GpuVertexArray array_;
    GpuBuffer marks_;
    int count_ = 0;
};

}  // namespace rakeline::view
