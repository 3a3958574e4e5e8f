// SPDX-License-Identifier: MIT
#pragma once

#include "base/result.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

/// JSON text as a tree in which every value knows its line, so that a problem found anywhere later
/// can say where in the file it stands.
namespace rakeline::room {

struct JsonNode {
    enum class Kind { null, boolean, number, text, list, object };

    Kind kind = Kind::null;
    int line = 0;                   ///< 1-based; of the key for members of an object
    bool truth = false;             ///< of a boolean
    double number = 0.0;            ///< finite
    std::string text;               ///< of a text; of a number its digits as they stand in the file
    std::vector<std::string> keys;  ///< of an object, beside items
    std::vector<JsonNode> items;    ///< of a list or object, in file order

    /// The first member called `key`; null pointer if there is none.
    const JsonNode* member(std::string_view key) const;
};

/// "a number", "a text", ...: for sentences.
const char* kind_name(JsonNode::Kind kind);

/// What text gave: a tree where it could be read to its end, and the problems met on the way. Both
/// at once where keys are doubled: the tree then has the member twice, and member() the first.
struct JsonText {
    std::optional<JsonNode> root;
    base::Problems problems;
};

/// Refuses, each in its own words: text that is not UTF-8, ends too early or breaks JSON's rules,
/// numbers beyond a double, NaN and infinities, nesting deeper than 32 levels, more than 200,000
/// values, doubled keys.
JsonText parse_json(std::string_view text, const std::string& file_name);

/// Line of the value at `path` ("seating[1].rows"), or of the nearest part of the path that exists.
int line_of(const JsonNode& root, std::string_view path);

}  // namespace rakeline::room
