// SPDX-License-Identifier: MIT
#pragma once

#include "base/quantity_text.hpp"
#include "room/layout.hpp"

#include <map>
#include <optional>
#include <string>

/// Private to study/: how a projector makes a format, member by member in the words of room/fields.
namespace rakeline::study {

struct UseField {
    std::string path;   ///< "projectors[0].formats[2].gate_width_m"
    std::string label;  ///< as in the window's editor
    std::optional<double> si;
    base::Unit unit = base::Unit::ratio;
    std::string text;  ///< of a member that holds words
};

/// By key: "lens", "gate_width_m", ... Numbers that a use leaves open have no `si`.
using UseFields = std::map<std::string, UseField>;

/// Members of projectors[projector].formats[use], both of which are there.
UseFields use_fields(const room::Layout& layout, int projector, int use);

/// Index in the projector's formats of its use for this format; nothing if it has none.
std::optional<int> find_use(const room::Layout& layout, int projector, int format);

}  // namespace rakeline::study
