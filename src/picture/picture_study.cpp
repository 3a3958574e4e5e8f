// SPDX-License-Identifier: MIT
#include "picture/picture_study.hpp"

#include "picture/throw.hpp"

#include <algorithm>
#include <cmath>
#include <variant>

namespace rakeline::picture {
namespace {

using room::FormatUse;
using room::Projector;

struct Refusal {
    std::string why;
    std::string mend;
};

template <class T>
using OrRefusal = std::variant<T, Refusal>;

/// What is being worked on: indices as in ProjectedPicture.
struct Job {
    const PictureInput& in;
    const geometry::Patch& surface;
    const Opening& opening;
    const Projector& projector;
    const FormatUse& use;
};

std::optional<int> use_of(const Projector& projector, const std::string& format) {
    const auto& uses = projector.formats;
    const auto found = std::find_if(uses.begin(), uses.end(),
                                    [&](const FormatUse& use) { return use.format == format; });
    if (found == uses.end()) return std::nullopt;
    return static_cast<int>(found - uses.begin());
}

std::optional<int> lens_called(const std::vector<room::Lens>& lenses, const std::string& name) {
    const auto found = std::find_if(lenses.begin(), lenses.end(),
                                    [&](const room::Lens& lens) { return lens.name == name; });
    if (found == lenses.end()) return std::nullopt;
    return static_cast<int>(found - lenses.begin());
}

glm::dvec2 gate_size(const Projector& projector, const FormatUse& use) {
    if (projector.kind == room::SourceKind::film) return {use.gate_width_m, use.gate_height_m};
    const double pitch = projector.imager.pixel_pitch_m;
    return {use.pixels_wide * pitch, use.pixels_high * pitch};
}

/// Position and axes; focal length, squeeze and shift come later.
Pose aimed(const Job& job) {
    const Projector& p = job.projector;
    const glm::dvec3 lens(p.across_m, p.up_m, p.back_m);
    if (p.aim.mode == room::AimMode::angles) {
        return aimed_pose(lens, p.aim.yaw_rad, p.aim.pitch_rad, p.aim.roll_rad);
    }
    const glm::dvec3 to = opening_point(job.surface, job.opening, 0.0, 0.0) - lens;
    return aimed_pose(lens, std::atan2(to.x, -to.z), std::atan2(-to.y, std::hypot(to.x, to.z)),
                      p.aim.roll_rad);
}

OrRefusal<geometry::PatchHit> axis_hit(const Job& job, const Pose& pose) {
    const auto hits = geometry::hits(job.surface, {pose.lens, pose.axis});
    if (hits.empty()) {
        return Refusal{"the lens axis misses the picture surface",
                       "aim the projector at the screen, or give the screen a larger radius"};
    }
    if (!hits.front().from_front) {
        return Refusal{"the lens axis meets the back of the picture surface",
                       "move the projector to the seats' side of the screen"};
    }
    return hits.front();
}

void measure_axis(const Job& job, const Pose& pose, ProjectedPicture& out, glm::dvec2 uv) {
    out.axis_point = geometry::point_at(job.surface, uv);
    const glm::dvec3 normal = geometry::normal_at(job.surface, uv);
    const glm::dvec3 across = glm::cross(job.surface.up, normal);
    const double facing = -glm::dot(pose.axis, normal);
    out.angle_down_rad = std::atan2(-glm::dot(pose.axis, job.surface.up), facing);
    out.angle_across_rad = std::atan2(glm::dot(pose.axis, across), facing);
}

double focal_length_used(const FormatUse& use, const room::Lens* lens, double wanted_m) {
    if (use.focal_length_m) return *use.focal_length_m;
    if (!lens) return wanted_m;
    if (lens->kind == room::LensKind::prime) return lens->focal_length_m;
    return std::min(std::max(wanted_m, lens->focal_length_m), lens->focal_length_long_m);
}

/// Fits the lens: the focal lengths wanted and used, and the refusal if none can focus.
std::optional<Refusal> fit_lens(const Job& job, ProjectedPicture& out) {
    const room::Lens* lens = nullptr;
    if (!job.use.lens.empty()) {
        out.lens = lens_called(job.in.lenses, job.use.lens);
        if (!out.lens) {
            return Refusal{"its lens \"" + job.use.lens + "\" is not in the room's list",
                           "add the lens to the list, or choose one that is there"};
        }
        lens = &job.in.lenses[static_cast<std::size_t>(*out.lens)];
    }
    const double wide = out.gate_size_m.x * job.use.squeeze;
    out.focal_length_m = focal_length(wide, out.throw_m, job.opening.width_m);
    out.focal_length_field_m = focal_length_field(wide, out.throw_m, job.opening.width_m);
    out.focal_length_used_m = focal_length_used(job.use, lens, out.focal_length_m);
    if (out.focal_length_used_m < out.throw_m) return std::nullopt;
    return Refusal{"the focal length is not shorter than the throw, so no picture comes to focus",
                   "choose a shorter focal length or a longer throw"};
}

/// The beam in the hall and the light in the booth wall.
void measure_beam(const Job& job, ProjectedPicture& out) {
    const double wall = job.in.booth_wall_back_m;
    const BeamInput beam{.map = out.map, .gate_size_m = out.gate_size_m, .booth_wall_back_m = wall};
    std::vector<glm::dvec3> rim;
    for (const glm::dvec2 uv : out.shape.outline)
        rim.push_back(geometry::point_at(job.surface, uv));
    out.beam = beam_clearance(beam, job.in.platforms);
    out.gaps = beam_gaps(beam, rim, job.in.shell, job.in.balconies);
    out.port_point = port_point(out.map.pose(), out.throw_m, wall);
    out.port_light = port_light(port_beam(out, job.in.lenses, wall));
}

std::optional<base::Result<Plate>> plate_of(const Job& job, const ProjectedPicture& out) {
    if (job.projector.kind != room::SourceKind::film) return std::nullopt;
    return plate_outline({.picture = out,
                          .opening = job.opening,
                          .kind = job.projector.kind,
                          .corner_radius_m = job.use.plate_corner_radius_m,
                          .allowance_m = job.use.plate_allowance_m});
}

/// Everything that the finished map tells.
std::optional<Refusal> measure_picture(const Job& job, ProjectedPicture& out) {
    auto shape = picture_shape(out.map, out.gate_size_m);
    if (!shape) {
        return Refusal{"part of the picture misses the picture surface",
                       "choose a longer focal length, or aim the projector nearer to the screen"};
    }
    out.shape = std::move(*shape);
    const Coverage cover = coverage(out.map, out.gate_size_m, out.shape, job.opening);
    if (cover.uncovered >= 1.0) {
        return Refusal{"the picture falls wholly outside the opening",
                       "aim the projector at the screen, or set its yaw, pitch and shift right"};
    }
    out.overfill = cover.overfill;
    out.crop = cover.crop;
    out.uncovered = cover.uncovered;
    out.covering = covering(out.map, out.gate_size_m, job.opening);
    out.plate = plate_of(job, out);
    measure_beam(job, out);
    return std::nullopt;
}

OrRefusal<ProjectedPicture> project(const Job& job) {
    ProjectedPicture out;
    out.gate_size_m = gate_size(job.projector, job.use);
    Pose pose = aimed(job);
    const auto hit = axis_hit(job, pose);
    if (const auto* refusal = std::get_if<Refusal>(&hit)) return *refusal;
    const auto& axis = std::get<geometry::PatchHit>(hit);
    out.throw_m = axis.t;  // the axis is of unit length
    measure_axis(job, pose, out, axis.uv);
    if (auto refusal = fit_lens(job, out)) return *refusal;
    pose.focal_length_m = out.focal_length_used_m;
    pose.image_distance_m = image_distance(out.focal_length_used_m, out.throw_m);
    pose.squeeze = job.use.squeeze;
    pose.shift_m = out.gate_size_m * glm::dvec2(job.use.shift_across, job.use.shift_up);
    out.map = PictureMap(job.surface, pose);
    if (auto refusal = measure_picture(job, out)) return *refusal;
    return out;
}

/// Which pair: indices in PictureInput.
struct Pair {
    int projector = 0;
    int format = 0;
};

void study_pair(const PictureInput& in, Pair pair, PictureStudy& study) {
    const Projector& projector = in.projectors[static_cast<std::size_t>(pair.projector)];
    const auto format = static_cast<std::size_t>(pair.format);
    const auto use = use_of(projector, in.formats[format].name);
    if (!use) return;
    auto made = project({.in = in,
                         .surface = study.surface,
                         .opening = study.openings[format],
                         .projector = projector,
                         .use = projector.formats[static_cast<std::size_t>(*use)]});
    if (auto* refusal = std::get_if<Refusal>(&made)) {
        study.none.push_back({pair.projector, pair.format, refusal->why, refusal->mend});
        return;
    }
    auto& picture = std::get<ProjectedPicture>(made);
    picture.projector = pair.projector;
    picture.format = pair.format;
    picture.use = *use;
    study.pictures.push_back(std::move(picture));
}

}  // namespace

PictureStudy study_picture(const PictureInput& in) {
    PictureStudy study;
    study.surface = screen_patch(in.screen);
    for (const room::Format& format : in.formats) {
        study.openings.push_back(masked_opening(in.screen, format));
    }
    for (std::size_t p = 0; p < in.projectors.size(); ++p) {
        for (std::size_t f = 0; f < in.formats.size(); ++f) {
            study_pair(in, {static_cast<int>(p), static_cast<int>(f)}, study);
        }
    }
    return study;
}

PortBeam port_beam(const ProjectedPicture& picture,
                   const std::vector<room::Lens>& lenses,
                   double booth_wall_back_m) {
    double radius_m = 0.0;
    if (picture.lens) {
        const room::Lens& lens = lenses[static_cast<std::size_t>(*picture.lens)];
        radius_m = 0.5 * picture.focal_length_used_m / lens.f_number;
    }
    return {.map = picture.map,
            .shape = picture.shape,
            .pupil_radius_m = radius_m,
            .booth_wall_back_m = booth_wall_back_m};
}

std::optional<geometry::Rectangle> port_opening(const PictureStudy& study, int projector) {
    std::optional<geometry::Rectangle> all;
    for (const ProjectedPicture& p : study.pictures) {
        if (p.projector != projector || !p.port_light) continue;
        const geometry::Rectangle& one = *p.port_light;
        if (!all) all = one;
        all = geometry::Rectangle{.left = std::min(all->left, one.left),
                                  .right = std::max(all->right, one.right),
                                  .bottom = std::min(all->bottom, one.bottom),
                                  .top = std::max(all->top, one.top)};
    }
    return all;
}

const ProjectedPicture* find_picture(const PictureStudy& study, int projector, int format) {
    const auto found = std::find_if(
        study.pictures.begin(), study.pictures.end(),
        [&](const ProjectedPicture& p) { return p.projector == projector && p.format == format; });
    return found == study.pictures.end() ? nullptr : &*found;
}

}  // namespace rakeline::picture
