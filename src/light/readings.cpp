// SPDX-License-Identifier: MIT
#include "base/assert.hpp"
#include "base/units.hpp"
#include "light/light_study.hpp"

#include <algorithm>
#include <cstddef>

/// Where luminance is read, and the readings from a finished study.
namespace rakeline::light {
namespace {

/// Least of the points over the centre.
std::optional<double> worst_ratio(const PictureLight& light,
                                  int seat,
                                  const std::array<PicturePoint, 4>& points) {
    const double centre = luminance_cdm2(light, seat, kCentre);
    if (centre <= 0.0) return std::nullopt;
    double worst = luminance_cdm2(light, seat, points.front());
    for (const PicturePoint point : points) {
        worst = std::min(worst, luminance_cdm2(light, seat, point));
    }
    return worst / centre;
}

/// Darkest over brightest of the centre and the points.
std::optional<double> evenness(const PictureLight& light,
                               int seat,
                               const std::array<PicturePoint, 4>& points) {
    const double centre = luminance_cdm2(light, seat, kCentre);
    if (centre <= 0.0) return std::nullopt;
    double darkest = centre;
    double brightest = centre;
    for (const PicturePoint point : points) {
        const double here = luminance_cdm2(light, seat, point);
        darkest = std::min(darkest, here);
        brightest = std::max(brightest, here);
    }
    return darkest / brightest;
}

constexpr std::array kSides = {kLeft, kRight, kTop, kBottom};
constexpr std::array kCorners = {kTopLeft, kTopRight, kBottomRight, kBottomLeft};

}  // namespace

glm::dvec2 point_place(PicturePoint point) {
    // An inset of the whole width is twice that of the half width, in which places are measured.
    const double edge = 1.0 - 2.0 * kPointInset;
    switch (point) {
        case kLeft:
            return {-edge, 0.0};
        case kRight:
            return {edge, 0.0};
        case kTop:
            return {0.0, edge};
        case kBottom:
            return {0.0, -edge};
        case kTopLeft:
            return {-edge, edge};
        case kTopRight:
            return {edge, edge};
        case kBottomRight:
            return {edge, -edge};
        case kBottomLeft:
            return {-edge, -edge};
        case kCentre:
        case kPointCount:
            break;
    }
    RL_ASSERT(point == kCentre);
    return {0.0, 0.0};
}

double target_luminance_cdm2(room::SourceKind kind) {
    return kind == room::SourceKind::digital ? 48.0 : 55.0;
}

double luminance_cdm2(const PictureLight& light, int seat, PicturePoint point) {
    RL_ASSERT(seat >= 0 && static_cast<std::size_t>(seat) < light.gain.size());
    const auto i = static_cast<std::size_t>(point);
    const std::array<double, kPointCount>& gains = light.gain[static_cast<std::size_t>(seat)];
    return light.illuminance_lx.at(i) * gains.at(i) / base::kPi;
}

std::optional<double> side_ratio(const PictureLight& light, int seat) {
    return worst_ratio(light, seat, kSides);
}

std::optional<double> corner_ratio(const PictureLight& light, int seat) {
    return worst_ratio(light, seat, kCorners);
}

std::optional<double> side_evenness(const PictureLight& light, int seat) {
    return evenness(light, seat, kSides);
}

std::optional<double> corner_evenness(const PictureLight& light, int seat) {
    return evenness(light, seat, kCorners);
}

std::optional<SeatRange> seat_range(const PictureLight& light) {
    std::optional<SeatRange> range;
    for (int seat = 0; static_cast<std::size_t>(seat) < light.gain.size(); ++seat) {
        const double here = luminance_cdm2(light, seat, kCentre);
        if (here <= 0.0) continue;
        if (!range) range = SeatRange{seat, seat, here, here};
        if (here < range->lowest_cdm2) {
            range->lowest_seat = seat;
            range->lowest_cdm2 = here;
        }
        if (here > range->highest_cdm2) {
            range->highest_seat = seat;
            range->highest_cdm2 = here;
        }
    }
    return range;
}

}  // namespace rakeline::light
