// SPDX-License-Identifier: MIT
#include "desk/frame.hpp"
#include "headless.hpp"

#include <GLFW/glfw3.h>
#include <doctest/doctest.h>

namespace rakeline::desk {
namespace {

/// What one frame makes of key presses, with the mouse button up or down.
struct Keys {
    Headless headless;
    Workspace workspace;
    Requests requests;

    void press(int key, bool command, bool mouse_down) {
        headless.mouse(600.0f, 400.0f, mouse_down);
        ImGui::NewFrame();
        take_keys({{.key = key, .command = command}}, workspace, requests);
        ImGui::Render();
    }
};

}  // namespace

TEST_SUITE("desk/keys") {
    TEST_CASE("a digit opens its subject") {
        Keys keys;
        keys.press(GLFW_KEY_4, false, false);
        CHECK(keys.workspace.subject == study::Subject::sight);
    }

    TEST_CASE("a digit that comes with a click is none, nor with its release; commands stay") {
        Keys keys;
        keys.workspace.subject = study::Subject::light;
        keys.press(GLFW_KEY_4, false, true);
        CHECK(keys.workspace.subject == study::Subject::light);
        keys.press(GLFW_KEY_4, false, false);  // the button comes up in this frame
        CHECK(keys.workspace.subject == study::Subject::light);
        keys.press(GLFW_KEY_S, true, true);
        CHECK(keys.requests.actions == std::vector<Action>{Action::save});
        keys.press(GLFW_KEY_4, false, false);
        keys.press(GLFW_KEY_4, false, false);
        CHECK(keys.workspace.subject == study::Subject::sight);
    }
}

}  // namespace rakeline::desk
