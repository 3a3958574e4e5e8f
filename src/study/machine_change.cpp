// SPDX-License-Identifier: MIT
#include "picture/lens_pick.hpp"
#include "picture/lens_words.hpp"
#include "study/sheet_cells.hpp"
#include "study/slices.hpp"
#include "study/use_proposal.hpp"

#include <functional>

namespace rakeline::study {
namespace {

using base::UnitSystem;
using CellOf = std::function<SheetCell(const SheetPlace&)>;

/// A side and the study that its figures are read off.
struct StudiedSide {
    MachineSide side;
    const Study* study = nullptr;
    std::optional<Study> copy;  ///< the room with the use proposed, where one was

    const Study& of() const { return copy ? *copy : *study; }
};

void put_lens_words(const Study& study, int format, MachineSide& side) {
    const auto& lenses = study.layout().lenses;
    const auto pick = picture::pick_lens(picture_slice(study.layout(), study.seats), side.projector,
                                         format, lenses);
    if (!pick) return;
    const auto words = [&](UnitSystem system) {
        return pick->best() ? picture::lens_reason(*pick, lenses, system)
                            : picture::lens_needed(*pick, system);
    };
    side.lens_metric = words(UnitSystem::metric);
    side.lens_imperial = words(UnitSystem::imperial);
}

StudiedSide studied_side(const Study& study, int projector, int format) {
    StudiedSide out{.side = {.projector = projector}, .study = &study, .copy = {}};
    if (!find_use(study.layout(), projector, format)) {
        UseProposal proposal = propose_use(study, projector, format);
        out.side.proposed = std::move(proposal.use);
        out.side.proposal = std::move(proposal.words);
        if (out.side.proposed) out.copy = study_with(study, projector, *out.side.proposed);
    }
    put_lens_words(out.of(), format, out.side);
    return out;
}

std::string signed_text(const SheetCell& cell, double difference, UnitSystem system) {
    const std::string text =
        base::quantity_text(difference, cell.unit, system, cell.extra_decimals);
    return difference > 0.0 ? "+" + text : text;
}

class MachineTable {
public:
    MachineTable(std::optional<SheetPlace> from, std::optional<SheetPlace> to)
        : from_(std::move(from)), to_(std::move(to)) {}

    void add(const std::string& label, const CellOf& cell_of) {
        MachineRow row;
        row.label = label;
        if (from_) row.from = cell_of(*from_);
        if (to_) row.to = cell_of(*to_);
        if (row.from.empty() && row.to.empty()) return;
        if (row.from.si && row.to.si) {
            const double difference = *row.to.si - *row.from.si;
            row.difference_si = difference;
            row.difference_metric = signed_text(row.to, difference, UnitSystem::metric);
            row.difference_imperial = signed_text(row.to, difference, UnitSystem::imperial);
        }
        rows_.push_back(std::move(row));
    }

    void add_figure(const char* id) {
        const FigureDefinition* definition = find_definition(id);
        if (!definition) return;
        add(definition->label, [id](const SheetPlace& p) { return figure_cell(p, id); });
    }

    std::vector<MachineRow> take() { return std::move(rows_); }

private:
    std::optional<SheetPlace> from_;
    std::optional<SheetPlace> to_;
    std::vector<MachineRow> rows_;
};

std::vector<MachineRow> machine_rows(const StudiedSide& from, const StudiedSide& to, int format) {
    MachineTable table(sheet_place(from.of(), from.side.projector, format),
                       sheet_place(to.of(), to.side.projector, format));
    table.add("Lens", lens_cell);
    table.add("Gate aperture", aperture_cell);
    table.add("Pixels in use", pixels_cell);
    for (const char* id :
         {"picture.throw", "picture.throw_ratio", "picture.focal_length_used",
          "picture.focal_length", "picture.focal_length_covering", "picture.shift_across",
          "picture.shift_up", "picture.angle_down", "picture.angle_across",
          "picture.keystone_vertical", "picture.keystone_horizontal", "picture.overfill"})
        table.add_figure(id);
    table.add("Least past an edge", least_overfill_cell);
    for (const char* id :
         {"picture.crop", "picture.uncovered", "picture.blur", "picture.pixel_size",
          "picture.film_detail", "picture.blur_ratio", "picture.port_margin",
          "picture.beam_clearance", "picture.head_clearance", "light.luminance_reference",
          "light.luminance_target", "light.flux", "light.flux_needed", "light.output_wanted",
          "light.port_transmittance"})
        table.add_figure(id);
    return table.take();
}

}  // namespace

MachineChange machine_change(const Study& study, int format, int from, int to) {
    StudiedSide a = studied_side(study, from, format);
    StudiedSide b = studied_side(study, to, format);
    std::vector<MachineRow> rows = machine_rows(a, b, format);
    return {.format = format,
            .from = std::move(a.side),
            .to = std::move(b.side),
            .rows = std::move(rows)};
}

}  // namespace rakeline::study
