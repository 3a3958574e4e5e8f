// SPDX-License-Identifier: MIT
#include "desk/recovery.hpp"

#include "base/files.hpp"
#include "base/number_text.hpp"
#include "desk/settings.hpp"
#include "room/layout_file.hpp"

#include <csignal>
#include <filesystem>
#include <unistd.h>

namespace rakeline::desk {
namespace {

namespace fs = std::filesystem;

std::string folder() {
    const std::string config = config_folder();
    return config.empty() ? config : config + "/unsaved";
}

std::string copy_of(const std::string& process) {
    return folder() + "/" + process + ".json";
}

std::string note_of(const std::string& process) {
    return folder() + "/" + process + ".path";
}

std::string own_process() {
    return std::to_string(::getpid());
}

bool runs(const std::string& process) {
    const auto number = base::parse_number(process);
    return number && ::kill(static_cast<pid_t>(*number), 0) == 0;
}

void remove_pair(const std::string& process) {
    std::error_code failed;
    fs::remove(copy_of(process), failed);
    fs::remove(note_of(process), failed);
}

}  // namespace

void write_recovery(const room::Layout& layout, const std::string& original) {
    if (folder().empty()) return;
    std::error_code failed;
    fs::create_directories(folder(), failed);
    const auto note = base::write_file(note_of(own_process()), original);
    if (note.empty()) (void)base::write_file(copy_of(own_process()), room::write_layout(layout));
}

void drop_recovery() {
    if (!folder().empty()) remove_pair(own_process());
}

std::optional<RecoveryCopy> find_recovery() {
    if (folder().empty()) return {};
    std::error_code failed;
    fs::directory_iterator entries(folder(), failed);
    for (; !failed && entries != fs::directory_iterator(); entries.increment(failed)) {
        const fs::path& path = entries->path();
        const std::string process = path.stem().string();
        if (path.extension() != ".json" || runs(process)) continue;
        const auto original = base::read_text_file(note_of(process));
        return RecoveryCopy{path.string(), original ? *original : std::string{}};
    }
    return {};
}

void drop_recovery(const RecoveryCopy& copy) {
    remove_pair(fs::path(copy.copy).stem().string());
}

}  // namespace rakeline::desk
