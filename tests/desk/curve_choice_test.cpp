// SPDX-License-Identifier: MIT
#include "desk/curve_choice.hpp"

#include "headless.hpp"

#include <GLFW/glfw3.h>
#include <doctest/doctest.h>

namespace rakeline::desk {
namespace {

/// A room with its study and, once asked for, its trials, as a panel is given them.
struct Given {
    explicit Given(const char* name)
        : brief(open_document(demo(name))->current()),
          study(std::make_shared<const study::Study>(study::compute_study(brief))),
          history(brief) {}
    PanelInput input(bool current) const {
        PanelInput in{.brief = *brief,
                      .study = study.get(),
                      .problems = problems,
                      .history = history,
                      .theme = theme,
                      .title = {}};
        in.current = current;
        in.curves.answer = answer;
        return in;
    }
    void try_all() {
        answer = std::make_shared<const CurveAnswer>(
            try_curves({study, w.projector, w.format}, {}).value());
    }

    BriefPtr brief;
    std::shared_ptr<const study::Study> study;
    History history;
    base::Problems problems;
    Theme theme;
    Workspace w;
    std::shared_ptr<const CurveAnswer> answer;
};

void take_in(Headless& headless, Session& session) {
    headless.frame(session);  // asks
    session.wait_for_curves();
    session.take_study();
}

}  // namespace

TEST_SUITE_BEGIN("desk/curve_choice");

TEST_CASE("what is taken is the most even trial, which the next trials call the most even again") {
    Given given("steep-240");
    given.try_all();
    const auto edit = take_surface(given.input(true), given.w, SurfacePart::curve);
    REQUIRE(edit);
    CHECK(edit->label == "Curve the screen");
    const auto& help = *given.answer->help;
    const auto& best = help.curves.at(static_cast<std::size_t>(*help.best_curve));
    CHECK(edit->layout.screen.radius_m == best.radius_m);
    CHECK(edit->layout.screen.tilt_rad == given.brief->layout.screen.tilt_rad);
    const study::Study after = study::compute_study(
        std::make_shared<const room::Brief>(room::Brief{edit->layout, given.brief->limits}));
    const auto again = study::curve_trials(after, 0, 0);
    REQUIRE(again);
    CHECK(again->now->evenness == best.evenness);
    CHECK(again->curves.at(static_cast<std::size_t>(*again->best_curve)).radius_m == best.radius_m);
}

TEST_CASE("nothing is taken of trials of an older layout, or of another format") {
    Given given("steep-240");
    CHECK_FALSE(curves_current(given.input(true), given.w));
    CHECK_FALSE(take_surface(given.input(true), given.w, SurfacePart::tilt));
    given.try_all();
    CHECK(curves_current(given.input(true), given.w));
    CHECK_FALSE(curves_current(given.input(false), given.w));
    CHECK_FALSE(take_surface(given.input(false), given.w, SurfacePart::tilt));
    given.w.format = 1;
    CHECK_FALSE(curves_current(given.input(true), given.w));
    CHECK_FALSE(take_surface(given.input(true), given.w, SurfacePart::tilt));
    CHECK(take_words(given.input(true), given.w, SurfacePart::tilt).starts_with("Nothing to take"));
}

TEST_CASE("the button says what it would put in, in both unit systems, or that it is there") {
    Given given("steep-240");
    given.try_all();
    PanelInput in = given.input(true);
    CHECK(take_words(in, given.w, SurfacePart::curve) ==
          "Puts the most even one into the layout, a radius of 23.20 m");
    in.units_ = base::UnitSystem::imperial;
    CHECK(take_words(in, given.w, SurfacePart::curve).ends_with(" ft"));
    Given curved("steep-240");
    room::Brief brief = *curved.brief;
    brief.layout.screen.radius_m = 23.2;
    curved.brief = std::make_shared<const room::Brief>(brief);
    curved.study = std::make_shared<const study::Study>(study::compute_study(curved.brief));
    curved.try_all();
    CHECK(take_words(curved.input(true), curved.w, SurfacePart::curve)
              .starts_with("The screen has the most even one"));
}

TEST_CASE("the window asks for trials while the plot is open alone, and anew after an edit") {
    Headless headless;
    Session session(quiet_options(demo("converted-hall-96")));
    session.wait_for_study();
    take_in(headless, session);
    CHECK(session.curves() == nullptr);
    session.workspace().strip = StripDrawing::curve;
    headless.frame(session);
    CHECK(session.workspace().drawing_cache.drawing == nullptr);  // under way, so nothing is shown
    take_in(headless, session);
    const auto first = session.curves();
    REQUIRE(first);
    headless.frame(session);
    CHECK(session.workspace().drawing_cache.drawing != nullptr);
    take_in(headless, session);
    CHECK(session.curves() == first);
    room::Layout tilted = session.document().current()->layout;
    tilted.screen.tilt_rad += 0.01;
    session.edit({"Tilt", tilted, {}});
    CHECK(session.curves() == first);  // stays, as numbers that follow
    session.wait_for_study();
    take_in(headless, session);
    REQUIRE(session.curves() != first);
    CHECK(session.curves()->question.study->brief == session.document().current());
    session.press_key({GLFW_KEY_Z, true, false});
    headless.frame(session);
    session.wait_for_study();
    take_in(headless, session);
    CHECK(session.curves()->help->now->tilt_rad == first->help->now->tilt_rad);
}

TEST_CASE("the crowd's coming leaves the trials as they are, and another format asks anew") {
    Given given("converted-hall-96");
    const auto again =
        std::make_shared<const study::Study>(study::compute_study(given.brief));  // another object
    CHECK(CurveQuestion{given.study, 0, 1} == CurveQuestion{again, 0, 1});
    CHECK_FALSE(CurveQuestion{given.study, 0, 1} == CurveQuestion{given.study, 0, 2});
    CHECK_FALSE(CurveQuestion{given.study, 0, 1} == CurveQuestion{nullptr, 0, 1});
}

TEST_SUITE_END();

}  // namespace rakeline::desk
