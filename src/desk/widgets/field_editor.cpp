// SPDX-License-Identifier: MIT
#include "desk/widgets/field_editor.hpp"

#include "desk/editor_fields.hpp"
#include "desk/layout_edits.hpp"
#include "desk/widgets/controls.hpp"
#include "desk/widgets/number_field.hpp"
#include "desk/widgets/text.hpp"

#include <imgui_stdlib.h>

#include <algorithm>
#include <cmath>
#include <utility>

namespace rakeline::desk {
namespace {

constexpr float kRowHeight = 32.0f;

std::string joined(const std::string& path, const char* key) {
    return path.empty() ? std::string(key) : path + "." + key;
}

std::string lowered(std::string text) {
    if (!text.empty() && text[0] >= 'A' && text[0] <= 'Z' &&
        !(text.size() > 1 && (text[1] == ' ' || (text[1] >= 'A' && text[1] <= 'Z'))))
        text[0] = static_cast<char>(text[0] - 'A' + 'a');
    return text;
}

std::string spaced(std::string name) {
    std::replace(name.begin(), name.end(), '_', ' ');
    return name;
}

}  // namespace

FieldEditor::Inside::Inside(FieldEditor& e, const std::string& key, const std::string& pattern_key)
    : editor(e), path_size(e.path_.size()), pattern_size(e.pattern_.size()) {
    editor.path_ += key;
    editor.pattern_ += pattern_key;
    ++editor.depth_;
    ImGui::PushID(key.c_str());
}

FieldEditor::Inside::~Inside() {
    ImGui::PopID();
    --editor.depth_;
    editor.path_.resize(path_size);
    editor.pattern_.resize(pattern_size);
}

FieldEditor::FieldEditor(const PanelInput& in, Workspace& workspace)
    : in_(in), workspace_(workspace) {}

bool FieldEditor::shows(const char* key) const {
    const std::string pattern = joined(pattern_, key);
    return belongs(workspace_.subject, pattern) && applies(pattern, choices_);
}

std::string FieldEditor::fault_at(const std::string& path) const {
    for (const base::Problem& problem : in_.problems)
        if (problem.where == path)
            return problem.what + (problem.mend.empty() ? "" : "; ") + problem.mend;
    return {};
}

bool FieldEditor::begin_row(const room::Words& words, float share) {
    if (!shows(words.key)) return false;
    const Theme& t = in_.theme;
    const std::string fault = fault_at(joined(path_, words.key));
    const ImVec2 at = ImGui::GetCursorScreenPos();
    const float width = ImGui::GetContentRegionAvail().x;
    control_width_ = std::max(width * share, t.px(96));
    const float label_width = std::max(width - control_width_ - t.px(8), 1.0f);
    ImGui::PushID(words.key);
    ImGui::Dummy({label_width, t.px(kRowHeight - 4)});
    hint(t, words.help, fault);
    paint_text(*ImGui::GetWindowDrawList(), t.font.body, {at.x, at.y + t.px(5)},
               fault.empty() ? t.colour.quiet : t.colour.missed,
               fitted(t.font.body, fault.empty() ? words.label : std::string("✗ ") + words.label,
                      label_width));
    ImGui::SameLine(0.0f, t.px(8));
    return true;
}

void FieldEditor::end_row() {
    ImGui::PopID();
}

void FieldEditor::changed(const std::string& label, bool gesture) {
    change_ = Change{label, gesture ? path_ + label : std::string{}};
}

void FieldEditor::number_control(const room::Words& words,
                                 base::Unit unit,
                                 double least,
                                 double most,
                                 bool whole,
                                 double& value) {
    const NumberSpec spec{unit, least, most, whole};
    const NumberOutcome outcome = number_field(in_.theme, "value", spec, in_.units(),
                                               control_width_, workspace_.number, value);
    if (!ImGui::IsItemActive() && workspace_.number.widget == 0)
        hint(in_.theme, words.help,
             base::quantity_text(least, unit, in_.units()) + " to " +
                 base::quantity_text(most, unit, in_.units()));
    if (outcome.changed) changed("Change " + lowered(words.label), true);
    finished_ = finished_ || outcome.finished;
}

void FieldEditor::number(const room::NumberField& field, double& value) {
    if (!begin_row(field.words)) return;
    number_control(field.words, field.unit, field.least, field.most, false, value);
    end_row();
}

void FieldEditor::integer(const room::IntegerField& field, int& value) {
    if (!begin_row(field.words)) return;
    auto number = static_cast<double>(value);
    number_control(field.words, base::Unit::count, field.least, field.most, true, number);
    value = static_cast<int>(std::lround(number));
    end_row();
}

void FieldEditor::optional_number(const room::NumberField& field, std::optional<double>& value) {
    if (!begin_row(field.words)) return;
    bool given = value.has_value();
    if (tick(in_.theme, "given", given)) {
        // A value to begin from: the middle of the range as ratios go.
        value = given ? std::optional(std::sqrt(field.least * field.most)) : std::nullopt;
        changed((given ? "Set " : "Leave out ") + lowered(field.words.label));
    }
    hint(in_.theme, given ? "Untick to leave it out." : "Tick to give a value.");
    ImGui::SameLine(0.0f, in_.theme.px(8));
    control_width_ = std::max(control_width_ - in_.theme.px(26), in_.theme.px(40));
    if (value) {
        number_control(field.words, field.unit, field.least, field.most, false, *value);
    } else {
        ImGui::AlignTextToFramePadding();
        text_line(in_.theme.font.small, in_.theme.colour.quiet, "left out");
    }
    end_row();
}

void FieldEditor::flag(const room::Words& words, bool& value) {
    if (!begin_row(words, 0.2f)) return;
    if (tick(in_.theme, "flag", value)) changed("Change " + lowered(words.label));
    end_row();
}

void FieldEditor::choice(const room::ChoiceField& field, int& index) {
    choices_[joined(pattern_, field.words.key)] = index;
    if (!begin_row(field.words, 0.58f)) return;
    std::vector<std::string> names;
    for (const char* name : field.names)
        names.push_back(spaced(name));
    const int chosen = dropdown(in_.theme, "##choice", names, index, control_width_);
    if (chosen >= 0 && chosen != index) {
        index = chosen;
        changed("Change " + lowered(field.words.label));
    }
    end_row();
}

std::optional<std::vector<std::string>> FieldEditor::names_for(const char* key) const {
    const std::string pattern = joined(pattern_, key);
    std::vector<std::string> names;
    if (pattern == "projectors.*.formats.*.format") {
        for (const room::Format& format : in_.brief.layout.formats)
            names.push_back(format.name);
        return names;
    }
    if (pattern == "projectors.*.formats.*.lens") {
        names.emplace_back("");
        for (const room::Lens& lens : in_.brief.layout.lenses)
            names.push_back(lens.name);
        return names;
    }
    return {};
}

bool FieldEditor::one_of(const std::vector<std::string>& names, std::string& value) {
    std::vector<std::string> shown = names;
    for (std::string& name : shown)
        if (name.empty()) name = "as wanted";
    const auto found = std::find(names.begin(), names.end(), value);
    const int on = found == names.end() ? -1 : static_cast<int>(found - names.begin());
    const int chosen = dropdown(in_.theme, "##name", shown, on, control_width_);
    if (chosen < 0 || chosen == on) return false;
    value = names[static_cast<std::size_t>(chosen)];
    return true;
}

bool FieldEditor::typed(std::string& value) {
    const Theme& t = in_.theme;
    TextEdit& edit = workspace_.text;
    const unsigned widget = ImGui::GetID("##text");
    if (edit.widget != widget) {
        const ImVec2 at = ImGui::GetCursorScreenPos();
        const ImVec2 end{at.x + control_width_, at.y + t.px(kRowHeight - 4)};
        if (ImGui::InvisibleButton("##closed", {control_width_, end.y - at.y}))
            edit = {widget, value, true};
        if (ImGui::IsItemHovered()) ImGui::SetMouseCursor(ImGuiMouseCursor_TextInput);
        ImDrawList& list = *ImGui::GetWindowDrawList();
        list.AddRectFilled(
            at, end, packed(ImGui::IsItemHovered() ? t.colour.line : t.colour.raised), t.px(6));
        paint_text(list, t.font.body, {at.x + t.px(10), at.y + t.px(5)}, t.colour.text,
                   fitted(t.font.body, value, control_width_ - t.px(18)));
        return false;
    }
    ImGui::SetNextItemWidth(control_width_);
    if (edit.take_focus) ImGui::SetKeyboardFocusHere();
    const bool entered =
        ImGui::InputText("##text", &edit.text, ImGuiInputTextFlags_EnterReturnsTrue);
    const bool left = ImGui::IsItemDeactivated();
    if (std::exchange(edit.take_focus, false) || (!entered && !left)) return false;
    const std::string result = std::exchange(edit, {}).text;
    if (result == value) return false;
    value = result;
    return true;
}

void FieldEditor::text(const room::Words& words, std::string& value) {
    if (!begin_row(words, 0.66f)) return;
    const auto names = names_for(words.key);
    const bool edited = names ? one_of(*names, value) : typed(value);
    if (edited) changed("Change " + lowered(words.label));
    hint(in_.theme, value.empty() ? words.help : value, value.empty() ? "" : words.help);
    end_row();
}

bool FieldEditor::section(const std::string& label, const std::string& help, bool open_at_first) {
    const Theme& t = in_.theme;
    bool& open = workspace_.open_sections.try_emplace(path_, open_at_first).first->second;
    if (!workspace_.reveal.empty() && workspace_.reveal.starts_with(path_)) open = true;
    const ImVec2 at = ImGui::GetCursorScreenPos();
    const float buttons = help.empty() ? t.px(84) : t.px(32);
    const float width = std::max(ImGui::GetContentRegionAvail().x - buttons, 1.0f);
    if (ImGui::InvisibleButton("##section", {width, t.px(kRowHeight - 4)})) open = !open;
    const bool hovered = ImGui::IsItemHovered();
    if (!help.empty()) hint(t, help);
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const float x = at.x + t.px(5), y = at.y + t.px(14), r = t.px(4);
    const ImU32 ink = packed(hovered ? t.colour.text : t.colour.quiet);
    if (open)
        list.AddTriangleFilled({x - r, y - r * 0.6f}, {x + r, y - r * 0.6f}, {x, y + r * 0.7f},
                               ink);
    else
        list.AddTriangleFilled({x - r * 0.6f, y - r}, {x + r * 0.7f, y}, {x - r * 0.6f, y + r},
                               ink);
    paint_text(list, t.font.body, {at.x + t.px(16), at.y + t.px(5)}, t.colour.text,
               fitted(t.font.body, label, width - t.px(16)));
    return open;
}

void FieldEditor::group(const room::Words& words,
                        const std::function<void(FieldVisitor&)>& members) {
    const std::string pattern = joined(pattern_, words.key);
    if (!holds_fields_of(workspace_.subject, pattern) || !applies(pattern, choices_)) return;
    const std::string dot = path_.empty() ? "" : ".";
    const Inside inside(*this, dot + words.key, dot + words.key);
    const bool of_light_or_sound =
        workspace_.subject == study::Subject::light || workspace_.subject == study::Subject::sound;
    const bool whole = of_light_or_sound && belongs(workspace_.subject, pattern);
    if (!section(words.label, words.help, depth_ == 1 || whole)) return;
    ImGui::Indent(in_.theme.px(10));
    members(*this);
    ImGui::Unindent(in_.theme.px(10));
}

void FieldEditor::add_button(const room::ListField& field, room::ListAccess& items) {
    ImGui::SameLine(0.0f, 0.0f);
    const bool room = items.size() < field.most;
    if (!icon_button(in_.theme, Icon::add, std::string("Add a ") + field.singular, room)) return;
    if (items.size() > 0)
        duplicate_element(items, items.size() - 1);
    else
        items.resize(1);
    changed(std::string("Add a ") + field.singular);
}

bool FieldEditor::element_buttons(const room::ListField& field,
                                  room::ListAccess& items,
                                  std::size_t index) {
    ImGui::SameLine(0.0f, 0.0f);
    if (icon_button(in_.theme, Icon::copy, std::string("Duplicate this ") + field.singular,
                    items.size() < field.most)) {
        duplicate_element(items, index);
        changed(std::string("Duplicate a ") + field.singular);
        return true;
    }
    ImGui::SameLine(0.0f, 0.0f);
    if (icon_button(in_.theme, Icon::close, std::string("Remove this ") + field.singular)) {
        items.erase(index);
        changed(std::string("Remove a ") + field.singular);
        return true;
    }
    return false;
}

void FieldEditor::element(const room::ListField& field,
                          room::ListAccess& items,
                          std::size_t index) {
    const std::string key = "[" + std::to_string(index) + "]";
    const Inside inside(*this, key, ".*");
    std::string title = items.title(index);
    if (title.empty()) title = std::string(field.singular) + " " + std::to_string(index + 1);
    const bool open = section(title, {}, items.size() == 1);
    if (element_buttons(field, items, index) || !open) return;
    ImGui::Indent(in_.theme.px(10));
    items.visit(index, *this);
    ImGui::Unindent(in_.theme.px(10));
}

void FieldEditor::list(const room::ListField& field, room::ListAccess& items) {
    const std::string pattern = joined(pattern_, field.words.key);
    if (!holds_fields_of(workspace_.subject, pattern) || !applies(pattern, choices_)) return;
    const std::string dot = path_.empty() ? "" : ".";
    const Inside inside(*this, dot + field.words.key, dot + field.words.key);
    const std::string label = std::string(field.words.label) + " · " + std::to_string(items.size());
    const bool open = section(label, field.words.help, depth_ == 1);
    add_button(field, items);
    if (!open) return;
    ImGui::Indent(in_.theme.px(10));
    for (std::size_t i = 0; i < items.size(); ++i)
        element(field, items, i);
    ImGui::Unindent(in_.theme.px(10));
}

}  // namespace rakeline::desk
