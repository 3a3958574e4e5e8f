// SPDX-License-Identifier: MIT
#pragma once

#include "geometry/vector.hpp"
#include "light/picture_bounce.hpp"
#include "light/screen_gain.hpp"
#include "room/layout.hpp"

#include <optional>
#include <vector>

/// Light on the screen that is no picture: house lights, and what the hall sends back of both them
/// and the picture. A stated model, no renderer; every surface is diffuse:
///
/// - Each house light is a point that sends its flux evenly all round; on the screen's centre it
///   gives E = F cos i / (4 pi r^2), nothing in the way (inverse square and cosine law).
/// - What surfaces send back of house lights spreads evenly over all of them (an integrating room):
///   flux F gives E = F r / (A (1 - r)) everywhere, with A the area of all surfaces and r their
///   mean reflectance by area. Source: conservation of energy (each bounce keeps r of the flux, a
///   geometric series); the integrating sphere of photometry, where it is exact.
/// - Of the picture's own light the first bounce is summed over the surfaces where they stand
///   (light/picture_bounce.hpp); later bounces spread evenly, as above.
///
/// Held to photons traced through box halls (tests/light/stray_light_test.cpp): what comes back of
/// a house light lies within 40 % of the trace, of the picture within 8 %. Left out: people and
/// chairs in the way, light from the port and the booth, gloss, daylight through doors, haze.
namespace rakeline::light {

/// The hall as the model sees it: a box, wider toward the booth by the splay, floor taken level.
struct StrayRoom {
    double width_m = 12.0;  ///< at the screen wall
    double length_m = 20.0;
    double height_m = 6.5;
    double splay_rad = 0.0;
    double seated_floor_m2 = 0.0;    ///< of the floor, covered by seats
    double seated_balcony_m2 = 0.0;  ///< of balconies, surface beside the floor's own
    room::StrayLight light;
    bool operator==(const StrayRoom&) const = default;
};

/// All surfaces of the hall with one format's picture in the screen wall. Masking and the wall
/// round the picture count as walls.
struct Enclosure {
    double area_m2 = 0.0;           ///< A
    double mean_reflectance = 0.0;  ///< r, by area, the picture in it
    double picture_area_m2 = 0.0;
    double picture_reflectance = 0.0;
};

/// `picture_reflectance` over 1 (a surface that claims too much) counts as 1; seats cover no more
/// of the floor than there is.
Enclosure enclosure(const StrayRoom& room, double picture_area_m2, double picture_reflectance);

/// Mean reflectance of the floor, bare and seated.
double floor_reflectance(const StrayRoom& room);

/// E = F r / (A (1 - r)), lx: of flux F that has yet to land for the first time.
double returned_lx(const Enclosure& room, double flux_lm);

/// Share of a full white picture's mean illuminance that the hall sends back to it,
/// b = r_p (R_2 / A_p + R_1 r / (A (1 - r))): the picture (area A_p) reflects r_p; R_1 and R_2 are
/// those of FirstBounce.
double bounce_fraction(const Enclosure& room, const FirstBounce& first);

/// Nearer than this a light is no point any more and counts as this far away.
inline constexpr double kNearestLight_m = 0.1;

/// Illuminance from one light on a point of the surface, lx; 0 for a light behind it.
double direct_lx(const room::HouseLight& light, const glm::dvec3& place, const glm::dvec3& normal);

/// The place on the screen that is looked at, and from where.
struct ScreenSpot {
    glm::dvec3 place{0.0};
    glm::dvec3 normal{0.0, 0.0, 1.0};
    glm::dvec2 picture_size{1.0};   ///< width and height
    std::optional<glm::dvec3> eye;  ///< of the reference seat
};

/// One format's stray light at its picture's centre.
struct StrayOnScreen {
    Enclosure room;
    FirstBounce first;             ///< of the picture's own light
    double direct_lx = 0.0;        ///< from house lights, straight
    double house_flux_lm = 0.0;    ///< of all house lights
    double returned_lx = 0.0;      ///< of house lights, from the hall's surfaces
    double bounce_fraction = 0.0;  ///< of the picture's own mean light
    double direct_cdm2 = 0.0;      ///< of direct_lx, by the gain of each light's direction
    double returned_cdm2 = 0.0;    ///< of returned_lx, by the reflectance
    double stray_lx() const { return direct_lx + returned_lx; }
    double stray_cdm2() const { return direct_cdm2 + returned_cdm2; }
};

/// Luminances are those toward `spot.eye`, 0 without one. Light that comes from everywhere meets
/// the picture's reflectance as its luminance factor (the angle of view left out).
StrayOnScreen stray_on_screen(const StrayRoom& room,
                              const Enclosure& enclosure,
                              const ScreenSpot& spot,
                              const GainModel& gain);

}  // namespace rakeline::light
