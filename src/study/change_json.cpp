// SPDX-License-Identifier: MIT
#include "study/change_book.hpp"

#include <nlohmann/json.hpp>

namespace rakeline::study {
namespace {

using Json = nlohmann::ordered_json;

const char* part_name(SheetPart part) {
    return part == SheetPart::set ? "set" : "gives";
}

class BookWriter {
public:
    explicit BookWriter(const Study& study) : study_(study) {}

    Json sheet(const ChangeSheet& sheet) const {
        Json out{{"projector", projector(sheet.projector)}, {"formats", Json::array()}};
        for (const int f : sheet.formats)
            out["formats"].push_back(format(f));
        out["rows"] = Json::array();
        for (const SheetRow& row : sheet.rows) {
            Json cells = Json::array();
            for (const SheetCell& one : row.cells)
                cells.push_back(cell(one));
            out["rows"].push_back(
                {{"part", part_name(row.part)}, {"label", row.label}, {"cells", std::move(cells)}});
        }
        out["notes"] = sheet.notes;
        return out;
    }

    Json change(const ListedMoves& list) const {
        Json out{{"projector", projector(list.projector)},
                 {"from", format(list.from)},
                 {"to", format(list.to)},
                 {"moves", Json::array()}};
        for (const Move& move : list.moves)
            out["moves"].push_back(step(move));
        return out;
    }

    Json machines(const MachineChange& change) const {
        Json out{{"format", format(change.format)},
                 {"from", side(change.from)},
                 {"to", side(change.to)},
                 {"rows", Json::array()}};
        for (const MachineRow& row : change.rows) {
            Json one{{"label", row.label}, {"from", cell(row.from)}, {"to", cell(row.to)}};
            put_difference(one, "difference", row.difference_si, row.to.unit);
            out["rows"].push_back(std::move(one));
        }
        return out;
    }

private:
    const std::string& projector(int p) const {
        return study_.layout().projectors.at(static_cast<std::size_t>(p)).name;
    }
    const std::string& format(int f) const {
        return study_.layout().formats.at(static_cast<std::size_t>(f)).name;
    }

    /// Differences of angles are angles too; of a temperature there is none on a sheet.
    static void put_difference(Json& out,
                               const char* key,
                               const std::optional<double>& si,
                               base::Unit unit) {
        if (!si) return;
        out[key] = base::json_value(*si, unit);
        out["unit"] = base::json_unit(unit);
    }

    static Json cell(const SheetCell& cell) {
        if (cell.empty()) return nullptr;
        Json out{{"sources", cell.sources}, {"text", cell.metric}};
        put_difference(out, "value", cell.si, cell.unit);
        if (cell.verdict != Verdict::no_limit) out["verdict"] = verdict_word(cell.verdict);
        return out;
    }

    static Json step(const Move& move) {
        Json out{{"kind", move_name(move.kind)}, {"text", move.metric}};
        if (!move.from.empty()) out["from"] = cell(move.from);
        if (!move.to.empty()) out["to"] = cell(move.to);
        // A lens's own cells hold names; the change of its focal length is a length.
        put_difference(out, "by", move.by_si,
                       move.kind == MoveKind::lens ? base::Unit::millimetre : move.to.unit);
        if (!move.caution.empty()) out["caution"] = move.caution;
        return out;
    }

    Json side(const MachineSide& side) const {
        Json out{{"projector", projector(side.projector)}};
        if (!side.proposal.empty()) {
            out["proposed"] = side.proposed.has_value();
            out["proposal"] = side.proposal;
        }
        out["lens"] = side.lens_metric;
        return out;
    }

    const Study& study_;
};

}  // namespace

std::string change_json(const Study& study, const ChangeBook& book) {
    const BookWriter writer(study);
    Json out{{"room", study.layout().name}, {"sheets", Json::array()}, {"changes", Json::array()}};
    for (const ChangeSheet& sheet : book.sheets)
        out["sheets"].push_back(writer.sheet(sheet));
    for (const ListedMoves& list : book.lists)
        out["changes"].push_back(writer.change(list));
    if (book.machines) out["machines"] = writer.machines(*book.machines);
    return out.dump(1) + "\n";
}

}  // namespace rakeline::study
