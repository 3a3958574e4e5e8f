// SPDX-License-Identifier: MIT
#include "light/light_study.hpp"

#include "light/flux_chain.hpp"
#include "light/gate_light.hpp"
#include "light/lit_point.hpp"
#include "light/luminance_map.hpp"
#include "light/opening_flux.hpp"
#include "light/port_glass.hpp"
#include "room/perforation.hpp"

#include <cstddef>
#include <utility>

namespace rakeline::light {
namespace {

PicturePoint picture_point(int index) {
    return static_cast<PicturePoint>(index);
}

using LitPoints = std::array<LitPoint, kPointCount>;

LitPoints lit_points(const LitPicture& picture) {
    LitPoints points;
    for (int i = 0; i < kPointCount; ++i)
        points[static_cast<std::size_t>(i)] = picture.at(point_place(picture_point(i)));
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
    light.setting_fraction =
        projector.formats.at(static_cast<std::size_t>(picture.use)).light_fraction;
    light.chain_flux_lm = out.lens_flux_lm * light.setting_fraction;
    light.use_fraction = use_fraction(gate_light(projector), picture.gate_size_m);
    light.port_incidence_rad = port_incidence(picture.map.pose().axis);
    light.port_transmittance = picture.port_point ? port_transmittance(port_glass(projector.port),
                                                                       light.port_incidence_rad)
                                                  : 1.0;
    light.through_glass = picture.port_point && projector.port.panes > 0;
    light.flux_lm = light.chain_flux_lm * light.use_fraction * light.port_transmittance;
}

void fill_points(PictureLight& light,
                 const LitPicture& picture,
                 const std::vector<glm::dvec3>& eyes) {
    const LitPoints points = lit_points(picture);
    for (std::size_t i = 0; i < points.size(); ++i)
        light.illuminance_lx[i] = picture.illuminance.at_lx(points[i].uv);
    light.gain.resize(eyes.size());
    for (std::size_t seat = 0; seat < eyes.size(); ++seat) {
        for (std::size_t i = 0; i < points.size(); ++i)
            light.gain[seat][i] = picture.gain(points[i], eyes[seat]);
    }
}

/// Luminance is in proportion to the flux, hence the flux that the target needs.
void fill_reference(PictureLight& light, const std::optional<int>& reference_seat) {
    if (!reference_seat) return;
    light.reference_cdm2 = luminance_cdm2(light, *reference_seat, kCentre);
    if (*light.reference_cdm2 <= 0.0) return;
    light.flux_needed_lm = light.flux_lm * light.target_cdm2 / *light.reference_cdm2;
}

/// What one picture is read through.
struct Reading {
    const LightInput& in;
    const picture::PictureStudy& pictures;
    const picture::ProjectedPicture& picture;

    const room::Projector& projector() const {
        return in.projectors.at(static_cast<std::size_t>(picture.projector));
    }
};

PictureLight light_without_points(const Reading& r) {
    PictureLight light;
    light.target_cdm2 = target_luminance_cdm2(r.projector().kind);
    fill_flux(light, r.projector(), r.picture);
    return light;
}

Beam beam_of(const Reading& r, const PictureLight& light) {
    return {.map = r.picture.map,
            .gate = gate_light(r.projector()),
            .part_size_m = r.picture.gate_size_m,
            .whole_flux_lm = light.chain_flux_lm * light.port_transmittance};
}

LitPicture lit_picture(const Reading& r, const PictureLight& light, const GainModel& model) {
    return {.surface = r.pictures.surface,
            .opening = r.pictures.openings.at(static_cast<std::size_t>(r.picture.format)),
            .lens = r.picture.map.pose().lens,
            .illuminance = Illuminance(beam_of(r, light)),
            .model = model};
}

GainModel gain_model(const room::Screen& screen) {
    return {screen.surface, room::open_area(screen.perforation)};
}

/// All that the sheet as hung sends back: what went through its holes is gone.
double sheet_reflectance(const room::Screen& screen, const LightStudy& study) {
    const double sheet = screen.surface.gain_includes_perforation ? 1.0 : 1.0 - study.open_area;
    return study.lobe_reflectance * sheet;
}

/// The stray light on every format's picture.
std::vector<StrayOnScreen> stray_light(const LightInput& in,
                                       const picture::PictureStudy& pictures,
                                       const LightStudy& study) {
    const GainModel model = gain_model(in.screen);
    const double reflectance = sheet_reflectance(in.screen, study);
    ScreenSpot spot;
    if (in.reference_seat) spot.eye = in.eyes.at(static_cast<std::size_t>(*in.reference_seat));
    std::vector<StrayOnScreen> out;
    for (const picture::Opening& opening : pictures.openings) {
        spot.place = geometry::point_at(pictures.surface, opening.uv.centre());
        spot.normal = geometry::normal_at(pictures.surface, opening.uv.centre());
        spot.picture_size = {opening.width_m, opening.height_m};
        const Enclosure room = enclosure(in.stray, opening.area_m2, reflectance);
        out.push_back(stray_on_screen(in.stray, room, spot, model));
    }
    return out;
}

}  // namespace

PictureLight read_picture(const LightInput& in,
                          const picture::PictureStudy& pictures,
                          const picture::ProjectedPicture& picture) {
    const Reading reading{in, pictures, picture};
    const GainModel model = gain_model(in.screen);
    PictureLight light = light_without_points(reading);
    fill_points(light, lit_picture(reading, light, model), in.eyes);
    fill_reference(light, in.reference_seat);
    return light;
}

LuminanceMap map_picture(const LightInput& in,
                         const picture::PictureStudy& pictures,
                         const picture::ProjectedPicture& picture,
                         const glm::dvec3& eye) {
    const Reading reading{in, pictures, picture};
    const GainModel model = gain_model(in.screen);
    return luminance_map(lit_picture(reading, light_without_points(reading), model), eye);
}

LightStudy study_light(const LightInput& in, const picture::PictureStudy& pictures) {
    LightStudy study;
    study.open_area = room::open_area(in.screen.perforation);
    study.lobe_reflectance = hemispherical_reflectance(in.screen.surface);
    study.stray = stray_light(in, pictures, study);
    const GainModel model = gain_model(in.screen);
    study.lights.reserve(pictures.pictures.size());
    for (const picture::ProjectedPicture& picture : pictures.pictures) {
        const Reading reading{in, pictures, picture};
        PictureLight light = light_without_points(reading);
        const LitPicture lit = lit_picture(reading, light, model);
        fill_points(light, lit, in.eyes);
        light.opening_flux_lm = flux_onto(beam_of(reading, light), lit.opening.uv);
        light.hot_spots = hot_spots(lit, in.eyes);
        fill_reference(light, in.reference_seat);
        study.lights.push_back(std::move(light));
    }
    return study;
}

}  // namespace rakeline::light
