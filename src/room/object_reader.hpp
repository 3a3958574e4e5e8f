// SPDX-License-Identifier: MIT
#pragma once

#include "room/json_lines.hpp"
#include "room/problem_list.hpp"

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

/// Reads the members of one JSON object by name and type, and in the end refuses those that nobody
/// asked for. A member that is missing or of the wrong type reads as nothing; the latter is a
/// problem.
namespace rakeline::room {

class ObjectReader {
public:
    /// `object` must be of kind object; all three outlive the reader.
    ObjectReader(const JsonNode& object, std::string path, ProblemList& problems);

    /// The member, whatever it holds; it counts as known from now on.
    const JsonNode* take(const char* key);

    std::optional<std::string> text(const char* key);
    std::optional<bool> flag(const char* key);
    std::optional<std::size_t> choice(const char* key, std::span<const char* const> names);
    /// Nodes of the right kind, for values whose text or items the caller needs.
    const JsonNode* number(const char* key);
    const JsonNode* list(const char* key);
    const JsonNode* object(const char* key);

    bool has(const char* key) const { return object_.member(key) != nullptr; }
    std::string path_of(std::string_view key) const;
    void refuse(const char* key, std::string what, std::string mend);
    void refuse_missing(const char* key, std::string mend);
    void refuse_unknown();

private:
    const JsonNode* take_kind(const char* key, JsonNode::Kind kind);

    const JsonNode& object_;
    std::string path_;
    ProblemList& problems_;
    std::vector<std::string> known_;
};

/// "\"wide\" is a text, not a number", for a value that should have been of another kind.
std::string wrong_kind(const JsonNode& node, JsonNode::Kind wanted);

/// Calls `read(item, path, index)` for the items that are objects, and refuses the others.
template <class Read>
void for_each_object(const JsonNode& list,
                     const std::string& path,
                     ProblemList& problems,
                     const Read& read) {
    for (std::size_t i = 0; i < list.items.size(); ++i) {
        const JsonNode& item = list.items[i];
        const std::string item_path = path + "[" + std::to_string(i) + "]";
        if (item.kind == JsonNode::Kind::object) {
            read(item, item_path, i);
        } else {
            problems.add(item.line, item_path, wrong_kind(item, JsonNode::Kind::object),
                         "write its members between { and }");
        }
    }
}

}  // namespace rakeline::room
