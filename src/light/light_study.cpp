// SPDX-License-Identifier: MIT
#include "light/light_study.hpp"

#include "light/flux_chain.hpp"
#include "light/gate_light.hpp"
#include "light/illuminance.hpp"
#include "light/port_glass.hpp"
#include "light/screen_gain.hpp"
#include "room/perforation.hpp"

#include <cstddef>
#include <utility>

namespace rakeline::light {
namespace {

PicturePoint picture_point(int index) {
    return static_cast<PicturePoint>(index);
}

/// A reading point of the opening on the surface, and how the projector's light gets there.
struct LitPoint {
    glm::dvec2 uv{0.0};
    glm::dvec3 place{0.0};
    glm::dvec3 normal{0.0};
    glm::dvec3 incoming{0.0};
};

using LitPoints = std::array<LitPoint, kPointCount>;

LitPoints lit_points(const geometry::Patch& surface,
                     const picture::Opening& opening,
                     const glm::dvec3& lens) {
    LitPoints points;
    const glm::dvec2 half = 0.5 * glm::dvec2(opening.uv.width(), opening.uv.height());
    for (int i = 0; i < kPointCount; ++i) {
        LitPoint& point = points[static_cast<std::size_t>(i)];
        point.uv = opening.uv.centre() + half * point_place(picture_point(i));
        point.place = geometry::point_at(surface, point.uv);
        point.normal = geometry::normal_at(surface, point.uv);
        point.incoming = glm::normalize(point.place - lens);
    }
    return points;
}

/// Axis against the normal of the glass, which stands upright in the booth wall, z = const.
double port_incidence(const glm::dvec3& axis) {
    const glm::dvec3 glass_normal{0.0, 0.0, axis.z < 0.0 ? -1.0 : 1.0};
    return geometry::angle_between(axis, glass_normal);
}

PortGlass port_glass(const room::Port& port) {
    return {.panes = port.panes,
            .index = port.glass_index,
            .thickness_m = port.glass_thickness_m,
            .absorption_per_m = port.glass_absorption_per_m,
            .coated_reflectance = port.coated_reflectance};
}

/// Flux from lamp to surface. A lens in the hall, in front of the booth wall, has no port.
void fill_flux(PictureLight& light,
               const room::Projector& projector,
               const picture::ProjectedPicture& picture) {
    const FluxOut out = flux_out(projector.flux);
    light.lamp_flux_lm = out.lamp_flux_lm;
    light.chain_flux_lm = out.lens_flux_lm;
    light.use_fraction = use_fraction(gate_light(projector), picture.gate_size_m);
    light.port_incidence_rad = port_incidence(picture.map.pose().axis);
    light.port_transmittance = picture.port_point ? port_transmittance(port_glass(projector.port),
                                                                       light.port_incidence_rad)
                                                  : 1.0;
    light.flux_lm = light.chain_flux_lm * light.use_fraction * light.port_transmittance;
}

void fill_illuminance(PictureLight& light,
                      const room::Projector& projector,
                      const picture::ProjectedPicture& picture,
                      const LitPoints& points) {
    const Illuminance illuminance(
        {.map = picture.map,
         .gate = gate_light(projector),
         .part_size_m = picture.gate_size_m,
         .whole_flux_lm = light.chain_flux_lm * light.port_transmittance});
    for (std::size_t i = 0; i < points.size(); ++i) {
        light.illuminance_lx[i] = illuminance.at_lx(points[i].uv);
    }
}

void fill_gain(PictureLight& light,
               const GainModel& model,
               const LitPoints& points,
               const std::vector<glm::dvec3>& eyes) {
    light.gain.resize(eyes.size());
    for (std::size_t seat = 0; seat < eyes.size(); ++seat) {
        for (std::size_t i = 0; i < points.size(); ++i) {
            const LitPoint& point = points[i];
            light.gain[seat][i] =
                model.gain({.incoming = point.incoming,
                            .toward_eye = glm::normalize(eyes[seat] - point.place),
                            .normal = point.normal});
        }
    }
}

/// Luminance is in proportion to the flux, hence the flux that the target needs.
void fill_reference(PictureLight& light, const std::optional<int>& reference_seat) {
    if (!reference_seat) return;
    light.reference_cdm2 = luminance_cdm2(light, *reference_seat, kCentre);
    if (*light.reference_cdm2 <= 0.0) return;
    light.flux_needed_lm = light.flux_lm * light.target_cdm2 / *light.reference_cdm2;
}

}  // namespace

LightStudy study_light(const LightInput& in, const picture::PictureStudy& pictures) {
    LightStudy study;
    study.open_area = room::open_area(in.screen.perforation);
    study.lobe_reflectance = hemispherical_reflectance(in.screen.surface);
    const GainModel model(in.screen.surface, study.open_area);
    study.lights.reserve(pictures.pictures.size());
    for (const picture::ProjectedPicture& picture : pictures.pictures) {
        const auto& projector = in.projectors.at(static_cast<std::size_t>(picture.projector));
        const auto& opening = pictures.openings.at(static_cast<std::size_t>(picture.format));
        const LitPoints points = lit_points(pictures.surface, opening, picture.map.pose().lens);
        PictureLight light;
        light.target_cdm2 = target_luminance_cdm2(projector.kind);
        fill_flux(light, projector, picture);
        fill_illuminance(light, projector, picture, points);
        fill_gain(light, model, points, in.eyes);
        fill_reference(light, in.reference_seat);
        study.lights.push_back(std::move(light));
    }
    return study;
}

}  // namespace rakeline::light
