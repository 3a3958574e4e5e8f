// SPDX-License-Identifier: MIT
#include "base/files.hpp"
#include "base/nearest_name.hpp"
#include "command/verbs.hpp"
#include "room/layout_file.hpp"

#include <ctime>
#include <filesystem>
#include <iostream>

namespace rakeline::command {
namespace {

using Chosen = base::Result<std::optional<int>>;

Chosen choose(const std::vector<std::string>& names, const std::string& name, const char* kind) {
    if (name.empty()) return std::optional<int>();
    for (std::size_t i = 0; i < names.size(); ++i) {
        if (names[i] == name) return std::optional<int>(static_cast<int>(i));
    }
    const std::string near = base::nearest_name(name, names);
    std::string all;
    for (std::size_t i = 0; i < names.size() && i < 12; ++i) {
        all += (i ? ", " : "") + ("'" + names[i] + "'");
    }
    return base::Problem{.file = {},
                         .line = 0,
                         .where = {},
                         .what = std::string("there is no ") + kind + " '" + name + "'",
                         .mend = near.empty() ? "there are " + all
                                              : "did you mean '" + near + "'? There are " + all};
}

template <class List>
std::vector<std::string> names_of(const List& list) {
    std::vector<std::string> out;
    for (const auto& item : list)
        out.push_back(item.name);
    return out;
}

}  // namespace

int refuse(const base::Problems& problems) {
    std::cerr << base::text(problems);
    return kBadInput;
}

int refuse(const std::string& what, const std::string& mend) {
    return refuse({{.file = {}, .line = 0, .where = {}, .what = what, .mend = mend}});
}

base::Result<study::Study> study_file(const std::string& path) {
    base::Result<room::Brief> brief = study::open_room(path, base::read_text_file);
    if (!brief) return brief.problems();
    return study::compute_study(std::make_shared<const room::Brief>(std::move(*brief)));
}

Chosen choose_format(const room::Layout& layout, const std::string& name) {
    return choose(names_of(layout.formats), name, "format");
}

Chosen choose_projector(const room::Layout& layout, const std::string& name) {
    return choose(names_of(layout.projectors), name, "projector");
}

Chosen choose_loudspeaker(const room::Layout& layout, const std::string& name) {
    return choose(names_of(layout.loudspeakers), name, "loudspeaker");
}

Chosen choose_seat(const study::Study& study, const std::string& name) {
    if (name.empty()) return std::optional<int>();
    if (const auto seat = room::find_seat(study.seats, name)) return seat;
    return choose(names_of(study.seats.seats), name, "seat");
}

Chosen choose_row(const study::Study& study, const std::string& letter) {
    std::vector<std::string> letters;
    const study::FigureDefinition* by_row = study::find_definition("sight.c_value");
    for (std::size_t i = 0; i < study.seats.rows.size(); ++i) {
        letters.push_back(study::index_name(study, *by_row, static_cast<int>(i)));
    }
    return choose(letters, letter, "row");
}

int put_output(const std::string& where, const std::string& bytes) {
    if (where == "-") {
        std::cout << bytes << std::flush;
        return std::cout ? kDone : refuse("standard output can't be written", "check the pipe");
    }
    const base::Problems problems = base::write_file(where, bytes);
    return problems.empty() ? kDone : refuse(problems);
}

std::string today() {
    const std::time_t now = std::time(nullptr);
    std::tm local{};
    ::localtime_r(&now, &local);
    char buffer[16];
    std::strftime(buffer, sizeof buffer, "%Y-%m-%d", &local);
    return buffer;
}

int put_layout(room::Layout layout, const std::string& from, const std::string& output) {
    layout.limits_file = base::path_seen_from(from, layout.limits_file, output);
    const base::Problems problems = base::write_file(output, room::write_layout(layout));
    return problems.empty() ? kDone : refuse(problems);
}

std::string sheet_series(const std::string& layout_path) {
    return (std::filesystem::path(layout_path).parent_path() / "series" / "perforations.json")
        .string();
}

bool same_file(const std::string& a, const std::string& b) {
    std::error_code none;
    return std::filesystem::equivalent(a, b, none);
}

base::UnitSystem unit_system(bool imperial) {
    return imperial ? base::UnitSystem::imperial : base::UnitSystem::metric;
}

}  // namespace rakeline::command
