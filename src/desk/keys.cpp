// SPDX-License-Identifier: MIT
#include "desk/frame.hpp"

#include <GLFW/glfw3.h>

#include <algorithm>

namespace rakeline::desk {
namespace {

bool pressed(int key) {
    return ImGui::IsKeyPressed(key, false);
}

void take_commands(Workspace& w, Requests& out) {
    const ImGuiIO& io = ImGui::GetIO();
    if (pressed(GLFW_KEY_Z)) out.actions.push_back(io.KeyShift ? Action::redo : Action::undo);
    if (pressed(GLFW_KEY_Y)) out.actions.push_back(Action::redo);
    if (pressed(GLFW_KEY_S)) out.actions.push_back(io.KeyShift ? Action::save_as : Action::save);
    if (pressed(GLFW_KEY_O)) out.actions.push_back(Action::open);
    if (pressed(GLFW_KEY_Q)) out.actions.push_back(Action::quit);
    float& scale = w.settings.text_scale;
    if (pressed(GLFW_KEY_EQUAL) || pressed(GLFW_KEY_KP_ADD)) scale = std::min(scale + 0.1f, 1.6f);
    if (pressed(GLFW_KEY_MINUS) || pressed(GLFW_KEY_KP_SUBTRACT))
        scale = std::max(scale - 0.1f, 0.8f);
}

void let_go(Workspace& w) {
    if (w.keys_open || w.cautions_open)
        w.keys_open = w.cautions_open = false;
    else if (w.pinned)
        w.pinned.reset();
    else
        w.selected = {};
}

void take_letters(Workspace& w, Requests& out) {
    for (int i = 0; i < 5; ++i)
        if (pressed(GLFW_KEY_1 + i)) w.subject = study::kSubjects[i];
    if (pressed(GLFW_KEY_F)) out.actions.push_back(Action::fit_view);
    if (pressed(GLFW_KEY_B)) w.show_beams = !w.show_beams;
    if (pressed(GLFW_KEY_P)) {
        w.strip = w.strip == StripDrawing::section ? StripDrawing::plan : StripDrawing::section;
        w.look = {};
    }
    if (pressed(GLFW_KEY_ESCAPE)) let_go(w);
    const auto& typed = ImGui::GetIO().InputQueueCharacters;
    if (std::find(typed.begin(), typed.end(), static_cast<ImWchar>('?')) != typed.end())
        w.keys_open = !w.keys_open;
}

}  // namespace

void take_keys(Workspace& w, Requests& out) {
    const ImGuiIO& io = ImGui::GetIO();
    if (io.WantTextInput || ImGui::IsPopupOpen("", ImGuiPopupFlags_AnyPopupId)) return;
    if (io.KeyCtrl || io.KeySuper)
        take_commands(w, out);
    else
        take_letters(w, out);
}

}  // namespace rakeline::desk
