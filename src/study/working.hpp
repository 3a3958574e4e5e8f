// SPDX-License-Identifier: MIT
#pragma once

#include "base/quantity_text.hpp"

#include <string>
#include <vector>

namespace rakeline::study {

/// One value that went into a figure, or one step on the way.
struct WorkingStep {
    std::string symbol;  ///< as in the definition's formula
    std::string meaning;
    double si = 0.0;
    base::Unit unit = base::Unit::ratio;
    bool operator==(const WorkingStep&) const = default;
};

/// Records what a figure is made of while it is being computed. The figure's one function runs with
/// recording off to give the value and with recording on to give the derivation, so the two can't
/// disagree.
class Working {
public:
    explicit Working(bool recording) : recording_(recording) {}

    /// Passes `si` through; keeps it when recording.
    double input(const char* symbol, const char* meaning, double si, base::Unit unit) {
        if (recording_) steps_.push_back({symbol, meaning, si, unit});
        return si;
    }
    void note(std::string text) {
        if (recording_) notes_.push_back(std::move(text));
    }
    bool recording() const { return recording_; }
    const std::vector<WorkingStep>& steps() const { return steps_; }
    const std::vector<std::string>& notes() const { return notes_; }

private:
    bool recording_;
    std::vector<WorkingStep> steps_;
    std::vector<std::string> notes_;
};

}  // namespace rakeline::study
