// SPDX-License-Identifier: MIT
#include "desk/dialogs.hpp"

#include "desk/widgets/controls.hpp"
#include "desk/widgets/text.hpp"

#include <imgui_stdlib.h>

#include <algorithm>
#include <filesystem>
#include <utility>

namespace rakeline::desk {
namespace {

constexpr ImGuiWindowFlags kModal = ImGuiWindowFlags_NoTitleBar | ImGuiWindowFlags_NoResize |
                                    ImGuiWindowFlags_NoMove | ImGuiWindowFlags_NoSavedSettings;

/// A centred window over a dimmed room. ImGui::EndPopup() must follow when it returns true.
bool begin_modal(const Theme& t, const char* id, ImVec2 size) {
    if (!ImGui::IsPopupOpen(id)) ImGui::OpenPopup(id);
    const ImVec2 display = ImGui::GetIO().DisplaySize;
    size.x = std::min(size.x, display.x - t.px(32));
    size.y = std::min(size.y, display.y - t.px(32));
    ImGui::SetNextWindowPos({display.x / 2.0f, display.y / 2.0f}, ImGuiCond_Always, {0.5f, 0.5f});
    ImGui::SetNextWindowSize(size);
    ImGui::PushStyleColor(ImGuiCol_PopupBg, t.colour.panel);
    const bool begun = ImGui::BeginPopupModal(
        id, nullptr,
        kModal | (size.y <= 0.0f ? ImGuiWindowFlags_AlwaysAutoResize : ImGuiWindowFlags_None));
    ImGui::PopStyleColor();
    return begun;
}

/// Return presses the button that the eye finds first, wherever the focus is.
bool entered() {
    return ImGui::IsKeyPressed(ImGui::GetKeyIndex(ImGuiKey_Enter), false) ||
           ImGui::IsKeyPressed(ImGui::GetKeyIndex(ImGuiKey_KeyPadEnter), false);
}

bool first_button(const Theme& t, const std::string& words, float width) {
    const bool pressed = lamp_button(t, words, width);
    return pressed || entered();
}

void go_to_folder(FileDialog& d, const std::string& folder) {
    d.folder = folder;
    d.listing = list_folder(folder, d.ending);
}

/// A row of the list; true when pressed.
bool row(const Theme& t, const std::string& name, bool folder, bool chosen) {
    const ImVec2 at = ImGui::GetCursorScreenPos();
    const float width = ImGui::GetContentRegionAvail().x;
    const bool pressed = ImGui::InvisibleButton(name.c_str(), {std::max(width, 1.0f), t.px(30)});
    ImDrawList& list = *ImGui::GetWindowDrawList();
    if (chosen || ImGui::IsItemHovered())
        list.AddRectFilled(at, {at.x + width, at.y + t.px(30)},
                           packed(chosen ? t.colour.line : t.colour.raised), t.px(6));
    paint_text(list, t.font.small, {at.x + t.px(10), at.y + t.px(8)}, t.colour.lamp,
               folder ? "›" : "");
    paint_text(list, t.font.body, {at.x + t.px(28), at.y + t.px(6)},
               folder ? t.colour.quiet : t.colour.text,
               fitted(t.font.body, name, width - t.px(36)));
    return pressed;
}

void draw_listing(const Theme& t, FileDialog& d, std::optional<std::string>& chosen) {
    if (!d.listing.error.empty())
        text_wrapped(t.font.body, t.colour.missed, "This folder can't be read: " + d.listing.error);
    std::string enter;
    for (const std::string& folder : d.listing.folders)
        if (row(t, folder, true, false)) enter = folder;
    for (const std::string& file : d.listing.files) {
        if (row(t, file, false, file == d.name)) d.name = file;
        if (ImGui::IsItemHovered() && ImGui::IsMouseDoubleClicked(ImGuiMouseButton_Left))
            chosen = d.folder + "/" + file;
    }
    if (d.listing.folders.empty() && d.listing.files.empty() && d.listing.error.empty())
        text_wrapped(t.font.body, t.colour.quiet, "Nothing here that ends in " + d.ending + ".");
    if (!enter.empty()) go_to_folder(d, typed_path(d.folder, enter));
}

void draw_recent(const Theme& t, const Settings& s, std::optional<std::string>& chosen) {
    group_heading(t, "Recent");
    if (s.recent.empty()) text_wrapped(t.font.small, t.colour.quiet, "None yet.");
    for (std::size_t i = 0; i < s.recent.size(); ++i) {
        ImGui::PushID(static_cast<int>(i));
        const std::filesystem::path path(s.recent[i]);
        if (row(t, path.filename().string(), false, false)) chosen = s.recent[i];
        hint(t, s.recent[i]);
        ImGui::PopID();
    }
}

void draw_path(const Theme& t, FileDialog& d) {
    if (word_button(t, "Up")) go_to_folder(d, folder_above(d.folder));
    ImGui::SameLine();
    const ImVec2 at = ImGui::GetCursorScreenPos();
    const float room = ImGui::GetContentRegionAvail().x;
    paint_text(*ImGui::GetWindowDrawList(), t.font.small, {at.x, at.y + t.px(7)}, t.colour.quiet,
               fitted(t.font.small, d.folder, room));
    ImGui::Dummy({std::max(room, 1.0f), t.px(28)});
}

/// The typed name and the two buttons.
std::optional<std::string> draw_foot(const Theme& t, FileDialog& d) {
    const float buttons = t.px(210);
    ImGui::SetNextItemWidth(ImGui::GetContentRegionAvail().x - buttons - t.px(8));
    if (std::exchange(d.take_focus, false)) ImGui::SetKeyboardFocusHere();
    ImGui::InputTextWithHint("##name", d.saving ? "file name" : "file, or a path", &d.name);
    ImGui::SameLine();
    const bool agreed = first_button(t, d.saving ? "Save" : "Open", t.px(100));
    ImGui::SameLine();
    if (word_button(t, "Cancel", t.px(94)) ||
        ImGui::IsKeyPressed(ImGui::GetKeyIndex(ImGuiKey_Escape), false))
        d.open = false;
    if (!agreed || d.name.empty()) return {};
    const std::string path = typed_path(d.folder, d.name);
    std::error_code failed;
    if (std::filesystem::is_directory(path, failed)) {
        go_to_folder(d, path);
        d.name.clear();
        return {};
    }
    return d.saving ? with_ending(path, d.ending) : path;
}

/// Saving over a file that is there asks first.
std::optional<std::string> ask_overwrite(const Theme& t, FileDialog& d) {
    const std::string name = std::filesystem::path(d.overwrite).filename().string();
    text_wrapped(t.font.body, t.colour.text,
                 name + " is there already. Saving replaces what it holds.");
    ImGui::Dummy({0.0f, t.px(8)});
    if (first_button(t, "Replace it", t.px(120))) return d.overwrite;
    ImGui::SameLine();
    if (word_button(t, "Choose another", t.px(150))) d.overwrite.clear();
    return {};
}

}  // namespace

void open_file_dialog(FileDialog& d,
                      Action purpose,
                      const std::string& folder,
                      const std::string& name) {
    d = {};
    d.open = true;
    d.purpose = purpose;
    d.saving = purpose != Action::open && purpose != Action::open_series;
    d.name = name;
    switch (purpose) {
        case Action::open_series:
            d.title = "Open a series of lenses or loudspeakers";
            d.ending = ".json";
            break;
        case Action::save_as:
            d.title = "Save the room as";
            d.ending = ".json";
            break;
        case Action::report_pdf:
            d.title = "Save the report";
            d.ending = ".pdf";
            break;
        case Action::seat_csv:
            d.title = "Save the seat table";
            d.ending = ".csv";
            break;
        case Action::section_png:
        case Action::plan_png:
            d.title = "Save the drawing";
            d.ending = ".png";
            break;
        default:
            d.title = "Open a room";
            d.ending = ".json";
            break;
    }
    go_to_folder(d, readable_folder(folder));
}

std::optional<std::string> draw_file_dialog(const Theme& t, const Settings& s, FileDialog& d) {
    if (!d.open) return {};
    std::optional<std::string> chosen;
    if (!begin_modal(t, "##files", {t.px(860), t.px(560)})) return {};
    text_line(t.font.title, t.colour.text, d.title);
    if (!d.overwrite.empty()) {
        chosen = ask_overwrite(t, d);
    } else {
        draw_path(t, d);
        const float foot = t.px(44);
        const float side = t.px(260);
        if (d.purpose == Action::open) {
            ImGui::BeginChild("recent", {side, -foot});
            draw_recent(t, s, chosen);
            ImGui::EndChild();
            ImGui::SameLine(0.0f, t.px(18));
        }
        ImGui::BeginChild("files", {0.0f, -foot});
        draw_listing(t, d, chosen);
        ImGui::EndChild();
        if (const auto typed = draw_foot(t, d)) chosen = typed;
        if (chosen && d.saving && std::filesystem::exists(*chosen)) {
            d.overwrite = *chosen;
            chosen.reset();
        }
    }
    if (chosen) d.open = false;
    if (!d.open) ImGui::CloseCurrentPopup();
    ImGui::EndPopup();
    return chosen;
}

Answer draw_question(const Theme& t, const Question& q) {
    Answer answer = Answer::none;
    if (!begin_modal(t, "##question", {t.px(520), 0.0f})) return answer;
    text_line(t.font.title, t.colour.text, q.title);
    text_wrapped(t.font.body, t.colour.quiet, q.text);
    ImGui::Dummy({0.0f, t.px(8)});
    if (first_button(t, q.yes, t.px(130))) answer = Answer::yes;
    if (!q.other.empty()) {
        ImGui::SameLine();
        if (word_button(t, q.other, t.px(130))) answer = Answer::other;
    }
    if (!q.stay.empty()) {
        ImGui::SameLine();
        if (word_button(t, q.stay, t.px(130)) ||
            ImGui::IsKeyPressed(ImGui::GetKeyIndex(ImGuiKey_Escape), false))
            answer = Answer::stay;
    }
    if (answer != Answer::none) ImGui::CloseCurrentPopup();
    ImGui::EndPopup();
    return answer;
}

bool draw_problem_list(const Theme& t, const std::string& title, const base::Problems& problems) {
    bool open = true;
    if (!begin_modal(t, "##problems", {t.px(760), t.px(460)})) return open;
    text_line(t.font.title, t.colour.text, title);
    ImGui::BeginChild("list", {0.0f, -t.px(44)});
    for (const base::Problem& p : problems) {
        std::string where = p.file;
        if (p.line > 0) where += ":" + std::to_string(p.line);
        if (!p.where.empty()) where += (where.empty() ? "" : "  ") + p.where;
        text_wrapped(t.font.small, t.colour.quiet, where);
        text_wrapped(t.font.body, t.colour.text, p.what);
        if (!p.mend.empty()) text_wrapped(t.font.small, t.colour.lamp, p.mend);
        hairline(t);
    }
    ImGui::EndChild();
    if (first_button(t, "Close", t.px(110)) ||
        ImGui::IsKeyPressed(ImGui::GetKeyIndex(ImGuiKey_Escape), false))
        open = false;
    if (!open) ImGui::CloseCurrentPopup();
    ImGui::EndPopup();
    return open;
}

}  // namespace rakeline::desk
