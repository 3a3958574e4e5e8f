// SPDX-License-Identifier: MIT
#include "study/crowd_json.hpp"
#include "study/crowd_words.hpp"
#include "study/study.hpp"
#include "support/check.hpp"
#include "support/demo_rooms.hpp"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <functional>
#include <random>

using namespace rakeline;
using namespace rakeline::study;
using tests::demo_brief;

namespace {

std::shared_ptr<const room::Brief> quick_brief(const char* name) {
    auto brief = std::make_shared<room::Brief>(*demo_brief(name));
    brief->layout.audience.crowd.precision = 0.1;
    return brief;
}

Study sampled(const std::shared_ptr<const room::Brief>& brief) {
    Study study = compute_study(brief);
    auto crowd = sample_crowd(study);
    return with_crowd(std::move(study), std::move(crowd));
}

double value_of(const Study& study, const char* id, int format, int index = 0) {
    const Figure* figure = find_figure(study, id, {.format = format});
    REQUIRE(figure != nullptr);
    return value_at(*figure, index).value();
}

}  // namespace

TEST_SUITE("study/figures_crowd") {
    TEST_CASE("a study without a crowd has none of its figures, and with one the others stand") {
        const Study plain = compute_study(quick_brief("converted-hall-96"));
        const Study whole = with_crowd(plain, sample_crowd(plain));
        std::size_t of_crowd = 0;
        for (const Figure& figure : plain.figures)
            CHECK_FALSE(needs_crowd(*figure.definition));
        for (const Figure& figure : whole.figures) {
            if (needs_crowd(*figure.definition)) {
                ++of_crowd;
                continue;
            }
            CHECK(std::ranges::find(plain.figures, figure) != plain.figures.end());
        }
        CHECK(of_crowd == 8 * plain.layout().formats.size());
        CHECK(whole.figures.size() == plain.figures.size() + of_crowd);
        for (const Finding& finding : plain.findings)
            CHECK(std::ranges::find(whole.findings, finding) != whole.findings.end());
        const bool found = std::ranges::any_of(whole.findings, [](const Finding& finding) {
            return finding.figure == "sight.clear_chance";
        });
        CHECK(found);
        CHECK(with_crowd(whole, nullptr).figures == plain.figures);
    }

    TEST_CASE("figures are the counts of their own seat, and the room is no clearer than a seat") {
        for (const char* name : {"screening-24", "steep-240"}) {
            const Study study = sampled(quick_brief(name));
            for (int f = 0; f < static_cast<int>(study.crowd->formats.size()); ++f) {
                const auto& crowd = study.crowd->formats[static_cast<std::size_t>(f)];
                double sum = 0.0;
                int most = crowd.room.drawn;
                for (int seat = 0; seat < static_cast<int>(crowd.seats.size()); ++seat) {
                    const sight::Chance& chance = crowd.seats[static_cast<std::size_t>(seat)];
                    const double p = value_of(study, "sight.clear_chance", f, seat);
                    CHECK(p == static_cast<double>(chance.clear) / chance.drawn);
                    CHECK(value_of(study, "sight.clear_chance_low", f, seat) <= p);
                    CHECK(value_of(study, "sight.clear_chance_high", f, seat) >= p);
                    // Crowd by crowd a clear room has this seat clear.
                    if (chance.drawn == crowd.room.drawn) CHECK(crowd.room.clear <= chance.clear);
                    sum += p;
                    most = std::max(most, chance.drawn);
                }
                tests::check_close(value_of(study, "sight.seats_clear", f),
                                   sum / static_cast<double>(crowd.seats.size()),
                                   tests::absolute(1e-12, "order of summing"));
                CHECK(value_of(study, "sight.crowds_drawn", f) == most);
                CHECK(value_of(study, "sight.room_clear_chance_low", f) <=
                      value_of(study, "sight.room_clear_chance", f));
            }
        }
    }

    TEST_CASE("a derivation ends in its own value and says who was drawn") {
        const Study study = sampled(quick_brief("screening-24"));
        for (const Figure& figure : study.figures) {
            if (!needs_crowd(*figure.definition)) continue;
            const Value& value = figure.values.back();
            const Derivation derivation = derive(study, figure, value.index);
            INFO(derivation.what);
            CHECK(derivation.result == value.si);
            const auto people = std::ranges::find(derivation.inputs, "N", &WorkingStep::symbol);
            REQUIRE(people != derivation.inputs.end());
            CHECK(people->si == 24.0 * study.crowd->drawn);
            CHECK(derivation.notes.front().find("ANSUR") != std::string::npos);
        }
    }

    TEST_CASE("property: a remembered crowd is the one that would be drawn, edit by edit") {
        using Edit = std::function<void(room::Layout&, double)>;
        const Edit edits[] = {
            [](room::Layout& x, double by) { x.loudspeakers.front().pitch_rad += 0.05 * by; },
            [](room::Layout& x, double by) { x.projectors.front().up_m += 0.1 * by; },
            [](room::Layout& x, double) { x.name += "'"; },
            [](room::Layout& x, double by) { x.seating.front().seat_back_m += 0.05 * by; },
            [](room::Layout& x, double by) { x.screen.sill_m += 0.1 * by; },
            [](room::Layout& x, double by) { x.formats.front().aspect_ratio *= 1.0 + 0.01 * by; },
            [](room::Layout& x, double by) { x.audience.crowd.slump_m += 0.01 * by; },
            [](room::Layout& x, double by) { x.audience.crowd.women_fraction = 0.5 + 0.5 * by; },
            [](room::Layout& x, double by) { x.audience.crowd.taken_fraction = 0.6 + 0.3 * by; },
            [](room::Layout& x, double by) { x.audience.wheelchair_eye_high_m += 0.02 * by; },
            [](room::Layout& x, double) { x.audience.crowd.seed += 1; },
        };
        std::mt19937 random(77);
        std::uniform_real_distribution<double> amount(-1.0, 1.0);
        auto brief = quick_brief("screening-24");
        StudyCache cache;
        int remembered = 0;
        for (int step = 0; step < 60; ++step) {
            auto next = std::make_shared<room::Brief>(*brief);
            edits[random() % std::size(edits)](next->layout, amount(random));
            brief = next;
            const Study study = cache.update(brief);
            const auto drawn = sample_crowd(study);
            if (const auto known = cache.known_crowd(study)) {
                ++remembered;
                CHECK(*known == *drawn);
            }
            cache.remember_crowd(study, drawn);
        }
        CHECK(remembered > 5);
        CHECK(remembered < 40);
    }

    TEST_CASE("sentences and JSON say what the figures do") {
        const Study study = sampled(quick_brief("steep-240"));
        const sight::Chance& room = study.crowd->formats[0].room;
        const std::string sentence = crowd_sentence(study, 0);
        CHECK(sentence.find(std::to_string(room.clear) + " of " + std::to_string(room.drawn) +
                            " crowds leave every seat") != std::string::npos);
        CHECK(precision_sentence(study).empty());
        const auto json = nlohmann::json::parse(crowd_json(study, 1));
        REQUIRE(json["formats"].size() == 1);
        const auto& seats = json["formats"][0]["seats"];
        CHECK(seats.size() == study.seats.seats.size());
        CHECK(seats[study.seats.seats[7].name]["chance"].get<double>() ==
              value_of(study, "sight.clear_chance", 1, 7));
        CHECK(json["precision_reached"] == true);
    }
}
