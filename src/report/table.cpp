// SPDX-License-Identifier: MIT
#include "report/table.hpp"

#include "base/assert.hpp"

#include <algorithm>

namespace rakeline::report {
namespace {

constexpr double kCellPad = 3.0;  ///< between neighbouring columns, each side
constexpr double kHeadPad = 2.4;  ///< above and below the head
constexpr double kBelow = 8.0;    ///< under the table

class Table {
public:
    Table(Pages& pages, const std::vector<Column>& columns, const TableType& type)
        : pages_(pages), columns_(columns), type_(type) {
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

    double head_height() const {
        double height = 0.0;
        for (std::size_t i = 0; i < columns_.size(); ++i)
            height = std::max(height, size_of(columns_[i].head, head_style(i)).height);
        return height + 2.0 * kHeadPad;
    }

    void head() {
        const double low = pages_.y() + head_height() - kHeadPad;
        for (std::size_t i = 0; i < columns_.size(); ++i) {
            // Heads stand on the line under them.
            const TextStyle style = head_style(i);
            put(i, columns_[i].head, style, low - size_of(columns_[i].head, style).height);
        }
        pages_.move_to(low + kHeadPad);
        pages_.line_across(pages_.content().x, pages_.y(), pages_.content().width,
                           pages_.theme().quiet, 0.6);
    }

    double row_height(const TableRow& row) const {
        RL_ASSERT(row.cells.size() == columns_.size());
        double height = 0.0;
        for (std::size_t i = 0; i < columns_.size(); ++i)
            height = std::max(height, size_of(row.cells[i].text, style(i, row.cells[i])).height);
        return height + 2.0 * type_.pad_pt;
    }

    void row(const TableRow& row, bool rule_above) {
        const double height = row_height(row);
        const bool broke = pages_.make_room(height);
        if (broke) head();
        if (rule_above && !broke) pages_.rule(0.4);
        for (std::size_t i = 0; i < columns_.size(); ++i)
            put(i, row.cells[i].text, style(i, row.cells[i]), pages_.y() + type_.pad_pt);
        pages_.gap(height);
    }

private:
    TextStyle head_style(std::size_t i) const {
        TextStyle style =
            type_.strong_head ? pages_.strong(type_.head_pt) : pages_.quiet(type_.head_pt);
        style.anchor = columns_[i].anchor;
        style.wrap_pt = width_[i] - 2.0 * pad(i);
        return style;
    }
    TextStyle style(std::size_t i, const TableCell& cell) const {
        TextStyle style = pages_.body();
        style.size_pt = type_.size_pt;
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
    TableType type_;
    std::vector<double> left_;
    std::vector<double> width_;
};

/// Height of the rows from `first` that go on with it, no more than is worth keeping together.
double group_height(const Table& table, const std::vector<TableRow>& rows, std::size_t first) {
    const double own = table.row_height(rows[first]);
    double height = own;
    for (std::size_t i = first + 1; i < rows.size() && !rows[i].ruled; ++i) {
        height += table.row_height(rows[i]);
        if (height > kKeptTogether_pt) return own;
    }
    return height;
}

/// Height of the rows from each one to the end.
std::vector<double> heights_to_end(const Table& table, const std::vector<TableRow>& rows) {
    std::vector<double> rest(rows.size());
    double sum = 0.0;
    for (std::size_t i = rows.size(); i-- > 0;)
        rest[i] = sum += table.row_height(rows[i]);
    return rest;
}

/// What has to fit on the page below the head, for the table to begin there.
double height_to_begin(double first_group, double whole) {
    return whole < 2.0 * kLeastOver_pt ? whole : first_group;
}

/// What has to fit on the page for a group of rows to stand there and not on the next: all that is
/// left, where too little would be left to go over with the rest.
double height_to_stay(double group, double rest) {
    return rest - group < kLeastOver_pt ? rest : group;
}

}  // namespace

double table_height(Pages& pages,
                    const std::vector<Column>& columns,
                    const std::vector<TableRow>& rows,
                    const TableType& type) {
    const Table table(pages, columns, type);
    double height = table.head_height() + kBelow;
    for (const TableRow& row : rows)
        height += table.row_height(row);
    return height;
}

void draw_table(Pages& pages,
                const std::vector<Column>& columns,
                const std::vector<TableRow>& rows,
                const TableType& type) {
    if (rows.empty()) return;
    Table table(pages, columns, type);
    const std::vector<double> rest = heights_to_end(table, rows);
    pages.make_room(table.head_height() + height_to_begin(group_height(table, rows, 0), rest[0]));
    table.head();
    for (std::size_t i = 0; i < rows.size(); ++i) {
        const bool broke = i > 0 && rows[i].ruled &&
                           pages.make_room(height_to_stay(group_height(table, rows, i), rest[i]));
        if (broke) table.head();
        table.row(rows[i], rows[i].ruled && i > 0 && !broke);
    }
    pages.rule(0.4);
    pages.gap(kBelow);
}

}  // namespace rakeline::report
