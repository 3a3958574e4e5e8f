// SPDX-License-Identifier: MIT
#include "base/units.hpp"
#include "study/loss_curves.hpp"
#include "support/check.hpp"
#include "support/demo_rooms.hpp"

#include <cmath>

using namespace rakeline;
using namespace rakeline::study;
using namespace rakeline::tests;

namespace {

Study edited(const char* name, const auto& edit) {
    auto brief = std::make_shared<room::Brief>(*demo_brief(name));
    edit(brief->layout);
    return compute_study(brief);
}

double value(const Study& study, const char* id, int index = 0, const Place& place = {}) {
    const Figure* figure = find_figure(study, id, place);
    REQUIRE_MESSAGE(figure, id);
    const auto si = value_at(*figure, index);
    REQUIRE_MESSAGE(si, id);
    return *si;
}

int third(double hz) {
    return static_cast<int>(sound::third_at(hz));
}

}  // namespace

TEST_SUITE("study/figures_sheet") {
    TEST_CASE("the sheet of every demo room keeps to the order that physics gives") {
        for (const char* name : kDemoRooms) {
            const Study study = compute_study(demo_brief(name));
            INFO(name);
            for (int i = 0; i < static_cast<int>(sound::kThirds.size()); ++i) {
                const double loss = value(study, "sound.screen_loss", i);
                CHECK(loss >= 0.0);
                CHECK(value(study, "sound.screen_loss_60", i) <= loss);
                if (!find_figure(study, "sound.screen_loss_least")) continue;
                CHECK(value(study, "sound.screen_loss_least", i) <= loss);
                CHECK(value(study, "sound.screen_loss_most", i) >= loss);
                // In the bass a light sheet moves with its air, and more mass in the holes then
                // takes a few mB less.
                if (sound::kThirds[static_cast<std::size_t>(i)] < 500.0) continue;
                CHECK(value(study, "sound.screen_loss_apart", i) >= loss);
            }
            CHECK(value(study, "sound.screen_loss_10k") ==
                  value(study, "sound.screen_loss", third(10000.0)));
            CHECK(value(study, "sound.treble_loss_8k") ==
                  value(study, "sound.screen_loss", third(8000.0)) -
                      value(study, "sound.screen_loss", third(500.0)));
        }
    }

    TEST_CASE("figures of the gap stand for screen channels alone") {
        const Study study = compute_study(demo_brief("steep-240"));
        for (int l = 0; l < static_cast<int>(study.layout().loudspeakers.size()); ++l) {
            const room::Loudspeaker& speaker =
                study.layout().loudspeakers[static_cast<std::size_t>(l)];
            const bool screen = speaker.behind_screen &&
                                speaker.channel != room::Channel::sub_bass &&
                                speaker.channel != room::Channel::surround;
            for (const char* id :
                 {"sound.gap", "sound.gap_ripple", "sound.gap_notch", "sound.equalisation",
                  "sound.equalisation_headroom", "sound.sheet_angle", "sound.screen_loss_slant"}) {
                const Figure* figure = find_figure(study, id, {.loudspeaker = l});
                INFO(id, " of ", speaker.name);
                CHECK((figure != nullptr) == screen);
            }
        }
    }

    TEST_CASE("the most slanted seat loses no more than one straight on") {
        const Study study = compute_study(demo_brief("steep-240"));
        const double angle = value(study, "sound.sheet_angle");
        CHECK(angle > 0.0);
        CHECK(angle < base::radians(90.0));
        for (int i = 0; i < static_cast<int>(sound::kThirds.size()); ++i)
            CHECK(value(study, "sound.screen_loss_slant", i) <=
                  value(study, "sound.screen_loss", i));
    }

    TEST_CASE("a boost follows by hand from the inputs that its working shows") {
        const Study study = compute_study(demo_brief("steep-240"));
        const Figure* figure = find_figure(study, "sound.equalisation");
        REQUIRE(figure);
        for (const Value& one : figure->values) {
            const auto in = derive(study, *figure, one.index).inputs;
            REQUIRE(in.size() == 6);
            const double by_hand = in[1].si - in[2].si - (in[3].si - in[4].si) + in[5].si;
            check_close(by_hand, one.si, absolute(1e-12, "rounding of decibels"));
        }
    }

    TEST_CASE("a flat house curve costs headroom where the nominal one asks for less treble") {
        const auto with = [](room::HouseCurve curve) {
            return edited("steep-240", [&](room::Layout& x) { x.playback.house_curve = curve; });
        };
        CHECK(value(with(room::HouseCurve::flat), "sound.equalisation_headroom") >
              value(with(room::HouseCurve::x_curve), "sound.equalisation_headroom"));
    }

    TEST_CASE("a baffle that takes in everything leaves no ripple; a hard one the most") {
        const auto with = [](double alpha) {
            return edited("steep-240",
                          [&](room::Layout& x) { x.acoustics.baffle.by_octave.fill(alpha); });
        };
        CHECK(value(with(1.0), "sound.gap_ripple") == 0.0);
        CHECK(value(with(0.1), "sound.gap_ripple") > value(with(0.6), "sound.gap_ripple"));
        CHECK(value(with(1.0), "sound.gap_level", third(4000.0)) == 0.0);
    }

    TEST_CASE("a measured loss is said to be one, with its assumption, and has no band") {
        const Study study = edited("steep-240", [](room::Layout& x) {
            x.screen.loss_table = {{250.0, 0.2}, {4000.0, 2.0}, {10000.0, 6.0}};
        });
        check_close(value(study, "sound.screen_loss", third(4000.0)), 2.0,
                    absolute(1e-9, "the measured point"));
        check_close(value(study, "sound.screen_loss", third(16000.0)), 6.0,
                    absolute(1e-9, "held beyond the last"));
        CHECK(find_figure(study, "sound.screen_loss_most") == nullptr);
        const Figure* figure = find_figure(study, "sound.screen_loss");
        const auto notes = derive(study, *figure, 10).notes;
        REQUIRE(notes.size() == 1);
        CHECK(notes[0].find("measured") != std::string::npos);
        CHECK(notes[0].find("assumption") != std::string::npos);
    }

    TEST_CASE("the band's derivation names the form used and the one that gives the end") {
        const Study study = compute_study(demo_brief("converted-hall-96"));
        const Figure* figure = find_figure(study, "sound.screen_loss_most");
        REQUIRE(figure);
        const auto notes = derive(study, *figure, third(10000.0)).notes;
        REQUIRE(notes.size() == 2);
        CHECK(notes[0].starts_with("here by "));
        CHECK(notes[1].find("used: Fok's factor of d/b") != std::string::npos);
    }

    TEST_CASE("fine curves go through the figures of the thirds") {
        for (const char* name : kDemoRooms) {
            const Study study = compute_study(demo_brief(name));
            const LossCurves curves = loss_curves(study, {});
            INFO(name);
            REQUIRE(curves.angles.size() == 5);
            for (const double hz : {100.0, 1000.0, 10000.0}) {
                std::size_t i = 0;
                while (curves.hz[i + 1] <= hz)
                    ++i;
                const double loss = value(study, "sound.screen_loss", third(hz));
                CHECK(curves.angles[0].loss_db[i] <= loss + 1e-12);
                CHECK(curves.angles[0].loss_db[i + 1] >= loss - 1e-12);
            }
            CHECK(curves.hz.front() == 20.0);
            CHECK(curves.hz.back() == 20000.0);
        }
    }

    TEST_CASE("the gap's ripple is drawn with a dozen points or more from peak to peak") {
        const Study study = compute_study(demo_brief("grand-620"));
        const LossCurves curves = loss_curves(study, {});
        REQUIRE(curves.channel);
        const auto& channel =
            *study.sound.sheet.channels[static_cast<std::size_t>(curves.channel->loudspeaker)];
        const auto& hz = curves.channel->hz;
        for (std::size_t i = 0; i + 1 < hz.size(); ++i)
            CHECK(hz[i + 1] - hz[i] <= channel.spacing_hz / 12.0 * (1.0 + 1e-9));
    }
}
