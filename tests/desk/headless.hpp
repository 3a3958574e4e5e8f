// SPDX-License-Identifier: MIT
#pragma once

#include "desk/session.hpp"
#include "desk/theme.hpp"

#include <imgui.h>

#include <string>

/// A toolkit context without window and graphics, and a session in it: panels run frame by frame
/// on fed mouse positions.
namespace rakeline::desk {

class Headless {
public:
    Headless() {
        ImGui::CreateContext();
        ImGuiIO& io = ImGui::GetIO();
        io.IniFilename = nullptr;
        io.DisplaySize = {1280.0f, 720.0f};
        io.DeltaTime = 1.0f / 60.0f;
        theme.colour = dark_palette();
        theme.font = build_fonts(1.0f);
        unsigned char* pixels = nullptr;
        int width = 0, height = 0;
        io.Fonts->GetTexDataAsAlpha8(&pixels, &width, &height);
        apply_theme(theme);
    }
    ~Headless() { ImGui::DestroyContext(); }
    Headless(const Headless&) = delete;
    Headless& operator=(const Headless&) = delete;

    void mouse(float x, float y, bool down = false) {
        ImGui::GetIO().MousePos = {x, y};
        ImGui::GetIO().MouseDown[0] = down;
    }
    void frame(Session& session) {
        ImGui::NewFrame();
        session.frame(theme, nullptr, 1.0f);
        ImGui::Render();
    }

    Theme theme;
};

inline std::string demo(const std::string& name) {
    return std::string(RAKELINE_SOURCE_DIR) + "/layouts/" + name + ".json";
}

inline SessionOptions quiet_options(const std::string& path) {
    return {.layout_path = path,
            .program_version = "test",
            .settings = {},
            .wake = {},
            .keep_files = false};
}

}  // namespace rakeline::desk
