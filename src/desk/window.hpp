// SPDX-License-Identifier: MIT
#pragma once

#include "desk/panel_input.hpp"
#include "desk/theme.hpp"

#include <functional>
#include <memory>
#include <string>
#include <vector>

/// The window on the display: GLFW, an OpenGL 3.3 core context, and the ImGui back ends.
namespace rakeline::desk {

class Window {
public:
    /// Nothing where no display or no context can be had; the reason goes to standard error.
    static std::unique_ptr<Window> open(int width, int height, const std::string& title);
    ~Window();
    Window(const Window&) = delete;
    Window& operator=(const Window&) = delete;

    /// Sleeps until something happens, or for half a second; returns at once for a few frames
    /// after each event, so that what it set off is drawn. `never` to run without sleeping.
    void wait_for_events(bool never);
    void begin_frame();
    void end_frame();

    bool close_asked();                        ///< since the last call
    std::vector<std::string> dropped_files();  ///< since the last call
    std::vector<KeyPress> pressed_keys();      ///< since the last call
    void set_title(const std::string& title);

    /// Units of the window for one at scale 1: the display's scale, the room that the window has,
    /// and the user's wish together.
    float scale(float wish) const;
    float raster_scale() const;  ///< display pixels per unit of the window
    /// Rebuilds the fonts for `scale` into the back end's texture.
    Fonts load_fonts(float scale);
    static void wake();  ///< from any thread

private:
    Window() = default;
    struct Handle;
    std::unique_ptr<Handle> handle_;
};

}  // namespace rakeline::desk
