// SPDX-License-Identifier: MIT
#include "desk/settings.hpp"

#include "desk/file_browser.hpp"
#include "desk/triangulate.hpp"
#include "support/check.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <fstream>

namespace rakeline::desk {
namespace {

using tests::absolute;
using tests::check_close;

double area(const std::vector<glm::dvec2>& p) {
    double sum = 0.0;
    for (const auto& [a, b, c] : triangulate(p))
        sum += std::abs((p[b].x - p[a].x) * (p[c].y - p[a].y) -
                        (p[c].x - p[a].x) * (p[b].y - p[a].y)) /
               2.0;
    return sum;
}

}  // namespace

TEST_SUITE_BEGIN("desk/settings");

TEST_CASE("round trip: settings read back as they were") {
    Settings settings;
    settings.units = base::UnitSystem::imperial;
    settings.paper = true;
    settings.text_scale = 1.2f;
    settings.folder = "/rooms with spaces";
    settings.recent = {"/a/b.json", "/c d/e.json"};
    const Settings again = parse_settings(settings_text(settings));
    CHECK(again == settings);
}

TEST_CASE("lines that are not understood are passed over") {
    const Settings settings = parse_settings("nonsense\nunits imperial\ntext_scale 99\ncolour x\n");
    CHECK(settings.units == base::UnitSystem::imperial);
    CHECK(settings.text_scale == 1.6f);
}

TEST_CASE("a file opened again moves to the head of the recent ones, and they stay few") {
    Settings settings;
    for (int i = 0; i < 12; ++i)
        add_recent(settings, std::to_string(i));
    add_recent(settings, "7");
    CHECK(settings.recent.front() == "7");
    CHECK(settings.recent.size() == kRecentMost);
    CHECK(std::count(settings.recent.begin(), settings.recent.end(), "7") == 1);
}

TEST_CASE("a folder lists its folders and the files with the ending, hidden ones left out") {
    const std::filesystem::path folder =
        std::filesystem::path(RAKELINE_BINARY_DIR) / "desk_listing_test";
    std::filesystem::create_directories(folder / "inner");
    for (const char* name : {"b.json", "a.json", "c.txt", ".hidden.json"})
        std::ofstream(folder / name) << "{}";
    const FolderListing listing = list_folder(folder.string(), ".json");
    CHECK(listing.folders == std::vector<std::string>{"inner"});
    CHECK(listing.files == std::vector<std::string>{"a.json", "b.json"});
    CHECK(listing.error.empty());
    std::filesystem::remove_all(folder);
    CHECK_FALSE(list_folder(folder.string(), ".json").error.empty());
}

TEST_CASE("typed paths are seen from the folder, absolute ones stay") {
    CHECK(typed_path("/rooms", "a.json") == "/rooms/a.json");
    CHECK(typed_path("/rooms", "../b/c.json") == "/b/c.json");
    CHECK(typed_path("/rooms", "/d.json") == "/d.json");
    CHECK(with_ending("/rooms/a", ".json") == "/rooms/a.json");
    CHECK(with_ending("/rooms/a.txt", ".json") == "/rooms/a.txt");
    CHECK(folder_above("/rooms/inner") == "/rooms");
    CHECK(folder_above("/") == "/");
}

TEST_CASE("triangles of a hollow polygon cover its area once, in either direction") {
    std::vector<glm::dvec2> steps{{0, 0}, {6, 0}, {6, 3}, {4, 3}, {4, 2}, {2, 2}, {2, 1}, {0, 1}};
    check_close(area(steps), 12.0, absolute(1e-12, "whole numbers"));
    std::reverse(steps.begin(), steps.end());
    check_close(area(steps), 12.0, absolute(1e-12, "whole numbers"));
    CHECK(triangulate(steps).size() == steps.size() - 2);
}

TEST_SUITE_END();

}  // namespace rakeline::desk
