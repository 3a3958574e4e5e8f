// SPDX-License-Identifier: MIT
#include "sound/sound_study.hpp"

#include "support/check.hpp"

#include <algorithm>
#include <cmath>

using namespace rakeline;
using room::Channel;
using room::Loudspeaker;
using sound::kOctaves;
using sound::SoundInput;
using sound::SoundStudy;
using tests::absolute;
using tests::check_close;
using tests::relative;

namespace {

const auto kRounding = absolute(1e-10, "rounding of levels of order 100");

Loudspeaker screen_loudspeaker(Channel channel, double across_m) {
    Loudspeaker l;
    l.channel = channel;
    l.across_m = across_m;
    l.up_m = 3.0;
    l.back_m = 0.4;
    return l;
}

/// Three screen channels, a sub-bass and a surround; twelve ears on a grid.
SoundInput small_room() {
    SoundInput in;
    in.surface = geometry::standing_patch({0, 3.0, 1.2}, 0.0, 0.0);
    in.sheet.perforation.pattern = room::PerforationPattern::square;
    in.loudspeakers = {screen_loudspeaker(Channel::left, -4.0),
                       screen_loudspeaker(Channel::centre, 0.0),
                       screen_loudspeaker(Channel::right, 4.0)};
    Loudspeaker sub = screen_loudspeaker(Channel::sub_bass, 1.0);
    sub.directivity = room::Directivity::piston;
    sub.piston_radius_m = 0.23;
    Loudspeaker surround = screen_loudspeaker(Channel::surround, -6.0);
    surround.back_m = 9.0;
    surround.yaw_rad = 1.57;
    surround.behind_screen = false;
    in.loudspeakers.push_back(sub);
    in.loudspeakers.push_back(surround);
    for (const double back : {5.0, 8.0, 11.0, 14.0}) {
        for (const double across : {-3.0, 0.0, 3.5})
            in.ears.push_back({across, 1.3, back});
    }
    in.reference_seat = 7;
    return in;
}

}  // namespace

TEST_SUITE("sound/sound_study") {
    TEST_CASE("every level is the sum of its terms along its own path") {
        const SoundInput in = small_room();
        const SoundStudy study = sound::study_sound(in);
        REQUIRE(study.loudspeakers.size() == in.loudspeakers.size());
        for (std::size_t l = 0; l < in.loudspeakers.size(); ++l) {
            for (std::size_t b = 0; b < kOctaves.size(); ++b) {
                for (std::size_t s = 0; s < in.ears.size(); ++s) {
                    INFO("loudspeaker ", l, ", band ", kOctaves[b], ", seat ", s);
                    const auto& path = study.loudspeakers[l].paths[s];
                    CHECK(path == sound::direct_path(in.loudspeakers[l], in.surface, in.ears[s]));
                    const auto terms =
                        sound::level_terms(in.loudspeakers[l], path, in.sheet, in.air, kOctaves[b]);
                    CHECK(study.loudspeakers[l].level_db[b][s] == terms.sum_db());
                }
            }
        }
    }

    TEST_CASE("the terms are the ones of the path, taken one by one") {
        const SoundInput in = small_room();
        const Loudspeaker& l = in.loudspeakers[0];
        const sound::DirectPath path = sound::direct_path(l, in.surface, in.ears[5]);
        const sound::LevelTerms terms = sound::level_terms(l, path, in.sheet, in.air, 4000.0);
        check_close(terms.sensitivity_db, 98.0, kRounding);
        check_close(terms.power_db, 10.0 * std::log10(500.0), kRounding);
        check_close(terms.distance_db, -20.0 * std::log10(path.distance_m), kRounding);
        check_close(terms.directivity_db,
                    sound::directivity_db(l, 4000.0, path.off_axis_across_rad, path.off_axis_up_rad,
                                          in.air),
                    kRounding);
        check_close(terms.screen_db,
                    -sound::screen_loss_db(in.sheet, 4000.0, path.sheet_angle_rad, in.air),
                    kRounding);
        check_close(terms.air_db, -sound::air_absorption_db_per_m(4000.0, in.air) * path.distance_m,
                    kRounding);
        CHECK(terms.screen_db < -0.5);
        CHECK(terms.directivity_db < 0.0);
    }

    TEST_CASE("in front of the screen the sheet takes nothing") {
        const SoundInput in = small_room();
        const Loudspeaker& surround = in.loudspeakers[4];
        const sound::DirectPath path = sound::direct_path(surround, in.surface, in.ears[3]);
        CHECK(sound::level_terms(surround, path, in.sheet, in.air, 8000.0).screen_db == 0.0);
    }

    TEST_CASE("twice the distance on the axis costs 6.02 dB and the air between") {
        SoundInput in = small_room();
        in.loudspeakers = {screen_loudspeaker(Channel::centre, 0.0)};
        in.ears = {{0, 3.0, 6.4}, {0, 3.0, 12.4}};
        in.reference_seat = 0;
        const SoundStudy study = sound::study_sound(in);
        const sound::LoudspeakerSound& sound = study.loudspeakers[0];
        for (std::size_t b = 0; b < kOctaves.size(); ++b) {
            const double air = 6.0 * sound::air_absorption_db_per_m(kOctaves[b], in.air);
            check_close(sound.level_db[b][0] - sound.level_db[b][1], 20.0 * std::log10(2.0) + air,
                        kRounding);
        }
    }

    TEST_CASE("the spread is the loudest seat less the quietest, in each band") {
        const SoundStudy study = sound::study_sound(small_room());
        for (const sound::LoudspeakerSound& l : study.loudspeakers) {
            for (std::size_t b = 0; b < kOctaves.size(); ++b) {
                std::vector<double> sorted = l.level_db[b];
                std::sort(sorted.begin(), sorted.end());
                CHECK(l.spread_db[b].value() == sorted.back() - sorted.front());
                CHECK(l.spread_db[b].value() > 0.0);
            }
        }
    }

    TEST_CASE("arrival spread counts the screen channels, each by its first loudspeaker") {
        SoundInput in = small_room();
        const double c = in.air.sound_speed_m_s();
        const auto distance = [&](std::size_t l, std::size_t s) {
            const Loudspeaker& from = in.loudspeakers[l];
            return glm::distance(glm::dvec3(from.across_m, from.up_m, from.back_m), in.ears[s]);
        };
        // Seat 2 stands right of the middle: left comes last, and right or centre first.
        const double expected = (distance(0, 2) - std::min(distance(1, 2), distance(2, 2))) / c;
        const SoundStudy study = sound::study_sound(in);
        check_close(study.arrival.seats[2].spread_s().value(), expected,
                    absolute(1e-15, "rounding"));

        // A second, farther loudspeaker on the left channel changes nothing; a nearer one does.
        in.loudspeakers.push_back(screen_loudspeaker(Channel::left, -9.0));
        CHECK(sound::study_sound(in).arrival.seats == study.arrival.seats);
        in.loudspeakers.push_back(screen_loudspeaker(Channel::left, 3.0));
        CHECK(sound::study_sound(in).arrival.seats[2].spread_s().value() < expected);
    }

    TEST_CASE("on the centre line the outer channels arrive together") {
        SoundInput in = small_room();
        in.loudspeakers.erase(in.loudspeakers.begin() + 1);
        const SoundStudy study = sound::study_sound(in);
        check_close(study.arrival.seats[1].spread_s().value(), 0.0, absolute(1e-15, "rounding"));
    }

    TEST_CASE("what the room has no part for stays empty") {
        SoundInput in = small_room();
        in.loudspeakers = {in.loudspeakers[1], in.loudspeakers[3]};
        in.reference_seat = std::nullopt;
        in.sheet.perforation.pattern = room::PerforationPattern::none;
        const SoundStudy study = sound::study_sound(in);
        CHECK_FALSE(study.arrival.seats[0].spread_s());
        CHECK_FALSE(study.coverage.loudspeakers[0].drive);
        CHECK_FALSE(study.hole_visible_from_m);
        in.ears.clear();
        const SoundStudy empty = sound::study_sound(in);
        CHECK_FALSE(empty.loudspeakers[0].spread_db[0]);
        CHECK(empty.arrival.seats.empty());
    }

    TEST_CASE("the screen's loss is shown at normal incidence, by thirds") {
        const SoundInput in = small_room();
        const SoundStudy study = sound::study_sound(in);
        for (std::size_t i = 0; i < sound::kThirds.size(); ++i) {
            CHECK(study.screen_loss_db[i] ==
                  sound::screen_loss_db(in.sheet, sound::kThirds[i], 0.0, in.air));
        }
        CHECK(study.hole_visible_from_m.value() ==
              sound::hole_visible_from_m(in.sheet.perforation.hole_diameter_m));
    }

    TEST_CASE("an ear inside the loudspeaker hears a finite level") {
        SoundInput in = small_room();
        in.ears = {{0.0, 3.0, 0.4}};
        in.reference_seat = 0;
        const SoundStudy study = sound::study_sound(in);
        CHECK(std::isfinite(study.loudspeakers[1].level_db[4][0]));
    }
}
