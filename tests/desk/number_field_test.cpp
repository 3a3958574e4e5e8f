// SPDX-License-Identifier: MIT
#include "desk/widgets/number_field.hpp"

#include "headless.hpp"
#include "support/check.hpp"

#include <doctest/doctest.h>

namespace rakeline::desk {
namespace {

using tests::absolute;
using tests::check_close;
using tests::relative;

constexpr NumberSpec kWidth{base::Unit::metre, 2.0, 100.0, false};

/// One number field in a window of its own, run frame by frame.
struct Field {
    Headless headless;
    NumberEdit edit;
    double value = 12.0;
    NumberSpec spec = kWidth;
    base::UnitSystem units = base::UnitSystem::metric;
    ImVec2 centre{};

    NumberOutcome frame(bool enter = false) {
        ImGuiIO& io = ImGui::GetIO();
        io.KeyMap[ImGuiKey_Enter] = 1;
        io.KeyMap[ImGuiKey_A] = 2;
        io.KeysDown[1] = enter;
        ImGui::NewFrame();
        ImGui::SetNextWindowPos({0, 0});
        ImGui::Begin("window", nullptr, ImGuiWindowFlags_NoDecoration);
        const ImVec2 at = ImGui::GetCursorScreenPos();
        centre = {at.x + 60.0f, at.y + 14.0f};
        const NumberOutcome outcome =
            number_field(headless.theme, "width", spec, units, 120.0f, edit, value);
        ImGui::End();
        ImGui::Render();
        return outcome;
    }

    /// Opens the field by a click and types over what is selected in it.
    NumberOutcome type(const char* text) {
        frame();
        headless.mouse(centre.x, centre.y);
        frame();
        headless.mouse(centre.x, centre.y, true);
        frame();
        headless.mouse(centre.x, centre.y);
        frame();
        frame();
        frame();
        ImGui::GetIO().AddInputCharactersUTF8(text);
        frame();
        return frame(true);
    }
};

}  // namespace

TEST_SUITE_BEGIN("desk/widgets/number_field");

TEST_CASE("typed feet and inches arrive as metres") {
    Field field;
    const NumberOutcome outcome = field.type("40 ft 6 in");
    CHECK(outcome.changed);
    CHECK(outcome.finished);
    check_close(field.value, 40.5 * 0.3048, relative(1e-12, "exact factors"));
}

TEST_CASE("text that can't be read leaves the value and says why") {
    Field field;
    const NumberOutcome outcome = field.type("12 lm");
    CHECK_FALSE(outcome.changed);
    CHECK(field.value == 12.0);
    CHECK_FALSE(field.edit.error.empty());
    CHECK(field.edit.widget != 0);
}

TEST_CASE("a number outside the range is refused with the range") {
    Field field;
    field.type("250");
    CHECK(field.value == 12.0);
    CHECK(field.edit.error.find("100.00 m") != std::string::npos);
}

TEST_CASE("entering the text as it was printed does not round the value") {
    Field field;
    field.value = 12.0049;
    field.type("12.00 m");
    CHECK(field.value == 12.0049);
}

TEST_CASE("a drag changes the value by its step, ten times that with Shift") {
    const double slow = dragged_value(kWidth, base::UnitSystem::metric, 12.0, 30.0);
    const double fast = dragged_value(kWidth, base::UnitSystem::metric, 12.0, 300.0);
    check_close(slow - 12.0, 0.3, absolute(1e-9, "on a round number of steps"));
    check_close(fast - 12.0, 3.0, absolute(1e-9, "on a round number of steps"));
}

TEST_CASE("property: a drag never leaves the range and lands on a shown digit") {
    for (const double pixels : {-1e6, -37.0, -1.0, 0.0, 1.0, 55.0, 1e6}) {
        for (const auto units : {base::UnitSystem::metric, base::UnitSystem::imperial}) {
            INFO(pixels);
            const double value = dragged_value(kWidth, units, 12.345678, pixels);
            CHECK(value >= kWidth.least);
            CHECK(value <= kWidth.most);
        }
    }
}

TEST_CASE("whole numbers stay whole") {
    const NumberSpec rows{base::Unit::count, 1.0, 200.0, true};
    const double value = dragged_value(rows, base::UnitSystem::metric, 8.0, 33.0);
    CHECK(value == 11.0);
}

TEST_SUITE_END();

}  // namespace rakeline::desk
