// SPDX-License-Identifier: MIT
#pragma once

#include "report/report.hpp"
#include "support/check.hpp"

#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <memory>
#include <string>

/// A report as a file, and what the tools of poppler-utils say of it.
namespace rakeline::tests {

inline report::ReportOptions options(base::UnitSystem units = base::UnitSystem::metric) {
    return {.units = units,
            .layout_path = "rooms/mine.json",
            .date = "2026-11-24",
            .program_version = "0.1.0"};
}

inline std::string report_of(const study::Study& study, const report::ReportOptions& with) {
    const auto pdf = report::pdf_report(study, with);
    if (!pdf) FAIL(base::text(pdf.problems()));
    return *pdf;
}

/// A file beside the build that goes away with the test.
class TemporaryPdf {
public:
    explicit TemporaryPdf(const std::string& bytes)
        : path_(std::string(RAKELINE_BINARY_DIR) + "/report_test.pdf") {
        std::ofstream(path_, std::ios::binary) << bytes;
    }
    ~TemporaryPdf() { std::remove(path_.c_str()); }
    TemporaryPdf(const TemporaryPdf&) = delete;
    TemporaryPdf& operator=(const TemporaryPdf&) = delete;

    /// What a tool of poppler-utils prints about the file.
    std::string asked(const std::string& tool, const std::string& after = "") const {
        const std::string command = tool + " '" + path_ + "' " + after;
        const std::unique_ptr<FILE, int (*)(FILE*)> pipe(popen(command.c_str(), "r"), pclose);
        REQUIRE(pipe);
        std::string out;
        char buffer[4096];
        while (const std::size_t count = fread(buffer, 1, sizeof buffer, pipe.get()))
            out.append(buffer, count);
        REQUIRE_MESSAGE(!out.empty(), tool << " of poppler-utils is needed for this test");
        return out;
    }

private:
    std::string path_;
};

/// All runs of white space as one space, so that line breaks don't matter.
inline std::string flowing(const std::string& text) {
    std::string out;
    for (const char c : text) {
        const bool space = c == ' ' || c == '\n' || c == '\r' || c == '\f' || c == '\t';
        if (!space) {
            out += c;
        } else if (!out.empty() && out.back() != ' ') {
            out += ' ';
        }
    }
    return out;
}

/// Text without white space: a break inside a long word must not matter either.
inline std::string packed(const std::string& text) {
    std::string out = flowing(text);
    std::erase(out, ' ');
    return out;
}

inline int page_count(const TemporaryPdf& pdf) {
    const std::string info = pdf.asked("pdfinfo");
    const auto at = info.find("Pages:");
    REQUIRE(at != std::string::npos);
    return std::atoi(info.c_str() + at + 6);
}

}  // namespace rakeline::tests
