// SPDX-License-Identifier: MIT
#include "sound/picture_beat.hpp"

#include "sound/eye_contrast.hpp"

#include <algorithm>
#include <cmath>

namespace rakeline::sound {
namespace {

/// One eye on one place of the sheet, ready for any frequency there.
struct LineOfSight {
    double distance_m = 0.0;
    glm::dvec2 along{0.0};    ///< unit line of sight along the surface's two directions
    double field_deg2 = 0.0;  ///< of the opening

    double cycles_per_radian(glm::dvec2 k) const {
        const double depth2 = std::max(1.0 - glm::dot(along, along), 1e-12);
        const double across = glm::dot(k, along);
        return distance_m * std::sqrt(glm::dot(k, k) + across * across / depth2);
    }
};

LineOfSight line_of_sight(const geometry::Patch& surface,
                          glm::dvec2 uv,
                          double area_m2,
                          const glm::dvec3& eye) {
    const glm::dvec3 normal = geometry::normal_at(surface, uv);
    const glm::dvec3 across = glm::cross(surface.up, normal);
    const glm::dvec3 d = geometry::point_at(surface, uv) - eye;
    LineOfSight out;
    out.distance_m = glm::length(d);
    const glm::dvec3 way = d / out.distance_m;
    out.along = {glm::dot(way, across), glm::dot(way, surface.up)};
    const double solid = area_m2 * std::abs(glm::dot(way, normal)) / glm::dot(d, d);
    out.field_deg2 = solid / (base::kRadPerDeg * base::kRadPerDeg);
    return out;
}

double area_m2(const geometry::Rectangle& r) {
    return r.width() * r.height();
}

Seen seen_by(const LineOfSight& eye, const Beat& beat, const ContrastSense& sense) {
    const double cycles = eye.cycles_per_radian(beat.frequency);
    const double per_degree = cycles * base::kRadPerDeg;
    return {cycles, beat.contrast * sense.sensitivity(per_degree, eye.field_deg2)};
}

/// The nearest, the middle and the farthest of the eyes: coarse bands are seen from afar, fine ones
/// from near by.
std::vector<glm::dvec3> three_eyes(const PixelPicture& picture, std::vector<glm::dvec3> eyes) {
    if (eyes.size() <= 3) return eyes;
    const glm::dvec3 centre = geometry::point_at(picture.map.surface(), picture.opening.centre());
    std::stable_sort(eyes.begin(), eyes.end(), [&](const glm::dvec3& a, const glm::dvec3& b) {
        return glm::distance(a, centre) < glm::distance(b, centre);
    });
    return {eyes.front(), eyes[eyes.size() / 2], eyes.back()};
}

struct Worst {
    Beat beat;
    glm::dvec2 uv{0.0};
    Lattice pixels;
    double visibility = 0.0;
};

std::optional<Worst> worst_of(const PixelPicture& picture,
                              const std::vector<Order>& holes,
                              const std::vector<glm::dvec3>& eyes,
                              const ContrastSense& sense) {
    const geometry::Patch& surface = picture.map.surface();
    const double longest = std::hypot(picture.opening.width(), picture.opening.height());
    std::optional<Worst> worst;
    for (const glm::dvec2 uv : beat_places(picture.opening)) {
        const auto pixels = pixel_lattice(picture.map, picture.pixel_m, uv);
        if (!pixels) continue;
        std::vector<LineOfSight> sights;
        for (const glm::dvec3& eye : eyes)
            sights.push_back(line_of_sight(surface, uv, area_m2(picture.opening), eye));
        for (const Beat& beat : beats(holes, *pixels, longest)) {
            for (const LineOfSight& sight : sights) {
                const double visibility = seen_by(sight, beat, sense).visibility;
                if (!worst || visibility > worst->visibility)
                    worst = {beat, uv, *pixels, visibility};
            }
        }
    }
    return worst;
}

}  // namespace

std::array<glm::dvec2, kBeatPlaces> beat_places(const geometry::Rectangle& o) {
    return {o.centre(), {o.left, o.top}, {o.right, o.top}, {o.right, o.bottom}, {o.left, o.bottom}};
}

double cycles_per_radian(const geometry::Patch& surface,
                         glm::dvec2 uv,
                         glm::dvec2 frequency,
                         const glm::dvec3& eye) {
    return line_of_sight(surface, uv, 1.0, eye).cycles_per_radian(frequency);
}

std::optional<PictureBeat> worst_beat(const PixelPicture& picture,
                                      const std::vector<Order>& holes,
                                      const std::vector<glm::dvec3>& eyes) {
    const ContrastSense sense(picture.luminance_cdm2);
    const auto worst = worst_of(picture, holes, three_eyes(picture, eyes), sense);
    if (!worst) return std::nullopt;
    PictureBeat out;
    out.projector = picture.projector;
    out.format = picture.format;
    out.beat = worst->beat;
    out.uv = worst->uv;
    out.pixels = worst->pixels;
    out.seen.reserve(eyes.size());
    std::size_t many = 0;
    for (const glm::dvec3& eye : eyes) {
        out.seen.push_back(
            seen_by(line_of_sight(picture.map.surface(), out.uv, area_m2(picture.opening), eye),
                    out.beat, sense));
        if (out.seen.back().visibility > 1.0) ++many;
    }
    const auto most =
        std::max_element(out.seen.begin(), out.seen.end(),
                         [](const Seen& a, const Seen& b) { return a.visibility < b.visibility; });
    out.worst_seat = static_cast<int>(most - out.seen.begin());
    out.seats_that_see = static_cast<double>(many) / static_cast<double>(eyes.size());
    return out;
}

double beat_risk(const PixelPicture& picture,
                 const std::vector<Order>& holes,
                 const std::vector<glm::dvec3>& eyes) {
    const ContrastSense sense(picture.luminance_cdm2);
    const auto worst = worst_of(picture, holes, three_eyes(picture, eyes), sense);
    return worst ? worst->visibility : 0.0;
}

}  // namespace rakeline::sound
