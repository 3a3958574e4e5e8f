// SPDX-License-Identifier: MIT
// The hall's own sound as figures: decay, noise, reflections, flutter, arrival.
#include "study/delay_advice.hpp"
#include "support/check.hpp"
#include "support/demo_rooms.hpp"

#include <algorithm>
#include <cmath>
#include <functional>
#include <map>

using namespace rakeline;
using namespace rakeline::study;
using tests::absolute;
using tests::check_close;
using tests::demo_brief;
using tests::kDemoRooms;
using tests::relative;

namespace {

const Study& studied(const std::string& name) {
    static std::map<std::string, Study> kept;
    auto found = kept.find(name);
    if (found == kept.end()) found = kept.emplace(name, compute_study(demo_brief(name))).first;
    return found->second;
}

Study edited(const std::string& name, const std::function<void(room::Layout&)>& edit) {
    auto brief = std::make_shared<room::Brief>(*demo_brief(name));
    edit(brief->layout);
    return compute_study(brief);
}

const Figure& figure_of(const Study& study, const char* id, const Place& place = {}) {
    const Figure* figure = find_figure(study, id, place);
    if (!figure) FAIL(id);
    return *figure;
}

double value_of(const Study& study, const char* id, int index = 0, const Place& place = {}) {
    return value_at(figure_of(study, id, place), index).value();
}

double input_of(const Derivation& derivation, const std::string& symbol) {
    for (const WorkingStep& step : derivation.inputs)
        if (step.symbol == symbol) return step.si;
    FAIL(symbol);
    return 0.0;
}

constexpr int kOneKilohertz = 4;  ///< in sound::kOctaves

}  // namespace

TEST_SUITE("study/figures_acoustics") {
    TEST_CASE("a decay time follows by hand from the inputs that its working shows") {
        for (const char* name : kDemoRooms) {
            const Study& study = studied(name);
            const double c =
                343.2 * std::sqrt((study.layout().hall.temperature_c + 273.15) / 293.15);
            const Figure& figure = figure_of(study, "sound.decay_eyring");
            REQUIRE(figure.values.size() == 6);
            for (const Value& value : figure.values) {
                const Derivation d = derive(study, figure, value.index);
                const double exponent =
                    -input_of(d, "S") * std::log(1.0 - input_of(d, "a")) + input_of(d, "4 m V");
                check_close(value.si, 24.0 * std::log(10.0) * input_of(d, "V") / (c * exponent),
                            relative(1e-12, "rounding"));
                CHECK(value.si < value_of(study, "sound.decay_sabine", value.index));
            }
        }
    }

    TEST_CASE("mean absorption is the sum of what the working lists") {
        const Study& study = studied("converted-hall-96");
        const Figure& figure = figure_of(study, "sound.mean_absorption");
        const Derivation d = derive(study, figure, kOneKilohertz);
        double area = 0.0, absorbed = 0.0;
        for (int i = 1; i <= 6; ++i) {
            const std::string n = std::to_string(i);
            area += input_of(d, "S_" + n);
            absorbed += input_of(d, "S_" + n) * input_of(d, "a_" + n);
        }
        check_close(value_of(study, "sound.mean_absorption", kOneKilohertz), absorbed / area,
                    relative(1e-12, "rounding"));
        check_close(value_of(study, "sound.surface_area"), area, relative(1e-12, "rounding"));
    }

    TEST_CASE("the air is less than the box that the hall stands in") {
        for (const char* name : kDemoRooms) {
            const Study& study = studied(name);
            INFO(name);
            CHECK(value_of(study, "sound.volume") < value_of(study, "room.volume"));
            CHECK(value_of(study, "sound.volume") > 0.5 * value_of(study, "room.volume"));
            CHECK(value_of(study, "sound.decay_least") < value_of(study, "sound.decay_most"));
        }
    }

    TEST_CASE("a hall lined with plaster lingers, and is found to") {
        const Study study = edited("steep-240", [](room::Layout& x) {
            for (auto* surface : {&x.acoustics.screen_wall, &x.acoustics.side_walls,
                                  &x.acoustics.rear_wall, &x.acoustics.ceiling})
                surface->by_octave.fill(0.03);
        });
        CHECK(figure_of(study, "sound.decay_share").worst == Verdict::missed);
        CHECK(std::any_of(study.findings.begin(), study.findings.end(), [](const Finding& f) {
            return f.figure == "sound.decay_share" && f.verdict == Verdict::missed;
        }));
    }

    TEST_CASE("noise is allowed by the curve that the layout aims at, to 8 kHz") {
        const Study& study = studied("steep-240");
        CHECK(value_of(study, "sound.noise_target") == 25.0);
        CHECK(value_of(study, "sound.noise_allowed", kOneKilohertz) == 27.0);
        CHECK(figure_of(study, "sound.noise_allowed").values.size() == 8);
    }

    TEST_CASE("bare ceiling over bare floor flutters; splayed walls do not") {
        const Study& bare = studied("converted-hall-96");
        CHECK(figure_of(bare, "sound.flutter_height").worst == Verdict::missed);
        const Derivation d = derive(bare, figure_of(bare, "sound.flutter_height"));
        check_close(value_of(bare, "sound.flutter_height"),
                    10.0 * std::log10(input_of(d, "1 - a_1") * input_of(d, "1 - a_2")),
                    absolute(1e-12, "rounding"));
        CHECK(find_figure(studied("grand-620"), "sound.flutter_sides") == nullptr);
    }

    TEST_CASE("reflections are of screen loudspeakers alone, and say by which wall they come") {
        const Study& study = studied("grand-620");
        int screen = 0;
        for (const room::Loudspeaker& l : study.layout().loudspeakers)
            screen += sound::is_screen_channel(l.channel);
        for (const char* id : {"sound.reflection_first_delay", "sound.reflection_strongest"}) {
            const auto count = std::count_if(
                study.figures.begin(), study.figures.end(),
                [&](const Figure& f) { return std::string_view(f.definition->id) == id; });
            CHECK(count == screen);
        }
        const Figure& figure = figure_of(study, "sound.reflection_strongest");
        const Derivation d = derive(study, figure, figure.values.front().index);
        REQUIRE_FALSE(d.notes.empty());
        CHECK(d.notes.front().starts_with("by way of the "));
        CHECK(input_of(d, "r'") > input_of(d, "r"));
    }

    TEST_CASE("delays as suggested bring the screen together at the reference seat") {
        for (const char* name : kDemoRooms) {
            const auto layout = with_suggested_delays(studied(name));
            REQUIRE(layout);
            const Study after = edited(name, [&](room::Layout& x) { x = *layout; });
            INFO(name);
            // The first of each channel: two delays, each to a hundredth of a millisecond.
            check_close(value_of(after, "sound.arrival_spread", *after.reference_seat), 0.0,
                        absolute(1.001e-5, "delays set to hundredths of a millisecond"));
            CHECK(value_of(after, "sound.screen_lead", *after.reference_seat) > 0.0149);
            CHECK(value_of(after, "sound.screen_first_share") >=
                  value_of(studied(name), "sound.screen_first_share"));
        }
    }

    TEST_CASE("a suggested delay follows by hand from the inputs that its working shows") {
        for (const char* name : kDemoRooms) {
            const Study& study = studied(name);
            for (const Figure& figure : study.figures) {
                if (std::string_view(figure.definition->id) != "sound.delay_suggested") continue;
                const Derivation d = derive(study, figure);
                const double delay =
                    (input_of(d, "r_max") - input_of(d, "r")) / input_of(d, "c") + input_of(d, "m");
                check_close(figure.values.front().si, std::max(0.0, delay),
                            absolute(1e-15, "rounding of some ten milliseconds"));
            }
        }
    }

    TEST_CASE("the shares of seats are counts of what the seats' own figures say") {
        for (const char* name : kDemoRooms) {
            const Study& study = studied(name);
            const auto share = [&](const char* id, auto holds) {
                const auto& values = figure_of(study, id).values;
                const auto n = std::count_if(values.begin(), values.end(),
                                             [&](const Value& v) { return holds(v.si); });
                return static_cast<double>(n) / static_cast<double>(values.size());
            };
            CHECK(value_of(study, "sound.screen_first_share") ==
                  share("sound.screen_lead", [](double s) { return s > 0.0; }));
            CHECK(value_of(study, "sound.outer_first_share") ==
                  share("sound.outer_lead", [](double s) { return s > 0.001; }));
            // The derivation lists the seats.
            const Figure& lead = figure_of(study, "sound.outer_lead");
            const auto most =
                std::max_element(lead.values.begin(), lead.values.end(),
                                 [](const Value& a, const Value& b) { return a.si < b.si; });
            if (most->si <= 0.001) continue;
            const Derivation d = derive(study, figure_of(study, "sound.outer_first_share"));
            REQUIRE_FALSE(d.notes.empty());
            CHECK(d.notes.front().starts_with("so at "));
        }
    }

    TEST_CASE("a centre loudspeaker at the picture's height and middle is heard there") {
        const Study& before = studied("converted-hall-96");
        const glm::dvec3 picture =
            geometry::point_at(before.picture.surface, before.picture.openings.at(0).uv.centre());
        const Study study = edited("converted-hall-96", [&](room::Layout& x) {
            for (room::Loudspeaker& l : x.loudspeakers) {
                if (l.channel != room::Channel::centre) continue;
                l.across_m = picture.x;
                l.up_m = picture.y;
            }
        });
        Place place;
        place.format = 0;
        for (const Value& value : figure_of(study, "sound.image_up", place).values) {
            // Only that it stands behind the sheet is left: seen from one side, or from below.
            CHECK(std::abs(value.si) < 0.05);
            CHECK(std::abs(value_of(study, "sound.image_across", value.index, place)) < 0.05);
        }
        const Study raised = edited("converted-hall-96", [&](room::Layout& x) {
            for (room::Loudspeaker& l : x.loudspeakers)
                if (l.channel == room::Channel::centre) l.up_m = picture.y + 1.0;
        });
        for (const Value& value : figure_of(raised, "sound.image_up", place).values)
            CHECK(value.si > value_of(study, "sound.image_up", value.index, place));
    }
}
