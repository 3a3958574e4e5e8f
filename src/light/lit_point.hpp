// SPDX-License-Identifier: MIT
#pragma once

#include "light/illuminance.hpp"
#include "light/screen_gain.hpp"
#include "picture/opening.hpp"

/// A place of a picture and what it sends to an eye.
namespace rakeline::light {

/// A place on the surface, and how the projector's light gets there.
struct LitPoint {
    glm::dvec2 uv{0.0};
    glm::dvec3 place{0.0};
    glm::dvec3 normal{0.0};
    glm::dvec3 incoming{0.0};
};

/// One picture in its opening, ready to be read anywhere.
struct LitPicture {
    const geometry::Patch& surface;
    const picture::Opening& opening;
    glm::dvec3 lens{0.0};
    Illuminance illuminance;
    const GainModel& model;

    /// At a place in halves of the opening's width and height from its centre, -1 ... +1.
    LitPoint at(glm::dvec2 halves) const {
        LitPoint point;
        const glm::dvec2 half = 0.5 * glm::dvec2(opening.uv.width(), opening.uv.height());
        point.uv = opening.uv.centre() + half * halves;
        point.place = geometry::point_at(surface, point.uv);
        point.normal = geometry::normal_at(surface, point.uv);
        point.incoming = glm::normalize(point.place - lens);
        return point;
    }

    double gain(const LitPoint& point, const glm::dvec3& eye) const {
        return model.gain({.incoming = point.incoming,
                           .toward_eye = glm::normalize(eye - point.place),
                           .normal = point.normal});
    }
};

}  // namespace rakeline::light
