// SPDX-License-Identifier: MIT
#include "view/gpu_overlay.hpp"

#include "view/gpu_mesh.hpp"

#include <epoxy/gl.h>

#include <cstddef>
#include <vector>

namespace rakeline::view {
namespace {

struct GpuEdge {
    glm::vec3 from;
    glm::vec3 to;
    glm::vec4 colour;
    glm::vec3 face_a;
    glm::vec3 face_b;
};

struct GpuMark {
    glm::vec3 place;
    float kind;
};

/// The text colour for steps, the lamp's for what has to do with light; w: cover.
glm::vec4 edge_colour(drawing::EdgeKind kind) {
    const glm::vec3 text = linear_colour({0.914f, 0.894f, 0.847f});
    const glm::vec3 lamp = linear_colour({0.941f, 0.702f, 0.353f});
    const glm::vec3 missed = linear_colour({0.878f, 0.443f, 0.310f});
    switch (kind) {
        case drawing::EdgeKind::step:
            return {0.8f * text, 0.34f};
        case drawing::EdgeKind::hall:
            return {text, 0.10f};
        case drawing::EdgeKind::port:
            return {lamp, 0.70f};
        case drawing::EdgeKind::ghost:
            return {text, 0.16f};
        case drawing::EdgeKind::beam:
            return {lamp, 0.30f};
        case drawing::EdgeKind::picture:
            return {lamp, 0.60f};
        case drawing::EdgeKind::shortfall:
        case drawing::EdgeKind::cut:
            return {missed, 0.90f};
    }
    return {text, 0.0f};
}

/// Of the light alone: a seat's own view goes without them.
bool is_light(drawing::EdgeKind kind) {
    return kind == drawing::EdgeKind::beam || kind == drawing::EdgeKind::picture ||
           kind == drawing::EdgeKind::shortfall || kind == drawing::EdgeKind::cut;
}

void float_attribute(unsigned place, int count, std::size_t stride, std::size_t offset) {
    glEnableVertexAttribArray(place);
    glVertexAttribPointer(place, count, GL_FLOAT, GL_FALSE, static_cast<GLsizei>(stride),
                          reinterpret_cast<const void*>(offset));
    glVertexAttribDivisor(place, 1);
}

template <class T>
void fill(const GpuBuffer& buffer, const std::vector<T>& data) {
    glBindBuffer(GL_ARRAY_BUFFER, buffer.name());
    glBufferData(GL_ARRAY_BUFFER, static_cast<GLsizeiptr>(data.size() * sizeof(T)), data.data(),
                 GL_DYNAMIC_DRAW);
}

/// A quadrilateral an instance.
void draw_quads(const GpuVertexArray& array, int count) {
    if (count == 0) return;
    glBindVertexArray(array.name());
    glDrawArraysInstanced(GL_TRIANGLE_STRIP, 0, 4, count);
    glBindVertexArray(0);
}

}  // namespace

void EdgeLines::load(std::span<const drawing::Edge> edges, bool light) {
    std::vector<GpuEdge> data;
    for (const drawing::Edge& edge : edges) {
        if (is_light(edge.kind) != light) continue;
        data.push_back({glm::vec3(edge.from), glm::vec3(edge.to), edge_colour(edge.kind),
                        glm::vec3(edge.faces[0]), glm::vec3(edge.faces[1])});
    }
    count_ = static_cast<int>(data.size());
    glBindVertexArray(array_.name());
    fill(edges_, data);
    float_attribute(0, 3, sizeof(GpuEdge), offsetof(GpuEdge, from));
    float_attribute(1, 3, sizeof(GpuEdge), offsetof(GpuEdge, to));
    float_attribute(2, 4, sizeof(GpuEdge), offsetof(GpuEdge, colour));
    float_attribute(3, 3, sizeof(GpuEdge), offsetof(GpuEdge, face_a));
    float_attribute(4, 3, sizeof(GpuEdge), offsetof(GpuEdge, face_b));
    glBindVertexArray(0);
}

void EdgeLines::draw() const {
    draw_quads(array_, count_);
}

void Marks::load(std::span<const Mark> marks) {
    std::vector<GpuMark> data;
    for (const Mark& mark : marks) {
        data.push_back({glm::vec3(mark.place), mark.kind == MarkKind::cross ? 0.0f : 1.0f});
    }
    count_ = static_cast<int>(data.size());
    glBindVertexArray(array_.name());
    fill(marks_, data);
    float_attribute(0, 3, sizeof(GpuMark), offsetof(GpuMark, place));
    float_attribute(1, 1, sizeof(GpuMark), offsetof(GpuMark, kind));
    glBindVertexArray(0);
}

void Marks::draw() const {
    draw_quads(array_, count_);
}

}  // namespace rakeline::view
