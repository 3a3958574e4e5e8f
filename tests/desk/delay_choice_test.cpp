// SPDX-License-Identifier: MIT
#include "desk/delay_choice.hpp"

#include "desk/strip.hpp"
#include "desk/widgets/drawing_canvas.hpp"
#include "drawing/decay_plot.hpp"
#include "headless.hpp"
#include "study/delay_advice.hpp"
#include "support/check.hpp"

#include <GLFW/glfw3.h>

namespace rakeline::desk {
namespace {

/// Arrival of a loudspeaker at the reference seat, s.
double arrives(const study::Study& study, std::size_t loudspeaker) {
    const auto& path = study.sound.loudspeakers.at(loudspeaker)
                           .paths.at(static_cast<std::size_t>(*study.reference_seat));
    const sound::Air air{.temperature_c = study.layout().hall.temperature_c};
    return path.distance_m / air.sound_speed_m_s() +
           study.layout().loudspeakers.at(loudspeaker).delay_s;
}

/// What the button hands back; `current`: whether the study is of the layout as edited.
std::optional<Edit> asked(const Headless& headless, Session& session, bool current) {
    const base::Problems none;
    return delay_edit({.brief = *session.document().current(),
                       .study = session.study().get(),
                       .current = current,
                       .problems = none,
                       .history = session.document().history(),
                       .theme = headless.theme,
                       .title = {}});
}

}  // namespace

TEST_SUITE_BEGIN("desk/delay_choice");

TEST_CASE("setting the delays is one step that undo takes back") {
    for (const char* name : {"screening-24", "converted-hall-96", "steep-240", "grand-620"}) {
        INFO(name);
        Headless headless;
        Session session(quiet_options(demo(name)));
        session.wait_for_study();
        session.workspace().subject = study::Subject::sound;
        headless.frame(session);
        const room::Layout before = session.document().current()->layout;
        const auto edit = asked(headless, session, true);
        REQUIRE(edit);
        CHECK_FALSE(asked(headless, session, false));
        session.edit(*edit);
        session.wait_for_study();
        CHECK_FALSE(asked(headless, session, true));
        headless.frame(session);
        const study::Study& study = *session.study();
        std::optional<double> together;
        for (std::size_t i = 0; i < study.layout().loudspeakers.size(); ++i) {
            const room::Loudspeaker& l = study.layout().loudspeakers[i];
            if (l.channel == room::Channel::surround) continue;
            if (!together) together = arrives(study, i);
            tests::check_close(arrives(study, i), *together,
                               tests::absolute(1.001e-5, "two delays set to hundredths of a ms"));
        }
        for (const sound::ChannelArrivals& seat : study.sound.arrival.seats)
            CHECK(seat.spread_s().has_value());
        // What was suggested is what is set now: a second time changes nothing.
        CHECK(*study::with_suggested_delays(study) == study.layout());
        session.press_key({GLFW_KEY_Z, true, false});
        headless.frame(session);
        CHECK(session.document().current()->layout == before);
    }
}

TEST_CASE("the plot of decay is offered with sound, keeps its words, and gives way with it") {
    for (const char* name : {"screening-24", "converted-hall-96", "steep-240", "grand-620"}) {
        INFO(name);
        Headless headless;
        Session session(quiet_options(demo(name)));
        session.wait_for_study();
        Workspace& w = session.workspace();
        w.subject = study::Subject::sound;
        w.strip = StripDrawing::decay;
        headless.frame(session);
        CHECK(w.strip == StripDrawing::decay);
        CHECK(w.drawing_cache.drawing != nullptr);
        for (const ImVec2 field :
             {ImVec2{577.0f / 0.85f, 206.0f / 0.85f}, ImVec2{1070.0f, 340.0f}}) {
            const drawing::Drawing plot =
                drawing::decay_plot(*session.study(), decay_plot_shape(headless.theme, field));
            ImGui::NewFrame();
            const int out = paint_drawing(headless.theme, *ImGui::GetForegroundDrawList(), plot,
                                          fitted_view(plot, {0, 0}, field, {}), {});
            ImGui::Render();
            CHECK(out == 0);
        }
        w.subject = study::Subject::picture;
        headless.frame(session);
        headless.frame(session);
        CHECK(w.strip == StripDrawing::section);
    }
}

TEST_SUITE_END();

}  // namespace rakeline::desk
