// SPDX-License-Identifier: MIT
// What the document says of sound: how it is read and written, and what is refused.
#include "room/refusal.hpp"
#include "room/valid_room.hpp"

#include <cmath>

using namespace rakeline;
using namespace rakeline::room;
using tests::check_refused;

namespace {

/// The valid room after one edit.
template <class Edit>
Layout edited(const Edit& edit) {
    Layout layout = tests::valid_room();
    edit(layout);
    return layout;
}

Layout with_losses(std::vector<LossPoint> losses) {
    return edited([&](Layout& x) { x.screen.loss_table = std::move(losses); });
}

Layout with_coverage(std::vector<CoveragePoint> coverage) {
    return edited([&](Layout& x) { x.loudspeakers[1].coverage_table = std::move(coverage); });
}

}  // namespace

TEST_SUITE("room/check_sound") {
    TEST_CASE("round trip: every field of sound stands in the file under its key") {
        const auto read = read_layout(R"({
            "rakeline_layout": 1,
            "screen": {
                "perforation": {"pattern": "woven", "hole_diameter_m": 0.0003, "pitch_m": 0.0012,
                                "angle_deg": -30},
                "loss_table": [{"frequency_hz": 100, "loss_db": 0.5},
                               {"frequency_hz": 8000, "loss_db": 2}]},
            "loudspeakers": [{"name": "C", "amplifier_w": 700, "delay_s": 0.02,
                "coverage_table": [{"frequency_hz": 500, "across_deg": 100, "up_deg": 60}],
                "cabinet_width_m": 0.7, "cabinet_height_m": 1.1, "cabinet_depth_m": 0.35,
                "mass_kg": 60}],
            "acoustics": {"side_walls": {"hz_125": 0.1, "hz_4000": 1},
                          "audience": {"hz_1000": 1.2},
                          "taken_fraction": 0.4, "noise_target_nc": 30},
            "playback": {"surround_peak_level_db": 100, "sub_bass_gain_db": 6,
                         "crest_factor_db": 14, "equalise_to_hz": 16000, "house_curve": "flat"}
        })",
                                      tests::kFile);
        INFO((read ? "" : base::text(read.problems())));
        REQUIRE(read);
        Layout expected;
        expected.screen.perforation = {PerforationPattern::woven, 0.0003, 0.0012,
                                       base::radians(-30.0)};
        expected.screen.loss_table = {{100.0, 0.5}, {8000.0, 2.0}};
        Loudspeaker& centre = expected.loudspeakers.emplace_back();
        centre.name = "C";
        centre.amplifier_w = 700.0;
        centre.delay_s = 0.02;
        centre.coverage_table = {{500.0, base::radians(100.0), base::radians(60.0)}};
        centre.cabinet_width_m = 0.7;
        centre.cabinet_height_m = 1.1;
        centre.cabinet_depth_m = 0.35;
        centre.mass_kg = 60.0;
        expected.acoustics.side_walls.by_octave.front() = 0.1;
        expected.acoustics.side_walls.by_octave.back() = 1.0;
        expected.acoustics.audience.by_octave[3] = 1.2;
        expected.acoustics.taken_fraction = 0.4;
        expected.acoustics.noise_target_nc = 30;
        expected.playback = {100.0, 6.0, 14.0, 16000.0, HouseCurve::flat};
        CHECK(*read == expected);
        const auto again = read_layout(write_layout(*read), tests::kFile);
        REQUIRE(again);
        CHECK(*again == expected);
    }

    TEST_CASE("an octave's key names the middle of its band") {
        for (std::size_t i = 0; i < kAbsorptionOctaves_hz.size(); ++i) {
            const std::string key = "hz_" + std::to_string(std::lround(kAbsorptionOctaves_hz[i]));
            const auto read = read_layout(
                R"({"rakeline_layout": 1, "acoustics": {"baffle": {")" + key + R"(": 0.123}}})",
                tests::kFile);
            REQUIRE(read);
            CHECK(read->acoustics.baffle.by_octave[i] == 0.123);
        }
    }

    TEST_CASE("taken seats take in no less than empty ones, unless the room says so") {
        const Acoustics usual;
        for (std::size_t i = 0; i < kAbsorptionOctaves_hz.size(); ++i)
            CHECK(usual.audience.by_octave[i] >= usual.seats.by_octave[i]);
    }

    TEST_CASE("refuses: woven openings that leave no threads") {
        const auto woven = [](double side_m) {
            return edited([&](Layout& x) {
                x.screen.perforation = {PerforationPattern::woven, side_m, 0.001};
            });
        };
        check_refused(woven(0.001), {"screen.perforation.hole_diameter_m",
                                     "openings of 0.001 m leave no threads at a pitch of 0.001 m",
                                     "smaller than the pitch"});
        CHECK(check_layout(woven(0.0009)).empty());
    }

    TEST_CASE("refuses: holes that would leave no sheet, an open area of all or more") {
        for (const auto pattern : {PerforationPattern::square, PerforationPattern::staggered}) {
            const auto with = [&](double diameter_m) {
                return edited([&](Layout& x) {
                    x.screen.perforation = {pattern, diameter_m, 0.002};
                });
            };
            check_refused(with(0.0025),
                          {"screen.perforation.hole_diameter_m", "overlap at a pitch of 0.002 m",
                           "smaller than the pitch"});
            check_refused(with(0.002), {"screen.perforation.hole_diameter_m",
                                        "overlap at a pitch of 0.002 m", "smaller than the pitch"});
            CHECK(check_layout(with(0.0019)).empty());
        }
    }

    TEST_CASE("refuses: one measured loss alone, and losses whose frequencies do not rise") {
        check_refused(with_losses({{1000.0, 1.0}}),
                      {"screen.loss_table", "nothing of other frequencies", "two or more"});
        check_refused(with_losses({{1000.0, 1.0}, {1000.0, 2.0}}),
                      {"screen.loss_table[1].frequency_hz", "do not rise", "low to high"});
        check_refused(with_losses({{1000.0, 1.0}, {2000.0, 2.0}, {500.0, 0.5}}),
                      {"screen.loss_table[2].frequency_hz", "do not rise", "low to high"});
        CHECK(check_layout(with_losses({{500.0, 1.0}, {1000.0, 1.0}})).empty());
    }

    TEST_CASE("refuses: measured coverage whose frequencies do not rise") {
        check_refused(with_coverage({{2000.0, 1.5, 1.0}, {2000.0, 1.4, 0.9}}),
                      {"loudspeakers[1].coverage_table[1].frequency_hz", "do not rise", "once"});
        CHECK(check_layout(with_coverage({{2000.0, 1.5, 1.0}})).empty());
        CHECK(check_layout(with_coverage({{1000.0, 1.5, 1.0}, {2000.0, 1.4, 0.9}})).empty());
    }

    TEST_CASE("refuses: a cabinet larger than the hall") {
        Layout small;
        small.hall.height_m = 4.5;
        small.screen.height_m = 2.0;
        small.loudspeakers.resize(1);
        small.loudspeakers[0].name = "C";
        small.loudspeakers[0].cabinet_height_m = 4.4;
        CHECK(check_layout(small).empty());
        small.loudspeakers[0].cabinet_height_m = 4.8;
        check_refused(small, {"loudspeakers[0].cabinet_height_m",
                              "is 4.8 m, more than the hall's height of 4.5 m", "in metres"});
    }

    TEST_CASE("refuses: values of sound beyond their range, each by its field") {
        check_refused(edited([](Layout& x) { x.acoustics.ceiling.by_octave[2] = 1.1; }),
                      {"acoustics.ceiling.hz_500", "1.1 is above the most allowed, 1", "0 to 1"});
        check_refused(
            edited([](Layout& x) { x.acoustics.seats.by_octave[5] = 1.21; }),
            {"acoustics.seats.hz_4000", "1.21 is above the most allowed, 1.2", "0 to 1.2"});
        check_refused(edited([](Layout& x) { x.acoustics.noise_target_nc = 14; }),
                      {"acoustics.noise_target_nc", "14 is below the least allowed, 15", "50"});
        check_refused(edited([](Layout& x) { x.loudspeakers[0].delay_s = 20.0; }),
                      {"loudspeakers[0].delay_s", "20 s is above the most allowed, 0.5 s", "0.5"});
        check_refused(edited([](Layout& x) { x.hall.humidity_fraction = 0.0; }),
                      {"hall.humidity_fraction", "0 is below the least allowed, 0.01", "0.01"});
        check_refused(edited([](Layout& x) { x.acoustics.taken_fraction = -0.1; }),
                      {"acoustics.taken_fraction", "-0.1 is below the least allowed, 0", "0 to 1"});
        check_refused(edited([](Layout& x) { x.loudspeakers[0].mass_kg = 0.0; }),
                      {"loudspeakers[0].mass_kg", "0 kg is below the least allowed", "0.1 kg"});
        check_refused(with_losses({{19.0, 1.0}, {100.0, 1.0}}),
                      {"screen.loss_table[0].frequency_hz", "19 Hz is below", "20 Hz"});
        check_refused(with_losses({{20.0, 1.0}, {100.0, 61.0}}),
                      {"screen.loss_table[1].loss_db", "61 dB is above", "60 dB"});
        check_refused(edited([](Layout& x) { x.playback.equalise_to_hz = 900.0; }),
                      {"playback.equalise_to_hz", "900 Hz is below", "1000 Hz"});
    }
}
