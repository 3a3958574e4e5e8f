// SPDX-License-Identifier: MIT
#include "desk/sheet_choice.hpp"

#include "headless.hpp"

#include <doctest/doctest.h>

namespace rakeline::desk {
namespace {

void take_in(Headless& headless, Session& session) {
    headless.frame(session);  // asks
    session.wait_for_sheets();
    session.take_study();
}

}  // namespace

TEST_SUITE_BEGIN("desk/sheet_choice");

TEST_CASE("a sheet that is hung is one step that can be undone, and becomes the one that hangs") {
    Headless headless;
    Session session(quiet_options(demo("screening-24")));
    session.wait_for_study();
    REQUIRE(session.workspace().sheets.size() > 5);
    session.workspace().sheets_open = true;
    take_in(headless, session);
    REQUIRE(session.sheets());
    const auto answer = session.sheets();
    CHECK(answer->trials.trials.size() == session.workspace().sheets.size() + 1);
    const room::Layout before = session.document().current()->layout;
    const room::SheetChoice wanted = answer->trials.trials[3].sheet;
    session.edit({"Hang sheet", study::with_sheet(before, wanted), {}});
    CHECK(session.document().current()->layout.screen.perforation == wanted.perforation);
    session.wait_for_study();
    take_in(headless, session);
    CHECK(session.sheets()->trials.trials[0].sheet.perforation == wanted.perforation);
    session.act(Action::undo);
    CHECK(session.document().current()->layout == before);
}

TEST_SUITE_END();

}  // namespace rakeline::desk
