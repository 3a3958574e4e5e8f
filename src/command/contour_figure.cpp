// SPDX-License-Identifier: MIT
#include "command/contour_figure.hpp"

#include "base/nearest_name.hpp"

#include <algorithm>

namespace rakeline::command {
namespace {

base::Problem problem(const std::string& what, const std::string& mend) {
    return {.file = {}, .line = 0, .where = "--contours", .what = what, .mend = mend};
}

std::vector<std::string> seat_figure_ids() {
    std::vector<std::string> ids;
    for (const study::FigureDefinition& d : study::figure_register())
        if (d.axis() == study::Axis::seat) ids.emplace_back(d.id);
    return ids;
}

}  // namespace

base::Result<const study::Figure*> contour_figure(const study::Study& study,
                                                  const std::string& id,
                                                  const std::string& view,
                                                  const drawing::DrawingChoice& choice) {
    if (id.empty()) return nullptr;
    if (view != "plan") return problem("contours are drawn on the plan alone", "add --view plan");
    const std::vector<std::string> ids = seat_figure_ids();
    if (std::find(ids.begin(), ids.end(), id) == ids.end()) {
        const std::string near = base::nearest_name(id, ids);
        return problem(
            "there is no figure of every seat '" + id + "'",
            near.empty() ? "'rakeline figures' lists them all" : "did you mean '" + near + "'?");
    }
    study::Place place;
    place.projector = choice.projector.value_or(0);
    place.format = choice.format.value_or(0);
    place.loudspeaker = choice.loudspeaker.value_or(0);
    place.band = choice.coverage_band;
    const study::Figure* figure = study::find_figure(study, id, place);
    if (!figure)
        return problem(id + " has no value here",
                       "name another --format, --projector, --loudspeaker or --band");
    return figure;
}

}  // namespace rakeline::command
