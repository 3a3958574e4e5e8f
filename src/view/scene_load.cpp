// SPDX-License-Identifier: MIT
#include "view/scene_gpu.hpp"

#include <algorithm>
#include <limits>

/// From a RoomMesh to buffers and the few numbers that shaders need.
namespace rakeline::view {
namespace {

using drawing::Material;

enum class Group { room, picture, walls, ceiling };

Group group_of(Material material) {
    if (material == Material::screen) return Group::picture;
    if (material == Material::ceiling) return Group::ceiling;
    if (material == Material::wall || material == Material::booth_wall) return Group::walls;
    return Group::room;
}

std::vector<const drawing::Part*> parts_of(const drawing::RoomMesh& mesh, Group group) {
    std::vector<const drawing::Part*> parts;
    for (const drawing::Part& part : mesh.parts) {
        if (group_of(part.material) == group) parts.push_back(&part);
    }
    return parts;
}

std::vector<drawing::SeatInstance> places_of(const drawing::RoomMesh& mesh, bool wheelchair) {
    std::vector<drawing::SeatInstance> places;
    for (const drawing::SeatInstance& place : mesh.seats) {
        if (place.wheelchair == wheelchair) places.push_back(place);
    }
    return places;
}

/// The vertex of the picture whose uv is nearest.
const drawing::Vertex& vertex_near(const drawing::Part& screen, glm::dvec2 uv) {
    return *std::ranges::min_element(
        screen.vertices, {}, [&](const drawing::Vertex& v) { return glm::length(v.uv - uv); });
}

PictureLamp lamp_of(const drawing::RoomMesh& mesh) {
    PictureLamp lamp;
    lamp.size_m = glm::vec2(mesh.picture_size_m);
    std::ranges::transform(mesh.picture_light, lamp.light.begin(),
                           [](double light) { return static_cast<float>(light); });
    for (const drawing::Part& part : mesh.parts) {
        if (part.material != Material::screen || part.vertices.empty()) continue;
        const auto at = [&](double u, double v) { return vertex_near(part, {u, v}).position; };
        lamp.centre = glm::vec3(at(0.5, 0.5));
        lamp.right = glm::vec3(0.5 * (at(1.0, 0.5) - at(0.0, 0.5)));
        lamp.up = glm::vec3(0.5 * (at(0.5, 1.0) - at(0.5, 0.0)));
        lamp.normal = glm::vec3(vertex_near(part, {0.5, 0.5}).normal);
    }
    return lamp;
}

/// Inside where dot(xyz, p) + w < 0.
glm::vec4 plane_through(const glm::dvec3& point, const glm::dvec3& outward) {
    return glm::vec4(glm::vec3(outward), static_cast<float>(-glm::dot(outward, point)));
}

/// Four planes through the lens that hold the outline: each through the two of its corners that
/// bound a side. A bowed side leaves its plane by far less than the veil's soft edge.
BeamVolume volume_of(const drawing::Part& beam) {
    const glm::dvec3 lens = beam.vertices.front().position;
    glm::dvec3 middle(0.0);
    for (std::size_t i = 1; i < beam.vertices.size(); ++i)
        middle += beam.vertices[i].position;
    middle /= static_cast<double>(beam.vertices.size() - 1);
    // The outline's farthest points toward each corner of its field.
    std::array<glm::dvec3, 4> corners{};
    const glm::dvec2 toward[] = {{-1, -1}, {1, -1}, {1, 1}, {-1, 1}};
    for (std::size_t k = 0; k < 4; ++k) {
        double best = -std::numeric_limits<double>::infinity();
        for (std::size_t i = 1; i < beam.vertices.size(); ++i) {
            const glm::dvec3 p = beam.vertices[i].position - middle;
            const double reach = toward[k].x * p.x + 1.5 * toward[k].y * p.y;
            if (reach <= best) continue;
            best = reach;
            corners[k] = beam.vertices[i].position;
        }
    }
    BeamVolume volume{.lens = glm::vec3(lens),
                      .throw_m = static_cast<float>(glm::distance(lens, middle))};
    for (std::size_t k = 0; k < 4; ++k) {
        glm::dvec3 normal = glm::cross(corners[k] - lens, corners[(k + 1) % 4] - lens);
        normal /= std::max(glm::length(normal), 1e-12);
        if (glm::dot(normal, middle - lens) > 0.0) normal = -normal;
        volume.planes[k] = plane_through(lens, normal);
    }
    volume.planes[4] = plane_through(middle, glm::normalize(middle - lens));
    return volume;
}

}  // namespace

void Scene::load(const drawing::RoomMesh& mesh) {
    gpu_->room.load(parts_of(mesh, Group::room));
    gpu_->picture.load(parts_of(mesh, Group::picture));
    gpu_->walls.load(parts_of(mesh, Group::walls));
    gpu_->ceiling.load(parts_of(mesh, Group::ceiling));
    gpu_->seats.load(mesh.seat, places_of(mesh, false));
    gpu_->wheelchairs.load(mesh.wheelchair, places_of(mesh, true));
    gpu_->heads.load(mesh.head, mesh.heads);
    gpu_->bodies.load(mesh.body, mesh.bodies);
    gpu_->hidden_part.load({});
    gpu_->screen_luminance.load({});
    gpu_->edges.load(mesh.edges, false);
    gpu_->beam_edges.load(mesh.edges, true);
    gpu_->lamp = lamp_of(mesh);
    gpu_->beams.clear();
    for (const drawing::Part& beam : mesh.beams) {
        if (gpu_->beams.size() < kMostBeams) gpu_->beams.push_back(volume_of(beam));
    }
    const glm::dvec4 back_rim(0.0, 0.97, 0.2, 1.0);
    gpu_->mark_places.clear();
    for (const drawing::SeatInstance& place : mesh.seats) {
        gpu_->mark_places.emplace_back(place.room_from_seat * back_rim);
    }
}

void Scene::show_luminance(const drawing::ScreenLuminance& luminance) {
    const drawing::Part* const parts[] = {&luminance.part};
    gpu_->screen_luminance.load(parts);
    gpu_->first_contour = static_cast<float>(luminance.first_contour);
    gpu_->contour_step = static_cast<float>(luminance.contour_step);
}

void Scene::mark_hidden(const drawing::Part& part) {
    const drawing::Part* const parts[] = {&part};
    gpu_->hidden_part.load(parts);
}

}  // namespace rakeline::view
