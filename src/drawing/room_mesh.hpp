// SPDX-License-Identifier: MIT
#pragma once

#include "drawing/drawing.hpp"
#include "study/luminance_map.hpp"

#include <glm/mat4x4.hpp>

#include <array>
#include <vector>

/// The room as triangles for the 3D view: plain data, no graphics calls. Positions in the room
/// frame, metres.
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
    beam,
    head,
    hidden,
    luminance
};

/// `uv` by material: screen: 0..1 across and up the opening. Wall: metres from the screen wall, and
/// metres above the floor beside it. Seat: x is how much of the seat's own colour shows (1 cloth,
/// 0 frame). Loudspeaker: x is 1 on the front. Beam: y is 0 at the lens, 1 at the picture.
/// Luminance: x is the place in the palette. Else free.
struct Vertex {
    glm::dvec3 position{0.0};
    glm::dvec3 normal{0.0, 1.0, 0.0};  ///< unit
    glm::dvec2 uv{0.0};
};

/// Triangles of one thing.
struct Part {
    Material material = Material::floor;
    Shows shows;
    std::vector<Vertex> vertices = {};
    std::vector<unsigned> indices = {};  ///< counter-clockwise from outside
    /// Inward normal of the wall that it hangs on or stands behind, zero if none: where the view
    /// leaves that wall out, this goes with it.
    glm::dvec3 wall{0.0};
};

/// One seat's place: column-major room-from-seat, and the seat's index.
struct SeatInstance {
    glm::dmat4 room_from_seat{1.0};
    int seat = 0;
    bool wheelchair = false;  ///< drawn with RoomMesh::wheelchair
};

/// A line that keeps its width on the display, so that thin edges stay clean at any distance.
/// Ghost: the outline of what went with a wall that is left out. Picture: the rim of the
/// uncorrected picture on the masking; shortfall: where it runs inside the opening.
/// Cut: from a floor, balcony, ceiling or wall to the beam that comes too near.
enum class EdgeKind { step, hall, port, beam, ghost, picture, shortfall, cut };
struct Edge {
    EdgeKind kind = EdgeKind::hall;
    glm::dvec3 from{0.0};
    glm::dvec3 to{0.0};
    /// Normals of the two faces that meet in it: it is seen where either faces the eye. Both zero:
    /// always.
    std::array<glm::dvec3, 2> faces{};
};

struct RoomMesh {
    std::vector<Part> parts;  ///< opaque
    std::vector<Part> beams;  ///< translucent, open toward the picture: vertex 0 is at the lens,
                              ///< the others go along the picture's outline, counter-clockwise
    std::vector<Edge> edges;  ///< of steps, hall, ports, beams and pictures
    Part seat;                ///< one seat about its reference point, facing -z
    Part wheelchair;          ///< the same for a wheelchair place
    std::vector<SeatInstance> seats;   ///< by seat index; all places
    Part head;                         ///< one head about the eye, as sight/hidden.hpp has it
    std::vector<SeatInstance> heads;   ///< one a seat, at its eye
    Part body;                         ///< shoulders and seat's back: one plate, 1 m by 1 m
    std::vector<SeatInstance> bodies;  ///< one a seat that is no wheelchair place, on its floor
    glm::dvec2 picture_size_m{0.0};    ///< of the opening: along the arc, along the generator
    /// Illuminance over its largest value at the 3 x 3 points of light::PicturePoint, from bottom
    /// left to top right, row by row; all 1 where no light is known.
    std::array<double, 9> picture_light{1, 1, 1, 1, 1, 1, 1, 1, 1};
};

/// The room for the projector and format chosen: without a format the first one; without a
/// projector the beams of all that show it.
RoomMesh room_mesh(const study::Study& study, const DrawingChoice& choice);

/// The parts that room_mesh is made of, one file each.
void add_floor(const study::Study& study, RoomMesh& mesh);
void add_hall(const study::Study& study, RoomMesh& mesh);
void add_booth(const study::Study& study, RoomMesh& mesh);
void add_screen(const study::Study& study, std::optional<int> format, RoomMesh& mesh);
void add_beams(const study::Study& study,
               std::optional<int> projector,
               std::optional<int> format,
               RoomMesh& mesh);
void add_seats(const study::Study& study, RoomMesh& mesh);
void add_heads(const study::Study& study, RoomMesh& mesh);
void add_loudspeakers(const study::Study& study, RoomMesh& mesh);

/// One cinema chair, 0.56 m between the middles of its arms, its back just under 1 m; one
/// wheelchair; both about the seat's reference point, facing -z. One head about the eye, and one
/// plate for shoulders and seat's back, 1 m by 1 m on the floor: the spheroid and the wall that the
/// hidden part of the picture is computed with (sight/blockers.hpp) and no more, so that what a
/// picture shows hidden is what the figure counts.
Part seat_part();
Part wheelchair_part();
Part head_part(const room::Audience& audience);
Part body_part();
inline constexpr double kSeatPartPitch_m = 0.56;
inline constexpr double kSeatPartBack_m = 1.0;

/// What a full house hides of a format's picture from one seat: on the picture surface, as
/// study::seat_view has it. No triangles where nothing is hidden. `uv` in surface coordinates.
Part hidden_part(const study::Study& study, int format, int seat);

/// The luminance over a picture as one seat sees it: the lit part, just before the picture
/// surface, and where its contours stand in the palette, evenly apart.
struct ScreenLuminance {
    Part part{.material = Material::luminance, .shows = {Shows::Kind::screen, 0}};
    double first_contour = 0.0;
    double contour_step = 0.0;  ///< 0: none
};
ScreenLuminance screen_luminance(const study::Study& study,
                                 const study::SeatLuminance& luminance,
                                 base::UnitSystem units);

}  // namespace rakeline::drawing
