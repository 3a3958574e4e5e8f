// SPDX-License-Identifier: MIT
#include "drawing/mesh_shapes.hpp"
#include "sight/blockers.hpp"

#include <algorithm>
#include <cmath>

/// Seats and those who sit in them: one shape each, and where it stands.
namespace rakeline::drawing {
namespace {

// Sizes of the chair: common practice, no source. It leaves the row behind its legs and stays
// below the eye.
constexpr double kCushion_m = 0.45;  // top of the cushion over the floor
constexpr double kBackLean_rad = 0.21;

glm::dmat4 lying_at(const glm::dvec3& origin) {
    // Plates stand in x and y; this lays one down: its y runs forward (-z), its front up.
    return frame_at(origin, {1, 0, 0}, {0, 0, -1}, {0, 1, 0});
}

/// Where a seat's shape goes, stretched across and upward.
glm::dmat4 place_of(const room::Seat& seat,
                    const glm::dvec3& origin,
                    double across = 1.0,
                    double high = 1.0) {
    const glm::dvec3 up(0.0, 1.0, 0.0);
    return frame_at(origin, across * glm::cross(seat.facing, up), high * up, -seat.facing);
}

const room::SeatBlock& block_of(const study::Study& study, const room::Seat& seat) {
    const room::Row& row = study.seats.rows[static_cast<std::size_t>(seat.row)];
    return study.layout().seating[static_cast<std::size_t>(row.block)];
}

void add_wheel(Part& part, double across_m) {
    constexpr int kSpokes = 14;
    constexpr double kRadius_m = 0.3;
    std::vector<glm::dvec2> rim;
    for (int i = 0; i < kSpokes; ++i) {
        const double angle = 2.0 * base::kPi * i / kSpokes;
        rim.push_back(kRadius_m * glm::dvec2(std::cos(angle), std::sin(angle)));
    }
    // A plate whose face looks along +x.
    const glm::dmat4 frame =
        frame_at({across_m - 0.015, kRadius_m, 0.05}, {0, 0, -1}, {0, 1, 0}, {1, 0, 0});
    add_plate(part, {.outline = rim, .thickness_m = 0.03, .bevel_m = 0.008, .paint = 0.0}, frame);
}

}  // namespace

Part seat_part() {
    Part part{.material = Material::seat, .shows = {Shows::Kind::seat, 0}};
    const auto cushion = outline_of(
        {.width_m = 0.475, .height_m = 0.47, .radius_m = 0.07, .steps = 1, .top_only = true});
    add_plate(part,
              {.outline = cushion,
               .thickness_m = 0.13,
               .bevel_m = 0.035,
               .paint = 1.0,
               .back_face = false},
              lying_at({0.0, kCushion_m - 0.13, 0.10}));
    const auto back = outline_of(
        {.width_m = 0.485, .height_m = 0.64, .radius_m = 0.12, .steps = 2, .top_only = true});
    // Turned about so that the plate's front, its soft face, looks toward -z.
    glm::dmat4 lean = leaning_at({0.0, 0.36, 0.07}, kBackLean_rad);
    lean = lean * frame_at({0, 0, 0}, {-1, 0, 0}, {0, 1, 0}, {0, 0, -1});
    lean[3] += 0.11 * glm::dvec4(0.0, -std::sin(kBackLean_rad), std::cos(kBackLean_rad), 0.0);
    add_plate(part, {.outline = back, .thickness_m = 0.11, .bevel_m = 0.035, .paint = 1.0}, lean);
    for (const double side : {-0.5, 0.5}) {
        const double x = side * kSeatPartPitch_m;
        add_box(part, {.low = {x - 0.03, 0.60, -0.28}, .high = {x + 0.03, 0.645, 0.14}});
        add_box(part,
                {.low = {x - 0.02, 0.0, -0.10}, .high = {x + 0.02, 0.60, 0.12}, .ends = false});
    }
    return part;
}

Part wheelchair_part() {
    Part part{.material = Material::seat, .shows = {Shows::Kind::seat, 0}};
    const auto cushion = outline_of(
        {.width_m = 0.42, .height_m = 0.42, .radius_m = 0.05, .steps = 1, .top_only = true});
    add_plate(part, {.outline = cushion, .thickness_m = 0.07, .bevel_m = 0.02, .paint = 1.0},
              lying_at({0.0, 0.44, 0.14}));
    add_box(part, {.low = {-0.21, 0.50, 0.14}, .high = {0.21, 0.92, 0.18}, .paint = 1.0});
    add_box(part, {.low = {-0.16, 0.08, -0.46}, .high = {0.16, 0.11, -0.28}});
    add_box(part, {.low = {-0.02, 0.10, -0.30}, .high = {0.02, 0.44, -0.26}});
    add_wheel(part, -0.25);
    add_wheel(part, 0.25);
    return part;
}

Part head_part(const room::Audience& audience) {
    Part part{.material = Material::head, .shows = {Shows::Kind::seat, 0}};
    const double half_breadth = 0.5 * audience.head_breadth_m;
    add_ellipsoid(part, {.centre = {0.0, 0.0, 0.0},
                         .half = {half_breadth, audience.eye_to_crown_m, half_breadth},
                         .around = 24,
                         .along = 16});
    return part;
}

Part body_part() {
    Part part{.material = Material::head, .shows = {Shows::Kind::seat, 0}};
    const glm::dvec3 a(-0.5, 0.0, 0.0), b(0.5, 0.0, 0.0), up(0.0, 1.0, 0.0);
    add_quad(part, {a, b, b + up, a + up});
    add_quad(part, {b, a, a + up, b + up});
    return part;
}

void add_seats(const study::Study& study, RoomMesh& mesh) {
    mesh.seat = seat_part();
    mesh.wheelchair = wheelchair_part();
    const room::SeatPlan& plan = study.seats;
    for (std::size_t i = 0; i < plan.seats.size(); ++i) {
        const room::Seat& seat = plan.seats[i];
        const room::SeatBlock& block = block_of(study, seat);
        // Neighbours share their arms, and the back ends where the layout says.
        const double across = std::clamp(block.seat_pitch_m / kSeatPartPitch_m, 0.8, 1.8);
        const double high = block.seat_back_m / kSeatPartBack_m;
        mesh.seats.push_back({.room_from_seat = seat.wheelchair
                                                    ? place_of(seat, seat.floor)
                                                    : place_of(seat, seat.floor, across, high),
                              .seat = static_cast<int>(i),
                              .wheelchair = seat.wheelchair});
    }
}

void add_heads(const study::Study& study, RoomMesh& mesh) {
    mesh.head = head_part(study.layout().audience);
    mesh.body = body_part();
    const auto& seats = study.seats.seats;
    for (std::size_t i = 0; i < seats.size(); ++i) {
        const room::Seat& seat = seats[i];
        const int index = static_cast<int>(i);
        mesh.heads.push_back({place_of(seat, seat.eye), index, seat.wheelchair});
        if (seat.wheelchair) continue;
        const room::SeatBlock& block = block_of(study, seat);
        const double across = sight::kShoulderWidthRatio * block.seat_pitch_m;
        mesh.bodies.push_back({place_of(seat, seat.floor, across, block.seat_back_m), index});
    }
}

}  // namespace rakeline::drawing
