// SPDX-License-Identifier: MIT
#include "light/curvature_help.hpp"

#include "base/assert.hpp"
#include "base/parallel.hpp"
#include "base/units.hpp"
#include "room/screen_extent.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>

namespace rakeline::light {
namespace {

constexpr double kMostSagitta = 0.10;
constexpr int kSagittaSteps = 40;
constexpr double kMostTilt_deg = 10.0;
constexpr int kTiltSteps = 40;
constexpr double kRadiiAMetre = 10.0;

/// Radius and tilt to try.
struct Surface {
    double radius_m = 0.0;
    double tilt_rad = 0.0;
};

/// The chosen projector and format alone, on the surface to try, with nothing that only the beam in
/// the hall needs.
picture::PictureInput pictures_on(const CurvatureInput& in, const Surface& surface) {
    picture::PictureInput out;
    out.screen = in.pictures.screen;
    out.screen.radius_m = surface.radius_m;
    out.screen.tilt_rad = surface.tilt_rad;
    out.formats = {in.pictures.formats.at(static_cast<std::size_t>(in.format))};
    out.projectors = {in.pictures.projectors.at(static_cast<std::size_t>(in.projector))};
    out.lenses = in.pictures.lenses;
    out.booth_wall_back_m = in.pictures.booth_wall_back_m;
    return out;
}

void read_light(const PictureLight& light, CurvatureTrial& trial) {
    trial.side_ratio = 1e300;
    trial.lowest_cdm2 = 1e300;
    for (int seat = 0; static_cast<std::size_t>(seat) < light.gain.size(); ++seat) {
        for (int point = 0; point < kPointCount; ++point) {
            const double here = luminance_cdm2(light, seat, static_cast<PicturePoint>(point));
            trial.lowest_cdm2 = std::min(trial.lowest_cdm2, here);
            trial.highest_cdm2 = std::max(trial.highest_cdm2, here);
        }
        const double sides = light::side_ratio(light, seat).value_or(0.0);
        if (sides < trial.side_ratio) {
            trial.side_ratio = sides;
            trial.side_seat = seat;
        }
    }
    trial.evenness = trial.lowest_cdm2 / trial.highest_cdm2;
}

void read_shape(const picture::ProjectedPicture& picture,
                const picture::Opening& opening,
                CurvatureTrial& trial) {
    trial.throw_m = picture.throw_m;
    trial.crop = picture.crop;
    trial.uncovered = picture.uncovered;
    trial.bow_m = std::max(std::abs(picture.shape.bow_top_m), std::abs(picture.shape.bow_bottom_m));
    trial.bow_fraction = trial.bow_m / opening.height_m;
    trial.keystone_vertical = picture.shape.keystone_vertical;
}

// Radii and tilts are the doubles nearest to their decimal numbers, as a layout file that holds
// them is read: put into the layout and saved, they come back the same.

std::vector<Surface> curves_of(const room::Screen& screen) {
    std::vector<Surface> out;
    for (int i = 0; i <= kSagittaSteps; ++i) {
        const double exact_m = radius_of_sagitta(screen.width_m, kMostSagitta * i / kSagittaSteps);
        out.push_back({std::round(exact_m * kRadiiAMetre) / kRadiiAMetre, screen.tilt_rad});
    }
    return out;
}

std::vector<Surface> tilts_of(const room::Screen& screen) {
    std::vector<Surface> out;
    for (int i = -kTiltSteps / 2; i <= kTiltSteps / 2; ++i)
        out.push_back({screen.radius_m, base::radians(kMostTilt_deg * i / (kTiltSteps / 2))});
    return out;
}

/// Once `stop` has come, all further ones are left out.
std::vector<CurvatureTrial> tried(const CurvatureInput& in,
                                  const std::vector<Surface>& surfaces,
                                  const std::stop_token& stop) {
    std::vector<std::optional<CurvatureTrial>> trials(surfaces.size());
    base::parallel_chunks(surfaces.size(), 2, [&](std::size_t begin, std::size_t end) {
        for (std::size_t i = begin; i < end && !stop.stop_requested(); ++i)
            trials[i] = try_surface(in, surfaces[i].radius_m, surfaces[i].tilt_rad);
    });
    std::vector<CurvatureTrial> out;
    for (const auto& trial : trials)
        if (trial) out.push_back(*trial);
    return out;
}

std::optional<int> most_even(const std::vector<CurvatureTrial>& trials) {
    std::optional<int> best;
    for (int i = 0; static_cast<std::size_t>(i) < trials.size(); ++i) {
        const CurvatureTrial& trial = trials[static_cast<std::size_t>(i)];
        if (!trial.clear_of_wall) continue;
        if (!best || trial.evenness > trials[static_cast<std::size_t>(*best)].evenness) best = i;
    }
    return best;
}

}  // namespace

double sagitta_fraction(double chord_m, double radius_m) {
    if (radius_m == 0.0) return 0.0;
    RL_ASSERT(radius_m >= 0.5 * chord_m);
    // s = R - sqrt(R^2 - W^2/4) loses digits where R is large; its conjugate does not.
    const double half = 0.5 * chord_m;
    const double rest = std::sqrt(radius_m * radius_m - half * half);
    return half * half / (radius_m + rest) / chord_m;
}

double radius_of_sagitta(double chord_m, double fraction) {
    return fraction == 0.0 ? 0.0 : chord_m * (0.125 / fraction + 0.5 * fraction);
}

std::optional<CurvatureTrial> try_surface(const CurvatureInput& in,
                                          double radius_m,
                                          double tilt_rad) {
    const picture::PictureInput pictures = pictures_on(in, {radius_m, tilt_rad});
    const picture::PictureStudy study = picture::study_picture(pictures);
    if (study.pictures.empty()) return std::nullopt;
    const auto extent = room::screen_extent(pictures.screen);
    if (!extent) return std::nullopt;
    const LightInput light{.screen = pictures.screen,
                           .projectors = pictures.projectors,
                           .eyes = in.light.eyes,
                           .reference_seat = in.light.reference_seat};
    const PictureLight reading = read_picture(light, study, study.pictures.front());
    if (!seat_range(reading)) return std::nullopt;
    CurvatureTrial trial;
    trial.radius_m = radius_m;
    trial.sagitta_fraction = sagitta_fraction(pictures.screen.width_m, radius_m);
    trial.tilt_rad = tilt_rad;
    trial.clear_of_wall = extent->hindmost_m >= 0.0;
    read_light(reading, trial);
    read_shape(study.pictures.front(), study.openings.front(), trial);
    return trial;
}

CurvatureHelp curvature_help(const CurvatureInput& in) {
    return *curvature_help(in, std::stop_token{});
}

std::optional<CurvatureHelp> curvature_help(const CurvatureInput& in, const std::stop_token& stop) {
    const room::Screen& screen = in.pictures.screen;
    CurvatureHelp help;
    help.chord_m = screen.width_m;
    help.now = try_surface(in, screen.radius_m, screen.tilt_rad);
    help.curves = tried(in, curves_of(screen), stop);
    help.tilts = tried(in, tilts_of(screen), stop);
    if (stop.stop_requested()) return std::nullopt;
    help.best_curve = most_even(help.curves);
    help.best_tilt = most_even(help.tilts);
    return help;
}

}  // namespace rakeline::light
