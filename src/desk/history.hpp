// SPDX-License-Identifier: MIT
#pragma once

#include "room/layout_file.hpp"

#include <cstddef>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

/// Undo as whole snapshots: each step is an immutable brief, so no inverse can be forgotten.
namespace rakeline::desk {

using BriefPtr = std::shared_ptr<const room::Brief>;

class History {
public:
    explicit History(BriefPtr start);

    /// Makes `brief` the current one. An edit that changes nothing is dropped. Edits that follow
    /// each other with the same non-empty `gesture` are one step until end_gesture(); a gesture
    /// that comes back to where it began leaves no step. Steps that were undone are forgotten.
    void push(std::string label, room::Brief brief, std::string_view gesture = {});
    void end_gesture();

    bool can_undo() const { return head_ > 0; }
    bool can_redo() const { return head_ + 1 < steps_.size(); }
    void undo();
    void redo();
    std::string undo_label() const;  ///< of the step that undo() takes back; empty if none
    std::string redo_label() const;

    const BriefPtr& current() const { return steps_[head_].brief; }
    std::size_t size() const { return steps_.size(); }  ///< steps kept, the first one counted

    void mark_saved() { saved_ = current(); }
    bool edited() const;  ///< differs from what mark_saved() saw

private:
    struct Step {
        std::string label;
        BriefPtr brief;
    };
    void drop_step_that_changes_nothing();

    std::vector<Step> steps_;
    std::size_t head_ = 0;
    BriefPtr saved_;
    std::string gesture_;  ///< open: the head step may still be replaced
};

}  // namespace rakeline::desk
