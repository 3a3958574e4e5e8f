// SPDX-License-Identifier: MIT
#include "report/table.hpp"

#include "report/surface.hpp"
#include "support/check.hpp"

#include <cairo-pdf.h>

using namespace rakeline;
using namespace rakeline::report;

namespace {

struct Drawn {
    int pages = 0;
    double over_pt = 0.0;  ///< from the top of the last page down to the pen
};

/// A table of `rows` lines, ruled every `every`, begun `down_pt` below the top of a page.
Drawn drawn(int rows, int every, double down_pt) {
    const auto lettering = Lettering::open();
    REQUIRE(bool(lettering));
    const Sheet sheet = sheet_for(base::UnitSystem::metric);
    const auto ignore = [](void*, const unsigned char*, unsigned) { return CAIRO_STATUS_SUCCESS; };
    const Surface pdf(
        cairo_pdf_surface_create_for_stream(ignore, nullptr, sheet.width, sheet.height));
    Pages pages(pdf.get(), {.lettering = *lettering,
                            .theme = page_theme(),
                            .sheet = sheet,
                            .running_head = "a table",
                            .foot = "a test"});
    pages.gap(down_pt);
    std::vector<TableRow> lines;
    for (int i = 0; i < rows; ++i)
        lines.push_back({.cells = {{"figure"}, {std::to_string(i)}}, .ruled = i % every == 0});
    draw_table(pages, {{"figure", 2}, {"value", 1, drawing::Anchor::right}}, lines);
    const Drawn out{pages.count(), pages.y() - pages.content().y};
    pages.finish();
    return out;
}

}  // namespace

TEST_SUITE("report/table") {
    TEST_CASE("a table that runs over takes company to its last page, however long it is") {
        int ran_over = 0;
        for (const int every : {1, 2, 3}) {
            for (int rows = 20; rows <= 150; ++rows) {
                const Drawn table = drawn(rows, every, 0.0);
                if (table.pages == 1) continue;
                INFO(rows, " rows, ruled every ", every, ", pages ", table.pages);
                CHECK(table.over_pt >= kLeastOver_pt);
                ++ran_over;
            }
        }
        CHECK(ran_over > 100);
    }

    TEST_CASE("a short table is kept whole, wherever on the page it comes") {
        for (double down = 0.0; down < 740.0; down += 7.0) {
            INFO("begun ", down, " pt down the page");
            const Drawn table = drawn(6, 1, down);
            const Drawn at_top = drawn(6, 1, 0.0);
            // On a page of its own it stands as it does at the top of one.
            if (table.pages == 2) CHECK(table.over_pt == at_top.over_pt);
        }
    }
}
