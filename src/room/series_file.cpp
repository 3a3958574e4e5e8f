// SPDX-License-Identifier: MIT
#include "room/check_internal.hpp"
#include "room/document_root.hpp"
#include "room/field_reader.hpp"
#include "room/fields_internal.hpp"
#include "room/layout_file.hpp"

namespace rakeline::room {
namespace {

void describe_series(FieldVisitor& v, Series& x) {
    v.text({"name", "Name", "Name of the catalogue."}, x.name);
    v.text({"note", "Note", "Where its values come from."}, x.note);
    list(v, {{"lenses", "Lenses", "Generic lenses."}, "lens", 500}, x.lenses);
    list(v, {{"surfaces", "Surfaces", "Generic screen surfaces."}, "surface", 200}, x.surfaces);
    list(v, {{"loudspeakers", "Loudspeakers", "Generic loudspeakers."}, "loudspeaker", 200},
         x.loudspeakers);
    list(v, {{"sheets", "Sheets", "Generic screen sheets by their holes."}, "sheet", 200},
         x.sheets);
}

void check_series(const Series& series, Findings& out) {
    for (std::size_t i = 0; i < series.lenses.size(); ++i)
        check_lens(series.lenses[i], at("lenses", i), out);
    for (std::size_t i = 0; i < series.surfaces.size(); ++i)
        check_surface(series.surfaces[i], at("surfaces", i), out);
    for (std::size_t i = 0; i < series.loudspeakers.size(); ++i)
        check_loudspeaker(series.loudspeakers[i], at("loudspeakers", i), out);
    for (std::size_t i = 0; i < series.sheets.size(); ++i)
        check_perforation(series.sheets[i].perforation, at("sheets", i) + ".perforation", out);
    check_names("lenses", series.lenses, out);
    check_names("surfaces", series.surfaces, out);
    check_names("loudspeakers", series.loudspeakers, out);
    check_names("sheets", series.sheets, out);
}

}  // namespace

base::Result<Series> read_series(std::string_view json, const std::string& file_name) {
    ProblemList problems(file_name);
    const auto root = document_root(json, file_name, kSeriesHead, problems);
    Series series;
    if (root) {
        read_fields(*root, kSeriesHead, problems, [&](auto& v) { describe_series(v, series); });
    }
    if (!problems.empty()) return std::move(problems).take();
    Findings found;
    check_series(series, found);
    problems.add_found(std::move(found.problems), *root);
    if (!problems.empty()) return std::move(problems).take();
    return series;
}

}  // namespace rakeline::room
