// SPDX-License-Identifier: MIT
#include "base/assert.hpp"
#include "study/figure.hpp"

namespace rakeline::study {
namespace {

struct SubjectWords {
    const char* name;
    const char* title;
};

SubjectWords words(Subject subject) {
    switch (subject) {
        case Subject::room:
            return {"room", "Room"};
        case Subject::picture:
            return {"picture", "Picture"};
        case Subject::light:
            return {"light", "Light"};
        case Subject::sight:
            return {"sight", "Sight"};
        case Subject::sound:
            return {"sound", "Sound"};
    }
    RL_ASSERT(false);
    return {};
}

}  // namespace

const char* subject_name(Subject subject) {
    return words(subject).name;
}
const char* subject_title(Subject subject) {
    return words(subject).title;
}

const char* verdict_mark(Verdict verdict) {
    switch (verdict) {
        case Verdict::holds:
            return "✓";
        case Verdict::near:
            return "△";
        case Verdict::missed:
            return "✗";
        case Verdict::no_limit:
            break;
    }
    return "";
}

const char* verdict_word(Verdict verdict) {
    switch (verdict) {
        case Verdict::holds:
            return "holds";
        case Verdict::near:
            return "near its limit";
        case Verdict::missed:
            return "missed";
        case Verdict::no_limit:
            break;
    }
    return "no limit in this set";
}

}  // namespace rakeline::study
