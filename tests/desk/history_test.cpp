// SPDX-License-Identifier: MIT
#include "desk/history.hpp"

#include <doctest/doctest.h>

#include <random>

namespace rakeline::desk {
namespace {

room::Brief wide(double width_m) {
    room::Brief brief;
    brief.layout.hall.width_m = width_m;
    return brief;
}

History fresh() {
    return History(std::make_shared<const room::Brief>(wide(10.0)));
}

double width_of(const History& history) {
    return history.current()->layout.hall.width_m;
}

}  // namespace

TEST_SUITE_BEGIN("desk/history");

TEST_CASE("an edit is taken back and made again") {
    History history = fresh();
    history.push("Change width", wide(12.0));
    CHECK(width_of(history) == 12.0);
    CHECK(history.undo_label() == "Change width");
    history.undo();
    CHECK(width_of(history) == 10.0);
    CHECK(history.redo_label() == "Change width");
    history.redo();
    CHECK(width_of(history) == 12.0);
}

TEST_CASE("undo and redo at the ends do nothing") {
    History history = fresh();
    history.undo();
    history.redo();
    CHECK(width_of(history) == 10.0);
    CHECK_FALSE(history.can_undo());
    CHECK_FALSE(history.can_redo());
    CHECK(history.undo_label().empty());
}

TEST_CASE("an edit that changes nothing leaves no step") {
    History history = fresh();
    history.push("Change width", wide(10.0));
    CHECK(history.size() == 1);
}

TEST_CASE("the edits of one drag are one step, those of two drags are two") {
    History history = fresh();
    for (int i = 1; i <= 40; ++i)
        history.push("Change width", wide(10.0 + i), "hall.width");
    history.end_gesture();
    for (int i = 1; i <= 40; ++i)
        history.push("Change width", wide(50.0 - i), "hall.width");
    history.end_gesture();
    CHECK(history.size() == 3);
    history.undo();
    CHECK(width_of(history) == 50.0);
    history.undo();
    CHECK(width_of(history) == 10.0);
}

TEST_CASE("drags of two fields are two steps, even with no end between them") {
    History history = fresh();
    history.push("Change width", wide(11.0), "hall.width");
    history.push("Change length", wide(12.0), "hall.length");
    CHECK(history.size() == 3);
}

TEST_CASE("a drag that comes back to where it began leaves no step") {
    History history = fresh();
    history.push("Change width", wide(11.0), "hall.width");
    history.push("Change width", wide(10.0), "hall.width");
    history.end_gesture();
    CHECK(history.size() == 1);
    CHECK_FALSE(history.edited());
}

TEST_CASE("a new edit forgets what was undone") {
    History history = fresh();
    history.push("a", wide(11.0));
    history.push("b", wide(12.0));
    history.undo();
    history.push("c", wide(13.0));
    CHECK_FALSE(history.can_redo());
    history.undo();
    CHECK(width_of(history) == 11.0);
}

TEST_CASE("undoing to the saved layout clears the mark of edits") {
    History history = fresh();
    history.push("a", wide(11.0));
    history.mark_saved();
    CHECK_FALSE(history.edited());
    history.push("b", wide(12.0));
    CHECK(history.edited());
    history.undo();
    CHECK_FALSE(history.edited());
    history.undo();
    CHECK(history.edited());
    history.redo();
    CHECK_FALSE(history.edited());
}

TEST_CASE("property: all the way back and all the way forth is the same room") {
    const unsigned seed = 7041;
    INFO("seed ", seed);
    std::mt19937 random(seed);
    History history = fresh();
    for (int i = 0; i < 200; ++i) {
        const double width = 5.0 + static_cast<double>(random() % 40);
        const bool drag = random() % 3 == 0;
        history.push("edit", wide(width), drag ? "drag" : "");
        if (random() % 4 == 0) history.end_gesture();
        if (random() % 10 == 0) history.undo();
        if (random() % 12 == 0) history.redo();
    }
    history.end_gesture();
    while (history.can_redo())
        history.redo();
    const room::Brief last = *history.current();
    while (history.can_undo())
        history.undo();
    CHECK(width_of(history) == 10.0);
    while (history.can_redo())
        history.redo();
    CHECK(*history.current() == last);
}

TEST_SUITE_END();

}  // namespace rakeline::desk
