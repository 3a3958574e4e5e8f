// SPDX-License-Identifier: MIT
#include "command/command.hpp"
#include "desk/desk.hpp"

#include <string>
#include <vector>

int main(int argc, char** argv) {
    const auto open_window = [](const std::string& layout_path) {
        return rakeline::desk::run(
            {.layout_path = layout_path, .program_version = RAKELINE_VERSION});
    };
    return rakeline::command::run({argv + 1, argv + argc}, RAKELINE_VERSION, open_window);
}
