// SPDX-License-Identifier: MIT
#include "desk/document.hpp"

#include "desk/file_browser.hpp"
#include "room/layout_file.hpp"
#include "study/study.hpp"

namespace rakeline::desk {

Document::Document() : Document({}, new_room()) {}

Document::Document(std::string path, room::Brief brief)
    : path_(std::move(path)), history_(std::make_shared<const room::Brief>(std::move(brief))) {
    check();
}

void Document::edit(std::string label,
                    const room::Layout& layout,
                    std::string_view gesture,
                    const base::ReadText& read) {
    room::Brief brief{layout, current()->limits};
    if (layout.limits_file != current()->layout.limits_file) {
        limits_problems_.clear();
        auto limits = room::open_limits(layout, path_, read);
        if (limits)
            brief.limits = *limits;
        else
            limits_problems_ = limits.problems();
    }
    history_.push(std::move(label), std::move(brief), gesture);
    check();
}

void Document::end_gesture() {
    history_.end_gesture();
    check();
}

void Document::undo() {
    history_.undo();
    limits_problems_.clear();
    check();
}

void Document::redo() {
    history_.redo();
    limits_problems_.clear();
    check();
}

void Document::check() {
    problems_ = room::check_layout(current()->layout);
}

base::Problems Document::save(const std::string& path) {
    // A file that could not be opened again would be worse than none.
    if (!problems_.empty()) return problems_;
    room::Layout layout = current()->layout;
    layout.limits_file = limits_seen_from(path);
    if (layout.limits_file != current()->layout.limits_file)
        history_.push("Save elsewhere", {layout, current()->limits});
    auto problems = base::write_file(path, room::write_layout(current()->layout));
    if (!problems.empty()) return problems;
    path_ = path;
    recovered_ = false;
    history_.mark_saved();
    return {};
}

namespace {

/// The limits that a new room is held against: the theatre practice that comes with the program,
/// wherever it lies. Not found, the room has none, and its limits field says what was looked for.
void hold_to_practice(room::Brief& brief) {
    const std::string folder = layouts_folder();
    if (folder.empty()) return;
    brief.layout.limits_file = folder + "/practice/theatre.json";
    auto limits = room::open_limits(brief.layout, {}, base::read_text_file);
    if (limits) brief.limits = *limits;
}

}  // namespace

room::Brief new_room() {
    room::Brief brief;
    room::Layout& layout = brief.layout;
    layout.formats.resize(2);
    layout.formats[0].name = "1.85";
    layout.formats[0].aspect_ratio = 1.85;
    room::Projector projector;
    projector.name = "Digital";
    projector.flux.shutter_fraction = 1.0;
    projector.formats.resize(2);
    projector.formats[0].format = "1.85";
    projector.formats[0].pixels_wide = 1998;
    projector.formats[0].pixels_high = 1080;
    layout.projectors = {projector};
    layout.seating = {room::SeatBlock{}};
    layout.loudspeakers.resize(1);
    layout.loudspeakers[0].name = "Centre";
    brief.limits.name = "none";
    hold_to_practice(brief);
    return brief;
}

/// The limits file as the new place of the layout sees it.
std::string Document::limits_seen_from(const std::string& path) const {
    const std::string& named = current()->layout.limits_file;
    return path_.empty() ? named : base::path_seen_from(path_, named, path);
}

base::Result<Document> recover_document(const std::string& copy, const std::string& original) {
    const auto text = base::read_text_file(copy);
    if (!text) return text.problems();
    const auto layout = room::read_layout(*text, copy);
    if (!layout) return layout.problems();
    const auto limits = room::open_limits(*layout, original, base::read_text_file);
    if (!limits) return limits.problems();
    Document document(original, {*layout, *limits});
    document.recovered_ = true;
    return document;
}

base::Result<Document> open_document(const std::string& path) {
    auto brief = study::open_room(path, base::read_text_file);
    if (!brief) return brief.problems();
    return Document(path, std::move(*brief));
}

}  // namespace rakeline::desk
