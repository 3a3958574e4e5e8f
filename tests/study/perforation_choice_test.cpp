// SPDX-License-Identifier: MIT
#include "study/perforation_choice.hpp"

#include "room/layout_file.hpp"
#include "room/perforation.hpp"
#include "study/perforation_words.hpp"
#include "support/check.hpp"
#include "support/demo_rooms.hpp"

#include <nlohmann/json.hpp>

#include <fstream>
#include <sstream>

using namespace rakeline;
using namespace rakeline::study;
using tests::check_close;
using tests::demo_brief;
using tests::kDemoRooms;
using tests::relative;

namespace {

room::Series generic_series() {
    std::ifstream file(std::string(RAKELINE_SOURCE_DIR) + "/layouts/series/perforations.json");
    std::stringstream text;
    text << file.rdbuf();
    auto series = room::read_series(text.str(), "perforations.json");
    REQUIRE(series);
    return *series;
}

Study studied(const room::Brief& brief) {
    return compute_study(std::make_shared<const room::Brief>(brief));
}

std::optional<double> value_of(const Study& study, const char* id, const Place& place = {}) {
    const Figure* figure = find_figure(study, id, place);
    return figure ? value_at(*figure) : std::nullopt;
}

}  // namespace

TEST_SUITE("study/perforation_choice") {
    TEST_CASE("a sheet that is hung has the figures that its trial foretold") {
        const auto sheets = generic_series().sheets;
        REQUIRE(sheets.size() > 5);
        const auto brief = demo_brief("screening-24");
        const auto trials = sheet_trials(studied(*brief), sheets);
        REQUIRE(trials);
        REQUIRE(trials->trials.size() == sheets.size() + 1);
        for (std::size_t i = 0; i < trials->trials.size(); ++i) {
            const SheetTrial& trial = trials->trials[i];
            INFO(trial.sheet.name);
            room::Brief hung = *brief;
            if (i > 0) hung.layout = with_sheet(hung.layout, trial.sheet);
            CHECK(room::check_layout(hung.layout).empty());
            const Study after = studied(hung);
            check_close(trial.open_area, room::open_area(hung.layout.screen.perforation),
                        relative(0.0, "the same function"));
            check_close(trial.loss_10k_db, after.sound.sheet.loss_10k_db,
                        relative(0.0, "the same function"));
            CHECK(trial.hole_seats == after.holes.seats_that_see_holes);
            const bool seen = trial.beat.value_or(0.0) > 1.0;
            double most = 0.0;
            for (const sound::PictureBeat& beat : after.holes.beats)
                for (const sound::Seen& eye : beat.seen)
                    most = std::max(most, eye.visibility);
            // Hung, the room's light follows the open area; the trial keeps the present luminance.
            if (std::abs(trial.beat.value_or(0.0) - 1.0) > 0.1) CHECK(seen == (most > 1.0));
        }
    }

    TEST_CASE("the sheet that hangs stands first and loses no light against itself") {
        for (const char* name : kDemoRooms) {
            const Study study = studied(*demo_brief(name));
            const auto trials = sheet_trials(study, {});
            REQUIRE(trials);
            REQUIRE(trials->trials.size() == 1);
            const SheetTrial& now = trials->trials.front();
            CHECK(now.light_over_present == 1.0);
            CHECK(now.sheet.perforation == study.layout().screen.perforation);
            CHECK_FALSE(turn_words(*trials, base::UnitSystem::metric).empty());
        }
    }

    TEST_CASE("holes turned as advised beat as faintly as was foretold") {
        for (const char* name : kDemoRooms) {
            const auto brief = demo_brief(name);
            const auto trials = sheet_trials(studied(*brief), {});
            REQUIRE(trials);
            if (!trials->turn) continue;
            room::Brief turned = *brief;
            turned.layout = with_turn(turned.layout, *trials->turn);
            const auto again = sheet_trials(studied(turned), {});
            check_close(again->turn->now, trials->turn->trials[trials->turn->best].visibility,
                        relative(1e-12, "the same luminance and pictures"));
            CHECK(again->turn->best == trials->turn->best);
        }
    }

    TEST_CASE("told to stop, there are no trials") {
        std::stop_source stop;
        stop.request_stop();
        CHECK_FALSE(sheet_trials(studied(*demo_brief("screening-24")), generic_series().sheets,
                                 stop.get_token()));
    }

    TEST_CASE("film has no beat and says why; a sheet without holes has neither holes nor beat") {
        auto brief = *demo_brief("converted-hall-96");
        const Study study = studied(brief);
        const auto& machines = study.layout().projectors;
        for (std::size_t p = 0; p < machines.size(); ++p) {
            if (machines[p].kind != room::SourceKind::film) continue;
            CHECK_FALSE(sound::find_beat(study.holes, static_cast<int>(p), 0));
            const std::string words =
                beat_words(study, static_cast<int>(p), 0, base::UnitSystem::metric);
            CHECK(words.find("Film has no pixels") != std::string::npos);
        }
        brief.layout.screen.perforation.pattern = room::PerforationPattern::none;
        const Study solid = studied(brief);
        CHECK(solid.holes == sound::HoleStudy{});
        CHECK_FALSE(value_of(solid, "sound.pitch_visible_from"));
        CHECK_FALSE(value_of(solid, "sound.holes_seen_share"));
        CHECK(beat_words(solid, 0, 0, base::UnitSystem::metric).find("no holes") !=
              std::string::npos);
    }

    TEST_CASE("the figures of a beat are those of its study, seat by seat") {
        const Study study = studied(*demo_brief("steep-240"));
        for (const sound::PictureBeat& beat : study.holes.beats) {
            const Place place{.projector = beat.projector, .format = beat.format};
            check_close(*value_of(study, "sound.beat_period", place), beat.beat.period_m(),
                        relative(0.0, "the same value"));
            const Figure* figure = find_figure(study, "sound.beat_visibility", place);
            REQUIRE(figure);
            REQUIRE(figure->values.size() == study.seats.seats.size());
            for (const Value& value : figure->values)
                CHECK(value.si == beat.seen.at(static_cast<std::size_t>(value.index)).visibility);
        }
    }
}
