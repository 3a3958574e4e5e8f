// SPDX-License-Identifier: MIT
#include "desk/luminance_choice.hpp"

#include "drawing/luminance_shading.hpp"

namespace rakeline::desk {

std::optional<int> luminance_seat(const study::Study& study, const Workspace& w) {
    if (w.selected.kind == drawing::Shows::Kind::seat) return w.selected.index;
    return study.reference_seat;
}

const LuminanceCache& screen_luminance(const PanelInput& in, Workspace& w) {
    const auto seat = luminance_seat(*in.study, w);
    const LuminanceCache::Key key{in.study_serial, w.projector, w.format, seat.value_or(-1),
                                  in.units()};
    LuminanceCache& cache = w.luminance_cache;
    if (cache.key == key) return cache;
    cache = {.key = key, .screen = nullptr, .scale = {}};
    if (!seat) return cache;
    const auto seen = study::seat_luminance(*in.study, w.projector, w.format, *seat);
    if (!seen) return cache;
    cache.screen = std::make_shared<const drawing::ScreenLuminance>(
        drawing::screen_luminance(*in.study, *seen, in.units()));
    cache.scale = drawing::luminance_scale_drawing(seen->scale, kScaleWidth_lines, in.units());
    return cache;
}

}  // namespace rakeline::desk
