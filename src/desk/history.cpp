// SPDX-License-Identifier: MIT
#include "desk/history.hpp"

#include "base/assert.hpp"

namespace rakeline::desk {

History::History(BriefPtr start) : steps_{{"Open", start}}, saved_(std::move(start)) {
    RL_ASSERT(saved_ != nullptr);
}

void History::push(std::string label, room::Brief brief, std::string_view gesture) {
    if (brief == *current()) return;
    const bool folds = !gesture.empty() && gesture == gesture_ && head_ > 0;
    steps_.resize(head_ + 1);
    auto shared = std::make_shared<const room::Brief>(std::move(brief));
    if (folds) {
        steps_[head_].brief = std::move(shared);
        return;
    }
    end_gesture();
    steps_.push_back({std::move(label), std::move(shared)});
    head_ = steps_.size() - 1;
    gesture_ = gesture;
}

void History::end_gesture() {
    if (!gesture_.empty()) drop_step_that_changes_nothing();
    gesture_.clear();
}

void History::drop_step_that_changes_nothing() {
    if (head_ == 0 || *steps_[head_].brief != *steps_[head_ - 1].brief) return;
    steps_.erase(steps_.begin() + static_cast<std::ptrdiff_t>(head_));
    --head_;
}

void History::undo() {
    end_gesture();
    if (can_undo()) --head_;
}

void History::redo() {
    end_gesture();
    if (can_redo()) ++head_;
}

bool History::edited() const {
    return saved_ != current() && *saved_ != *current();
}

std::string History::undo_label() const {
    return can_undo() ? steps_[head_].label : std::string{};
}

std::string History::redo_label() const {
    return can_redo() ? steps_[head_ + 1].label : std::string{};
}

}  // namespace rakeline::desk
