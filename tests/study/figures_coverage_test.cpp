// SPDX-License-Identifier: MIT
#include "study/aim_advice.hpp"
#include "support/check.hpp"
#include "support/demo_rooms.hpp"

#include <algorithm>
#include <cmath>

using namespace rakeline;
using namespace rakeline::tests;
using study::Figure;
using study::Study;

namespace {

const auto kRounding = absolute(1e-9, "the same sum by another route");

const Figure& figure(const Study& study, const char* id, int loudspeaker = 0, int band = 0) {
    const Figure* found = study::find_figure(study, id, {.loudspeaker = loudspeaker, .band = band});
    REQUIRE_MESSAGE(found != nullptr, id);
    return *found;
}

}  // namespace

TEST_SUITE("study/figures_coverage") {
    TEST_CASE("seats within the window follow from the levels of the seats") {
        for (const char* name : kDemoRooms) {
            const Study study = study::compute_study(demo_brief(name));
            REQUIRE(study.reference_seat);
            for (int l = 0; l < static_cast<int>(study.layout().loudspeakers.size()); ++l) {
                for (int band = 0; band < static_cast<int>(sound::kOctaves.size()); ++band) {
                    const Figure& levels = figure(study, "sound.direct_level", l, band);
                    const double reference = study::value_at(levels, *study.reference_seat).value();
                    const auto within =
                        std::ranges::count_if(levels.values, [&](const study::Value& value) {
                            return std::abs(value.si - reference) <= 3.0;
                        });
                    INFO(name, ", loudspeaker ", l, ", band ", band);
                    check_close(
                        study::value_at(figure(study, "sound.level_reference", l), band).value(),
                        reference, kRounding);
                    check_close(
                        study::value_at(figure(study, "sound.seats_within", l), band).value(),
                        static_cast<double>(within) / static_cast<double>(levels.values.size()),
                        kRounding);
                }
            }
        }
    }

    TEST_CASE("powers and margins follow by hand from what their workings show") {
        const Study study = study::compute_study(demo_brief("steep-240"));
        for (int l = 0; l < static_cast<int>(study.layout().loudspeakers.size()); ++l) {
            const Figure& power = figure(study, "sound.amplifier_power", l);
            const auto in = study::derive(study, power).inputs;
            REQUIRE(in.size() == 4);
            const double watts = in[0].si * std::pow(10.0, 0.1 * (in[1].si + in[2].si - in[3].si));
            check_close(study::value_at(power).value(), watts, relative(1e-12, "rounding"));
            const room::Loudspeaker& of = study.layout().loudspeakers[static_cast<std::size_t>(l)];
            check_close(study::value_at(figure(study, "sound.headroom", l)).value(),
                        10.0 * std::log10(of.amplifier_w / watts), kRounding);
            const double heat = watts * std::pow(10.0, -1.2);
            check_close(study::value_at(figure(study, "sound.thermal_power", l)).value(), heat,
                        relative(1e-12, "rounding"));
            check_close(study::value_at(figure(study, "sound.thermal_margin", l)).value(),
                        10.0 * std::log10(of.power_w / heat), kRounding);
        }
    }

    TEST_CASE("cabinets are spoken of where they stand, with what carries them left to riggers") {
        const Study study = study::compute_study(demo_brief("steep-240"));
        CHECK(study::find_figure(study, "sound.cabinet_to_sheet", {.loudspeaker = 0}) != nullptr);
        CHECK(study::find_figure(study, "sound.cabinet_to_sheet", {.loudspeaker = 6}) == nullptr);
        const Figure& over = figure(study, "sound.cabinet_over_heads", 6);
        const auto notes = study::derive(study, over).notes;
        REQUIRE_FALSE(notes.empty());
        CHECK(notes[0].find("licensed rigger") != std::string::npos);
        // Demo cabinets have room behind the screen.
        for (const char* name : kDemoRooms) {
            const Study room = study::compute_study(demo_brief(name));
            for (const Figure& one : room.figures) {
                const std::string_view id = one.definition->id;
                if (id == "sound.cabinet_to_wall" || id == "sound.cabinet_apart")
                    CHECK(one.values[0].si >= -1e-9);
            }
        }
    }

    TEST_CASE("an aim put into the layout has the spread that was promised") {
        const auto brief = demo_brief("converted-hall-96");
        const Study before = study::compute_study(brief);
        const auto advice = study::aim_advice(before, 0, true);
        REQUIRE(advice);
        auto next = std::make_shared<room::Brief>(*brief);
        next->layout = study::with_aim(brief->layout, 0, advice->after);
        const Study after = study::compute_study(next);
        double mean = 0.0;
        for (const std::size_t band : sound::kAimBands)
            mean += study::value_at(figure(after, "sound.level_spread"), static_cast<int>(band))
                        .value() /
                    3.0;
        check_close(mean, advice->spread_after_db, kRounding);
        CHECK(advice->spread_after_db < advice->spread_before_db);
        CHECK_FALSE(study::aim_advice(before, 3, false));
        const std::string words =
            study::aim_words(brief->layout, 0, *advice, base::UnitSystem::metric);
        CHECK(words.starts_with("L: level spread at 2 to 8 kHz from "));
    }
}
