// SPDX-License-Identifier: MIT
#include "desk/width_choice.hpp"

#include "study/width_words.hpp"

namespace rakeline::desk {

const WidthCache& picture_widths(const PanelInput& in, Workspace& w) {
    WidthCache& cache = w.widths;
    const WidthCache::Key key{in.study_serial, w.format, w.width_share, in.units()};
    if (cache.key == key) return cache;
    cache = {};
    cache.key = key;
    auto advice = study::width_advice(*in.study, w.format, w.width_share);
    if (!advice) {
        cache.refused = advice.problems();
        return cache;
    }
    cache.words = {study::width_verdict(*in.study, *advice, in.units())};
    for (std::string& reason : study::width_reasons(*in.study, *advice, in.units()))
        cache.words.push_back(std::move(reason));
    cache.words.push_back(study::width_scope(*in.study, in.units()));
    cache.advice = std::move(*advice);
    return cache;
}

base::Result<Edit> width_edit(const PanelInput& in, int format, double width_m) {
    auto layout = study::with_picture_width(in.brief.layout, format, width_m);
    if (!layout) return layout.problems();
    return Edit{"Picture width " + base::quantity_text(width_m, base::Unit::metre, in.units(), 1),
                std::move(*layout),
                {}};
}

}  // namespace rakeline::desk
