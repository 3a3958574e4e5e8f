// SPDX-License-Identifier: MIT
#include "drawing/mesh_shapes.hpp"

#include <algorithm>
#include <cmath>

/// Walls and ceiling, each a part of its own and facing inward, so that the view can leave out
/// those that stand between the eye and the room.
namespace rakeline::drawing {
namespace {

constexpr double kStrip_m = 1.0;  // longest piece of side wall, along which its floor is straight

/// Height of the floor that the seating gives at `back_m`, straight between its rows: what the side
/// walls' lights stand over.
double floor_along_wall(const study::Study& study, double back_m) {
    std::vector<room::FloorPoint> profile;
    for (const room::Row& row : study.seats.rows) {
        const auto block = static_cast<std::size_t>(row.block);
        if (study.layout().seating[block].raised) continue;
        profile.push_back({row.centre_floor.z, row.centre_floor.y});
    }
    std::ranges::sort(profile, {}, &room::FloorPoint::back_m);
    return room::profile_height(profile, back_m);
}

/// side: -1 the left wall, +1 the right one.
void add_side_wall(const study::Study& study, double side, double low_m, RoomMesh& mesh) {
    const room::Hall& hall = study.layout().hall;
    Part wall{.material = Material::wall, .shows = {Shows::Kind::hall, 0}};
    const int strips = std::max(1, static_cast<int>(std::ceil(hall.length_m / kStrip_m)));
    const auto foot = [&](int i) {
        const double z = hall.length_m * i / strips;
        return glm::dvec3(side * room::half_width_at(hall, z), low_m, z);
    };
    for (int i = 0; i < strips; ++i) {
        // The wall faces the room: on the left one the back end comes first.
        const glm::dvec3 a = foot(side < 0.0 ? i + 1 : i);
        const glm::dvec3 b = foot(side < 0.0 ? i : i + 1);
        const double under_a = floor_along_wall(study, a.z);
        const double under_b = floor_along_wall(study, b.z);
        const double top = hall.height_m;
        add_quad(wall, {a, b, glm::dvec3(b.x, top, b.z), glm::dvec3(a.x, top, a.z)},
                 {glm::dvec2(a.z, low_m - under_a), glm::dvec2(b.z, low_m - under_b),
                  glm::dvec2(b.z, top - under_b), glm::dvec2(a.z, top - under_a)});
    }
    mesh.parts.push_back(std::move(wall));
}

void add_screen_wall(const room::Hall& hall, double low_m, RoomMesh& mesh) {
    Part wall{.material = Material::wall, .shows = {Shows::Kind::hall, 0}};
    const double x = room::half_width_at(hall, 0.0);
    add_quad(wall,
             {glm::dvec3(-x, low_m, 0.0), glm::dvec3(x, low_m, 0.0),
              glm::dvec3(x, hall.height_m, 0.0), glm::dvec3(-x, hall.height_m, 0.0)},
             {glm::dvec2(0.0, low_m), glm::dvec2(0.0, low_m), glm::dvec2(0.0, hall.height_m),
              glm::dvec2(0.0, hall.height_m)});
    mesh.parts.push_back(std::move(wall));
}

void add_ceiling(const room::Hall& hall, RoomMesh& mesh) {
    Part ceiling{.material = Material::ceiling, .shows = {Shows::Kind::hall, 0}};
    const double a = room::half_width_at(hall, 0.0);
    const double b = room::half_width_at(hall, hall.length_m);
    const double y = hall.height_m;
    add_quad(ceiling, {glm::dvec3(-a, y, 0.0), glm::dvec3(a, y, 0.0),
                       glm::dvec3(b, y, hall.length_m), glm::dvec3(-b, y, hall.length_m)});
    mesh.parts.push_back(std::move(ceiling));
}

void add_hall_edges(const room::Hall& hall, double low_m, RoomMesh& mesh) {
    const auto corner = [&](double side, double z) {
        return glm::dvec3(side * room::half_width_at(hall, z), low_m, z);
    };
    const std::array<glm::dvec3, 4> foot = {corner(-1, 0.0), corner(1, 0.0),
                                            corner(1, hall.length_m), corner(-1, hall.length_m)};
    const glm::dvec3 up(0.0, 1.0, 0.0);
    const glm::dvec3 rise(0.0, hall.height_m - low_m, 0.0);
    const auto wall = [&](std::size_t i) {  // inward normal of the wall over foot i to i + 1
        return glm::normalize(glm::cross(foot[(i + 1) % 4] - foot[i], up));
    };
    for (std::size_t i = 0; i < 4; ++i) {
        const glm::dvec3 next = foot[(i + 1) % 4];
        mesh.edges.push_back({EdgeKind::hall, foot[i], next, {wall(i), up}});
        mesh.edges.push_back({EdgeKind::hall, foot[i] + rise, next + rise, {wall(i), -up}});
        mesh.edges.push_back(
            {EdgeKind::hall, foot[i], foot[i] + rise, {wall(i), wall((i + 3) % 4)}});
    }
}

}  // namespace

void add_hall(const study::Study& study, RoomMesh& mesh) {
    const room::Hall& hall = study.layout().hall;
    const double low = lowest_floor_m(study);
    add_side_wall(study, -1.0, low, mesh);
    add_side_wall(study, 1.0, low, mesh);
    add_screen_wall(hall, low, mesh);
    add_ceiling(hall, mesh);
    add_hall_edges(hall, low, mesh);
}

}  // namespace rakeline::drawing
