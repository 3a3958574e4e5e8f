// SPDX-License-Identifier: MIT
#include "study/study.hpp"
#include "support/check.hpp"
#include "support/demo_rooms.hpp"

#include <algorithm>

using namespace rakeline;
using namespace rakeline::study;
using namespace rakeline::tests;

namespace {

Study edited(const char* name, void (*edit)(room::Layout&)) {
    auto brief = std::make_shared<room::Brief>(*demo_brief(name));
    edit(brief->layout);
    return compute_study(brief);
}

const Study& grand() {
    static const Study study = compute_study(demo_brief("grand-620"));
    return study;
}

const Figure& figure_of(const Study& study, const char* id, int format = 0) {
    const Figure* figure = find_figure(study, id, {.format = format});
    REQUIRE_MESSAGE(figure != nullptr, id);
    return *figure;
}

const Finding* finding_on(const Study& study, const char* id) {
    const auto found = std::ranges::find(study.findings, id, &Finding::figure);
    return found == study.findings.end() ? nullptr : &*found;
}

/// Each value follows from D, R, T and N, which stand last among its inputs.
void check_by_hand(const Study& study, const char* id) {
    const Figure& figure = figure_of(study, id);
    for (const Value& value : figure.values) {
        INFO(id, " at ", value.index);
        const auto in = derive(study, figure, value.index).inputs;
        REQUIRE(in.size() >= 4);
        const std::size_t at = in.size() - 4;
        REQUIRE(in[at].symbol == "D");
        const double d = in[at].si, r = in[at + 1].si, t = in[at + 2].si, n = in[at + 3].si;
        check_close(d * (n + r) / (d + t) - r, value.si,
                    absolute(1e-12, "rounding of lengths of some metres"));
    }
}

}  // namespace

TEST_SUITE("study/figures_rows") {
    TEST_CASE("C at the ends, over standing people and of wheelchairs follow from their inputs") {
        for (const char* id : {"sight.c_value_ends", "sight.c_standing", "sight.wheelchair_c_low",
                               "sight.wheelchair_c_high"})
            check_by_hand(grand(), id);
        check_by_hand(compute_study(demo_brief("steep-240")), "sight.c_value_second_ends");
    }

    TEST_CASE("the derivation of the ends names both end seats and takes the worse") {
        const Figure& ends = figure_of(grand(), "sight.c_value_ends");
        for (const Value& value : ends.values) {
            const room::Row& row = grand().seats.rows[static_cast<std::size_t>(value.index)];
            const auto notes = derive(grand(), ends, value.index).notes;
            REQUIRE(notes.size() == 2);
            const auto name = [&](int seat) {
                return grand().seats.seats[static_cast<std::size_t>(seat)].name;
            };
            CHECK(notes[0].find("seat " + name(row.first_seat)) != std::string::npos);
            CHECK(notes[1].find("seat " + name(row.first_seat + row.seat_count - 1)) !=
                  std::string::npos);
            const std::string worst = base::quantity_text(value.si, base::Unit::millimetre);
            CHECK((notes[0] + notes[1]).find(worst) != std::string::npos);
        }
    }

    TEST_CASE("standing people count for the rows and seats behind a cross aisle alone") {
        // The grand room's stalls have one cross aisle behind their eighth row; its balcony none.
        const int stalls = grand().layout().seating[0].rows;
        const Figure& c = figure_of(grand(), "sight.c_standing");
        REQUIRE(static_cast<int>(c.values.size()) == stalls - 8);
        for (const Value& value : c.values) {
            CHECK(value.index >= 8);
            CHECK(value.index < stalls);
        }
        const Figure& hidden = figure_of(grand(), "sight.hidden_standing");
        const Figure& seated = figure_of(grand(), "sight.hidden");
        for (const Value& value : hidden.values) {
            const int row = grand().seats.seats[static_cast<std::size_t>(value.index)].row;
            CHECK(row >= 8);
            CHECK(row < stalls);
            CHECK(value.si >= value_at(seated, value.index).value() - 1e-12);
        }
        CHECK(find_figure(compute_study(demo_brief("screening-24")), "sight.c_standing") ==
              nullptr);
    }

    TEST_CASE("the figures of wheelchair places stand at those places alone") {
        const auto& seats = grand().seats.seats;
        for (const char* id : {"sight.wheelchair_c_low", "sight.wheelchair_hidden_low",
                               "sight.wheelchair_hidden_high", "sight.wheelchair_hides"}) {
            const Figure& figure = figure_of(grand(), id);
            CHECK(figure.values.size() == 7);
            for (const Value& value : figure.values)
                CHECK(seats[static_cast<std::size_t>(value.index)].wheelchair);
        }
    }

    TEST_CASE("places that the table misses are a finding that defers to local law") {
        for (const char* name : kDemoRooms) {
            const Study study = compute_study(demo_brief(name));
            CHECK(value_at(figure_of(study, "room.wheelchair_places_short")) == 0.0);
        }
        const Study bare =
            edited("grand-620", [](room::Layout& x) { x.seating[0].wheelchair_places.resize(2); });
        const double wanted = value_at(figure_of(bare, "room.wheelchair_places_wanted")).value();
        CHECK(value_at(figure_of(bare, "room.wheelchair_places_short")) == wanted - 2.0);
        const Finding* finding = finding_on(bare, "room.wheelchair_places_short");
        REQUIRE(finding != nullptr);
        CHECK(finding->what.find("wheelchair places too few") != std::string::npos);
        CHECK(finding->against.find("local access law decides") != std::string::npos);
        CHECK(finding->mend.find("not all in one row") != std::string::npos);
    }

    TEST_CASE("a place without a companion seat is a finding, and the derivation names it") {
        const Study pair = edited("screening-24", [](room::Layout& x) {
            x.seating[0].wheelchair_places = {{"D", 5}, {"D", 6}};
        });
        const Figure& figure = figure_of(pair, "room.companion_seats_short");
        CHECK(value_at(figure) == 1.0);
        const auto notes = derive(pair, figure).notes;
        REQUIRE(notes.size() == 1);
        CHECK(notes[0] == "D6 has no free seat beside it");
        REQUIRE(finding_on(pair, "room.companion_seats_short") != nullptr);
        const Study one = compute_study(demo_brief("screening-24"));
        CHECK(value_at(figure_of(one, "room.companion_seats_short")) == 0.0);
        CHECK(finding_on(one, "room.companion_seats_short") == nullptr);
    }

    TEST_CASE("rows stand where the plan has them") {
        const auto& rows = grand().seats.rows;
        const Figure& distance = figure_of(grand(), "room.row_distance");
        const Figure& floor = figure_of(grand(), "room.row_floor");
        const Figure& eyes = figure_of(grand(), "room.row_eye");
        REQUIRE(distance.values.size() == rows.size());
        for (std::size_t r = 0; r < rows.size(); ++r) {
            CHECK(distance.values[r].si == rows[r].centre_eye.z - grand().picture.surface.centre.z);
            CHECK(floor.values[r].si == rows[r].centre_floor.y);
            CHECK(eyes.values[r].si == rows[r].centre_eye.y);
        }
    }
}
