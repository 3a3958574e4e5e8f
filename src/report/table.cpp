// SPDX-License-Identifier: MIT
#include "report/table.hpp"

#include "base/assert.hpp"

#include <algorithm>

namespace rakeline::report {
namespace {

constexpr double kCellPad = 3.0;  ///< between neighbouring columns, each side
constexpr double kRowPad = 2.4;   ///< above and below the text

class Table {
public:
    Table(Pages& pages, const std::vector<Column>& columns, double size_pt)
        : pages_(pages), columns_(columns), size_pt_(size_pt) {
        double sum = 0.0;
        for (const Column& column : columns)
            sum += column.width;
        double x = pages.content().x;
        for (const Column& column : columns) {
            const double width = column.width / sum * pages.content().width;
            left_.push_back(x);
            width_.push_back(width);
            x += width;
        }
    }

    void head() {
        std::vector<std::string> texts;
        for (const Column& column : columns_)
            texts.push_back(column.head);
        double height = 0.0;
        for (std::size_t i = 0; i < texts.size(); ++i)
            height = std::max(height, size_of(texts[i], head_style(i)).height);
        const double top = pages_.y() + kRowPad;
        for (std::size_t i = 0; i < texts.size(); ++i) {
            // Heads stand on the line under them.
            const double own = size_of(texts[i], head_style(i)).height;
            put(i, texts[i], head_style(i), top + height - own);
        }
        pages_.move_to(top + height + kRowPad);
        pages_.line_across(pages_.content().x, pages_.y(), pages_.content().width,
                           pages_.theme().quiet, 0.6);
    }

    void row(const TableRow& row, bool first) {
        RL_ASSERT(row.cells.size() == columns_.size());
        double height = 0.0;
        for (std::size_t i = 0; i < columns_.size(); ++i)
            height = std::max(height, size_of(row.cells[i].text, style(i, row.cells[i])).height);
        const bool broke = pages_.make_room(height + 2.0 * kRowPad);
        if (broke) head();
        if (row.ruled && !first && !broke) pages_.rule(0.4);
        for (std::size_t i = 0; i < columns_.size(); ++i)
            put(i, row.cells[i].text, style(i, row.cells[i]), pages_.y() + kRowPad);
        pages_.gap(height + 2.0 * kRowPad);
    }

private:
    TextStyle head_style(std::size_t i) const {
        TextStyle style = pages_.quiet(type::kSmall);
        style.anchor = columns_[i].anchor;
        style.wrap_pt = width_[i] - 2.0 * pad(i);
        return style;
    }
    TextStyle style(std::size_t i, const TableCell& cell) const {
        TextStyle style = pages_.body();
        style.size_pt = size_pt_;
        style.anchor = columns_[i].anchor;
        style.strength = cell.medium ? Strength::medium : Strength::regular;
        if (columns_[i].quiet) style.colour = pages_.theme().quiet;
        if (cell.colour) style.colour = *cell.colour;
        if (style.anchor == drawing::Anchor::left) style.wrap_pt = width_[i] - 2.0 * pad(i);
        return style;
    }
    double pad(std::size_t i) const { return std::min(kCellPad, 0.25 * width_[i]); }
    TextSize size_of(const std::string& text, const TextStyle& style) const {
        return text.empty() ? TextSize{} : pages_.lettering().measured(text, style);
    }
    void put(std::size_t i, const std::string& text, const TextStyle& style, double y) {
        if (text.empty()) return;
        double x = left_[i] + (i == 0 ? 0.0 : pad(i));
        if (style.anchor == drawing::Anchor::right) x = left_[i] + width_[i] - pad(i);
        if (style.anchor == drawing::Anchor::centre) x = left_[i] + 0.5 * width_[i];
        pages_.lettering().draw(pages_.to(), x, y, text, style);
    }

    Pages& pages_;
    const std::vector<Column>& columns_;
    double size_pt_;
    std::vector<double> left_;
    std::vector<double> width_;
};

}  // namespace

void draw_table(Pages& pages,
                const std::vector<Column>& columns,
                const std::vector<TableRow>& rows,
                double size_pt) {
    if (rows.empty()) return;
    pages.make_room(48.0);
    Table table(pages, columns, size_pt);
    table.head();
    bool first = true;
    for (const TableRow& row : rows) {
        table.row(row, first);
        first = false;
    }
    pages.rule(0.4);
    pages.gap(8.0);
}

}  // namespace rakeline::report
