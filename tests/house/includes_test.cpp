// SPDX-License-Identifier: MIT
/// The arrows between folders, held against every #include line of src/.
#include <doctest/doctest.h>

#include <filesystem>
#include <fstream>
#include <map>
#include <regex>
#include <set>
#include <string>
#include <vector>

namespace {

namespace fs = std::filesystem;
using Names = std::set<std::string>;

const fs::path kSource = fs::path(RAKELINE_SOURCE_DIR) / "src";

/// Which folders a folder may include, itself apart. The same table stands in DEVELOPERS.md.
const std::map<std::string, Names>& arrows() {
    static const Names subjects = {"picture", "room", "geometry", "base"};
    static const Names below_study = {"study",   "light", "sight",    "sound",
                                      "picture", "room",  "geometry", "base"};
    static const auto plus = [](Names names, const Names& more) {
        names.insert(more.begin(), more.end());
        return names;
    };
    static const std::map<std::string, Names> table = {
        {"base", {}},
        {"geometry", {"base"}},
        {"room", {"geometry", "base"}},
        {"picture", {"room", "geometry", "base"}},
        {"light", subjects},
        {"sight", subjects},
        {"sound", subjects},
        {"study", plus(subjects, {"light", "sight", "sound"})},
        {"drawing", below_study},
        {"report", plus(below_study, {"drawing"})},
        {"view", plus(below_study, {"drawing"})},
        {"desk", plus(below_study, {"drawing", "report", "view"})},
        {"command", plus(below_study, {"drawing", "report", "view"})},
    };
    return table;
}

/// Libraries and where their headers may be named: folders, or single files.
const std::vector<std::pair<std::regex, Names>>& fences() {
    static const std::vector<std::pair<std::regex, Names>> table = {
        {std::regex("^(imgui.*|GLFW/.*|backends/.*)$"), {"desk"}},
        {std::regex("^(epoxy|GL|EGL)/.*$"), {"view", "desk"}},
        {std::regex("^(cairo.*|pango.*|fontconfig.*)$"), {"report"}},
        // Documents in room; out of study one file a thing that verbs hand on as JSON.
        {std::regex("^nlohmann/.*$"),
         {"room", "study/study_json.cpp", "study/lens_json.cpp", "study/change_json.cpp",
          "study/rake_json.cpp", "study/crowd_json.cpp", "study/width_json.cpp",
          "study/meter_json.cpp", "study/curve_json.cpp", "study/perforation_json.cpp"}},
        {std::regex("^(unsupported/)?Eigen/.*$"), {"light/meter_solve.cpp"}},
        {std::regex("^CLI/.*$"), {"command"}},
    };
    return table;
}

struct Include {
    std::string file;    ///< below src/, with slashes
    std::string folder;  ///< its first part
    std::string target;
    bool ours = false;  ///< in quotes
};

std::vector<Include> all_includes() {
    static const std::regex line_form("^\\s*#\\s*include\\s*([<\"])([^>\"]+)[>\"].*$");
    std::vector<Include> out;
    for (const auto& entry : fs::recursive_directory_iterator(kSource)) {
        const std::string extension = entry.path().extension().string();
        if (extension != ".cpp" && extension != ".hpp") continue;
        const std::string file = fs::relative(entry.path(), kSource).generic_string();
        std::ifstream text(entry.path());
        for (std::string line; std::getline(text, line);) {
            std::smatch m;
            if (!std::regex_match(line, m, line_form)) continue;
            out.push_back({file, file.substr(0, file.find('/')), m[2], m[1] == "\""});
        }
    }
    return out;
}

std::string first_part(const std::string& path) {
    return path.substr(0, path.find('/'));
}

}  // namespace

TEST_SUITE("house/includes") {
    TEST_CASE("every folder includes only what stands below it") {
        const std::vector<Include> includes = all_includes();
        REQUIRE(includes.size() > 100);
        for (const Include& include : includes) {
            if (!include.ours || include.folder == "main.cpp") continue;
            const std::string target = first_part(include.target);
            INFO(include.file, " includes ", include.target);
            REQUIRE(arrows().count(include.folder) == 1);
            CHECK((target == include.folder || arrows().at(include.folder).count(target) == 1));
        }
    }

    TEST_CASE("libraries are named only where their folder is") {
        for (const Include& include : all_includes()) {
            for (const auto& [form, places] : fences()) {
                if (!std::regex_match(include.target, form)) continue;
                INFO(include.file, " includes ", include.target);
                CHECK((places.count(include.folder) == 1 || places.count(include.file) == 1));
            }
        }
    }

    TEST_CASE("the table has no cycle and no folder that is not there") {
        for (const auto& [folder, targets] : arrows()) {
            CHECK(fs::is_directory(kSource / folder));
            for (const std::string& target : targets)
                CHECK(arrows().at(target).count(folder) == 0);
        }
    }

    TEST_CASE("the computing folders open no files and read no clock") {
        static const Names computing = {"geometry", "room",  "picture", "light",
                                        "sight",    "sound", "study"};
        static const Names kept_out = {"fstream", "filesystem", "chrono", "random",
                                       "cstdio",  "thread",     "ctime",  "iostream"};
        for (const Include& include : all_includes()) {
            if (computing.count(include.folder) == 0) continue;
            INFO(include.file, " includes ", include.target);
            CHECK(kept_out.count(include.target) == 0);
        }
    }
}
