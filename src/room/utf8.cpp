// SPDX-License-Identifier: MIT
#include "room/utf8.hpp"

#include <algorithm>
#include <array>

namespace rakeline::room {
namespace {

/// One row of the table: lead bytes, range of the second byte, and how many bytes in all.
struct Form {
    unsigned char first, last, second_least, second_most;
    std::size_t length;
};
constexpr auto kForms = std::to_array<Form>({
    {0xC2, 0xDF, 0x80, 0xBF, 2},
    {0xE0, 0xE0, 0xA0, 0xBF, 3},
    {0xE1, 0xEC, 0x80, 0xBF, 3},
    {0xED, 0xED, 0x80, 0x9F, 3},
    {0xEE, 0xEF, 0x80, 0xBF, 3},
    {0xF0, 0xF0, 0x90, 0xBF, 4},
    {0xF1, 0xF3, 0x80, 0xBF, 4},
    {0xF4, 0xF4, 0x80, 0x8F, 4},
});

/// Length of the character at the head of `text`; 0 where none is well formed.
std::size_t character_length(std::string_view text) {
    const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
    if (byte(0) < 0x80) return 1;
    const auto form = std::ranges::find_if(
        kForms, [&](const Form& f) { return byte(0) >= f.first && byte(0) <= f.last; });
    if (form == kForms.end() || text.size() < form->length) return 0;
    if (byte(1) < form->second_least || byte(1) > form->second_most) return 0;
    for (std::size_t i = 2; i < form->length; ++i)
        if (byte(i) < 0x80 || byte(i) > 0xBF) return 0;
    return form->length;
}

}  // namespace

std::optional<std::size_t> first_non_utf8(std::string_view text) {
    for (std::size_t at = 0; at < text.size();) {
        const std::size_t length = character_length(text.substr(at));
        if (length == 0) return at;
        at += length;
    }
    return std::nullopt;
}

}  // namespace rakeline::room
