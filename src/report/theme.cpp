// SPDX-License-Identifier: MIT
#include "report/theme.hpp"

#include <algorithm>
#include <cmath>

namespace rakeline::report {
namespace {

constexpr Rgb hex(unsigned rgb) {
    return {((rgb >> 16) & 0xFFu) / 255.0, ((rgb >> 8) & 0xFFu) / 255.0, (rgb & 0xFFu) / 255.0};
}

double linear(double channel) {
    return channel <= 0.04045 ? channel / 12.92 : std::pow((channel + 0.055) / 1.055, 2.4);
}

double relative_luminance(const Rgb& c) {
    return 0.2126 * linear(c.r) + 0.7152 * linear(c.g) + 0.0722 * linear(c.b);
}

}  // namespace

const Theme& dark_theme() {
    static constexpr Theme theme{.ground = hex(0x14161A),
                                 .raised = hex(0x242831),
                                 .hairline = hex(0x323843),
                                 .text = hex(0xE9E4D8),
                                 .quiet = hex(0x949CA8),
                                 .holds = hex(0x5FB3A8),
                                 .near = hex(0xF0B35A),
                                 .missed = hex(0xE0714F),
                                 .beam = hex(0xF0B35A),
                                 .screen = hex(0xFFFFFF),
                                 .sight = hex(0x4A8A82),
                                 .sound = hex(0x9AA9D6)};
    return theme;
}

const Theme& paper_theme() {
    static constexpr Theme theme{.ground = hex(0xF7F4EC),
                                 .raised = hex(0xEFEADD),
                                 .hairline = hex(0xD8D2C4),
                                 .text = hex(0x23262B),
                                 .quiet = hex(0x5C646F),
                                 .holds = hex(0x1B6E64),
                                 .near = hex(0x875706),
                                 .missed = hex(0xAE3B17),
                                 .beam = hex(0xB87C1C),
                                 .screen = hex(0x0E1013),
                                 .sight = hex(0x3C837A),
                                 .sound = hex(0x45558F)};
    return theme;
}

const Theme& page_theme() {
    static const Theme theme = [] {
        Theme t = paper_theme();
        t.raised = t.ground;
        t.ground = hex(0xFFFFFF);
        return t;
    }();
    return theme;
}

Rgb colour(const Theme& theme, drawing::Ink ink) {
    switch (ink) {
        case drawing::Ink::line:
            return theme.text;
        case drawing::Ink::quiet:
            return theme.quiet;
        case drawing::Ink::beam:
            return theme.beam;
        case drawing::Ink::screen:
            return theme.screen;
        case drawing::Ink::sight:
            return theme.sight;
        case drawing::Ink::sound:
            return theme.sound;
        case drawing::Ink::holds:
            return theme.holds;
        case drawing::Ink::near:
            return theme.near;
        case drawing::Ink::missed:
            return theme.missed;
        case drawing::Ink::over_dark:
            return drawing::kOverDark;
        case drawing::Ink::over_bright:
            return drawing::kOverBright;
    }
    return theme.text;
}

Rgb verdict_colour(const Theme& theme, study::Verdict verdict) {
    switch (verdict) {
        case study::Verdict::holds:
            return theme.holds;
        case study::Verdict::near:
            return theme.near;
        case study::Verdict::missed:
            return theme.missed;
        case study::Verdict::no_limit:
            break;
    }
    return theme.quiet;
}

double contrast_ratio(const Rgb& a, const Rgb& b) {
    const double la = relative_luminance(a);
    const double lb = relative_luminance(b);
    return (std::max(la, lb) + 0.05) / (std::min(la, lb) + 0.05);
}

}  // namespace rakeline::report
