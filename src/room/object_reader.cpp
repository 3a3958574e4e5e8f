// SPDX-License-Identifier: MIT
#include "room/object_reader.hpp"

#include "base/nearest_name.hpp"
#include "room/field_fault.hpp"

#include <algorithm>

namespace rakeline::room {
namespace {

using Kind = JsonNode::Kind;

/// The value and what it is.
std::string described(const JsonNode& node) {
    switch (node.kind) {
        case Kind::boolean:
            return std::string(node.truth ? "true" : "false") + " is no value here";
        case Kind::number:
            return node.text + " is a number";
        case Kind::text:
            return quoted(node.text) + " is a text";
        case Kind::null:
            return "null is no value here";
        case Kind::list:
            return "this is a list";
        case Kind::object:
            return "this is an object";
    }
    RL_ASSERT(false);
    return {};
}

std::string how_to_write(Kind kind) {
    switch (kind) {
        case Kind::number:
            return "write a number without quotes, or leave the member out";
        case Kind::text:
            return "write it in quotes";
        case Kind::boolean:
            return "write true or false";
        case Kind::list:
            return "write its entries between [ and ]";
        case Kind::object:
            return "write its members between { and }";
        case Kind::null:
            break;
    }
    RL_ASSERT(false);
    return {};
}

}  // namespace

std::string wrong_kind(const JsonNode& node, Kind wanted) {
    return described(node) + ", not " + kind_name(wanted);
}

ObjectReader::ObjectReader(const JsonNode& object, std::string path, ProblemList& problems)
    : object_(object), path_(std::move(path)), problems_(problems) {
    RL_ASSERT(object.kind == Kind::object);
}

std::string ObjectReader::path_of(std::string_view key) const {
    return path_.empty() ? std::string(key) : path_ + "." + std::string(key);
}

const JsonNode* ObjectReader::take(const char* key) {
    known_.emplace_back(key);
    return object_.member(key);
}

const JsonNode* ObjectReader::take_kind(const char* key, Kind kind) {
    const JsonNode* node = take(key);
    if (!node || node->kind == kind) return node;
    problems_.add(node->line, path_of(key), wrong_kind(*node, kind), how_to_write(kind));
    return nullptr;
}

std::optional<std::string> ObjectReader::text(const char* key) {
    const JsonNode* node = take_kind(key, Kind::text);
    if (!node) return std::nullopt;
    if (const auto fault = text_fault(node->text)) {
        refuse(key, fault->what, fault->mend);
        return std::nullopt;
    }
    return node->text;
}

std::optional<bool> ObjectReader::flag(const char* key) {
    const JsonNode* node = take_kind(key, Kind::boolean);
    return node ? std::optional(node->truth) : std::nullopt;
}

std::optional<std::size_t> ObjectReader::choice(const char* key,
                                                std::span<const char* const> names) {
    const JsonNode* node = take_kind(key, Kind::text);
    if (!node) return std::nullopt;
    const auto found = std::ranges::find(names, std::string_view(node->text));
    if (found != names.end()) return static_cast<std::size_t>(found - names.begin());
    refuse(key, quoted(node->text) + " is none of its choices", "write " + listed(names));
    return std::nullopt;
}

const JsonNode* ObjectReader::number(const char* key) {
    return take_kind(key, Kind::number);
}

const JsonNode* ObjectReader::list(const char* key) {
    return take_kind(key, Kind::list);
}

const JsonNode* ObjectReader::object(const char* key) {
    return take_kind(key, Kind::object);
}

void ObjectReader::refuse(const char* key, std::string what, std::string mend) {
    const JsonNode* node = object_.member(key);
    problems_.add(node ? node->line : object_.line, path_of(key), std::move(what), std::move(mend));
}

void ObjectReader::refuse_missing(const char* key, std::string mend) {
    if (!has(key)) refuse(key, "is missing", std::move(mend));
}

void ObjectReader::refuse_unknown() {
    for (std::size_t i = 0; i < object_.keys.size(); ++i) {
        const std::string& key = object_.keys[i];
        if (std::ranges::find(known_, key) != known_.end()) continue;
        // A key far longer than any name is near to none, and costs time to compare.
        const std::string near = key.size() > 100 ? "" : base::nearest_name(key, known_);
        problems_.add(object_.items[i].line, path_of(shortened(key)), "no member has this name",
                      near.empty() ? "take it out" : "did you mean " + near + "?");
    }
}

}  // namespace rakeline::room
