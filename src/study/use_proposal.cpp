// SPDX-License-Identifier: MIT
#include "study/use_proposal.hpp"

#include "picture/lens_pick.hpp"
#include "picture/throw.hpp"
#include "study/slices.hpp"

#include <cmath>

namespace rakeline::study {
namespace {

/// Two ratios that one gate serves: what the trade calls 2.39 is 2.35 to 2.40 by edition.
constexpr double kSameRatio = 0.02;
/// Two machines light the same gauge.
constexpr double kSameGauge_m = 0.0005;

room::Projector& projector_at(room::Layout& layout, int projector) {
    return layout.projectors.at(static_cast<std::size_t>(projector));
}

/// The largest part of the imager that has the ratio, in whole pixels.
UseProposal imager_part(const room::Projector& p, const room::Format& format) {
    const double wide = p.imager.pixels_wide, high = p.imager.pixels_high;
    room::FormatUse use;
    use.format = format.name;
    const bool by_width = format.aspect_ratio >= wide / high;
    use.pixels_wide =
        by_width ? p.imager.pixels_wide : static_cast<int>(std::lround(high * format.aspect_ratio));
    use.pixels_high =
        by_width ? static_cast<int>(std::lround(wide / format.aspect_ratio)) : p.imager.pixels_high;
    return {use, "proposed: the largest part of its imager of that ratio, " +
                     std::to_string(use.pixels_wide) + " × " + std::to_string(use.pixels_high) +
                     " pixels"};
}

bool same_ratio(double a, double b) {
    return std::abs(a - b) <= kSameRatio * b;
}

bool same_gauge(const room::Projector& a, const room::Projector& b) {
    return std::abs(a.lit_width_m - b.lit_width_m) <= kSameGauge_m &&
           std::abs(a.lit_height_m - b.lit_height_m) <= kSameGauge_m;
}

double ratio_of(const room::FormatUse& use) {
    return use.squeeze * use.gate_width_m / use.gate_height_m;
}

/// A gate of the ratio that the layout has on a film machine of the same gauge.
UseProposal known_gate(const room::Layout& layout,
                       const room::Projector& p,
                       const room::Format& format) {
    for (const room::Projector& other : layout.projectors) {
        if (other.kind != room::SourceKind::film || !same_gauge(other, p)) continue;
        for (const room::FormatUse& use : other.formats) {
            if (!same_ratio(ratio_of(use), format.aspect_ratio)) continue;
            room::FormatUse copy;
            copy.format = format.name;
            copy.gate_width_m = use.gate_width_m;
            copy.gate_height_m = use.gate_height_m;
            copy.squeeze = use.squeeze;
            return {copy, "proposed: the gate that " + other.name + " has for " + use.format};
        }
    }
    return {{},
            "no gate of that ratio and gauge stands in the layout, so it can't be shown: give "
            "the machine a use for the format with its aperture"};
}

glm::dvec2 gate_of(const room::Projector& p, const room::FormatUse& use) {
    if (p.kind == room::SourceKind::film) return {use.gate_width_m, use.gate_height_m};
    return p.imager.pixel_pitch_m * glm::dvec2(use.pixels_wide, use.pixels_high);
}

/// Shift that brings the opening's centre onto the gate's middle, at the focal length that the
/// opening's width wants. The aim of a machine that follows the picture does that itself.
void centre_by_shift(const Study& study, int projector, int format, room::FormatUse& use) {
    const auto& p = study.layout().projectors.at(static_cast<std::size_t>(projector));
    if (p.aim.mode != room::AimMode::angles) return;
    const auto& opening = study.picture.openings.at(static_cast<std::size_t>(format));
    picture::Pose pose = picture::aimed_pose({p.across_m, p.up_m, p.back_m}, p.aim.yaw_rad,
                                             p.aim.pitch_rad, p.aim.roll_rad);
    const auto hits = geometry::hits(study.picture.surface, {pose.lens, pose.axis});
    if (hits.empty()) return;  // then no shift helps, and the study says why
    const double throw_m = hits.front().t;
    const glm::dvec2 gate = gate_of(p, use);
    const double focal_m = picture::focal_length(gate.x * use.squeeze, throw_m, opening.width_m);
    pose.squeeze = use.squeeze;
    pose.image_distance_m = picture::image_distance(focal_m, throw_m);
    const glm::dvec2 centre(0.5 * (opening.uv.left + opening.uv.right),
                            0.5 * (opening.uv.bottom + opening.uv.top));
    const auto at = picture::PictureMap(study.picture.surface, pose).gate_from_screen(centre);
    if (!at) return;
    use.shift_across = at->x / gate.x;
    use.shift_up = at->y / gate.y;
}

/// Fits the first of the layout's lenses that covers and fits; else the focal length to cover.
void fit_lens(const Study& study, int projector, int format, room::FormatUse& use) {
    room::Layout layout = study.layout();
    projector_at(layout, projector).formats.push_back(use);
    const auto pick =
        picture::pick_lens(picture_slice(layout, study.seats), projector, format, layout.lenses);
    if (!pick || !pick->wish) return;
    use.focal_length_m = pick->wish->covering_focal_length_m;
    const picture::LensChoice* best = pick->best();
    if (!best) return;
    use.lens = layout.lenses.at(static_cast<std::size_t>(best->lens)).name;
    use.focal_length_m = best->focal_length_m;
}

}  // namespace

UseProposal propose_use(const Study& study, int projector, int format) {
    const room::Layout& layout = study.layout();
    const auto& p = layout.projectors.at(static_cast<std::size_t>(projector));
    const auto& wanted = layout.formats.at(static_cast<std::size_t>(format));
    UseProposal proposal =
        p.kind == room::SourceKind::film ? known_gate(layout, p, wanted) : imager_part(p, wanted);
    if (!proposal.use) return proposal;
    centre_by_shift(study, projector, format, *proposal.use);
    fit_lens(study, projector, format, *proposal.use);
    proposal.words += proposal.use->lens.empty() ? "; no lens of the layout covers and fits, so at "
                                                   "the focal length to cover"
                                                 : "; with '" + proposal.use->lens + "'";
    return proposal;
}

Study study_with(const Study& study, int projector, const room::FormatUse& use) {
    auto brief = std::make_shared<room::Brief>(*study.brief);
    projector_at(brief->layout, projector).formats.push_back(use);
    return compute_study(std::move(brief));
}

}  // namespace rakeline::study
