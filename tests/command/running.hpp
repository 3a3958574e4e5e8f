// SPDX-License-Identifier: MIT
#pragma once

#include "command/command.hpp"
#include "support/check.hpp"
#include "support/demo_rooms.hpp"

#include <filesystem>
#include <fstream>
#include <iostream>
#include <sstream>
#include <stdlib.h>  // mkdtemp, which is POSIX

/// Running the program's verbs in a test, and a folder for what they write.
namespace rakeline::tests {

namespace fs = std::filesystem;

/// What one run of the program gave.
struct Ran {
    int status = 0;
    std::string out;
    std::string err;
    std::string window;  ///< layout that the window was asked to open, or "none"
};

/// Sends a stream elsewhere for a while.
class Redirected {
public:
    Redirected(std::ostream& stream, std::ostream& to)
        : stream_(stream), before_(stream.rdbuf(to.rdbuf())) {}
    ~Redirected() { stream_.rdbuf(before_); }
    Redirected(const Redirected&) = delete;
    Redirected& operator=(const Redirected&) = delete;

private:
    std::ostream& stream_;
    std::streambuf* before_;
};

inline Ran ran(const std::vector<std::string>& words) {
    Ran result;
    result.window = "none";
    std::ostringstream out;
    std::ostringstream err;
    {
        const Redirected out_kept(std::cout, out);
        const Redirected err_kept(std::cerr, err);
        result.status = command::run(words, "1.2.3", [&](const std::string& layout) {
            result.window = layout;
            return 0;
        });
    }
    result.out = out.str();
    result.err = err.str();
    return result;
}

/// A folder of this test's own, gone afterwards. Its name is free when it is made, so that two
/// programs at once, as of two working trees, keep out of each other's files.
class Folder {
public:
    Folder() {
        std::string name = (fs::temp_directory_path() / "rakeline_command_XXXXXX").string();
        REQUIRE_MESSAGE(mkdtemp(name.data()) != nullptr, "no folder for the test's files");
        path_ = name;
    }
    ~Folder() {
        std::error_code left;
        fs::remove_all(path_, left);
    }
    Folder(const Folder&) = delete;
    Folder& operator=(const Folder&) = delete;
    std::string file(const std::string& name) const { return (path_ / name).string(); }
    std::string write(const std::string& name, const std::string& text) const {
        std::ofstream(file(name)) << text;
        return file(name);
    }
    static std::string read(const std::string& path) {
        std::ifstream in(path, std::ios::binary);
        return {std::istreambuf_iterator<char>(in), {}};
    }

private:
    fs::path path_;
};

inline bool has(const std::string& text, const std::string& part) {
    INFO("looking for '", part, "' in: ", text.substr(0, 2000));
    return text.find(part) != std::string::npos;
}

inline const std::string kHall = demo_path("converted-hall-96");
inline const std::string kScreening = demo_path("screening-24");

}  // namespace rakeline::tests
