// SPDX-License-Identifier: MIT
#include "base/files.hpp"

#include <doctest/doctest.h>

#include <filesystem>
#include <fstream>

using namespace rakeline::base;
namespace fs = std::filesystem;

namespace {

/// A folder of the test's own, empty at the start and gone at the end.
class Folder {
public:
    Folder() : path_(fs::path(RAKELINE_BINARY_DIR) / "files_test") {
        fs::remove_all(path_);
        fs::create_directories(path_);
    }
    ~Folder() { fs::remove_all(path_); }
    Folder(const Folder&) = delete;
    Folder& operator=(const Folder&) = delete;

    std::string file(const char* name) const { return (path_ / name).string(); }
    std::ptrdiff_t entries() const {
        return std::distance(fs::directory_iterator(path_), fs::directory_iterator());
    }

private:
    fs::path path_;
};

}  // namespace

TEST_SUITE("base/files") {
    TEST_CASE("round trip: bytes come back as they were written, whatever they are") {
        const Folder folder;
        const std::string bytes("a\r\n\0\xff z", 7);
        CHECK(write_file(folder.file("a"), bytes).empty());
        const auto read = read_text_file(folder.file("a"));
        REQUIRE(read);
        CHECK(*read == bytes);
    }

    TEST_CASE("writing replaces the old file and leaves nothing beside it") {
        const Folder folder;
        CHECK(write_file(folder.file("a"), "a longer text").empty());
        CHECK(write_file(folder.file("a"), "short").empty());
        CHECK(*read_text_file(folder.file("a")) == "short");
        CHECK(folder.entries() == 1);
    }

    TEST_CASE("refuses: a target that can't be replaced, which stays, with nothing beside it") {
        const Folder folder;
        // A folder that is not empty can't be renamed over.
        fs::create_directories(folder.file("a"));
        REQUIRE(write_file(folder.file("a") + "/inside", "x").empty());
        const Problems problems = write_file(folder.file("a"), "text");
        REQUIRE(problems.size() == 1);
        CHECK(problems.front().file == folder.file("a"));
        CHECK(problems.front().what.starts_with("can't be replaced: "));
        CHECK(*read_text_file(folder.file("a") + "/inside") == "x");
        CHECK(folder.entries() == 1);
    }

    TEST_CASE("refuses: a folder that is not there") {
        const Folder folder;
        const Problems problems = write_file(folder.file("no/such/a"), "text");
        REQUIRE(problems.size() == 1);
        CHECK(problems.front().what.starts_with("can't be written: "));
        CHECK(folder.entries() == 0);
    }

    TEST_CASE("refuses: to read what is missing, a folder, or far too large") {
        const Folder folder;
        const auto missing = read_text_file(folder.file("a"));
        REQUIRE_FALSE(missing);
        CHECK(missing.problems().front().file == folder.file("a"));
        CHECK(missing.problems().front().what == "can't be opened");

        const auto directory = read_text_file(folder.file(""));
        REQUIRE_FALSE(directory);
        CHECK(directory.problems().front().what == "is a folder");

        std::ofstream(folder.file("large")) << "x";
        fs::resize_file(folder.file("large"), 64u * 1024u * 1024u + 1u);
        const auto large = read_text_file(folder.file("large"));
        REQUIRE_FALSE(large);
        CHECK(large.problems().front().what == "is larger than 64 MiB");
    }

    TEST_CASE("a name is seen from the folder of the file that mentions it") {
        CHECK(path_beside("rooms/a.json", "practice/b.json") == "rooms/practice/b.json");
        CHECK(path_beside("a.json", "b.json") == "b.json");
        CHECK(path_beside("rooms/a.json", "/etc/b.json") == "/etc/b.json");
    }
}
