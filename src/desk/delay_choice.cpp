// SPDX-License-Identifier: MIT
#include "desk/delay_choice.hpp"

#include "study/delay_advice.hpp"

namespace rakeline::desk {

std::optional<Edit> delay_edit(const PanelInput& in) {
    if (!in.current || !in.study) return std::nullopt;
    auto layout = study::with_suggested_delays(*in.study);
    if (!layout || *layout == in.brief.layout) return std::nullopt;
    return Edit{"Set delays", std::move(*layout), {}};
}

std::string delay_words(const PanelInput& in) {
    if (!in.current || !in.study) return "The study follows the layout: in a moment";
    const auto layout = study::with_suggested_delays(*in.study);
    if (!layout) return "There is no reference seat or no loudspeaker of the screen to set them by";
    if (*layout == in.brief.layout) return "Every loudspeaker has the delay that is suggested";
    return "Screen loudspeakers arrive together at the reference seat, the surrounds "
           "after them: every loudspeaker gets its suggested delay";
}

}  // namespace rakeline::desk
