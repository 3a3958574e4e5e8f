// SPDX-License-Identifier: MIT
#pragma once

#include "base/quantity_text.hpp"
#include "base/result.hpp"

#include <string>
#include <string_view>
#include <vector>

/// What the window remembers between runs, in the user's configuration folder.
namespace rakeline::desk {

struct Settings {
    base::UnitSystem units = base::UnitSystem::metric;
    bool paper = false;               ///< light theme
    float text_scale = 1.0f;          ///< 0.8 to 1.6, on top of the display's own
    std::string folder;               ///< last one opened from
    std::vector<std::string> recent;  ///< layout files, newest first

    bool operator==(const Settings&) const = default;
};

inline constexpr std::size_t kRecentMost = 8;

void add_recent(Settings& settings, const std::string& path);

/// One "key value" line each; lines that are not understood are passed over.
std::string settings_text(const Settings& settings);
Settings parse_settings(std::string_view text);

/// $XDG_CONFIG_HOME/rakeline, or ~/.config/rakeline; empty where neither is known.
std::string config_folder();

Settings load_settings();
base::Problems save_settings(const Settings& settings);

}  // namespace rakeline::desk
