// SPDX-License-Identifier: MIT
#include "room/json_fault.hpp"

#include "room/utf8.hpp"

#include <algorithm>
#include <cctype>

namespace rakeline::room {
namespace {

struct Place {
    int line = 1;
    int column = 1;
};

Place place_of(std::string_view text, std::size_t index) {
    const std::string_view before = text.substr(0, index);
    const auto last_break = before.rfind('\n');
    const std::size_t start = last_break == std::string_view::npos ? 0 : last_break + 1;
    return {1 + static_cast<int>(std::ranges::count(before, '\n')),
            1 + static_cast<int>(index - start)};
}

bool in_word(char c) {
    return std::isalnum(static_cast<unsigned char>(c)) || c == '-' || c == '+' || c == '.';
}

/// The character as a sentence can show it.
std::string shown(char c) {
    if (c == '\n') return "the end of the line";
    if (static_cast<unsigned char>(c) < 0x20) return "a control character";
    return std::string("'") + c + "'";
}

bool is_non_finite(std::string word) {
    if (word.starts_with('-') || word.starts_with('+')) word.erase(0, 1);
    std::ranges::transform(word, word.begin(), [](unsigned char c) { return std::tolower(c); });
    return word == "nan" || word == "inf" || word == "infinity";
}

}  // namespace

std::string word_before(std::string_view text, std::size_t position) {
    if (text.empty()) return {};
    std::size_t at = std::min(position, text.size());
    if (at > 0) --at;
    // The parser looks one character past a number, which may be the comma behind it.
    if (!in_word(text[at]) && at > 0) --at;
    std::size_t begin = at;
    while (begin > 0 && in_word(text[begin - 1]))
        --begin;
    std::size_t end = at;
    while (end < text.size() && in_word(text[end]))
        ++end;
    return std::string(text.substr(begin, end - begin));
}

std::optional<base::Problem> encoding_fault(std::string_view text, const std::string& file_name) {
    const auto fault = first_non_utf8(text);
    if (!fault) return std::nullopt;
    const Place place = place_of(text, *fault);
    return base::Problem{file_name,
                         place.line,
                         {},
                         "is not UTF-8 text at column " + std::to_string(place.column),
                         "save the file with UTF-8 encoding"};
}

base::Problem syntax_fault(std::string_view text,
                           std::size_t position,
                           const std::string& file_name) {
    if (text.find_first_not_of(" \t\r\n") == std::string_view::npos) {
        return {file_name, 0, {}, "is empty", "name a file that was saved whole"};
    }
    if (position > text.size()) {
        return {file_name,
                place_of(text, text.size()).line,
                {},
                "the text ends in the middle",
                "the file may have been cut short: take a whole copy, or close what is open"};
    }
    const std::size_t at = position > 0 ? position - 1 : 0;
    const Place place = place_of(text, at);
    const std::string word = word_before(text, position);
    if (is_non_finite(word)) {
        return {file_name,
                place.line,
                {},
                word + " is not a number that a file can hold",
                "write a number"};
    }
    return {file_name,
            place.line,
            {},
            "is no JSON at column " + std::to_string(place.column) + ", at " + shown(text[at]),
            "look there for a comma, quote or bracket that is missing or one too many"};
}

}  // namespace rakeline::room
