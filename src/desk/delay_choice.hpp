// SPDX-License-Identifier: MIT
#pragma once

#include "desk/panel_input.hpp"

/// The suggested delays of the loudspeakers, put into the layout.
namespace rakeline::desk {

/// One edit that sets every loudspeaker's delay as the study suggests. Nothing while the study is
/// behind the layout, where it suggests none, and where all are set so already.
std::optional<Edit> delay_edit(const PanelInput& in);

/// What the button would do, or why it does nothing.
std::string delay_words(const PanelInput& in);

}  // namespace rakeline::desk
