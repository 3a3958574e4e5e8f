// SPDX-License-Identifier: MIT
#pragma once

#include "report/pages.hpp"
#include "report/report.hpp"

#include <functional>

/// What every PDF has in common: metadata, typefaces, numbered pages.
namespace rakeline::report {

struct DocumentWords {
    std::string title;
    std::string subject;
    std::string running_head;
    std::string foot;
    bool landscape = false;  ///< of the first page
};

/// "Rakeline 1.0 · 2026-11-24 · Theatre practice": program, date and limits.
std::string document_foot(const study::Study& study, const ReportOptions& options);

/// Draws twice, since the first pass counts the pages so that the second can say "3 / 9". Refused:
/// a date that is none, typefaces that are not installed.
base::Result<std::string> pdf_document(const DocumentWords& words,
                                       const ReportOptions& options,
                                       const std::function<void(Pages&)>& draw);

}  // namespace rakeline::report
