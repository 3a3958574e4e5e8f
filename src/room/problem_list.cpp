// SPDX-License-Identifier: MIT
#include "room/problem_list.hpp"

#include <algorithm>
#include <iterator>

namespace rakeline::room {
namespace {

/// More than anybody reads before mending the first ones.
constexpr std::size_t kMostShown = 50;

}  // namespace

void ProblemList::add(int line, std::string where, std::string what, std::string mend) {
    problems_.push_back({file_, line, std::move(where), std::move(what), std::move(mend)});
}

void ProblemList::add(base::Problems problems) {
    std::ranges::move(problems, std::back_inserter(problems_));
}

void ProblemList::add_found(base::Problems problems, const JsonNode& root) {
    for (base::Problem& problem : problems) {
        problem.file = file_;
        problem.line = line_of(root, problem.where);
    }
    add(std::move(problems));
}

base::Problems ProblemList::take() && {
    std::ranges::stable_sort(problems_, {}, &base::Problem::line);
    if (problems_.size() > kMostShown) {
        const std::size_t more = problems_.size() - kMostShown;
        problems_.resize(kMostShown);
        add(0, {}, "and " + std::to_string(more) + " more problems", "mend the ones above first");
    }
    return std::move(problems_);
}

}  // namespace rakeline::room
