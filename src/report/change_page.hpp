// SPDX-License-Identifier: MIT
#pragma once

#include "report/chapters.hpp"
#include "study/change_book.hpp"

/// Format changes on paper, large enough to read from where one works: sheets with the formats as
/// columns, and the moves as lists to tick off.
namespace rakeline::report {

inline const std::string& projector_name(const ReportInput& in, int projector) {
    return in.study.layout().projectors.at(static_cast<std::size_t>(projector)).name;
}
inline const std::string& format_name(const ReportInput& in, int format) {
    return in.study.layout().formats.at(static_cast<std::size_t>(format)).name;
}

/// One sheet from the pen down, on a landscape page, lettered as large as it fits. More than
/// kFormatsAPage formats go on on pages of their own.
inline constexpr std::size_t kFormatsAPage = 5;
void draw_change_sheet(Pages& pages, const ReportInput& in, const study::ChangeSheet& sheet);

/// The lists that share a page: a change and, next to it, the way back.
using PairedLists = std::vector<const study::ListedMoves*>;
std::vector<PairedLists> paired_lists(const study::ChangeBook& book, int projector);

/// Side by side from the pen down, to tick off, lettered as large as they fit; their cautions at
/// the foot of the page.
void draw_move_lists(Pages& pages, const ReportInput& in, const PairedLists& pair);

void draw_machines(Pages& pages, const ReportInput& in, const study::MachineChange& change);

/// The book for the booth's wall: for each projector its sheet and its moves, then two machines
/// side by side, if it holds them.
base::Result<std::string> change_pdf(const study::Study& study,
                                     const study::ChangeBook& book,
                                     const ReportOptions& options);

}  // namespace rakeline::report
