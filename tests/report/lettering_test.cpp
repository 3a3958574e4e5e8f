// SPDX-License-Identifier: MIT
#include "report/lettering.hpp"

#include "drawing/studied_room.hpp"
#include "report/report.hpp"
#include "report/surface.hpp"
#include "support/check.hpp"

using namespace rakeline;
using drawing::Anchor;
using report::Lettering;
using report::TextStyle;

namespace {

/// A context that swallows what is drawn.
struct Nowhere {
    report::Surface surface{cairo_recording_surface_create(CAIRO_CONTENT_COLOR_ALPHA, nullptr)};
    report::Context context{cairo_create(surface.get())};
};

Lettering lettering() {
    auto opened = Lettering::open();
    if (!opened) FAIL(base::text(opened.problems()));
    return *opened;
}

std::vector<std::string> every_text() {
    std::vector<std::string> texts = {"✓ △ ✗ – · ≤ ≥ ⌀ Ø ° × ²"};
    for (const auto& d : study::figure_register())
        for (const char* text : {d.label, d.meaning, d.formula, d.source, d.id})
            texts.emplace_back(text);
    for (const auto& caution : report::cautions())
        texts.emplace_back(std::string(caution.title) + caution.text);
    for (const char* room : tests::kDemoRooms) {
        const study::Study& study = tests::studied(room);
        texts.push_back(study.layout().name + study.layout().note);
        for (const auto& finding : study.findings)
            texts.push_back(finding.what + finding.against + finding.mend);
        for (const auto& limit : study.brief->limits.limits)
            texts.push_back(limit.source + limit.mend);
    }
    return texts;
}

}  // namespace

TEST_SUITE("report/lettering") {
    TEST_CASE("our typefaces have every character that the program's own words use") {
        const Lettering letters = lettering();
        const Nowhere nowhere;
        for (const std::string& text : every_text()) {
            INFO(text);
            letters.draw(nowhere.context.get(), 0.0, 0.0, text, {});
            CHECK(letters.unknown_glyphs() == 0);
        }
    }

    TEST_CASE("characters that no typeface of ours has are counted") {
        const Lettering letters = lettering();
        const Nowhere nowhere;
        letters.draw(nowhere.context.get(), 0.0, 0.0, "映画館", {});
        CHECK(letters.unknown_glyphs() == 3);
    }

    TEST_CASE("figures are tabular: every digit is as wide as every other") {
        const Lettering letters = lettering();
        const double one = letters.measured("1111", {}).width;
        for (const char* digits : {"0000", "7777", "8888"})
            tests::check_close(letters.measured(digits, {}).width, one,
                               tests::absolute(0.01, "a hundredth of a point"));
    }

    TEST_CASE("lettering is as large as its style says, and medium is wider than regular") {
        const Lettering letters = lettering();
        TextStyle style{.size_pt = 8.0};
        const auto small = letters.measured("Hall", style);
        style.size_pt = 16.0;
        const auto large = letters.measured("Hall", style);
        tests::check_close(large.width, 2.0 * small.width,
                           tests::absolute(0.05, "glyph places are rounded to 1/1024 pt"));
        style.strength = report::Strength::semibold;
        CHECK(letters.measured("Hall", style).width > large.width);
    }

    TEST_CASE("wrapped text stays within its width and grows in height") {
        const Lettering letters = lettering();
        const std::string text = "A picture that no seat can see is no picture at all";
        TextStyle style;
        const auto line = letters.measured(text, style);
        style.wrap_pt = 60.0;
        const auto wrapped = letters.measured(text, style);
        CHECK(wrapped.width <= 60.0);
        CHECK(wrapped.height > 2.0 * line.height);
    }

    TEST_CASE("an anchor decides on which side of x the ink falls") {
        const Lettering letters = lettering();
        const auto ink = [&](Anchor anchor) {
            const Nowhere nowhere;
            TextStyle style;
            style.anchor = anchor;
            letters.draw(nowhere.context.get(), 100.0, 0.0, "HHHHHH", style);
            double x = 0.0, y = 0.0, width = 0.0, height = 0.0;
            cairo_recording_surface_ink_extents(nowhere.surface.get(), &x, &y, &width, &height);
            return std::pair{x, x + width};
        };
        CHECK(ink(Anchor::left).first >= 99.0);
        CHECK(ink(Anchor::right).second <= 101.0);
        CHECK(ink(Anchor::centre).first < 95.0);
        CHECK(ink(Anchor::centre).second > 105.0);
    }
}
