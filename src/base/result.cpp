// SPDX-License-Identifier: MIT
#include "base/result.hpp"

namespace rakeline::base {

std::string text(const Problem& problem) {
    std::string out;
    if (!problem.file.empty()) {
        out += problem.file;
        if (problem.line > 0) out += ":" + std::to_string(problem.line);
        out += ": ";
    }
    if (!problem.where.empty()) out += problem.where + ": ";
    out += problem.what;
    if (!problem.mend.empty()) out += "; " + problem.mend;
    return out;
}

std::string text(const Problems& problems) {
    std::string out;
    for (const Problem& problem : problems)
        out += text(problem) + "\n";
    return out;
}

}  // namespace rakeline::base
