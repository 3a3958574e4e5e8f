// SPDX-License-Identifier: MIT
#include "desk/settings.hpp"

#include "base/files.hpp"
#include "base/number_text.hpp"

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <sstream>

namespace rakeline::desk {
namespace {

constexpr const char* kFileName = "settings";

void read_line(Settings& settings, const std::string& key, const std::string& value) {
    if (key == "units")
        settings.units =
            value == "imperial" ? base::UnitSystem::imperial : base::UnitSystem::metric;
    else if (key == "theme")
        settings.paper = value == "paper";
    else if (key == "folder")
        settings.folder = value;
    else if (key == "recent" && settings.recent.size() < kRecentMost)
        settings.recent.push_back(value);
    else if (const auto number = base::parse_number(value); key == "text_scale" && number)
        settings.text_scale = static_cast<float>(std::clamp(*number, 0.8, 1.6));
}

}  // namespace

void add_recent(Settings& settings, const std::string& path) {
    std::erase(settings.recent, path);
    settings.recent.insert(settings.recent.begin(), path);
    if (settings.recent.size() > kRecentMost) settings.recent.resize(kRecentMost);
}

std::string settings_text(const Settings& settings) {
    std::string text;
    text += std::string("units ") +
            (settings.units == base::UnitSystem::imperial ? "imperial" : "metric") + "\n";
    text += std::string("theme ") + (settings.paper ? "paper" : "dark") + "\n";
    text += "text_scale " + base::fixed_text(static_cast<double>(settings.text_scale), 2) + "\n";
    if (!settings.folder.empty()) text += "folder " + settings.folder + "\n";
    for (const std::string& path : settings.recent)
        text += "recent " + path + "\n";
    return text;
}

Settings parse_settings(std::string_view text) {
    Settings settings;
    std::istringstream lines{std::string(text)};
    for (std::string line; std::getline(lines, line);) {
        const std::size_t space = line.find(' ');
        if (space == std::string::npos) continue;
        read_line(settings, line.substr(0, space), line.substr(space + 1));
    }
    return settings;
}

std::string config_folder() {
    if (const char* config = std::getenv("XDG_CONFIG_HOME"); config && *config)
        return std::string(config) + "/rakeline";
    if (const char* home = std::getenv("HOME"); home && *home)
        return std::string(home) + "/.config/rakeline";
    return {};
}

Settings load_settings() {
    const std::string folder = config_folder();
    if (folder.empty()) return {};
    const auto text = base::read_text_file(folder + "/" + kFileName);
    return text ? parse_settings(*text) : Settings{};
}

base::Problems save_settings(const Settings& settings) {
    const std::string folder = config_folder();
    if (folder.empty()) return {};
    std::error_code failed;
    std::filesystem::create_directories(folder, failed);
    return base::write_file(folder + "/" + kFileName, settings_text(settings));
}

}  // namespace rakeline::desk
