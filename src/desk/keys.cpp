// SPDX-License-Identifier: MIT
#include "desk/frame.hpp"
#include "desk/strip.hpp"

#include <GLFW/glfw3.h>

#include <algorithm>

namespace rakeline::desk {
namespace {

void take_command(const KeyPress& press, Workspace& w, Requests& out) {
    const auto ask = [&out](Action action) { out.actions.push_back(action); };
    float& scale = w.settings.text_scale;
    switch (press.key) {
        case GLFW_KEY_Z:
            ask(press.shift ? Action::redo : Action::undo);
            break;
        case GLFW_KEY_Y:
            ask(Action::redo);
            break;
        case GLFW_KEY_S:
            ask(press.shift ? Action::save_as : Action::save);
            break;
        case GLFW_KEY_O:
            ask(Action::open);
            break;
        case GLFW_KEY_Q:
            ask(Action::quit);
            break;
        case GLFW_KEY_EQUAL:
        case GLFW_KEY_KP_ADD:
            scale = std::min(scale + 0.1f, 1.6f);
            break;
        case GLFW_KEY_MINUS:
        case GLFW_KEY_KP_SUBTRACT:
            scale = std::max(scale - 0.1f, 0.8f);
            break;
        default:
            break;
    }
}

void let_go(Workspace& w) {
    if (w.floor.typed)
        w.floor.typed.reset();
    else if (w.keys_open || w.cautions_open)
        w.keys_open = w.cautions_open = false;
    else if (w.pinned)
        w.pinned.reset();
    else if (w.middle_open())
        w.close_middle();
    else if (w.from_seat)
        w.from_seat = false;
    else
        w.selected = {};
}

StripDrawing next_strip(const Workspace& w) {
    const auto strips = offered_strips(w);
    const auto on = std::find(strips.begin(), strips.end(), w.strip);
    return on == strips.end() || on + 1 == strips.end() ? strips.front() : *(on + 1);
}

void take_letter(int key, Workspace& w, Requests& out) {
    switch (key) {
        case GLFW_KEY_F:
            out.actions.push_back(Action::fit_view);
            break;
        case GLFW_KEY_B:
            w.show_beams = !w.show_beams;
            break;
        case GLFW_KEY_P:
            w.strip = next_strip(w);
            w.look = {};
            break;
        case GLFW_KEY_E:
            w.from_seat = !w.from_seat;
            if (w.from_seat) w.step = SeatStep::here;
            break;
        case GLFW_KEY_LEFT:
            w.step = SeatStep::left;
            break;
        case GLFW_KEY_RIGHT:
            w.step = SeatStep::right;
            break;
        case GLFW_KEY_UP:
            w.step = SeatStep::front;
            break;
        case GLFW_KEY_DOWN:
            w.step = SeatStep::behind;
            break;
        case GLFW_KEY_ESCAPE:
            let_go(w);
            break;
        default:
            break;
    }
    if (key >= GLFW_KEY_1 && key <= GLFW_KEY_5) w.subject = study::kSubjects[key - GLFW_KEY_1];
}

}  // namespace

void take_keys(const std::vector<KeyPress>& keys, Workspace& w, Requests& out) {
    const ImGuiIO& io = ImGui::GetIO();
    if (io.WantTextInput || ImGui::IsPopupOpen("", ImGuiPopupFlags_AnyPopupId)) return;
    // In a slow frame the click that opens a number field and the first digits typed into it come
    // together: then a digit is no shortcut.
    const bool hand_busy = io.MouseDown[0] || io.MouseReleased[0];
    for (const KeyPress& press : keys) {
        if (w.floor.drag)  // Ctrl and Shift are the drag's own
            w.floor.cancelled = w.floor.cancelled || press.key == GLFW_KEY_ESCAPE;
        else if (press.command)
            take_command(press, w, out);
        else if (!hand_busy)
            take_letter(press.key, w, out);
    }
    // By the letter, not the key: where it stands differs by keyboard.
    const auto& typed = io.InputQueueCharacters;
    if (std::find(typed.begin(), typed.end(), static_cast<ImWchar>('?')) != typed.end())
        w.keys_open = !w.keys_open;
}

}  // namespace rakeline::desk
