// SPDX-License-Identifier: MIT
#include "study/luminance_map.hpp"

#include "study/light_cells.hpp"
#include "study/slices.hpp"

#include <algorithm>
#include <cmath>

namespace rakeline::study {
namespace {

/// Grows to hold what it is given; places without light do not count.
struct Range {
    double least = 0.0;
    double most = 0.0;

    void hold(double cdm2) {
        if (cdm2 <= 0.0) return;
        least = most == 0.0 ? cdm2 : std::min(least, cdm2);
        most = std::max(most, cdm2);
    }
};

std::optional<std::size_t> picture_index(const Study& study, int projector, int format) {
    const auto& pictures = study.picture.pictures;
    const auto found = std::ranges::find_if(
        pictures, [&](const auto& p) { return p.projector == projector && p.format == format; });
    if (found == pictures.end()) return std::nullopt;
    return static_cast<std::size_t>(found - pictures.begin());
}

void hold_seats(const light::PictureLight& light, Range& range) {
    for (std::size_t seat = 0; seat < light.gain.size(); ++seat) {
        const int index = static_cast<int>(seat);
        for (int i = 0; i < light::kPointCount; ++i)
            range.hold(light::luminance_cdm2(light, index, static_cast<light::PicturePoint>(i)));
        const double centre = light::luminance_cdm2(light, index, light::kCentre);
        if (const auto& spot = light.hot_spots.at(seat)) range.hold(centre * spot->ratio);
    }
}

/// Twelve steps at most, of 1, 2 or 5 times a power of ten.
double round_step(double extent) {
    constexpr double kMost = 12.0;
    const double wanted = extent / kMost;
    const double power = std::pow(10.0, std::floor(std::log10(wanted)));
    for (const double times : {1.0, 2.0, 5.0})
        if (times * power >= wanted * (1.0 - 1e-12)) return times * power;
    return 10.0 * power;
}

void widen(Range& range) {
    constexpr double kLeast = 0.1;  // of the greatest
    const double lacking = kLeast * range.most - (range.most - range.least);
    if (lacking > 0.0) range = {range.least - 0.5 * lacking, range.most + 0.5 * lacking};
    const double step = round_step(range.most - range.least);
    // What is round already must not be moved on by its last bit.
    constexpr double kBit = 1e-9;
    range = {step * std::floor(range.least / step + kBit),
             step * std::ceil(range.most / step - kBit)};
}

/// The narrowest of several windows.
void take_window(const Study& study, int projector, LuminanceScale& scale) {
    for (const room::Limit* limit : reference_windows(study, projector)) {
        if (limit->least)
            scale.window_least_cdm2 =
                std::max(scale.window_least_cdm2.value_or(*limit->least), *limit->least);
        if (limit->most)
            scale.window_most_cdm2 =
                std::min(scale.window_most_cdm2.value_or(*limit->most), *limit->most);
    }
}

}  // namespace

LuminanceScale luminance_scale(const Study& study,
                               int projector,
                               int format,
                               const light::LuminanceMap& map) {
    LuminanceScale scale;
    take_window(study, projector, scale);
    Range range;
    range.hold(scale.window_least_cdm2.value_or(0.0));
    range.hold(scale.window_most_cdm2.value_or(0.0));
    const light::MapRange own = light::range_of(map);
    range.hold(own.least_cdm2);
    range.hold(own.most_cdm2);
    if (const auto index = picture_index(study, projector, format))
        hold_seats(study.light.lights.at(*index), range);
    if (range.most == 0.0) return scale;  // no light anywhere: any scale will do
    widen(range);
    scale.least_cdm2 = range.least;
    scale.most_cdm2 = range.most;
    return scale;
}

std::optional<SeatLuminance> seat_luminance(const Study& study,
                                            int projector,
                                            int format,
                                            int seat) {
    const auto index = picture_index(study, projector, format);
    if (!index) return std::nullopt;
    SeatLuminance out{.projector = projector, .format = format, .seat = seat};
    out.map =
        light::map_picture(light_slice(study).input, study.picture, study.picture.pictures[*index],
                           study.seats.seats.at(static_cast<std::size_t>(seat)).eye);
    out.scale = luminance_scale(study, projector, format, out.map);
    return out;
}

}  // namespace rakeline::study
