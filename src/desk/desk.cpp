// SPDX-License-Identifier: MIT
#include "desk/desk.hpp"

#include "base/number_text.hpp"
#include "desk/room_view.hpp"
#include "desk/session.hpp"
#include "desk/window.hpp"

#include <cmath>
#include <cstdlib>
#include <string_view>

namespace rakeline::desk {
namespace {

struct Size {
    int width, height;
};

/// WINDOW_SIZE=WxH in the environment goes before what the options say.
Size first_size(const DeskOptions& options) {
    const char* text = std::getenv("WINDOW_SIZE");
    const std::string_view wish = text ? text : "";
    const std::size_t by = wish.find('x');
    if (by == std::string_view::npos) return {options.width, options.height};
    const auto width = base::parse_number(wish.substr(0, by));
    const auto height = base::parse_number(wish.substr(by + 1));
    if (!width || !height || *width < 100 || *height < 100) return {options.width, options.height};
    return {static_cast<int>(*width), static_cast<int>(*height)};
}

/// Keeps theme and fonts as the display and the settings want them.
void follow_display(Window& window, const Settings& settings, Theme& theme) {
    const float scale = window.scale(settings.text_scale);
    const bool rescaled = !theme.font.body || std::abs(scale - theme.scale) > 0.01f;
    if (!rescaled && theme.paper == settings.paper) return;
    theme.paper = settings.paper;
    theme.colour = settings.paper ? paper_palette() : dark_palette();
    theme.scale = scale;
    if (rescaled) theme.font = window.load_fonts(scale);
    apply_theme(theme);
}

void stay(Window& window, Session& session, int frames) {
    RoomView view;
    Theme theme;
    for (int frame = 0; !session.wants_to_quit() && (frames == 0 || frame < frames); ++frame) {
        window.wait_for_events(frames != 0);
        if (window.close_asked()) session.ask_to_quit();
        for (const std::string& path : window.dropped_files())
            session.drop_file(path);
        for (const KeyPress& key : window.pressed_keys())
            session.press_key(key);
        follow_display(window, session.workspace().settings, theme);
        session.take_study();
        view.set_room(session.finished(), session.workspace());
        window.begin_frame();
        session.frame(theme, &view, window.raster_scale());
        window.end_frame();
        window.set_title(session.window_title());
    }
}

}  // namespace

int run(const DeskOptions& options) {
    constexpr int kNoDisplay = 3;
    const Size size = first_size(options);
    const auto window = Window::open(size.width, size.height, "Rakeline");
    if (!window) return kNoDisplay;
    Session session({.layout_path = options.layout_path,
                     .program_version = options.program_version,
                     .settings = load_settings(),
                     .wake = Window::wake});
    stay(*window, session, options.frames);
    return 0;
}

}  // namespace rakeline::desk
