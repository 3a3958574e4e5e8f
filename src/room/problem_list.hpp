// SPDX-License-Identifier: MIT
#pragma once

#include "base/result.hpp"
#include "room/json_lines.hpp"

#include <string>
#include <utility>

/// Problems of one file, gathered in any order and handed over in the file's.
namespace rakeline::room {

class ProblemList {
public:
    explicit ProblemList(std::string file) : file_(std::move(file)) {}

    void add(int line, std::string where, std::string what, std::string mend);
    void add(base::Problems problems);
    /// Problems that have field paths only: file and line come from the text they were read from.
    void add_found(base::Problems problems, const JsonNode& root);
    bool empty() const { return problems_.empty(); }

    /// By line, the first 50; a last entry says how many more there are.
    base::Problems take() &&;

private:
    std::string file_;
    base::Problems problems_;
};

}  // namespace rakeline::room
