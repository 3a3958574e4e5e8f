// SPDX-License-Identifier: MIT
#pragma once

#include "light/light_study.hpp"

#include <optional>
#include <stop_token>
#include <vector>

/// What a screen's curve or tilt does to the light that the seats see. Trials of screens that
/// nobody has chosen yet: no figures of the layout (those follow once a radius or tilt is put into
/// it).
namespace rakeline::light {

/// Sagitta over chord of a cylinder: s/W = R/W - sqrt((R/W)^2 - 1/4); 0 for a flat one.
/// Needs R >= W/2. Source: derived, circle and chord; s = R - sqrt(R^2 - W^2/4).
double sagitta_fraction(double chord_m, double radius_m);

/// The radius of that sagitta, R = W (1/(8 s/W) + (s/W)/2); 0 for 0. Source: the same.
/// Example: 5 % of the chord gives R = 2.525 W.
double radius_of_sagitta(double chord_m, double sagitta_fraction);

/// One surface that was tried, and what one picture is on it.
struct CurvatureTrial {
    double radius_m = 0.0;          ///< 0: flat
    double sagitta_fraction = 0.0;  ///< over the frame's chord
    double tilt_rad = 0.0;
    bool clear_of_wall = true;  ///< no part of the frame behind the screen wall
    double throw_m = 0.0;

    // Light, toward every seat. A seat that sees a point dark counts as 0.
    double side_ratio = 0.0;   ///< of the worst seat: worst side over centre
    int side_seat = 0;         ///< that seat
    double evenness = 0.0;     ///< darkest over brightest of all seats and nine points
    double lowest_cdm2 = 0.0;  ///< of these
    double highest_cdm2 = 0.0;

    // The picture, through the exact map.
    double crop = 0.0;          ///< part of the source image that falls into the masking
    double uncovered = 0.0;     ///< part of the opening that stays dark
    double bow_m = 0.0;         ///< greatest sagitta of its top and bottom edge, up or down
    double bow_fraction = 0.0;  ///< of the opening's height
    double keystone_vertical = 0.0;
};

struct CurvatureInput {
    picture::PictureInput pictures;
    LightInput light;
    int projector = 0;  ///< indices in `pictures`
    int format = 0;
};

/// The surface with this radius and tilt in place of its own, all else as it is: the machine aims
/// as it aims, with the lens that it has. Nothing where that gives no picture, or no seat sees its
/// centre lit.
std::optional<CurvatureTrial> try_surface(const CurvatureInput& in,
                                          double radius_m,
                                          double tilt_rad);

/// Sagittas from flat to 10 % of the chord, a quarter of a percent apart (common practice, no
/// source: 5 % is a usual compromise, more is hard to hang and to focus on), each radius rounded to
/// 0.1 m; tilts from 10 degrees forward to 10 back, half a degree apart. Trials that give no
/// picture are left out.
struct CurvatureHelp {
    std::optional<CurvatureTrial> now;
    double chord_m = 0.0;                ///< of the frame
    std::vector<CurvatureTrial> curves;  ///< at the present tilt, sagitta rising
    std::vector<CurvatureTrial> tilts;   ///< with the present radius, tilt rising
    /// Index of the most even of those clear of the wall; of some alike, the first.
    std::optional<int> best_curve;
    std::optional<int> best_tilt;
};

CurvatureHelp curvature_help(const CurvatureInput& in);

/// The same, or nothing where `stop` came first: it is asked before each trial.
std::optional<CurvatureHelp> curvature_help(const CurvatureInput& in, const std::stop_token& stop);

}  // namespace rakeline::light
