// SPDX-License-Identifier: MIT
#include "desk/file_browser.hpp"

#include <algorithm>
#include <cstdlib>
#include <filesystem>

namespace rakeline::desk {
namespace fs = std::filesystem;

FolderListing list_folder(const std::string& folder, const std::string& ending) {
    FolderListing listing;
    std::error_code failed;
    fs::directory_iterator entries(folder, failed);
    for (; !failed && entries != fs::directory_iterator(); entries.increment(failed)) {
        const std::string name = entries->path().filename().string();
        if (name.empty() || name.front() == '.') continue;
        std::error_code unreadable;
        if (entries->is_directory(unreadable))
            listing.folders.push_back(name);
        else if (name.ends_with(ending) && !name.ends_with(".schema.json"))
            listing.files.push_back(name);
    }
    if (failed) listing.error = failed.message();
    std::sort(listing.folders.begin(), listing.folders.end());
    std::sort(listing.files.begin(), listing.files.end());
    return listing;
}

std::string folder_above(const std::string& folder) {
    const fs::path path = fs::path(folder).lexically_normal();
    const fs::path clean = path.has_filename() ? path : path.parent_path();
    const fs::path above = clean.parent_path();
    return above.empty() ? clean.string() : above.string();
}

std::string layouts_folder() {
    std::error_code failed;
    const fs::path program = fs::read_symlink("/proc/self/exe", failed).parent_path();
    for (const fs::path& folder :
         {fs::current_path(failed) / "layouts", program / "layouts", program / "../layouts",
          program / "../share/rakeline/layouts", fs::path("/usr/share/rakeline/layouts")})
        if (fs::exists(folder / "practice", failed)) return folder.lexically_normal().string();
    return {};
}

std::string readable_folder(const std::string& wanted) {
    std::error_code failed;
    if (!wanted.empty() && fs::is_directory(wanted, failed))
        return fs::absolute(wanted, failed).lexically_normal().string();
    const std::string layouts = layouts_folder();
    return layouts.empty() ? fs::current_path(failed).string() : layouts;
}

std::string typed_path(const std::string& folder, const std::string& typed) {
    if (typed.empty()) return {};
    const char* home = std::getenv("HOME");
    if (typed.starts_with("~/") && home) return std::string(home) + typed.substr(1);
    return (fs::path(folder) / typed).lexically_normal().string();
}

std::string with_ending(const std::string& path, const std::string& ending) {
    return fs::path(path).has_extension() ? path : path + ending;
}

}  // namespace rakeline::desk
