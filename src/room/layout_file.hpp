// SPDX-License-Identifier: MIT
#pragma once

#include "base/files.hpp"
#include "base/result.hpp"
#include "room/layout.hpp"
#include "room/limits.hpp"

#include <string>
#include <string_view>

/// Text to document and back. Pure: bytes in, values or problems out; callers open the files.
namespace rakeline::room {

/// Reads a layout, version 1. All problems found are reported at once, each with the file's name,
/// the line, the path of the field, what is wrong and what mends it: syntax, duplicate keys,
/// unknown keys (with the nearest known one), wrong types, values out of range, and what
/// check_layout finds.
base::Result<Layout> read_layout(std::string_view json, const std::string& file_name);

/// Writes every field, in the order of fields.cpp, so that reading it back gives an equal value.
std::string write_layout(const Layout& layout);

base::Result<LimitSet> read_limits(std::string_view json, const std::string& file_name);

/// Rules between fields (a radius under half the picture's width, a seat inside the screen, a
/// format no projector has, doubled names, a zoom whose range is reversed, more than 20,000 seats,
/// ...). Problems carry field paths, no lines.
base::Problems check_layout(const Layout& layout);

/// The draft-07 JSON Schema of a layout file, generated from fields.cpp; layouts/layout.schema.json
/// is this text (a test holds them equal).
std::string layout_schema();

/// What a study answers: a layout, and the limits that it is held against.
struct Brief {
    Layout layout;
    LimitSet limits;
    bool operator==(const Brief&) const = default;
};

/// Reads a layout and the limits file that it names (looked for beside the layout).
base::Result<Brief> open_brief(const std::string& path, const base::ReadText& read);

/// Reads the limits file for `layout` as `layout_path` would see it.
base::Result<LimitSet> open_limits(const Layout& layout,
                                   const std::string& layout_path,
                                   const base::ReadText& read);

/// A catalogue of generic series to copy from (layouts/series/*.json).
struct Series {
    std::string name;
    std::vector<Lens> lenses;
    std::vector<ScreenSurface> surfaces;
    std::vector<Loudspeaker> loudspeakers;
    bool operator==(const Series&) const = default;
};
base::Result<Series> read_series(std::string_view json, const std::string& file_name);

}  // namespace rakeline::room
