// SPDX-License-Identifier: MIT
#include "room/field_fault.hpp"
#include "room/json_lines.hpp"
#include "room/layout_file.hpp"

namespace rakeline::room {
namespace {

constexpr const char* kLimitsField = "limits_file";

/// The line of the field that names the limits, in a layout that has just been read.
int limits_line(const std::string& json, const std::string& path) {
    const JsonText text = parse_json(json, path);
    return text.root ? line_of(*text.root, kLimitsField) : 0;
}

base::Problem unread(const Layout& layout,
                     const std::string& layout_path,
                     const std::string& tried,
                     const base::Problem& reason) {
    return {.file = layout_path,
            .line = 0,
            .where = kLimitsField,
            .what = "the limits " + quoted(layout.limits_file) + " were looked for at " + tried +
                    ", which " + reason.what,
            .mend = "name a file of limits as seen from the layout's own folder"};
}

}  // namespace

base::Result<LimitSet> open_limits(const Layout& layout,
                                   const std::string& layout_path,
                                   const base::ReadText& read) {
    const std::string path = base::path_beside(layout_path, layout.limits_file);
    const auto json = read(path);
    if (!json) return unread(layout, layout_path, path, json.problems().front());
    return read_limits(*json, path);
}

base::Result<Brief> open_brief(const std::string& path, const base::ReadText& read) {
    const auto json = read(path);
    if (!json) return json.problems();
    const auto layout = read_layout(*json, path);
    if (!layout) return layout.problems();
    const auto limits = open_limits(*layout, path, read);
    if (limits) return Brief{*layout, *limits};
    base::Problems problems = limits.problems();
    for (base::Problem& problem : problems) {
        if (problem.where == kLimitsField) problem.line = limits_line(*json, path);
    }
    return problems;
}

}  // namespace rakeline::room
