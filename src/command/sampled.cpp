// SPDX-License-Identifier: MIT
#include "command/sampled.hpp"

#include "command/verbs.hpp"

#include <chrono>
#include <iostream>
#include <unistd.h>

namespace rakeline::command {
namespace {

/// One line on a terminal, written over again and again and wiped at the end.
class ProgressLine {
public:
    ~ProgressLine() {
        if (shown_) std::cerr << "\r\033[K" << std::flush;
    }
    void show(const sight::CrowdProgress& progress) {
        constexpr std::chrono::seconds kPatience{1};
        if (!terminal_ || std::chrono::steady_clock::now() - start_ < kPatience) return;
        shown_ = true;
        std::cerr << "\rdrawing crowds: " << progress.drawn << " so far, "
                  << progress.all - progress.open << " of " << progress.all
                  << " chances known well enough\033[K" << std::flush;
    }

private:
    bool terminal_ = ::isatty(STDERR_FILENO) == 1;
    bool shown_ = false;
    std::chrono::steady_clock::time_point start_ = std::chrono::steady_clock::now();
};

}  // namespace

study::Study with_sampled_crowd(study::Study study) {
    ProgressLine line;
    auto crowd = study::sample_crowd(
        study, {.progress = [&](const sight::CrowdProgress& progress) { line.show(progress); }});
    return study::with_crowd(std::move(study), std::move(crowd));
}

base::Result<study::Study> sampled_study_file(const std::string& path, bool left_out) {
    auto study = study_file(path);
    if (!study || left_out) return study;
    return with_sampled_crowd(std::move(*study));
}

void add_no_crowd(CLI::App& verb, bool& left_out) {
    verb.add_flag("--no-crowd", left_out, "Draw no random audiences: no chances of a clear view");
}

}  // namespace rakeline::command
