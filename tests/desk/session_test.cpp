// SPDX-License-Identifier: MIT
#include "desk/session.hpp"

#include "desk/figure_view.hpp"
#include "headless.hpp"

#include <doctest/doctest.h>

#include <filesystem>
#include <optional>
#include <random>

namespace rakeline::desk {
namespace {

constexpr const char* kDemoRooms[] = {"screening-24", "converted-hall-96", "steep-240",
                                      "grand-620"};

/// A place in the subject panel where a number can be dragged, told by the pointer's shape.
std::optional<ImVec2> find_number_field(Headless& headless, Session& session) {
    for (float y = 430.0f; y < 690.0f; y += 7.0f) {
        headless.mouse(330.0f, y);
        headless.frame(session);
        headless.frame(session);
        if (ImGui::GetMouseCursor() == ImGuiMouseCursor_ResizeEW) return ImVec2{330.0f, y};
    }
    return {};
}

}  // namespace

TEST_SUITE_BEGIN("desk/session");

TEST_CASE("all demo rooms draw sixty frames in every subject, and nothing is edited by looking") {
    for (const char* name : kDemoRooms) {
        INFO(name);
        Headless headless;
        Session session(quiet_options(demo(name)));
        session.wait_for_study();
        REQUIRE(session.study() != nullptr);
        for (int frame = 0; frame < 60; ++frame) {
            session.workspace().subject = study::kSubjects[frame / 12];
            session.workspace().strip = frame % 2 == 0 ? StripDrawing::section : StripDrawing::plan;
            headless.frame(session);
        }
        CHECK(session.document().history().size() == 1);
        CHECK_FALSE(session.document().edited());
    }
}

TEST_CASE("property: a mouse that moves at random and never presses edits nothing") {
    const unsigned seed = 90210;
    INFO("seed ", seed);
    std::mt19937 random(seed);
    Headless headless;
    Session session(quiet_options(demo("converted-hall-96")));
    session.wait_for_study();
    for (int frame = 0; frame < 120; ++frame) {
        session.workspace().subject = study::kSubjects[random() % 5];
        headless.mouse(static_cast<float>(random() % 1280), static_cast<float>(random() % 720));
        headless.frame(session);
    }
    CHECK(session.document().history().size() == 1);
}

TEST_CASE("property: random presses, drags and wheels in the panels do no harm") {
    const unsigned seed = 4711;
    INFO("seed ", seed);
    std::mt19937 random(seed);
    Headless headless;
    Session session(quiet_options(demo("screening-24")));
    session.wait_for_study();
    for (int sequence = 0; sequence < 100; ++sequence) {
        auto x = static_cast<float>(random() % 1280), y = static_cast<float>(50 + random() % 660);
        for (int step = 0; step < 6; ++step) {
            headless.mouse(x, y, step > 0 && step < 5);
            ImGui::GetIO().MouseWheel = random() % 5 == 0 ? 1.0f : 0.0f;
            x += static_cast<float>(static_cast<int>(random() % 41) - 20);
            session.take_study();
            headless.frame(session);
        }
    }
    session.wait_for_study();
    headless.frame(session);
    CHECK_FALSE(session.document().current()->layout.name.empty());
}

TEST_CASE("a drag on a number is exactly one step of undo, and undo brings the room back") {
    Headless headless;
    Session session(quiet_options(demo("screening-24")));
    session.wait_for_study();
    const room::Brief before = *session.document().current();
    const auto field = find_number_field(headless, session);
    REQUIRE(field.has_value());
    for (int i = 0; i <= 40; ++i) {
        headless.mouse(field->x + static_cast<float>(i), field->y, true);
        headless.frame(session);
    }
    headless.mouse(field->x + 40.0f, field->y, false);
    headless.frame(session);
    headless.frame(session);
    CHECK(session.document().history().size() == 2);
    CHECK(session.document().edited());
    CHECK(*session.document().current() != before);
    session.workspace().pinned.reset();
    session.act(Action::undo);
    CHECK(*session.document().current() == before);
}

TEST_CASE("an unreadable file is told of and the open room stays") {
    Headless headless;
    Session session(quiet_options(demo("screening-24")));
    session.wait_for_study();
    session.drop_file(demo("no-such-room"));
    headless.frame(session);
    CHECK(session.document().path() == demo("screening-24"));
}

TEST_CASE("quitting with edits asks first, without edits it goes") {
    Headless headless;
    Session session(quiet_options(demo("screening-24")));
    session.wait_for_study();
    room::Layout edited = session.document().current()->layout;
    edited.hall.width_m += 0.5;
    session.edit({"Change width", edited, {}});
    session.ask_to_quit();
    headless.frame(session);
    CHECK_FALSE(session.wants_to_quit());
    session.act(Action::undo);
    session.ask_to_quit();
    CHECK(session.wants_to_quit());
}

TEST_CASE("a layout that can't be studied keeps the last study and says what is wrong") {
    Document document = *open_document(demo("screening-24"));
    room::Layout layout = document.current()->layout;
    layout.projectors[0].formats[0].format = "no such format";
    document.edit("Change format", layout, {}, base::read_text_file);
    REQUIRE_FALSE(document.problems().empty());
    CHECK(document.problems().front().where.find("projectors[0]") != std::string::npos);
    document.undo();
    CHECK(document.problems().empty());
}

TEST_CASE("a copy saved into another folder still finds its limits") {
    const std::filesystem::path folder =
        std::filesystem::path(RAKELINE_BINARY_DIR) / "desk_save_test" / "deeper";
    std::filesystem::create_directories(folder);
    const std::string path = (folder / "copy.json").string();
    Document document = *open_document(demo("screening-24"));
    const room::LimitSet limits = document.current()->limits;
    REQUIRE(document.save(path).empty());
    const auto again = open_document(path);
    REQUIRE(again);
    CHECK(again->current()->limits == limits);
    CHECK_FALSE(document.edited());
    std::filesystem::remove_all(folder.parent_path());
}

TEST_CASE("refuses: a layout that could not be opened again is not written") {
    const std::string path = std::string(RAKELINE_BINARY_DIR) + "/desk_not_written.json";
    Document document = *open_document(demo("screening-24"));
    room::Layout layout = document.current()->layout;
    layout.screen.width_m = layout.hall.width_m + 1.0;
    document.edit("Change frame width", layout, {}, base::read_text_file);
    CHECK_FALSE(document.save(path).empty());
    CHECK_FALSE(std::filesystem::exists(path));
    CHECK(document.path() == demo("screening-24"));
}

TEST_CASE("limits that can't be read leave the old ones standing and are told of") {
    Document document = *open_document(demo("screening-24"));
    const room::LimitSet limits = document.current()->limits;
    room::Layout layout = document.current()->layout;
    layout.limits_file = "practice/none-such.json";
    document.edit("Change limits", layout, {}, base::read_text_file);
    CHECK_FALSE(document.limits_problems().empty());
    CHECK(document.current()->limits == limits);
}

TEST_CASE("the window's title names the file, the room, and whether it is saved") {
    Headless headless;
    Session session(quiet_options(demo("screening-24")));
    session.wait_for_study();
    CHECK(session.window_title().find("screening-24.json · ") == 0);
    CHECK(session.window_title().find(session.document().current()->layout.name) !=
          std::string::npos);
    room::Layout edited = session.document().current()->layout;
    edited.hall.width_m += 0.5;
    session.edit({"Change width", edited, {}});
    CHECK(session.window_title().find("• screening-24.json") == 0);
    session.act(Action::new_room);
}

TEST_CASE(
    "Return presses Save in the file chooser wherever the focus is, and replaces when asked") {
    const std::filesystem::path folder =
        std::filesystem::path(RAKELINE_BINARY_DIR) / "desk_return_test";
    std::filesystem::create_directories(folder);
    const std::string path = (folder / "room.json").string();
    Headless headless;
    ImGui::GetIO().KeyMap[ImGuiKey_Enter] = 257;
    Session session(quiet_options(demo("screening-24")));
    session.wait_for_study();
    Document copy = *open_document(demo("screening-24"));
    REQUIRE(copy.save(path).empty());
    session.drop_file(path);
    session.wait_for_study();
    const auto press_return = [&] {
        for (const bool down : {true, false, false}) {
            ImGui::GetIO().KeysDown[257] = down;
            headless.frame(session);
        }
    };
    room::Layout edited = session.document().current()->layout;
    edited.name = "Renamed";
    session.edit({"Change name", edited, {}});
    session.act(Action::save_as);
    for (int i = 0; i < 4; ++i)
        headless.frame(session);
    headless.mouse(640.0f, 400.0f, true);  // into the list: the name's field loses the focus
    headless.frame(session);
    headless.mouse(640.0f, 400.0f, false);
    headless.frame(session);
    press_return();
    CHECK(session.document().edited());  // asks first: the file is there
    press_return();
    CHECK_FALSE(session.document().edited());
    CHECK(open_document(path)->current()->layout.name == "Renamed");
    std::filesystem::remove_all(folder);
}

TEST_CASE("another room's lists begin at their top") {
    Headless headless;
    Session session(quiet_options(demo("grand-620")));
    session.wait_for_study();
    const int before = session.workspace().document;
    session.drop_file(demo("steep-240"));
    CHECK(session.workspace().document != before);
}

TEST_SUITE_END();

}  // namespace rakeline::desk
