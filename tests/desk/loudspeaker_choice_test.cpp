// SPDX-License-Identifier: MIT
#include "desk/loudspeaker_choice.hpp"

#include "base/files.hpp"
#include "desk/strip.hpp"
#include "headless.hpp"
#include "support/check.hpp"

namespace rakeline::desk {
namespace {

const base::Problems kNone;

PanelInput input_of(const Headless& headless, Session& session, bool current) {
    return {.brief = *session.document().current(),
            .study = session.study().get(),
            .study_serial = session.workspace().aim.study + (current ? 1u : 0u),
            .current = current,
            .problems = kNone,
            .history = session.document().history(),
            .theme = headless.theme,
            .title = {}};
}

double spread(const study::Study& study, int loudspeaker) {
    double sum = 0.0;
    for (int band = 5; band <= 7; ++band)
        sum += study::value_at(
                   *study::find_figure(study, "sound.level_spread", {.loudspeaker = loudspeaker}),
                   band)
                   .value();
    return sum / 3.0;
}

}  // namespace

TEST_SUITE_BEGIN("desk/loudspeaker_choice");

TEST_CASE("aiming at the seats is one step that lowers the spread and that undo takes back") {
    Headless headless;
    Session session(quiet_options(demo("steep-240")));
    session.wait_for_study();
    session.workspace().subject = study::Subject::sound;
    headless.frame(session);
    const room::Layout before = session.document().current()->layout;
    const double was = spread(*session.study(), 0);
    CHECK_FALSE(aim_edit(input_of(headless, session, false), session.workspace()));
    const auto edit = aim_edit(input_of(headless, session, true), session.workspace());
    REQUIRE(edit);
    CHECK(aim_hint(input_of(headless, session, true), session.workspace()).find("level spread") !=
          std::string::npos);
    session.edit(*edit);
    session.wait_for_study();
    CHECK(spread(*session.study(), 0) < was);
    session.act(Action::undo);
    session.wait_for_study();
    CHECK(session.document().current()->layout == before);
    // A sub-bass is not aimed.
    session.workspace().loudspeaker = 3;
    CHECK_FALSE(aim_edit(input_of(headless, session, true), session.workspace()));
    CHECK(aim_hint(input_of(headless, session, true), session.workspace()).find("Only") == 0);
}

TEST_CASE("a loudspeaker taken from a series keeps its name, channel, place, aim and delay") {
    Session session(quiet_options(demo("steep-240")));
    const room::Layout before = session.document().current()->layout;
    const auto text = base::read_text_file(std::string(RAKELINE_SOURCE_DIR) +
                                           "/layouts/series/loudspeakers.json");
    REQUIRE(text);
    const auto series = room::read_series(*text, "loudspeakers.json");
    REQUIRE(series);
    session.workspace().series.push_back(*series);
    const auto listed = listed_loudspeakers(session.workspace());
    REQUIRE(listed.size() == series->loudspeakers.size());
    CHECK(listed[2].series == series->name);
    const room::Layout after = with_series_loudspeaker(before, 0, *listed[2].loudspeaker);
    const room::Loudspeaker& was = before.loudspeakers[0];
    const room::Loudspeaker& is = after.loudspeakers[0];
    CHECK(is.name == was.name);
    CHECK(is.channel == was.channel);
    CHECK(is.across_m == was.across_m);
    CHECK(is.up_m == was.up_m);
    CHECK(is.back_m == was.back_m);
    CHECK(is.yaw_rad == was.yaw_rad);
    CHECK(is.pitch_rad == was.pitch_rad);
    CHECK(is.delay_s == was.delay_s);
    CHECK(is.coverage_table == listed[2].loudspeaker->coverage_table);
    CHECK(is.sensitivity_db == listed[2].loudspeaker->sensitivity_db);
    CHECK(is.mass_kg == listed[2].loudspeaker->mass_kg);
    CHECK(after.loudspeakers[1] == before.loudspeakers[1]);
}

TEST_SUITE_END();

}  // namespace rakeline::desk
