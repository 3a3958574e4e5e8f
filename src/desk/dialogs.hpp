// SPDX-License-Identifier: MIT
#pragma once

#include "base/result.hpp"
#include "desk/file_browser.hpp"
#include "desk/panel_input.hpp"

#include <optional>
#include <string>

/// What the window asks before it goes on: which file, whether to lose edits, and what was wrong
/// with a file.
namespace rakeline::desk {

/// The file chooser. One is open at a time; `purpose` says what becomes of the path.
struct FileDialog {
    bool open = false;
    Action purpose = Action::open;
    std::string title;
    std::string ending;  ///< ".json", ".pdf", ...
    bool saving = false;
    std::string folder;
    std::string name;  ///< typed
    FolderListing listing;
    bool take_focus = true;  ///< the name's field, once
    std::string overwrite;   ///< the path that is asked about
};

/// What the file chooser is opened for, with a name to begin with.
void open_file_dialog(FileDialog& dialog,
                      Action purpose,
                      const std::string& folder,
                      const std::string& name);

/// Draws it; the path once one is chosen (and, when saving over a file, agreed to).
std::optional<std::string> draw_file_dialog(const Theme& theme,
                                            const Settings& settings,
                                            FileDialog& dialog);

/// A question with up to three answers.
struct Question {
    std::string title, text;
    std::string yes, other, stay;  ///< words of the answers; empty ones are left out
};
enum class Answer { none, yes, other, stay };
Answer draw_question(const Theme& theme, const Question& question);

/// Problems of a file, one by one with file, line and what mends them. False once closed.
bool draw_problem_list(const Theme& theme,
                       const std::string& title,
                       const base::Problems& problems);

}  // namespace rakeline::desk
