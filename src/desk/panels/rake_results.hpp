// SPDX-License-Identifier: MIT
#pragma once

#include "desk/panel_input.hpp"
#include "desk/workspace.hpp"

namespace rakeline::desk {

/// What the solver found: verdict, what each restriction costs, the floor to build and the reverse
/// answers with their buttons. In quiet ink, with a word, while the question has moved on.
void draw_rake_answer(const PanelInput& in, Workspace& w, Requests& out);

/// The answer to what is asked now; null while it is being worked out.
const RakeAnswer* rake_answer(const PanelInput& in, const Workspace& w);

}  // namespace rakeline::desk
