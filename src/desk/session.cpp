// SPDX-License-Identifier: MIT
#include "desk/session.hpp"

#include "desk/figure_view.hpp"
#include "desk/frame.hpp"

#include <filesystem>
#include <utility>

namespace rakeline::desk {

Session::Session(SessionOptions options)
    : options_(std::move(options)),
      worker_(options_.wake),
      rake_(solve_rake, options_.wake),
      curves_(try_curves, options_.wake),
      sheets_(try_sheets, options_.wake) {
    workspace_.settings = options_.settings;
    if (options_.keep_files) recovery_ = find_recovery();
    post();
    if (!options_.layout_path.empty())
        open(options_.layout_path);
    else
        open_file_dialog(files_, Action::open, folder(), {});
}

Session::~Session() {
    if (!options_.keep_files) return;
    (void)save_settings(workspace_.settings);
    if (quit_) drop_recovery();
}

void Session::take_study() {
    constexpr std::chrono::duration<double> kPatience{0.006};
    if (finished_.took_s < 2.0 * kPatience.count() && worker_.busy())
        worker_.wait_until_idle(kPatience);
    finished_ = worker_.newest();
    raked_ = rake_.newest();
    curved_ = curves_.newest();
    sheeted_ = sheets_.newest();
    if (finished_.study) clamp_choices(workspace_, *finished_.study);
}

void Session::wait_for_study() {
    worker_.wait_until_idle();
    take_study();
}

/// For whom triangles are made behind the window.
std::optional<RoomLook> Session::look() const {
    if (!pictured_) return std::nullopt;
    return RoomLook{workspace_.projector, workspace_.format};
}

void Session::post() {
    if (!document_.problems().empty()) return;
    worker_.post(document_.current(), look());
    // Of the study that this one overtakes.
    rake_.cancel();
    curves_.cancel();
    sheets_.cancel();
}

/// What panels want worked out of the study that they have, unless that is about to be overtaken.
void Session::ask_behind(const Requests& requests) {
    if (!finished_.study) return;
    const bool current = finished_.study->brief == document_.current();
    if (!current && document_.problems().empty()) return;
    if (requests.rake) rake_.ask({finished_.study, requests.rake->block, requests.rake->options});
    if (requests.sheets) sheets_.ask({finished_.study, workspace_.sheets});
    if (requests.curves) curves_.ask({finished_.study, workspace_.projector, workspace_.format});
}

PanelInput Session::panel_input(const Theme& theme,
                                RoomPictures* pictures,
                                float raster_scale) const {
    PanelInput in{.brief = *document_.current(),
                  .study = finished_.study.get(),
                  .study_serial = finished_.serial,
                  .problems = document_.problems().empty() ? document_.limits_problems()
                                                           : document_.problems(),
                  .history = document_.history(),
                  .theme = theme,
                  .title = {}};
    in.current = finished_.study && finished_.study->brief == document_.current();
    in.following = &following_;
    in.rake = raked_.answer.get();
    in.curves = curved_;
    in.sheets = sheeted_;
    const std::string& path = document_.path();
    in.title = path.empty() ? "not saved yet" : std::filesystem::path(path).filename().string();
    in.edited = document_.edited();
    in.studying = worker_.busy();
    in.sampling = worker_.sampling();
    in.studied_s = finished_.took_s;
    in.pictures = pictures;
    in.raster_scale = raster_scale;
    in.units_ = workspace_.settings.units;
    return in;
}

void Session::frame(const Theme& theme, RoomPictures* pictures, float raster_scale) {
    Requests requests;
    pictured_ = pictures != nullptr;
    following_ = theme;
    following_.colour = following_palette(theme.colour);
    take_keys(std::exchange(keys_, {}), workspace_, requests);
    draw_frame(panel_input(theme, pictures, raster_scale), workspace_, requests);
    ImGui::PushFont(theme.font.body);
    draw_dialogs(theme);
    ImGui::PopFont();
    take(requests);
    keep_recovery();
}

void Session::take(Requests& requests) {
    if (requests.edit) edit(*requests.edit);
    if (requests.end_gesture) {
        document_.end_gesture();
        post();
    }
    ask_behind(requests);
    for (const Action action : requests.actions)
        act(action);
}

void Session::edit(const Edit& made) {
    const BriefPtr before = document_.current();
    document_.edit(made.label, made.layout, made.gesture, base::read_text_file);
    if (document_.current() == before) return;
    workspace_.notice.clear();
    post();
}

void Session::act(Action action) {
    switch (action) {
        case Action::new_room:
            leave_document({Pending::Kind::new_room, {}});
            break;
        case Action::open:
            open_file_dialog(files_, action, folder(), {});
            break;
        case Action::save:
            save();
            break;
        case Action::save_as:
            open_file_dialog(files_, action, folder(), suggested_name(".json"));
            break;
        case Action::undo:
        case Action::redo:
            action == Action::undo ? document_.undo() : document_.redo();
            post();
            break;
        case Action::report_pdf:
            open_file_dialog(files_, action, folder(), suggested_name(".pdf"));
            break;
        case Action::seat_csv:
            open_file_dialog(files_, action, folder(), suggested_name(" seats.csv"));
            break;
        case Action::section_png:
            open_file_dialog(files_, action, folder(), suggested_name(" section.png"));
            break;
        case Action::plan_png:
            open_file_dialog(files_, action, folder(), suggested_name(" plan.png"));
            break;
        case Action::open_series:
            open_file_dialog(files_, action, series_folder(), {});
            break;
        case Action::fit_view:
            workspace_.hall_camera.fitted = false;
            break;
        case Action::quit:
            ask_to_quit();
            break;
    }
}

std::string Session::window_title() const {
    const std::string& path = document_.path();
    const std::string file =
        path.empty() ? "not saved yet" : std::filesystem::path(path).filename().string();
    return (document_.edited() ? "• " : "") + file + " · " + document_.current()->layout.name +
           " · Rakeline";
}

}  // namespace rakeline::desk
