// SPDX-License-Identifier: MIT
#pragma once

#include "base/files.hpp"
#include "study/study.hpp"

#include <doctest/doctest.h>

#include <memory>
#include <string>

/// The four demo rooms, opened as a user would.
namespace rakeline::tests {

inline constexpr const char* kDemoRooms[] = {"converted-hall-96", "steep-240", "grand-620",
                                             "screening-24"};

inline std::string demo_path(const std::string& name) {
    return std::string(RAKELINE_SOURCE_DIR) + "/layouts/" + name + ".json";
}

inline std::shared_ptr<const room::Brief> demo_brief(const std::string& name) {
    auto brief = study::open_room(demo_path(name), base::read_text_file);
    if (!brief) FAIL(base::text(brief.problems()));
    return std::make_shared<const room::Brief>(std::move(*brief));
}

}  // namespace rakeline::tests
