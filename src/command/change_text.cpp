// SPDX-License-Identifier: MIT
#include "command/change_text.hpp"

#include <algorithm>

namespace rakeline::command {
namespace {

using study::SheetCell;
using Line = std::vector<std::string>;

/// Columns that `text` takes on a terminal: one a code point.
std::size_t columns(const std::string& text) {
    return static_cast<std::size_t>(std::count_if(text.begin(), text.end(), [](char c) {
        return (static_cast<unsigned char>(c) & 0xC0) != 0x80;
    }));
}

/// Lines of equally many cells, each column as wide as its widest.
std::string table(const std::vector<Line>& lines) {
    std::vector<std::size_t> widths(lines.front().size(), 0);
    for (const Line& line : lines)
        for (std::size_t i = 0; i < line.size(); ++i)
            widths[i] = std::max(widths[i], columns(line[i]));
    std::string out;
    for (const Line& line : lines) {
        std::string text;
        for (std::size_t i = 0; i < line.size(); ++i)
            text += "  " + line[i] + std::string(widths[i] - columns(line[i]), ' ');
        out += text.substr(0, text.find_last_not_of(' ') + 1) + "\n";
    }
    return out;
}

class BookText {
public:
    BookText(const study::Study& study, base::UnitSystem system) : study_(study), system_(system) {}

    std::string sheet(const study::ChangeSheet& sheet) const {
        std::string out = "\n" + projector(sheet.projector) + ": format change sheet\n";
        if (sheet.formats.empty()) return out + "  It has a use for no format.\n";
        std::vector<Line> lines{{"To set"}};
        for (const int f : sheet.formats)
            lines.front().push_back(format(f));
        bool outcome = false;
        for (const study::SheetRow& row : sheet.rows) {
            if (!outcome && row.part == study::SheetPart::gives) {
                lines.push_back(Line(lines.front().size()));
                lines.push_back(Line(lines.front().size()));
                lines.back().front() = "What it gives";
                outcome = true;
            }
            Line line{row.label};
            for (const SheetCell& one : row.cells)
                line.push_back(cell(one));
            lines.push_back(std::move(line));
        }
        out += table(lines);
        for (const std::string& note : sheet.notes)
            out += "  " + note + "\n";
        return out;
    }

    std::string list(const study::ListedMoves& list) const {
        std::string out = "\n" + projector(list.projector) + ", from " + format(list.from) +
                          " to " + format(list.to) + "\n";
        if (list.moves.empty()) return out + "  Nothing changes.\n";
        int number = 0;
        for (const study::Move& move : list.moves) {
            const std::string count = std::to_string(++number);
            out += (count.size() < 2 ? "   " : "  ") + count + ". " + move.text(system_) + "\n";
            if (!move.caution.empty()) out += "      △ " + move.caution + "\n";
        }
        return out;
    }

    std::string machines(const study::MachineChange& change) const {
        std::string out = format(change.format) + " on two machines\n";
        std::vector<Line> lines{
            {"", projector(change.from.projector), projector(change.to.projector), "difference"}};
        for (const study::MachineRow& row : change.rows)
            lines.push_back({row.label, cell(row.from), cell(row.to), row.difference(system_)});
        out += table(lines);
        for (const study::MachineSide* side : {&change.from, &change.to}) {
            const std::string& name = projector(side->projector);
            if (!side->proposal.empty())
                out += "  " + name + " has no use for it; " + side->proposal + ".\n";
            if (!side->lens(system_).empty())
                out += "  " + name + ": " + side->lens(system_) + "\n";
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
    std::string cell(const SheetCell& cell) const {
        if (cell.empty()) return "–";
        const std::string mark = study::verdict_mark(cell.verdict);
        return cell.text(system_) + (mark.empty() ? "" : " " + mark);
    }

    const study::Study& study_;
    base::UnitSystem system_;
};

}  // namespace

std::string change_text(const study::Study& study,
                        const study::ChangeBook& book,
                        base::UnitSystem system) {
    const BookText writer(study, system);
    std::string out = study.layout().name + ": format changes\n";
    for (const study::ChangeSheet& sheet : book.sheets)
        out += writer.sheet(sheet);
    for (const study::ListedMoves& list : book.lists)
        out += writer.list(list);
    if (!book.lists.empty()) out += std::string("\n") + study::kMovesDefer + "\n";
    if (book.machines) out += "\n" + writer.machines(*book.machines);
    return out;
}

}  // namespace rakeline::command
