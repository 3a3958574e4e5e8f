// SPDX-License-Identifier: MIT
#include "command/command.hpp"

#include "command/verbs.hpp"

#include <algorithm>
#include <iostream>

namespace rakeline::command {
namespace {

constexpr const char* kAbout =
    "Design and check a cinema room: picture, light, sight lines and sound from one layout file.";
constexpr const char* kFooter =
    "Exit status: 0 done, 1 a limit is missed (check, rake, width), 2 the input is bad, 3 the "
    "machine "
    "can't.";

/// Help and version go to standard output with status 0; wrong words are bad input.
int explain_words(const CLI::App& app, const CLI::ParseError& error) {
    return app.exit(error, std::cout, std::cerr) == 0 ? kDone : kBadInput;
}

}  // namespace

int run(const std::vector<std::string>& arguments,
        const std::string& version,
        const OpenWindow& open_window) {
    CLI::App app(kAbout, "rakeline");
    app.footer(kFooter);
    app.set_version_flag("--version", "rakeline " + version);
    app.require_subcommand(0, 1);
    std::string layout;
    app.add_option("FILE", layout, "Layout to open in the window; left out: choose one there");
    Choice choice{.version = version, .action = {}};
    for (const auto add : {add_study_verb, add_check_verb, add_figures_verb, add_explain_verb,
                           add_lens_verb, add_draw_verb, add_report_verb, add_plate_verb,
                           add_change_verb, add_rake_verb, add_crowd_verb, add_meter_verb,
                           add_width_verb, add_curve_verb, add_aim_verb, add_perforation_verb}) {
        add(app, choice);
    }
    std::vector<std::string> reversed(arguments.rbegin(), arguments.rend());
    try {
        app.parse(reversed);
    } catch (const CLI::ParseError& error) {
        return explain_words(app, error);
    }
    if (choice.action) return choice.action();
    return open_window(layout);
}

}  // namespace rakeline::command
