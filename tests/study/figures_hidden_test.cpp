// SPDX-License-Identifier: MIT
#include "sight/blockers.hpp"
#include "study/study.hpp"
#include "support/check.hpp"
#include "support/demo_rooms.hpp"

#include <algorithm>

using namespace rakeline;
using namespace rakeline::tests;

namespace {

study::Study edited(const char* name, void (*edit)(room::Layout&)) {
    auto brief = std::make_shared<room::Brief>(*demo_brief(name));
    edit(brief->layout);
    return study::compute_study(brief);
}

const study::Figure& hidden(const study::Study& study, int format = 0) {
    const auto* figure = study::find_figure(study, "sight.hidden", {.format = format});
    REQUIRE(figure != nullptr);
    return *figure;
}

double mean(const study::Figure& figure) {
    double sum = 0.0;
    for (const study::Value& value : figure.values)
        sum += value.si;
    return sum / static_cast<double>(figure.values.size());
}

}  // namespace

TEST_SUITE("study/figures_hidden") {
    TEST_CASE("every seat has the hidden part that its own eye finds in the full house") {
        for (const char* name : kDemoRooms) {
            const study::Study study = study::compute_study(demo_brief(name));
            const room::Layout& layout = study.layout();
            const auto house = sight::full_house(study.seats, layout.seating, layout.audience);
            std::vector<glm::dvec3> eyes;
            for (const room::Seat& seat : study.seats.seats)
                eyes.push_back(seat.eye);
            for (int f = 0; f < static_cast<int>(layout.formats.size()); ++f) {
                INFO(name, ", format ", f);
                const auto seats = sight::hidden_picture(
                    {.surface = study.picture.surface,
                     .opening = study.picture.openings[static_cast<std::size_t>(f)],
                     .eyes = eyes,
                     .heads = house.heads,
                     .walls = house.walls});
                const study::Figure& figure = hidden(study, f);
                REQUIRE(figure.values.size() == seats.size());
                for (const study::Value& value : figure.values)
                    CHECK(value.si == seats[static_cast<std::size_t>(value.index)].hidden_fraction);
            }
        }
    }

    TEST_CASE("the derivation names those who hide, and in a first row there is nobody") {
        const study::Study study = study::compute_study(demo_brief("screening-24"));
        const study::Figure& figure = hidden(study);
        const auto worst = std::ranges::max_element(figure.values, {}, &study::Value::si);
        CHECK(worst->si > 0.0);
        const auto derivation = study::derive(study, figure, worst->index);
        REQUIRE_FALSE(derivation.notes.empty());
        CHECK(derivation.notes.front().find("hides") != std::string::npos);
        for (const study::Value& value : figure.values) {
            const room::Seat& seat = study.seats.seats[static_cast<std::size_t>(value.index)];
            if (study.seats.rows[static_cast<std::size_t>(seat.row)].row_in_front) continue;
            CHECK(value.si == 0.0);
            CHECK(study::derive(study, figure, value.index).notes.empty());
        }
    }

    TEST_CASE("property: taller or broader heads and higher seat backs hide more of the picture") {
        const auto as_it_is = [](room::Layout&) {};
        const double now = mean(hidden(edited("screening-24", as_it_is)));
        const auto taller = [](room::Layout& x) { x.audience.eye_to_crown_m += 0.04; };
        const auto broader = [](room::Layout& x) { x.audience.head_breadth_m += 0.04; };
        const auto backs = [](room::Layout& x) { x.seating.front().seat_back_m = 1.3; };
        CHECK(mean(hidden(edited("screening-24", taller))) > now);
        CHECK(mean(hidden(edited("screening-24", broader))) > now);
        CHECK(mean(hidden(edited("screening-24", backs))) > now);
    }
}
