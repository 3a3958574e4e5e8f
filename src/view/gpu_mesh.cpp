// SPDX-License-Identifier: MIT
#include "view/gpu_mesh.hpp"

#include <epoxy/gl.h>
#include <glm/gtc/type_ptr.hpp>

#include <algorithm>
#include <cmath>
#include <cstddef>

namespace rakeline::view {
namespace {

// Attribute places, as in solid.vert.glsl.
constexpr GLuint kPosition = 0;
constexpr GLuint kNormal = 1;
constexpr GLuint kUv = 2;
constexpr GLuint kMaterial = 3;
constexpr GLuint kPlace = 4;  // to 7
constexpr GLuint kPaint = 8;
constexpr GLuint kShows = 9;
constexpr GLuint kWall = 10;

constexpr unsigned kIndexBits = 24;

struct GpuVertex {
    glm::vec3 position;
    glm::vec3 normal;
    glm::vec2 uv;
    float material;
    unsigned shows;
    glm::vec3 wall;
};

struct GpuPlace {
    glm::mat4 room_from_part;
    unsigned shows;
};

const void* offset_at(std::size_t bytes) {
    return reinterpret_cast<const void*>(bytes);
}

template <class T>
void fill(GLenum target, const GpuBuffer& buffer, std::span<const T> data, GLenum use) {
    glBindBuffer(target, buffer.name());
    glBufferData(target, static_cast<GLsizeiptr>(data.size_bytes()), data.data(), use);
}

void append(const drawing::Part& part,
            std::vector<GpuVertex>& vertices,
            std::vector<unsigned>& indices) {
    const auto first = static_cast<unsigned>(vertices.size());
    for (const drawing::Vertex& v : part.vertices) {
        vertices.push_back({glm::vec3(v.position), glm::vec3(v.normal), glm::vec2(v.uv),
                            static_cast<float>(part.material), pick_code(part.shows),
                            glm::vec3(part.wall)});
    }
    for (const unsigned index : part.indices)
        indices.push_back(first + index);
}

void float_attribute(GLuint place, int count, std::size_t offset) {
    glEnableVertexAttribArray(place);
    glVertexAttribPointer(place, count, GL_FLOAT, GL_FALSE, sizeof(GpuVertex), offset_at(offset));
}

void describe_vertices() {
    float_attribute(kPosition, 3, offsetof(GpuVertex, position));
    float_attribute(kNormal, 3, offsetof(GpuVertex, normal));
    float_attribute(kUv, 2, offsetof(GpuVertex, uv));
    float_attribute(kMaterial, 1, offsetof(GpuVertex, material));
    float_attribute(kWall, 3, offsetof(GpuVertex, wall));
}

}  // namespace

unsigned pick_code(const drawing::Shows& shows) {
    RL_ASSERT(shows.index >= 0 && shows.index < (1 << kIndexBits));
    return (static_cast<unsigned>(shows.kind) << kIndexBits) | static_cast<unsigned>(shows.index);
}

drawing::Shows shown_by(unsigned code) {
    return {static_cast<drawing::Shows::Kind>(code >> kIndexBits),
            static_cast<int>(code & ((1u << kIndexBits) - 1u))};
}

glm::vec3 linear_colour(const glm::vec3& srgb) {
    const auto linear = [](float c) {
        return c <= 0.04045f ? c / 12.92f : std::pow((c + 0.055f) / 1.055f, 2.4f);
    };
    return {linear(srgb.r), linear(srgb.g), linear(srgb.b)};
}

void StillMesh::load(std::span<const drawing::Part* const> parts) {
    std::vector<GpuVertex> vertices;
    std::vector<unsigned> indices;
    for (const drawing::Part* part : parts)
        append(*part, vertices, indices);
    index_count_ = static_cast<int>(indices.size());
    glBindVertexArray(array_.name());
    fill<GpuVertex>(GL_ARRAY_BUFFER, vertices_, vertices, GL_STATIC_DRAW);
    fill<unsigned>(GL_ELEMENT_ARRAY_BUFFER, indices_, indices, GL_STATIC_DRAW);
    describe_vertices();
    glEnableVertexAttribArray(kShows);
    glVertexAttribIPointer(kShows, 1, GL_UNSIGNED_INT, sizeof(GpuVertex),
                           offset_at(offsetof(GpuVertex, shows)));
    glBindVertexArray(0);
}

void StillMesh::draw() const {
    if (index_count_ == 0) return;
    glBindVertexArray(array_.name());
    // Without an array an attribute has one value for all: here it stands where it was made.
    const glm::mat4 still(1.0f);
    for (GLuint column = 0; column < 4; ++column) {
        glVertexAttrib4fv(kPlace + column, glm::value_ptr(still[static_cast<int>(column)]));
    }
    glVertexAttrib4f(kPaint, 1.0f, 1.0f, 1.0f, 1.0f);
    glDrawElements(GL_TRIANGLES, index_count_, GL_UNSIGNED_INT, nullptr);
    glBindVertexArray(0);
}

void InstancedMesh::load(const drawing::Part& part, std::span<const drawing::SeatInstance> places) {
    std::vector<GpuVertex> vertices;
    std::vector<unsigned> indices;
    append(part, vertices, indices);
    std::vector<GpuPlace> gpu_places;
    seats_.clear();
    for (const drawing::SeatInstance& place : places) {
        gpu_places.push_back(
            {glm::mat4(place.room_from_seat), pick_code({drawing::Shows::Kind::seat, place.seat})});
        seats_.push_back(place.seat);
    }
    index_count_ = static_cast<int>(indices.size());
    glBindVertexArray(array_.name());
    fill<GpuVertex>(GL_ARRAY_BUFFER, vertices_, vertices, GL_STATIC_DRAW);
    fill<unsigned>(GL_ELEMENT_ARRAY_BUFFER, indices_, indices, GL_STATIC_DRAW);
    describe_vertices();
    fill<GpuPlace>(GL_ARRAY_BUFFER, places_, gpu_places, GL_STATIC_DRAW);
    paint(std::vector<glm::vec4>());
    for (GLuint place = kPlace; place <= kShows; ++place) {
        glEnableVertexAttribArray(place);
        glVertexAttribDivisor(place, 1);
    }
    bind_places(0);
    glBindVertexArray(0);
}

/// Points the attributes of the bound array at the places from `first` on.
void InstancedMesh::bind_places(std::size_t first) const {
    glBindBuffer(GL_ARRAY_BUFFER, places_.name());
    const std::size_t base = first * sizeof(GpuPlace);
    for (GLuint column = 0; column < 4; ++column) {
        glVertexAttribPointer(kPlace + column, 4, GL_FLOAT, GL_FALSE, sizeof(GpuPlace),
                              offset_at(base + column * sizeof(glm::vec4)));
    }
    glVertexAttribIPointer(kShows, 1, GL_UNSIGNED_INT, sizeof(GpuPlace),
                           offset_at(base + offsetof(GpuPlace, shows)));
    glBindBuffer(GL_ARRAY_BUFFER, paints_.name());
    glVertexAttribPointer(kPaint, 4, GL_FLOAT, GL_FALSE, sizeof(glm::vec4),
                          offset_at(first * sizeof(glm::vec4)));
}

void InstancedMesh::paint(std::span<const glm::vec4> colour_of_seat) {
    std::vector<glm::vec4> paints;
    paints.reserve(seats_.size());
    for (const int seat : seats_) {
        const auto index = static_cast<std::size_t>(seat);
        paints.push_back(index < colour_of_seat.size() ? colour_of_seat[index] : glm::vec4(1.0f));
    }
    fill<glm::vec4>(GL_ARRAY_BUFFER, paints_, paints, GL_DYNAMIC_DRAW);
}

void InstancedMesh::draw() const {
    if (seats_.empty()) return;
    glBindVertexArray(array_.name());
    glDrawElementsInstanced(GL_TRIANGLES, index_count_, GL_UNSIGNED_INT, nullptr,
                            static_cast<GLsizei>(seats_.size()));
    glBindVertexArray(0);
}

void InstancedMesh::draw_seat(int seat) const {
    const auto found = std::ranges::find(seats_, seat);
    if (found == seats_.end()) return;
    glBindVertexArray(array_.name());
    bind_places(static_cast<std::size_t>(found - seats_.begin()));
    glDrawElementsInstanced(GL_TRIANGLES, index_count_, GL_UNSIGNED_INT, nullptr, 1);
    bind_places(0);
    glBindVertexArray(0);
}

}  // namespace rakeline::view
