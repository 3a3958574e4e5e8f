// SPDX-License-Identifier: MIT
#include "geometry/vector.hpp"
#include "view/scene.hpp"

#include <glm/gtc/matrix_transform.hpp>

#include <algorithm>
#include <cmath>

namespace rakeline::view {
namespace {

const glm::dvec3 kUp(0.0, 1.0, 0.0);

/// What the overview frames: all seats with their heads, the picture, and the foot of the screen
/// wall.
std::vector<glm::dvec3> framed_points(const study::Study& study) {
    std::vector<glm::dvec3> points;
    for (const room::Seat& seat : study.seats.seats) {
        points.push_back(seat.floor);
        points.push_back(seat.eye);
    }
    const geometry::Patch& surface = study.picture.surface;
    const room::Screen& screen = study.layout().screen;
    const double u = geometry::half_arc_of_chord(surface, screen.width_m).value_or(0.0);
    const double v = 0.5 * screen.height_m;
    for (const glm::dvec2& corner : {glm::dvec2(-u, -v), {u, -v}, {u, v}, {-u, v}}) {
        points.push_back(geometry::point_at(surface, corner));
    }
    const double half = 0.5 * study.layout().hall.width_m;
    points.emplace_back(-half, 0.0, 0.0);
    points.emplace_back(half, 0.0, 0.0);
    return points;
}

/// Half the field's tangents, across and up.
glm::dvec2 tangents(const Camera& camera, double aspect) {
    const double up = std::tan(0.5 * camera.vertical_field_rad(aspect));
    return {up * aspect, up};
}

/// Moves the camera so that the points fill the field, and are centred in it. Seen from the target,
/// a point at (x, y) across the view and z toward the eye needs a distance of z + |x| / tangent.
void fit(Camera& camera, const std::vector<glm::dvec3>& points, double aspect) {
    constexpr int kRounds = 12;  // the middle shifts with distance; a few rounds settle it
    constexpr double kMargin = 0.94;
    const glm::dvec2 reach = kMargin * tangents(camera, aspect);
    for (int round = 0; round < kRounds; ++round) {
        const glm::dmat4 view = camera.camera_from_room();
        glm::dvec2 low(1e9);
        glm::dvec2 high(-1e9);
        double distance = 1.0;
        for (const glm::dvec3& p : points) {
            const glm::dvec3 c(view * glm::dvec4(p, 1.0));
            const glm::dvec2 seen = glm::dvec2(c) / std::max(-c.z, 0.5);
            low = glm::min(low, seen);
            high = glm::max(high, seen);
            const double toward = c.z + camera.distance_m;
            distance = std::max(
                {distance, toward + std::abs(c.x) / reach.x, toward + std::abs(c.y) / reach.y});
        }
        const glm::dvec2 off = 0.5 * (low + high) * camera.distance_m;
        const glm::dmat4 room = glm::inverse(view);
        camera.target += off.x * glm::dvec3(room[0]) + off.y * glm::dvec3(room[1]);
        camera.distance_m = distance;
    }
}

}  // namespace

glm::dvec3 Camera::position() const {
    if (seated) return eye;
    const glm::dvec3 level(0.0, std::sin(pitch_rad), std::cos(pitch_rad));
    return target + distance_m * geometry::turned_about_up(level, yaw_rad);
}

glm::dmat4 Camera::camera_from_room() const {
    return glm::lookAt(position(), target, kUp);
}

double Camera::vertical_field_rad(double aspect) const {
    if (aspect >= kFullAspect) return field_rad;
    return 2.0 * std::atan(std::tan(0.5 * field_rad) * kFullAspect / aspect);
}

double Camera::near_m() const {
    return seated ? 0.12 : std::clamp(0.04 * distance_m, 0.1, 1.0);
}

double Camera::far_m() const {
    return 160.0 + (seated ? 0.0 : 2.0 * distance_m);
}

glm::dmat4 Camera::clip_from_camera(double aspect) const {
    return glm::perspective(vertical_field_rad(aspect), aspect, near_m(), far_m());
}

Camera overview(const study::Study& study) {
    Camera camera;
    camera.yaw_rad = 0.50;
    camera.pitch_rad = 0.44;
    camera.field_rad = 0.62;
    const room::Hall& hall = study.layout().hall;
    camera.target = {0.0, 0.3 * hall.height_m, 0.5 * hall.length_m};
    camera.distance_m = 1.5 * hall.length_m;
    fit(camera, framed_points(study), kFullAspect);
    return camera;
}

SceneOptions seat_options(int seat) {
    SceneOptions options;
    options.beams = false;
    options.ceiling = true;
    options.heads = true;
    options.hidden_seat = seat;
    return options;
}

Camera seat_camera(const study::Study& study, int seat, int format) {
    RL_ASSERT(seat >= 0 && static_cast<std::size_t>(seat) < study.seats.seats.size());
    RL_ASSERT(format >= 0 && static_cast<std::size_t>(format) < study.picture.openings.size());
    const geometry::Patch& surface = study.picture.surface;
    const picture::Opening& opening = study.picture.openings[static_cast<std::size_t>(format)];
    Camera camera;
    camera.seated = true;
    camera.eye = study.seats.seats[static_cast<std::size_t>(seat)].eye;
    camera.target = geometry::point_at(surface, opening.uv.centre());
    camera.distance_m = glm::distance(camera.eye, camera.target);

    // Wide enough for the corners and the edges between them (a curved edge may bow outward).
    constexpr double kRoom = 1.16;
    const glm::dmat4 view = camera.camera_from_room();
    double tangent = 0.05;
    for (const double up : {-0.5, 0.5}) {
        for (const double across : {-0.5, -0.25, 0.0, 0.25, 0.5}) {
            const glm::dvec2 uv = opening.uv.centre() +
                                  glm::dvec2(across * opening.uv.width(), up * opening.uv.height());
            const glm::dvec3 c(view * glm::dvec4(geometry::point_at(surface, uv), 1.0));
            const double ahead = std::max(-c.z, 0.1);
            tangent =
                std::max({tangent, std::abs(c.y) / ahead, std::abs(c.x) / ahead / kFullAspect});
        }
    }
    camera.field_rad = std::min(2.0 * std::atan(kRoom * tangent), 2.4);
    return camera;
}

}  // namespace rakeline::view
