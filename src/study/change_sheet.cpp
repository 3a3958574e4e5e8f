// SPDX-License-Identifier: MIT
#include "study/sheet_cells.hpp"

#include <algorithm>
#include <functional>

namespace rakeline::study {
namespace {

using CellOf = std::function<SheetCell(const SheetPlace&)>;

class SheetWriter {
public:
    explicit SheetWriter(std::vector<SheetPlace> places) : places_(std::move(places)) {}

    void add(SheetPart part, const std::string& label, const CellOf& cell_of) {
        SheetRow row{.part = part, .label = label, .cells = {}};
        for (const SheetPlace& place : places_)
            row.cells.push_back(cell_of(place));
        const bool some = std::any_of(row.cells.begin(), row.cells.end(),
                                      [](const SheetCell& cell) { return !cell.empty(); });
        if (some) rows_.push_back(std::move(row));
    }

    void add_figure(SheetPart part, const char* id) {
        const FigureDefinition* definition = find_definition(id);
        if (!definition) return;
        add(part, definition->label, [id](const SheetPlace& p) { return figure_cell(p, id); });
    }

    std::vector<SheetRow> take() { return std::move(rows_); }

private:
    std::vector<SheetPlace> places_;
    std::vector<SheetRow> rows_;
};

void add_lens(SheetWriter& sheet) {
    const auto set = SheetPart::set;
    sheet.add(set, "Lens", lens_cell);
    sheet.add_figure(set, "picture.focal_length_used");
    sheet.add_figure(set, "picture.focal_length");
}

void add_gate(SheetWriter& sheet, room::SourceKind kind) {
    const auto set = SheetPart::set;
    if (kind == room::SourceKind::digital) {
        sheet.add(set, "Pixels in use", pixels_cell);
        return;
    }
    sheet.add(set, "Gate aperture", aperture_cell);
    sheet.add(set, "Plate, to file", filed_cell);
    sheet.add(set, "Anamorphic attachment", attachment_cell);
}

bool is_shifted(const room::Projector& projector) {
    const auto& uses = projector.formats;
    return std::any_of(uses.begin(), uses.end(), [](const room::FormatUse& use) {
        return use.shift_across != 0.0 || use.shift_up != 0.0;
    });
}

bool dims(const room::Projector& projector) {
    const auto& uses = projector.formats;
    return std::any_of(uses.begin(), uses.end(),
                       [](const room::FormatUse& use) { return use.light_fraction != 1.0; });
}

void add_settings(SheetWriter& sheet, const room::Layout& layout, const room::Projector& p) {
    const auto set = SheetPart::set;
    add_lens(sheet);
    add_gate(sheet, p.kind);
    if (is_shifted(p)) {
        sheet.add_figure(set, "picture.shift_across");
        sheet.add_figure(set, "picture.shift_up");
    }
    if (p.aim.mode == room::AimMode::picture_centre) {
        sheet.add_figure(set, "picture.aim_down");
        sheet.add_figure(set, "picture.aim_across");
    }
    if (layout.screen.masking != room::MaskingMode::fixed) {
        for (const char* id :
             {"picture.mask_left", "picture.mask_right", "picture.mask_top", "picture.mask_bottom"})
            sheet.add_figure(set, id);
    }
    if (dims(p)) sheet.add_figure(set, "light.setting");
    for (const char* id : {"picture.focus_distance", "light.lamp_current_wanted",
                           "light.output_wanted", "light.flux_needed"})
        sheet.add_figure(set, id);
}

void add_outcome(SheetWriter& sheet) {
    const auto gives = SheetPart::gives;
    sheet.add(gives, "Picture, wide × high", [](const SheetPlace& p) {
        return pair_cell(figure_cell(p, "picture.width"), figure_cell(p, "picture.height"));
    });
    sheet.add(gives, "Least past an edge", least_overfill_cell);
    for (const char* id :
         {"picture.uncovered", "picture.crop", "picture.keystone_vertical",
          "picture.keystone_horizontal", "light.luminance_reference", "light.luminance_target"})
        sheet.add_figure(gives, id);
}

void note_missing_pictures(const Study& study, ChangeSheet& sheet) {
    for (const picture::NoPicture& none : study.picture.none) {
        if (none.projector != sheet.projector) continue;
        const auto& format = study.layout().formats.at(static_cast<std::size_t>(none.format));
        sheet.notes.push_back(format.name + " gives no picture: " + none.why + "; " + none.mend +
                              ".");
    }
}

}  // namespace

ChangeSheet change_sheet(const Study& study, int projector) {
    const room::Layout& layout = study.layout();
    ChangeSheet sheet{.projector = projector, .formats = {}, .not_made = {}, .rows = {}};
    std::vector<SheetPlace> places;
    for (int f = 0; f < static_cast<int>(layout.formats.size()); ++f) {
        auto place = sheet_place(study, projector, f);
        (place ? sheet.formats : sheet.not_made).push_back(f);
        if (place) places.push_back(std::move(*place));
    }
    SheetWriter writer(std::move(places));
    add_settings(writer, layout, layout.projectors.at(static_cast<std::size_t>(projector)));
    add_outcome(writer);
    sheet.rows = writer.take();
    note_missing_pictures(study, sheet);
    return sheet;
}

}  // namespace rakeline::study
