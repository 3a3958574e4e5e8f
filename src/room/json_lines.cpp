// SPDX-License-Identifier: MIT
#include "room/json_lines.hpp"

#include "room/json_fault.hpp"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <charconv>
#include <numeric>

namespace rakeline::room {
namespace {

constexpr std::size_t kDeepest = 32;
constexpr std::size_t kMostValues = 200000;

/// Reads characters and counts lines: *line is the line of the character read last. The parser may
/// look one character past a number, and a line break belongs to the line that it ends, so this is
/// still the number's own line.
class CountingIterator {
public:
    using iterator_category = std::input_iterator_tag;
    using value_type = char;
    using difference_type = std::ptrdiff_t;
    using pointer = const char*;
    using reference = const char&;

    CountingIterator(const char* at, int* line) : at_(at), line_(line) {}
    reference operator*() const { return *at_; }
    CountingIterator& operator++() {
        if (after_break_) ++*line_;
        after_break_ = *at_ == '\n';
        ++at_;
        return *this;
    }
    CountingIterator operator++(int) {
        const CountingIterator before = *this;
        ++*this;
        return before;
    }
    bool operator==(const CountingIterator& other) const { return at_ == other.at_; }

private:
    const char* at_;
    int* line_;
    bool after_break_ = false;
};

/// Builds the tree as the parser meets its pieces.
class TreeBuilder {
public:
    using json = nlohmann::json;

    TreeBuilder(std::string_view text, const std::string& file, const int& line)
        : text_(text), file_(file), line_(line) {}

    JsonText finish(bool whole) {
        if (!whole) return {std::nullopt, std::move(problems_)};
        return {std::move(root_), std::move(problems_)};
    }

    bool null() { return add(of(JsonNode::Kind::null)); }
    bool boolean(bool value) {
        JsonNode node = of(JsonNode::Kind::boolean);
        node.truth = value;
        return add(std::move(node));
    }
    bool number_integer(std::int64_t value) {
        return add_number(static_cast<double>(value), std::to_string(value));
    }
    bool number_unsigned(std::uint64_t value) {
        return add_number(static_cast<double>(value), std::to_string(value));
    }
    bool number_float(double value, const std::string& digits) { return add_number(value, digits); }
    bool string(std::string& value) {
        JsonNode node = of(JsonNode::Kind::text);
        node.text = std::move(value);
        return add(std::move(node));
    }
    bool binary(json::binary_t&) { return false; }

    bool start_object(std::size_t) { return open(JsonNode::Kind::object); }
    bool start_array(std::size_t) { return open(JsonNode::Kind::list); }
    bool end_object() {
        find_doubled_keys(*open_.back());
        open_.pop_back();
        return true;
    }
    bool end_array() {
        open_.pop_back();
        return true;
    }
    bool key(std::string& name) {
        open_.back()->keys.push_back(std::move(name));
        key_line_ = line_;
        return true;
    }
    bool parse_error(std::size_t position, const std::string&, const json::exception& fault) {
        constexpr int kNumberOverflow = 406;
        problems_.push_back(fault.id == kNumberOverflow ? overflow(position)
                                                        : syntax_fault(text_, position, file_));
        return false;
    }

private:
    static JsonNode of(JsonNode::Kind kind) {
        JsonNode node;
        node.kind = kind;
        return node;
    }
    /// Places a value under the open parent. Pointers to open nodes stay good: a parent grows only
    /// while none of its children is open.
    bool add(JsonNode node) {
        if (++count_ > kMostValues)
            return refuse("holds more than 200000 values", "is far smaller");
        node.line = line_;
        if (open_.empty()) {
            root_ = std::move(node);
            return true;
        }
        JsonNode& parent = *open_.back();
        if (parent.kind == JsonNode::Kind::object) node.line = key_line_;
        parent.items.push_back(std::move(node));
        return true;
    }
    bool add_number(double value, std::string digits) {
        JsonNode node = of(JsonNode::Kind::number);
        node.number = value;
        node.text = std::move(digits);
        return add(std::move(node));
    }
    bool open(JsonNode::Kind kind) {
        if (open_.size() >= kDeepest) {
            return refuse("is nested deeper than 32 levels", "nests 6 at most");
        }
        if (!add(of(kind))) return false;
        open_.push_back(open_.empty() ? &*root_ : &open_.back()->items.back());
        return true;
    }
    bool refuse(const std::string& what, const std::string& truth) {
        problems_.push_back({file_, line_, {}, what, "a file of ours " + truth});
        return false;
    }
    base::Problem overflow(std::size_t position) const {
        const std::string word = word_before(text_, position);
        return {file_, line_, {}, word + " is too large for a number", "write a smaller number"};
    }
    void find_doubled_keys(const JsonNode& object) {
        std::vector<std::size_t> order(object.keys.size());
        std::iota(order.begin(), order.end(), std::size_t{0});
        std::ranges::stable_sort(order, {}, [&](std::size_t i) { return object.keys[i]; });
        for (std::size_t i = 1; i < order.size(); ++i) {
            const std::string& key = object.keys[order[i]];
            if (key != object.keys[order[i - 1]]) continue;
            const int first = object.items[order[i - 1]].line;
            problems_.push_back({file_, object.items[order[i]].line, path_to(key),
                                 "stands twice, first on line " + std::to_string(first),
                                 "keep one of the two"});
        }
    }
    /// Path of a member of the innermost open object.
    std::string path_to(const std::string& key) const {
        std::string path;
        for (std::size_t depth = 0; depth + 1 < open_.size(); ++depth) {
            const JsonNode& node = *open_[depth];
            if (node.kind == JsonNode::Kind::list) {
                path += "[" + std::to_string(node.items.size() - 1) + "]";
            } else {
                path += (path.empty() ? "" : ".") + node.keys.back();
            }
        }
        return path + (path.empty() ? "" : ".") + key;
    }

    std::string_view text_;
    const std::string& file_;
    const int& line_;
    std::optional<JsonNode> root_;
    std::vector<JsonNode*> open_;
    int key_line_ = 0;
    std::size_t count_ = 0;
    base::Problems problems_;
};

/// Takes the first step off `path` ("seating", then "[1]", then "rows"); nothing at its end.
std::string_view take_step(std::string_view& path) {
    if (path.starts_with('.')) path.remove_prefix(1);
    const std::size_t end = path.find_first_of(".[", path.starts_with('[') ? 1 : 0);
    const std::string_view step = path.substr(0, end);
    path.remove_prefix(step.size());
    return step;
}

const JsonNode* child(const JsonNode& node, std::string_view step) {
    if (!step.starts_with('[')) return node.member(step);
    std::size_t index = node.items.size();
    std::from_chars(step.data() + 1, step.data() + step.size(), index);
    return node.kind == JsonNode::Kind::list && index < node.items.size() ? &node.items[index]
                                                                          : nullptr;
}

}  // namespace

const JsonNode* JsonNode::member(std::string_view key) const {
    const auto found = std::ranges::find(keys, key);
    return found == keys.end() ? nullptr : &items[static_cast<std::size_t>(found - keys.begin())];
}

const char* kind_name(JsonNode::Kind kind) {
    switch (kind) {
        case JsonNode::Kind::null:
            return "null";
        case JsonNode::Kind::boolean:
            return "true or false";
        case JsonNode::Kind::number:
            return "a number";
        case JsonNode::Kind::text:
            return "a text";
        case JsonNode::Kind::list:
            return "a list";
        case JsonNode::Kind::object:
            return "an object";
    }
    RL_ASSERT(false);
    return "";
}

JsonText parse_json(std::string_view text, const std::string& file_name) {
    if (auto fault = encoding_fault(text, file_name)) return {std::nullopt, {std::move(*fault)}};
    int line = 1;
    TreeBuilder builder(text, file_name, line);
    const CountingIterator first(text.data(), &line);
    const CountingIterator last(text.data() + text.size(), &line);
    return builder.finish(nlohmann::json::sax_parse(first, last, &builder));
}

int line_of(const JsonNode& root, std::string_view path) {
    const JsonNode* node = &root;
    while (!path.empty()) {
        const JsonNode* next = child(*node, take_step(path));
        if (!next) break;
        node = next;
    }
    return node->line;
}

}  // namespace rakeline::room
