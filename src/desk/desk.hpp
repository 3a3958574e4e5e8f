// SPDX-License-Identifier: MIT
#pragma once

#include <string>

namespace rakeline::desk {

struct DeskOptions {
    std::string layout_path;  ///< empty: starts with the file chooser
    int width = 1600;
    int height = 900;
    int frames = 0;  ///< stop after this many; 0: until closed (tests use it)
    std::string program_version;
};

/// Opens the window and stays in it until it closes. Returns the exit status; 3 where no display
/// can be opened, with the reason on standard error.
int run(const DeskOptions& options);

}  // namespace rakeline::desk
