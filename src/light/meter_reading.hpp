// SPDX-License-Identifier: MIT
#pragma once

#include "light/gate_light.hpp"
#include "light/light_study.hpp"

/// What a light meter reads in front of one picture: the picture, and one reading.
namespace rakeline::light {

/// The picture that is read, and what the layout says of its light.
struct MeterScene {
    picture::PictureMap map;
    geometry::Rectangle opening;  ///< surface coordinates; masking outside it sends nothing back
    glm::dvec2 part_size_m{0.0};  ///< of the gate in use, centred
    GateLight gate;               ///< lit area; hot spot and fall-off as the layout has them
    room::ScreenSurface surface;
    double open_area = 0.0;        ///< of the perforation
    double lens_flux_lm = 0.0;     ///< out of the lens, whole lit gate, as the layout has it; > 0
    double passed_fraction = 1.0;  ///< of it that comes to the screen's side of the port; > 0
};

/// The scene of a picture, from the study of its light. What the light passes after the lens (port,
/// iris) is taken from there too.
MeterScene meter_scene(const room::Screen& screen,
                       const room::Projector& projector,
                       const picture::ProjectedPicture& picture,
                       const picture::Opening& opening,
                       const PictureLight& light);

/// One reading. Luminance is read from `eye` over the meter's spot; illuminance lies on the sheet,
/// the detector's face along it.
struct MeterReading {
    glm::dvec2 uv{0.0};     ///< where the meter was aimed or laid, surface coordinates
    bool incident = false;  ///< illuminance, lx; else luminance, cd/m2
    double value = 0.0;     ///< 0 or more
    double error = 1.0;     ///< standard uncertainty, unit of the value; > 0
    double spot_rad = 0.0;  ///< full acceptance angle of a luminance meter; 0: a point
    glm::dvec3 eye{0.0};    ///< luminance: the meter's lens
};

/// Accuracy of a meter where none is given: +-0.5 cd/m2 for luminance.
/// Source: ISO 26431-1 (photometer), as reported.
inline constexpr double kMeterAccuracy_cdm2 = 0.5;

/// For illuminance, the light under which a matte white sheet (gain 1) is off by as much: pi times
/// the luminance. Source: definition of gain, L = G E / pi; that a lux meter is as good is ours.
inline constexpr double kMeterAccuracy_lx = base::kPi * kMeterAccuracy_cdm2;

/// Greatest acceptance angle of a meter for readings to the standard, rad: 2 degrees.
/// Source: ISO 26431-1, as reported.
inline constexpr double kMeterSpotMost_rad = base::radians(2.0);

/// Standard uncertainty of a reading that is right to within `accuracy` either way, nothing more
/// being known: accuracy / sqrt(3). Source: variance a^2/3 of an even distribution of half width a.
double standard_error(double accuracy);

}  // namespace rakeline::light
