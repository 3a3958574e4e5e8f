// SPDX-License-Identifier: MIT
#pragma once

#include <functional>
#include <string>
#include <vector>

namespace rakeline::command {

/// Opens the window on a layout (empty: file chooser); given by main, since commands know no desk.
using OpenWindow = std::function<int(const std::string& layout_path)>;

/// Runs a verb. Results go to standard output, messages to standard error. Exit status: 0 done,
/// 1 a limit is missed (check, rake), 2 the input is bad, 3 the machine can't (no display, no EGL).
int run(const std::vector<std::string>& arguments,
        const std::string& version,
        const OpenWindow& open_window);

}  // namespace rakeline::command
