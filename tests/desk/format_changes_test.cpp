// SPDX-License-Identifier: MIT
#include "desk/format_changes.hpp"

#include "headless.hpp"

#include <doctest/doctest.h>

#include <algorithm>

namespace rakeline::desk {

TEST_SUITE_BEGIN("desk/format_changes");

TEST_CASE("sheet, moves and machines are those of the study, and looking edits nothing") {
    Headless headless;
    Session session(quiet_options(demo("converted-hall-96")));
    session.wait_for_study();
    Workspace& w = session.workspace();
    w.change.open = true;
    w.change.from = 0;
    w.change.to = 2;
    for (int frame = 0; frame < 3; ++frame)
        headless.frame(session);
    const ChangeCache& cache = w.change_cache;
    CHECK(cache.sheet.rows.size() == study::change_sheet(*session.study(), 0).rows.size());
    const auto moves = study::moves(*session.study(), 0, 0, 2);
    REQUIRE(cache.moves.size() == moves.size());
    REQUIRE_FALSE(moves.empty());
    for (std::size_t i = 0; i < moves.size(); ++i)
        CHECK(cache.moves[i].metric == moves[i].metric);
    CHECK_FALSE(cache.machine.has_value());
    w.change.machines = true;
    headless.frame(session);
    REQUIRE(cache.machine.has_value());
    CHECK(cache.machine->from.projector == 0);
    CHECK(cache.machine->to.projector == 1);
    CHECK(session.document().history().size() == 1);
}

TEST_CASE("the formats asked for stay among the machine's own and apart from each other") {
    Headless headless;
    Session session(quiet_options(demo("grand-620")));
    session.wait_for_study();
    Workspace& w = session.workspace();
    w.change.open = true;
    for (int projector = 0; projector < 3; ++projector) {
        for (int format = 0; format < 4; ++format) {
            w.projector = projector;
            w.format = format;
            w.change.from = w.change.to = format;
            for (const bool machines : {false, true}) {
                w.change.machines = machines;
                headless.frame(session);
                const auto& formats = w.change_cache.sheet.formats;
                CHECK(w.change_cache.sheet.projector == projector);
                CHECK(std::count(formats.begin(), formats.end(), w.change.to) == 1);
                CHECK((formats.size() == 1 || w.change.from != w.change.to));
                CHECK(w.change.machine != projector);
            }
        }
    }
}

TEST_CASE("an edit works the sheet out anew") {
    Headless headless;
    Session session(quiet_options(demo("converted-hall-96")));
    session.wait_for_study();
    Workspace& w = session.workspace();
    w.change.open = true;
    headless.frame(session);
    const unsigned long before = w.change_cache.key.study;
    room::Layout layout = session.document().current()->layout;
    layout.projectors[0].formats.pop_back();
    session.edit({"Drop a format", layout, {}});
    session.wait_for_study();
    headless.frame(session);
    CHECK(w.change_cache.key.study != before);
    CHECK(w.change_cache.sheet.formats.size() == 2);
}

TEST_CASE("one machine alone has no other to move to") {
    Headless headless;
    Session session(quiet_options(demo("steep-240")));
    session.wait_for_study();
    Workspace& w = session.workspace();
    w.change.open = w.change.machines = true;
    headless.frame(session);
    CHECK_FALSE(w.change.machines);
    CHECK_FALSE(w.change_cache.machine.has_value());
}

TEST_CASE("a cell says what stands behind it: a figure's meaning, a field's path") {
    study::SheetCell cell;
    cell.sources = {"picture.throw", "projectors[0].formats[2].lens"};
    const std::string text = cell_meaning(cell);
    CHECK(text.find(study::find_definition("picture.throw")->meaning) != std::string::npos);
    CHECK(text.find("projectors[0].formats[2].lens") != std::string::npos);
    CHECK(cell_meaning({}).empty());
}

TEST_SUITE_END();

}  // namespace rakeline::desk
