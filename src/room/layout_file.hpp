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

/// Reads a layout, version 1: an object whose member "rakeline_layout" is 1, with the members of
/// fields.cpp. A member that is missing takes the default of layout.hpp.
///
/// Problems are reported together (the first 50 in the file's order), each with the file's name,
/// the line, the path of the field, what is wrong with the value as the file has it, and what
/// mends it: syntax, doubled keys, unknown keys (with the nearest known one), wrong types, values
/// out of range, lists too long. Once every field could be read, what check_layout finds; before
/// that it would judge defaults that stand in for what was refused.
base::Result<Layout> read_layout(std::string_view json, const std::string& file_name);

/// Writes every field, in the order of fields.cpp, so that reading it back gives an equal value;
/// optional numbers that are unset are left out. The same layout always gives the same bytes.
/// Needs a layout in which check_field_ranges finds nothing.
std::string write_layout(const Layout& layout);

/// Reads a set of limits, version 1 ("rakeline_limits": 1). Bounds stand in the unit that each
/// limit names and come back in SI. Whether a figure of that id exists is the study's to say.
base::Result<LimitSet> read_limits(std::string_view json, const std::string& file_name);

/// Every number, choice, text and list of the layout against its own field: what a file could not
/// hold, such as NaN after an edit. Field paths, no lines.
base::Problems check_field_ranges(const Layout& layout);

/// What check_field_ranges finds; if that is nothing, rules between fields (a radius under half the
/// picture's width, a seat inside the screen, a format no projector has, doubled names, a zoom
/// whose range is reversed, more than 20,000 seats,
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

/// Reads a layout and the limits file that it names (looked for beside the layout). A limits file
/// that can't be read is a problem of the layout's line that names it.
base::Result<Brief> open_brief(const std::string& path, const base::ReadText& read);

/// Reads the limits file for `layout` as `layout_path` would see it.
base::Result<LimitSet> open_limits(const Layout& layout,
                                   const std::string& layout_path,
                                   const base::ReadText& read);

/// A sheet of a series: its holes, and what the sound meets where there are none.
struct SheetChoice {
    std::string name;
    Perforation perforation;
    double thickness_m = 0.0003;
    double mass_kg_m2 = 0.35;  ///< as hung, holes included
    bool operator==(const SheetChoice&) const = default;
};

/// A catalogue of generic series to copy from (layouts/series/*.json).
struct Series {
    std::string name;
    std::string note;
    std::vector<Lens> lenses;
    std::vector<ScreenSurface> surfaces;
    std::vector<Loudspeaker> loudspeakers;
    std::vector<SheetChoice> sheets;
    bool operator==(const Series&) const = default;
};

/// Reads a catalogue, version 1 ("rakeline_series": 1).
base::Result<Series> read_series(std::string_view json, const std::string& file_name);

}  // namespace rakeline::room
