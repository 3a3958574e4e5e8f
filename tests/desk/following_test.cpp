// SPDX-License-Identifier: MIT
#include "desk/panel_input.hpp"
#include "headless.hpp"

#include <doctest/doctest.h>

#include <cmath>

namespace rakeline::desk {
namespace {

/// Relative luminance and contrast ratio of sRGB colours, as the web's accessibility guidelines
/// define them (WCAG 2.1, from memory).
double luminance(const ImVec4& c) {
    const auto linear = [](float v) {
        const auto x = static_cast<double>(v);
        return x <= 0.04045 ? x / 12.92 : std::pow((x + 0.055) / 1.055, 2.4);
    };
    return 0.2126 * linear(c.x) + 0.7152 * linear(c.y) + 0.0722 * linear(c.z);
}

double contrast(const ImVec4& a, const ImVec4& b) {
    const double la = luminance(a) + 0.05, lb = luminance(b) + 0.05;
    return la > lb ? la / lb : lb / la;
}

bool same(const ImVec4& a, const ImVec4& b) {
    return a.x == b.x && a.y == b.y && a.z == b.z && a.w == b.w;
}

}  // namespace

TEST_SUITE_BEGIN("desk/following");

TEST_CASE("numbers of an older brief stand in quiet ink, no mark in a colour of its own") {
    for (const Palette& palette : {dark_palette(), paper_palette()}) {
        const Palette following = following_palette(palette);
        for (const study::Verdict verdict :
             {study::Verdict::holds, study::Verdict::near, study::Verdict::missed})
            CHECK(same(verdict_colour(following, verdict), palette.quiet));
        CHECK(same(following.text, palette.quiet));
        CHECK(contrast(following.text, following.ground) > 4.5);
        CHECK(contrast(following.text, following.panel) > 4.5);
    }
}

TEST_CASE("a panel of the study says that it follows, or that it shows the last valid layout") {
    const BriefPtr brief = open_document(demo("screening-24"))->current();
    const study::Study study = study::compute_study(brief);
    const History history(brief);
    const Theme theme;
    Theme quiet;
    quiet.colour = following_palette(dark_palette());
    base::Problems problems;
    PanelInput in{.brief = *brief,
                  .study = &study,
                  .problems = problems,
                  .history = history,
                  .theme = theme,
                  .title = "a title"};
    in.current = true;
    CHECK(std::string(following_word(in)).empty());
    CHECK(&of_study(in).theme == &theme);
    in.current = false;
    in.following = &quiet;
    CHECK(std::string(following_word(in)) == "following");
    CHECK(&of_study(in).theme == &quiet);
    CHECK(of_study(in).title == in.title);
    CHECK(of_study(in).study == in.study);
    problems.push_back({.where = "screen.width_m", .what = "too wide", .mend = "make it narrower"});
    CHECK(std::string(following_word(in)) == "last valid layout");
}

TEST_SUITE_END();

}  // namespace rakeline::desk
