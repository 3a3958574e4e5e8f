// SPDX-License-Identifier: MIT
#include "base/files.hpp"

#include <cerrno>
#include <cstdio>
#include <cstring>
#include <filesystem>
#include <fstream>
#include <unistd.h>

namespace rakeline::base {
namespace {

namespace fs = std::filesystem;
constexpr std::uintmax_t kLargestFile = 64u * 1024u * 1024u;

Problem problem(const std::string& path, std::string what, std::string mend) {
    return {.file = path, .line = 0, .where = {}, .what = std::move(what), .mend = std::move(mend)};
}

/// Writes and flushes to the disk; false with errno set where any step fails.
bool write_through(const std::string& path, std::string_view bytes) {
    std::FILE* file = std::fopen(path.c_str(), "wb");
    if (!file) return false;
    const bool written = std::fwrite(bytes.data(), 1, bytes.size(), file) == bytes.size() &&
                         std::fflush(file) == 0 && ::fsync(::fileno(file)) == 0;
    const int error = errno;
    const bool closed = std::fclose(file) == 0;
    if (!written) errno = error;
    return written && closed;
}

}  // namespace

Result<std::string> read_text_file(const std::string& path) {
    std::error_code error;
    if (fs::is_directory(path, error)) {
        return problem(path, "is a folder", "name a layout file inside it");
    }
    std::ifstream file(path, std::ios::binary);
    if (!file) return problem(path, "can't be opened", "check the name and that it may be read");
    const auto size = fs::file_size(path, error);
    if (!error && size > kLargestFile) {
        return problem(path, "is larger than 64 MiB", "a layout is far smaller; name another file");
    }
    std::string bytes((std::istreambuf_iterator<char>(file)), std::istreambuf_iterator<char>());
    if (file.bad()) return problem(path, "can't be read to its end", "check the disk");
    return bytes;
}

Problems write_file(const std::string& path, std::string_view bytes) {
    const std::string beside = path + ".part" + std::to_string(::getpid());
    const auto failed = [&](const std::string& step) {
        const std::string reason = std::strerror(errno);
        std::error_code ignored;
        fs::remove(beside, ignored);
        return Problems{problem(path, "can't be " + step + ": " + reason,
                                "check the folder and the free space; the old file is untouched")};
    };
    if (!write_through(beside, bytes)) return failed("written");
    if (std::rename(beside.c_str(), path.c_str()) != 0) return failed("replaced");
    return {};
}

std::string path_beside(const std::string& beside, const std::string& name) {
    const fs::path path(name);
    return path.is_absolute() ? name : (fs::path(beside).parent_path() / path).string();
}

std::string path_seen_from(const std::string& from,
                           const std::string& name,
                           const std::string& to) {
    if (fs::path(name).is_absolute()) return name;
    std::error_code failed;
    const fs::path file = fs::absolute(path_beside(from, name), failed);
    const fs::path seen = fs::relative(file, fs::absolute(to, failed).parent_path(), failed);
    return failed || seen.empty() ? name : seen.generic_string();
}

}  // namespace rakeline::base
