// SPDX-License-Identifier: MIT
#include "room/layout_file.hpp"

#include "room/document_root.hpp"
#include "room/field_reader.hpp"
#include "room/field_writer.hpp"

namespace rakeline::room {

base::Result<Layout> read_layout(std::string_view json, const std::string& file_name) {
    ProblemList problems(file_name);
    const auto root = document_root(json, file_name, kLayoutHead, problems);
    Layout layout;
    if (root) read_fields(*root, kLayoutHead, problems, [&](auto& v) { describe(v, layout); });
    if (!problems.empty()) return std::move(problems).take();
    problems.add_found(check_layout(layout), *root);
    if (!problems.empty()) return std::move(problems).take();
    return layout;
}

std::string write_layout(const Layout& layout) {
    Layout copy = layout;
    return written_fields(kLayoutHead, [&](FieldVisitor& v) { describe(v, copy); });
}

}  // namespace rakeline::room
