// SPDX-License-Identifier: MIT
#pragma once

#include "picture/beam.hpp"
#include "picture/beam_gaps.hpp"
#include "picture/covering.hpp"
#include "picture/opening.hpp"
#include "picture/picture_map.hpp"
#include "picture/picture_shape.hpp"
#include "picture/plate.hpp"
#include "picture/port.hpp"
#include "room/layout.hpp"
#include "room/seat_plan.hpp"

#include <optional>
#include <string>
#include <vector>

/// The picture that every projector gives in every format it makes.
///
/// Reads a layout that room::check_layout finds no fault with: gate sizes, ratios and the frame are
/// positive, and a curved screen's radius is at least half its width.
namespace rakeline::picture {

struct PictureInput {
    room::Screen screen;
    std::vector<room::Format> formats;
    std::vector<room::Projector> projectors;
    std::vector<room::Lens> lenses;
    std::vector<room::Platform> platforms;  ///< floors for the beam clearance
    std::vector<Balcony> balconies;         ///< for what else the beam comes near
    std::optional<HallShell> shell;
    double booth_wall_back_m = 20.0;
    bool operator==(const PictureInput&) const = default;
};

/// One projector showing one format.
struct ProjectedPicture {
    int projector = 0;  ///< indices in PictureInput
    int format = 0;
    int use = 0;                  ///< index in Projector::formats
    std::optional<int> lens;      ///< index in PictureInput::lenses
    glm::dvec2 gate_size_m{0.0};  ///< aperture, or pixels in use times pitch
    double throw_m = 0.0;         ///< along the axis, principal plane to surface
    glm::dvec3 axis_point{0.0};   ///< where the axis meets the surface
    /// The axis against the surface's normal at the axis point, as drawn in the upright section
    /// through that normal and the generator: atan(r . up / r . normal), r the way back to the
    /// lens. Positive: the lens stands above the normal, the axis runs down.
    double angle_down_rad = 0.0;
    /// The same in plan, in the section across the generator. Positive: axis runs toward +x.
    double angle_across_rad = 0.0;
    double focal_length_m = 0.0;  ///< wanted, exact thin lens
    double focal_length_field_m = 0.0;
    /// The set zoom position; else a prime's own, or the wanted one as near as the zoom's range
    /// comes to it; else (no lens fitted) the wanted one.
    double focal_length_used_m = 0.0;
    PictureMap map;
    PictureShape shape;
    double overfill = 0.0;             ///< picture area outside the opening over opening area
    double crop = 0.0;                 ///< part of the source image outside the opening
    double uncovered = 0.0;            ///< part of the opening that the picture leaves dark
    std::optional<Covering> covering;  ///< nothing if the lens can't see the whole opening
    /// Film: what to file, with the allowance and corner radius of the use, or why there is no
    /// plate. Nothing for a digital projector.
    std::optional<base::Result<Plate>> plate;
    std::optional<BeamClearance> beam;     ///< nothing where no floor lies under the beam
    BeamGaps gaps;                         ///< to what is no floor
    std::optional<glm::dvec3> port_point;  ///< where the axis passes the booth wall
    /// What its light fills of the booth wall. Without a lens the f-number is unknown, and the
    /// rays through the lens's middle alone count.
    std::optional<geometry::Rectangle> port_light;
};

/// A pair of projector and format it has a use for that gives no picture, and why ("the lens axis
/// misses the screen").
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

/// Aim at the picture's centre points the axis at the centre of each format's opening; a lens shift
/// then still moves the picture off it. Picture and opening coincide under shift where the axis is
/// aimed by angles instead. The focal length wanted is the one whose thin-lens width at the throw
/// along the axis is the opening's chord; keystone and curvature then make the true picture.
PictureStudy study_picture(const PictureInput& in);

/// The smallest upright opening in the booth wall that passes the light of all the projector's
/// pictures; nothing if it has none there.
std::optional<geometry::Rectangle> port_opening(const PictureStudy& study, int projector);

/// The light of a picture in that wall, for the outline: points into `picture`.
PortBeam port_beam(const ProjectedPicture& picture,
                   const std::vector<room::Lens>& lenses,
                   double booth_wall_back_m);

/// The picture of this projector and format, or null.
const ProjectedPicture* find_picture(const PictureStudy& study, int projector, int format);

}  // namespace rakeline::picture
