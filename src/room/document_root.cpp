// SPDX-License-Identifier: MIT
#include "room/document_root.hpp"

#include "base/assert.hpp"
#include "room/object_reader.hpp"

#include <array>

namespace rakeline::room {
namespace {

struct FileKind {
    std::string_view head;
    const char* name;
};
constexpr auto kKinds = std::to_array<FileKind>({
    {kLayoutHead, "a layout"},
    {kLimitsHead, "a set of limits"},
    {kSeriesHead, "a catalogue of series"},
});

const char* name_of_kind(std::string_view head) {
    for (const FileKind& kind : kKinds)
        if (kind.head == head) return kind.name;
    RL_ASSERT(false);
    return "";
}

void refuse_missing_head(const JsonNode& root, const char* head, ProblemList& problems) {
    const std::string wanted = name_of_kind(head);
    for (const FileKind& kind : kKinds) {
        if (!root.member(kind.head)) continue;
        problems.add(root.line, {}, std::string("this file is ") + kind.name + ", not " + wanted,
                     "name another file");
        return;
    }
    problems.add(root.line, head, "is missing, so this is not " + wanted + " of ours",
                 std::string("name another file, or add \"") + head + "\": 1 as its first member");
}

bool is_version_1(const JsonNode& version, const char* head, ProblemList& problems) {
    if (version.kind != JsonNode::Kind::number) {
        problems.add(version.line, head, wrong_kind(version, JsonNode::Kind::number), "write 1");
        return false;
    }
    if (version.number == 1.0) return true;
    const bool newer = version.number > 1.0;
    problems.add(version.line, head,
                 "version " + version.text +
                     (newer ? " is newer than version 1, which this program reads"
                            : " never was; the first version is 1"),
                 newer ? "open it with a newer program" : "write 1");
    return false;
}

}  // namespace

std::optional<JsonNode> document_root(std::string_view json,
                                      const std::string& file_name,
                                      const char* head,
                                      ProblemList& problems) {
    JsonText read = parse_json(json, file_name);
    problems.add(std::move(read.problems));
    if (!read.root) return std::nullopt;
    if (read.root->kind != JsonNode::Kind::object) {
        problems.add(read.root->line, {}, wrong_kind(*read.root, JsonNode::Kind::object),
                     "write the members between { and }");
        return std::nullopt;
    }
    const JsonNode* version = read.root->member(head);
    if (!version) {
        refuse_missing_head(*read.root, head, problems);
        return std::nullopt;
    }
    if (!is_version_1(*version, head, problems)) return std::nullopt;
    return std::move(read.root);
}

}  // namespace rakeline::room
