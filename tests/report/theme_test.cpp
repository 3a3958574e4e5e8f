// SPDX-License-Identifier: MIT
#include "report/theme.hpp"

#include "support/check.hpp"

#include <string>

using namespace rakeline;
using report::Theme;

TEST_SUITE("report/theme") {
    TEST_CASE("golden: black on white is 21 : 1, and #767676 on white 4.54 : 1") {
        // Web Content Accessibility Guidelines 2.1 and its published examples.
        tests::check_close(report::contrast_ratio({0, 0, 0}, {1, 1, 1}), 21.0,
                           tests::printed_digits(0));
        const double grey = 0x76 / 255.0;
        tests::check_close(report::contrast_ratio({grey, grey, grey}, {1, 1, 1}), 4.54,
                           tests::printed_digits(2));
    }

    TEST_CASE("contrast does not mind the order of its colours") {
        const report::Rgb a{0.2, 0.4, 0.1}, b{0.9, 0.8, 0.7};
        CHECK(report::contrast_ratio(a, b) == report::contrast_ratio(b, a));
        CHECK(report::contrast_ratio(a, a) == 1.0);
    }

    TEST_CASE("all lettering reaches 4.5 : 1 on its ground and on panels, in every theme") {
        for (const Theme* theme :
             {&report::dark_theme(), &report::paper_theme(), &report::page_theme()}) {
            for (const report::Rgb& ink : {theme->text, theme->quiet, theme->holds, theme->near,
                                           theme->missed, theme->screen, theme->sound}) {
                INFO("ink ", ink.r, " ", ink.g, " ", ink.b);
                CHECK(report::contrast_ratio(ink, theme->ground) >= 4.5);
            }
            CHECK(report::contrast_ratio(theme->text, theme->raised) >= 4.5);
        }
    }

    TEST_CASE("lines of sight and beam reach 3 : 1, as graphics should") {
        for (const Theme* theme :
             {&report::dark_theme(), &report::paper_theme(), &report::page_theme()}) {
            CHECK(report::contrast_ratio(theme->sight, theme->ground) >= 3.0);
            CHECK(report::contrast_ratio(theme->beam, theme->ground) >= 3.0);
        }
    }

    TEST_CASE("each verdict has a mark and a colour of its own") {
        using study::Verdict;
        const Theme& theme = report::paper_theme();
        CHECK(study::verdict_mark(Verdict::holds) == std::string("✓"));
        CHECK(study::verdict_mark(Verdict::near) == std::string("△"));
        CHECK(study::verdict_mark(Verdict::missed) == std::string("✗"));
        CHECK(report::verdict_colour(theme, Verdict::missed).r == theme.missed.r);
        CHECK(report::verdict_colour(theme, Verdict::holds).g == theme.holds.g);
        CHECK(report::colour(theme, drawing::Ink::missed).r == theme.missed.r);
    }
}
