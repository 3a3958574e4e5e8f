// SPDX-License-Identifier: MIT
#include "picture/lens_reach.hpp"

#include "picture/throw.hpp"

#include <algorithm>
#include <cmath>

namespace rakeline::picture {
namespace {

/// Shift and circle may fall short by rounding alone.
constexpr double kRounding = 1e-12;

double past_rounding(double x) {
    return std::abs(x) > kRounding ? x : 0.0;
}

double beyond(double wanted, double has) {
    return std::max(0.0, past_rounding(std::abs(wanted) - has));
}

std::optional<double> throw_ratio_at(double focal_length_m, const LensDemand& demand) {
    if (focal_length_m >= demand.throw_m) return std::nullopt;
    return demand.throw_m / picture_width(demand.wide_gate_m, demand.throw_m, focal_length_m);
}

double long_end(const room::Lens& lens) {
    return lens.kind == room::LensKind::prime ? lens.focal_length_m : lens.focal_length_long_m;
}

}  // namespace

LensDemand lens_demand(const ProjectedPicture& picture, const room::FormatUse& use) {
    const glm::dvec2 far_corner = 0.5 * picture.gate_size_m + glm::abs(picture.map.pose().shift_m);
    return {.throw_m = picture.throw_m,
            .wide_gate_m = picture.gate_size_m.x * use.squeeze,
            .shift_across = use.shift_across,
            .shift_up = use.shift_up,
            .image_circle_m = 2.0 * glm::length(far_corner)};
}

double LensReach::shift_short() const {
    return std::max(shift_across_short, shift_up_short);
}

bool LensReach::enough() const {
    return shift_short() == 0.0 && image_circle_spare_m >= 0.0;
}

LensReach lens_reach(const room::Lens& lens, const LensDemand& demand) {
    LensReach out;
    out.throw_ratio_short = throw_ratio_at(lens.focal_length_m, demand);
    out.throw_ratio_long = throw_ratio_at(long_end(lens), demand);
    out.shift_across_short = beyond(demand.shift_across, lens.shift_across_max);
    out.shift_up_short = beyond(demand.shift_up, lens.shift_up_max);
    const auto kept = [](double pushed_off) { return 1.0 - std::min(1.0, pushed_off); };
    out.field_lost = 1.0 - kept(out.shift_across_short) * kept(out.shift_up_short);
    out.image_circle_spare_m = past_rounding(lens.image_circle_m - demand.image_circle_m);
    return out;
}

}  // namespace rakeline::picture
