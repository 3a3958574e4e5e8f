// SPDX-License-Identifier: MIT
#pragma once

#include "light/hot_spot.hpp"
#include "light/stray_light.hpp"
#include "picture/picture_study.hpp"
#include "room/layout.hpp"

#include <array>
#include <optional>
#include <vector>

/// From the lamp to every seat: flux, illuminance through the picture map, luminance by gain.
namespace rakeline::light {

struct LightInput {
    room::Screen screen;
    std::vector<room::Projector> projectors;
    std::vector<glm::dvec3> eyes;       ///< per seat
    std::optional<int> reference_seat;  ///< index in `eyes`
    StrayRoom stray{};
    bool operator==(const LightInput&) const = default;
};

/// Points of the opening where luminance is read: centre, the middles of the four sides, the four
/// corners, the outer ones inset by kPointInset of the opening's width and height.
enum PicturePoint {
    kCentre,
    kLeft,
    kRight,
    kTop,
    kBottom,
    kTopLeft,
    kTopRight,
    kBottomRight,
    kBottomLeft,
    kPointCount
};
/// Source: common practice, no source (5 % of the picture's width and height from its edges).
inline constexpr double kPointInset = 0.05;

/// Opening coordinates of a point, -1 ... +1 from the opening's centre.
glm::dvec2 point_place(PicturePoint point);

/// Nominal luminance at the picture's centre: digital 48 cd/m2 (ISO 26431-1), film 55 cd/m2
/// (SMPTE ST 196, open gate).
double target_luminance_cdm2(room::SourceKind kind);

/// One projector showing one format; every factor kept so that it can be shown.
struct PictureLight {
    double lamp_flux_lm = 0.0;        ///< electrical power x efficacy x ageing; 0 if measured
    double setting_fraction = 1.0;    ///< that lens and iris pass in this format's setting
    double chain_flux_lm = 0.0;       ///< out of the lens at that setting, whole lit gate or imager
    double use_fraction = 0.0;        ///< of that flux, through the part that the format uses
    double port_incidence_rad = 0.0;  ///< axis against the normal of the port's upright glass
    double port_transmittance = 0.0;  ///< at that angle; 1 for a lens in the hall, without a port
    bool through_glass = false;       ///< whether a pane stands in the light's way
    double flux_lm = 0.0;          ///< reaching the surface, opening and masking: all of the above
    double opening_flux_lm = 0.0;  ///< of that, into the opening; the rest lights the masking
    std::array<double, kPointCount>
        illuminance_lx{};  ///< 0 where the picture leaves the point dark
    std::vector<std::array<double, kPointCount>> gain;  ///< per seat: G toward the eye
    std::vector<std::optional<HotSpot>> hot_spots;      ///< per seat
    double target_cdm2 = 0.0;
    std::optional<double> reference_cdm2;  ///< centre, toward the reference seat
    std::optional<double> flux_needed_lm;  ///< flux_lm scaled to bring the reference to the target
};

/// Luminance toward a seat, L = E G / pi, cd/m2.
double luminance_cdm2(const PictureLight& light, int seat, PicturePoint point);

/// Worst of the four sides (corners) over the centre, toward a seat; nothing if the centre is dark.
std::optional<double> side_ratio(const PictureLight& light, int seat);
std::optional<double> corner_ratio(const PictureLight& light, int seat);

/// Darkest over brightest of the centre and the sides (corners): a picture whose side outshines its
/// centre is as uneven as one whose side falls short. 0 to 1; nothing if the centre is dark.
std::optional<double> side_evenness(const PictureLight& light, int seat);
std::optional<double> corner_evenness(const PictureLight& light, int seat);

/// Seats and what they see of the picture's centre, of those that see any of it.
struct SeatRange {
    int lowest_seat = 0;
    int highest_seat = 0;
    double lowest_cdm2 = 0.0;
    double highest_cdm2 = 0.0;
};

/// Nothing without seats, or where all see the centre dark.
std::optional<SeatRange> seat_range(const PictureLight& light);

struct LightStudy {
    std::vector<PictureLight> lights;  ///< parallel to PictureStudy::pictures
    std::vector<StrayOnScreen> stray;  ///< per format
    double open_area = 0.0;            ///< of the perforation
    double lobe_reflectance = 0.0;  ///< hemispherical, at normal incidence; over 1 claims too much
};

/// The readings of one of `pictures`, without hot spots (they stay empty) and flux into the
/// opening.
PictureLight read_picture(const LightInput& in,
                          const picture::PictureStudy& pictures,
                          const picture::ProjectedPicture& picture);

/// All pictures of `pictures`, which must come from the same screen and projectors. Luminance is in
/// proportion to flux; the light that seats and walls send back to the screen is not in it but in
/// `stray`.
LightStudy study_light(const LightInput& in, const picture::PictureStudy& pictures);

}  // namespace rakeline::light
