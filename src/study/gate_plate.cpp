// SPDX-License-Identifier: MIT
#include "study/gate_plate.hpp"

namespace rakeline::study {
namespace {

base::Problem refusal(std::string what, std::string mend) {
    return {.file = {}, .line = 0, .where = {}, .what = std::move(what), .mend = std::move(mend)};
}

base::Problem no_picture(const Study& study, int projector, int format) {
    const auto& layout = study.layout();
    const std::string& machine = layout.projectors.at(static_cast<std::size_t>(projector)).name;
    const std::string& shown = layout.formats.at(static_cast<std::size_t>(format)).name;
    for (const picture::NoPicture& none : study.picture.none) {
        if (none.projector == projector && none.format == format) {
            return refusal("'" + machine + "' makes no picture in '" + shown + "': " + none.why,
                           none.mend);
        }
    }
    return refusal("'" + machine + "' does not show '" + shown + "'",
                   "choose a format that is among the projector's own");
}

}  // namespace

base::Result<picture::Plate> gate_plate(const Study& study,
                                        int projector,
                                        int format,
                                        const PlateWish& wish) {
    const auto* shown = picture::find_picture(study.picture, projector, format);
    if (!shown) return no_picture(study, projector, format);
    const bool as_the_use_says = !wish.allowance_m && !wish.corner_radius_m;
    if (as_the_use_says && shown->plate) return *shown->plate;
    const room::Projector& machine =
        study.layout().projectors.at(static_cast<std::size_t>(projector));
    const room::FormatUse& use = machine.formats.at(static_cast<std::size_t>(shown->use));
    return picture::plate_outline(
        {.picture = *shown,
         .opening = study.picture.openings.at(static_cast<std::size_t>(format)),
         .kind = machine.kind,
         .corner_radius_m = wish.corner_radius_m.value_or(use.plate_corner_radius_m),
         .allowance_m = wish.allowance_m.value_or(use.plate_allowance_m)});
}

}  // namespace rakeline::study
