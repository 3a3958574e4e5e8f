// SPDX-License-Identifier: MIT
#include "command/text_table.hpp"

#include <algorithm>

namespace rakeline::command {

std::size_t columns(const std::string& text) {
    return static_cast<std::size_t>(std::count_if(text.begin(), text.end(), [](char c) {
        return (static_cast<unsigned char>(c) & 0xC0) != 0x80;
    }));
}

std::vector<std::string> table_lines(const std::vector<std::vector<std::string>>& rows,
                                     std::size_t names) {
    std::vector<std::size_t> widths(rows.front().size(), 0);
    for (const auto& row : rows) {
        for (std::size_t i = 0; i < row.size(); ++i)
            widths[i] = std::max(widths[i], columns(row[i]));
    }
    std::vector<std::string> out;
    for (const auto& row : rows) {
        std::string line;
        for (std::size_t i = 0; i < widths.size(); ++i) {
            const std::string gap(widths[i] - columns(row[i]), ' ');
            line += "  " + (i < names ? row[i] + gap : gap + row[i]);
        }
        while (!line.empty() && line.back() == ' ')
            line.pop_back();
        out.push_back(std::move(line));
    }
    return out;
}

}  // namespace rakeline::command
