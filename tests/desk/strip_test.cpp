// SPDX-License-Identifier: MIT
#include "desk/strip.hpp"

#include "desk/figure_view.hpp"
#include "desk/widgets/drawing_canvas.hpp"
#include "headless.hpp"

#include <GLFW/glfw3.h>
#include <doctest/doctest.h>

#include <algorithm>

namespace rakeline::desk {
namespace {

bool offers(const Workspace& w, StripDrawing strip) {
    const auto strips = offered_strips(w);
    return std::find(strips.begin(), strips.end(), strip) != strips.end();
}

void take_curves(Headless& headless, Session& session) {
    session.wait_for_curves();
    session.take_study();
    headless.frame(session);
}

/// How many labels of the curve plot find no room in a field of these pixels.
int left_out(const Headless& headless,
             const CurveAnswer& answer,
             base::UnitSystem units,
             ImVec2 field) {
    const drawing::Drawing plot =
        drawing::curve_plot(*answer.help, units, curve_plot_shape(headless.theme, field));
    ImGui::NewFrame();
    ImDrawList& list = *ImGui::GetForegroundDrawList();
    const int out = paint_drawing(headless.theme, list, plot, fitted_view(plot, {0, 0}, field, {}),
                                  {.hovered = {}, .selected = {}, .units = units});
    ImGui::Render();
    return out;
}

}  // namespace

TEST_SUITE_BEGIN("desk/strip");

TEST_CASE("every drawing of the strip is drawn in every demo room, or says why not") {
    for (const char* name : {"screening-24", "converted-hall-96", "steep-240", "grand-620"}) {
        INFO(name);
        Headless headless;
        Session session(quiet_options(demo(name)));
        session.wait_for_study();
        Workspace& w = session.workspace();
        for (const StripDrawing strip : offered_strips(w)) {
            w.strip = strip;
            for (int look = 0; look < 4; ++look) {
                w.blur = look % 2 == 1;
                w.from_lens = look > 1;
                headless.frame(session);
                if (strip == StripDrawing::curve) take_curves(headless, session);
                const bool drawn = w.drawing_cache.drawing != nullptr;
                CHECK(drawn == w.drawing_cache.refused.empty());
                const bool may_refuse = strip == StripDrawing::plate ||
                                        strip == StripDrawing::seat || strip == StripDrawing::holes;
                CHECK((drawn || may_refuse));
            }
        }
    }
}

TEST_CASE("the plate is offered for film alone, and gives way when a digital machine is chosen") {
    Headless headless;
    Session session(quiet_options(demo("converted-hall-96")));
    session.wait_for_study();
    Workspace& w = session.workspace();
    CHECK(offers(w, StripDrawing::plate));
    w.strip = StripDrawing::plate;
    headless.frame(session);
    CHECK(w.strip == StripDrawing::plate);
    w.projector = 1;
    headless.frame(session);
    CHECK_FALSE(offers(w, StripDrawing::plate));
    CHECK(w.strip == StripDrawing::section);
}

TEST_CASE("a plate that can't be filed gives the plate's own reason") {
    Headless headless;
    Session session(quiet_options(demo("grand-620")));
    session.wait_for_study();
    Workspace& w = session.workspace();
    w.strip = StripDrawing::plate;
    w.format = 1;
    headless.frame(session);
    REQUIRE_FALSE(w.drawing_cache.refused.empty());
    CHECK(w.drawing_cache.refused[0].what.find("outside the aperture") != std::string::npos);
    w.format = 0;
    headless.frame(session);
    CHECK(w.drawing_cache.drawing != nullptr);
    CHECK(w.drawing_cache.refused.empty());
}

TEST_CASE("P goes through all drawings that are offered and comes round again") {
    Headless headless;
    Session session(quiet_options(demo("converted-hall-96")));
    session.wait_for_study();
    Workspace& w = session.workspace();
    for (const StripDrawing wanted : offered_strips(w)) {
        CHECK(w.strip == wanted);
        session.press_key({GLFW_KEY_P, false, false});
        headless.frame(session);
    }
    CHECK(w.strip == StripDrawing::section);
}

TEST_CASE(
    "the curve plot keeps all its words in the strip of a small window, in both unit systems") {
    for (const char* name : {"screening-24", "converted-hall-96", "steep-240", "grand-620"}) {
        INFO(name);
        Headless headless;
        const auto study = std::make_shared<const study::Study>(
            study::compute_study(open_document(demo(name))->current()));
        const auto answer = try_curves({study, 0, 0}, {});
        REQUIRE(answer);
        REQUIRE(answer->help);
        for (const auto units : {base::UnitSystem::metric, base::UnitSystem::imperial}) {
            // What a window of 1280 x 720 has for it, with letters of 0.85 of their size.
            CHECK(left_out(headless, *answer, units, {577.0f / 0.85f, 206.0f / 0.85f}) == 0);
            CHECK(left_out(headless, *answer, units, {1070.0f, 340.0f}) == 0);
            CHECK(left_out(headless, *answer, units, {200.0f, 60.0f}) > 0);  // no room at all
        }
    }
}

TEST_SUITE_END();

}  // namespace rakeline::desk
