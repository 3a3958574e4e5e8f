// SPDX-License-Identifier: MIT
#pragma once

#include "picture/opening.hpp"
#include "picture/picture_map.hpp"
#include "room/layout.hpp"
#include "room/seat_plan.hpp"

#include <array>
#include <optional>
#include <string>
#include <vector>

/// The picture that every projector gives in every format it makes.
namespace rakeline::picture {

struct PictureInput {
    room::Screen screen;
    std::vector<room::Format> formats;
    std::vector<room::Projector> projectors;
    std::vector<room::Lens> lenses;
    std::vector<room::Platform> platforms;  ///< floors for the beam clearance
    double booth_wall_back_m = 20.0;
    bool operator==(const PictureInput&) const = default;
};

/// Shape of the uncorrected picture on the surface. Corners in the order top left, top right,
/// bottom right, bottom left as seen from the seats.
struct PictureShape {
    std::array<glm::dvec2, 4> corners{};
    std::vector<glm::dvec2> outline;   ///< counter-clockwise, edges finely sampled
    double keystone_vertical = 0.0;    ///< 2 (w_bottom - w_top) / (w_bottom + w_top)
    double keystone_horizontal = 0.0;  ///< 2 (h_right - h_left) / (h_right + h_left)
    double side_slope_rad = 0.0;       ///< mean lean of the sides from the generator
    double bow_top_m = 0.0;            ///< sagitta on the surface, positive upward
    double bow_bottom_m = 0.0;
};

struct BeamClearance {
    double height_m = 0.0;        ///< least height of the beam over any floor below it
    glm::dvec3 floor_point{0.0};  ///< where
};

/// One projector showing one format.
struct ProjectedPicture {
    int projector = 0;  ///< indices in PictureInput
    int format = 0;
    int use = 0;                    ///< index in Projector::formats
    std::optional<int> lens;        ///< index in PictureInput::lenses
    glm::dvec2 gate_size_m{0.0};    ///< aperture, or pixels in use times pitch
    double throw_m = 0.0;           ///< along the axis, principal plane to surface
    glm::dvec3 axis_point{0.0};     ///< where the axis meets the surface
    double angle_down_rad = 0.0;    ///< axis against the surface normal there, vertical
    double angle_across_rad = 0.0;  ///< horizontal; positive: axis runs toward +x
    double focal_length_m = 0.0;    ///< wanted, exact thin lens
    double focal_length_field_m = 0.0;
    double focal_length_used_m = 0.0;  ///< of the lens fitted, else the wanted one
    PictureMap map;
    PictureShape shape;
    double overfill = 0.0;                 ///< picture area outside the opening over opening area
    double crop = 0.0;                     ///< part of the source image outside the opening
    double uncovered = 0.0;                ///< part of the opening that the picture leaves dark
    std::optional<BeamClearance> beam;     ///< nothing where no floor lies under the beam
    std::optional<glm::dvec3> port_point;  ///< where the axis passes the booth wall
};

/// A pair that gives no picture, and why ("the lens axis misses the screen").
struct NoPicture {
    int projector = 0;
    int format = 0;
    std::string why;
    std::string mend;
};

struct PictureStudy {
    geometry::Patch surface;
    std::vector<Opening> openings;           ///< per format
    std::vector<ProjectedPicture> pictures;  ///< by projector, then format
    std::vector<NoPicture> none;
};

PictureStudy study_picture(const PictureInput& in);

/// The picture of this projector and format, or null.
const ProjectedPicture* find_picture(const PictureStudy& study, int projector, int format);

}  // namespace rakeline::picture
