// SPDX-License-Identifier: MIT
#include "sound/hole_study.hpp"

#include "sound/perforation.hpp"

#include <algorithm>
#include <cmath>

namespace rakeline::sound {
namespace {

/// Distance from an eye to the nearest point of the sheet: of its foot on the surface, held inside
/// the sheet's edges.
double sheet_distance(const HoleInput& in, double half_arc_m, const glm::dvec3& eye) {
    const glm::dvec2 foot = geometry::coordinates_of(in.surface, eye);
    const glm::dvec2 nearest{std::clamp(foot.x, -half_arc_m, half_arc_m),
                             std::clamp(foot.y, -0.5 * in.height_m, 0.5 * in.height_m)};
    return glm::distance(geometry::point_at(in.surface, nearest), eye);
}

void study_seats(const HoleInput& in, HoleStudy& out) {
    const double half = geometry::half_arc_of_chord(in.surface, in.width_m).value_or(0.0);
    for (const glm::dvec3& eye : in.eyes)
        out.sheet_distance_m.push_back(sheet_distance(in, half, eye));
    const auto& all = out.sheet_distance_m;
    if (all.empty()) return;
    out.nearest_seat = static_cast<int>(std::min_element(all.begin(), all.end()) - all.begin());
    const double reach = hole_visible_from_m(in.perforation.hole_diameter_m);
    const auto nearer = std::count_if(all.begin(), all.end(), [&](double d) { return d < reach; });
    out.seats_that_see_holes = static_cast<double>(nearer) / static_cast<double>(all.size());
}

}  // namespace

double pitch_visible_from_m(double pitch_m) {
    return pitch_m / std::tan(2.0 * base::radians(1.0 / 60.0));
}

HoleStudy study_holes(const HoleInput& in) {
    HoleStudy out;
    if (in.perforation.pattern == room::PerforationPattern::none) return out;
    out.pitch_visible_from_m = pitch_visible_from_m(in.perforation.pitch_m);
    study_seats(in, out);
    const std::vector<Order> orders = hole_orders(in.perforation);
    for (const PixelPicture& picture : in.pictures) {
        if (auto beat = worst_beat(picture, orders, in.eyes)) out.beats.push_back(std::move(*beat));
    }
    return out;
}

const PictureBeat* find_beat(const HoleStudy& study, int projector, int format) {
    for (const PictureBeat& beat : study.beats)
        if (beat.projector == projector && beat.format == format) return &beat;
    return nullptr;
}

}  // namespace rakeline::sound
