// SPDX-License-Identifier: MIT
#pragma once

#include "base/result.hpp"

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

/// Tables in text, as spreadsheets save them; a strict reader that keeps the line of everything.
namespace rakeline::base {

struct CsvRecord {
    int line = 0;                    ///< 1-based, where the record begins
    std::vector<std::string> cells;  ///< spaces round unquoted cells are passed over
};

/// Cells parted by commas, records by LF or CRLF, a cell in double quotes where it holds a comma, a
/// quote (written twice) or a line end (RFC 4180). A byte order mark in front, empty lines, and
/// lines that begin with # are passed over (the last is ours: a file can say what it is). Refused:
/// a quote inside an unquoted cell, text after a closing quote, a quote that never closes, control
/// characters, more than `records_most` records, a file without any.
Result<std::vector<CsvRecord>> read_csv(std::string_view text,
                                        const std::string& file,
                                        std::size_t records_most);

}  // namespace rakeline::base
