// SPDX-License-Identifier: MIT
#pragma once

#include "desk/panel_input.hpp"
#include "room/fields.hpp"

#include <map>
#include <optional>
#include <string>
#include <vector>

/// One visitor draws an editor for every field of the document: label, control, unit, range, help.
/// It edits the layout that it walks (a copy) and remembers what changed.
namespace rakeline::desk {

class FieldEditor final : public room::FieldVisitor {
public:
    FieldEditor(const PanelInput& in, Workspace& workspace);

    struct Change {
        std::string label;    ///< "Change width"
        std::string gesture;  ///< the field's path while it is being dragged; else empty
    };
    const std::optional<Change>& change() const { return change_; }
    bool finished() const { return finished_; }  ///< a drag was let go

    void text(const room::Words& words, std::string& value) override;
    void flag(const room::Words& words, bool& value) override;
    void integer(const room::IntegerField& field, int& value) override;
    void number(const room::NumberField& field, double& value) override;
    void optional_number(const room::NumberField& field, std::optional<double>& value) override;
    void choice(const room::ChoiceField& field, int& index) override;
    void group(const room::Words& words,
               const std::function<void(FieldVisitor&)>& members) override;
    void list(const room::ListField& field, room::ListAccess& items) override;

private:
    /// Puts the label and stands at the control's place; false where the field is not shown.
    bool begin_row(const room::Words& words, float share = 0.46f);
    void end_row();
    bool shows(const char* key) const;
    bool section(const std::string& label, const std::string& help, bool open_at_first);
    void element(const room::ListField& field, room::ListAccess& items, std::size_t index);
    bool element_buttons(const room::ListField& field, room::ListAccess& items, std::size_t index);
    void add_button(const room::ListField& field, room::ListAccess& items);
    bool one_of(const std::vector<std::string>& names, std::string& value);
    bool typed(std::string& value);
    void number_control(const room::Words& words,
                        base::Unit unit,
                        double least,
                        double most,
                        bool whole,
                        double& value);
    void changed(const std::string& label, bool gesture = false);
    std::string fault_at(const std::string& path) const;
    std::optional<std::vector<std::string>> names_for(const char* key) const;

    /// Enters a part of the document for the life of this object.
    struct Inside {
        Inside(FieldEditor& editor, const std::string& key, const std::string& pattern_key);
        ~Inside();
        Inside(const Inside&) = delete;
        Inside& operator=(const Inside&) = delete;
        FieldEditor& editor;
        std::size_t path_size, pattern_size;
    };

    const PanelInput& in_;
    Workspace& workspace_;
    std::string path_;     ///< "projectors[0].aim": of the part that is being walked
    std::string pattern_;  ///< "projectors.*.aim"
    int depth_ = 0;
    float control_width_ = 0.0f;
    std::map<std::string, int> choices_;
    std::optional<Change> change_;
    bool finished_ = false;
};

}  // namespace rakeline::desk
