// SPDX-License-Identifier: MIT
#include "study/meter_check.hpp"

#include "study/meter_json.hpp"
#include "study/meter_words.hpp"
#include "support/check.hpp"
#include "support/demo_rooms.hpp"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <random>

using namespace rakeline;
using study::MeterCheck;
using study::MeterRow;
using study::MeterSubject;
using tests::check_close;

namespace {

using Flux = room::FluxChain;

study::Study studied(const room::Layout& layout) {
    room::Brief brief = *tests::demo_brief("converted-hall-96");
    brief.layout = layout;
    return study::compute_study(std::make_shared<const room::Brief>(std::move(brief)));
}

const room::Layout& hall() {
    static const room::Layout layout = tests::demo_brief("converted-hall-96")->layout;
    return layout;
}
const study::Study& hall_study() {
    static const study::Study study = studied(hall());
    return study;
}

/// Film in 1.37.
constexpr MeterSubject kFilm{.projector = 0, .format = 0, .seat = {}};

/// The hall with another lamp behind its film gate.
room::Layout with_light(double times, double corner, double across, double up) {
    room::Layout layout = hall();
    Flux& flux = layout.projectors[0].flux;
    flux.lamp_efficacy_lm_w *= times;
    flux.corner_fraction = corner;
    flux.hot_spot_across = across;
    flux.hot_spot_up = up;
    return layout;
}

/// What a meter in the measuring seat would read at the nine points.
std::vector<MeterRow> rows_of(const room::Layout& layout) {
    const study::Study study = studied(layout);
    const light::PictureLight& light = study.light.lights.at(0);
    std::vector<MeterRow> out;
    for (int i = 0; i < light::kPointCount; ++i) {
        MeterRow row;
        row.point = static_cast<light::PicturePoint>(i);
        row.value = light::luminance_cdm2(light, *study.reference_seat, *row.point);
        out.push_back(row);
    }
    return out;
}

MeterCheck checked(const std::vector<MeterRow>& rows) {
    const auto check = study::check_meter(hall_study(), kFilm, rows);
    if (!check) FAIL(base::text(check.problems()));
    return *check;
}

bool says(const MeterCheck& check, const std::string& part) {
    const auto all = study::meter_advice(hall_study(), check, base::UnitSystem::metric);
    return std::any_of(all.begin(), all.end(), [&](const std::string& text) {
        return text.find(part) != std::string::npos;
    });
}

using Signs = std::vector<light::MeterSign>;

base::Problem first_problem(const std::vector<MeterRow>& rows) {
    const auto check = study::check_meter(hall_study(), kFilm, rows);
    REQUIRE_FALSE(check);
    return check.problems().front();
}

}  // namespace

TEST_SUITE("study/meter_check") {
    TEST_CASE("readings that the layout itself gives find nothing to mend") {
        const MeterCheck check = checked(rows_of(hall()));
        CHECK(check.signs.empty());
        check_close(check.fit.flux_ratio(), 1.0, tests::relative(1e-9, "rounding"));
        CHECK(study::meter_cautions(hall_study(), check).empty());
        CHECK(says(check, "nothing to mend"));
    }

    TEST_CASE("a lamp off centre is moved against the hot spot, as seen facing the screen") {
        const MeterCheck right = checked(rows_of(with_light(1.0, 0.78, 0.12, 0.03)));
        CHECK(right.signs == Signs{light::MeterSign::off_centre});
        CHECK(says(right, "to the right"));
        CHECK(says(right, "move the lamp left"));
        const MeterCheck low = checked(rows_of(with_light(1.0, 0.78, 0.0, -0.15)));
        CHECK(says(low, "move the lamp up"));
        CHECK_FALSE(study::meter_cautions(hall_study(), low).empty());
    }

    TEST_CASE(
        "a steep fall-off, a flat dim picture and a dim one with its pattern right are told") {
        CHECK(checked(rows_of(with_light(1.0, 0.5, 0.0, 0.03))).signs ==
              Signs{light::MeterSign::too_steep});
        CHECK(checked(rows_of(with_light(0.7, 0.95, 0.0, 0.0))).signs ==
              Signs{light::MeterSign::too_flat});
        const MeterCheck two = checked(rows_of(with_light(0.7, 0.78, 0.12, 0.0)));
        CHECK(two.signs == Signs{light::MeterSign::off_centre, light::MeterSign::dim});
        CHECK(says(two, "Mend the pattern first"));
        const MeterCheck dim = checked(rows_of(with_light(0.7, 0.78, 0.0, 0.03)));
        CHECK(dim.signs == Signs{light::MeterSign::dim});
        CHECK(says(dim, "70.0 %"));
        CHECK(says(dim, "clean the port's glass"));
        CHECK(checked(rows_of(with_light(1.3, 0.78, 0.0, 0.03))).signs ==
              Signs{light::MeterSign::bright});
    }

    TEST_CASE("a hole in the middle is told, and a patch that no lamp explains is named") {
        auto rows = rows_of(with_light(1.0, 1.0, 0.0, 0.0));
        rows[0].value *= 0.9;
        const auto hollow = checked(rows).signs;
        CHECK(std::count(hollow.begin(), hollow.end(), light::MeterSign::hollow) == 1);
        rows = rows_of(hall());
        rows[light::kTopLeft].value += 6.0;
        const MeterCheck uneven = checked(rows);
        REQUIRE_FALSE(uneven.signs.empty());
        CHECK(uneven.signs.front() == light::MeterSign::uneven);
        CHECK(says(uneven, "top left"));
    }

    TEST_CASE("the meter's own scatter raises no sign in most cases") {
        std::mt19937 random(81);
        std::normal_distribution<double> normal(0.0,
                                                light::standard_error(light::kMeterAccuracy_cdm2));
        int quiet = 0;
        constexpr int kCases = 200;
        for (int i = 0; i < kCases; ++i) {
            auto rows = rows_of(hall());
            for (MeterRow& row : rows)
                row.value += normal(random);
            quiet += checked(rows).signs.empty() ? 1 : 0;
        }
        // Uneven comes by chance in 1 % of cases, the others need 5 % of change beside 2 errors.
        CHECK(quiet >= kCases * 95 / 100);
    }

    TEST_CASE("round trip: the layout that adopts the fit studies to the readings") {
        const auto rows = rows_of(with_light(0.8, 0.6, 0.1, -0.08));
        const MeterCheck check = checked(rows);
        const auto layout = study::metered_layout(hall(), check);
        REQUIRE(layout);
        CHECK(layout->projectors[0].flux.entry == room::FluxEntry::measured);
        CHECK(layout->projectors[0].flux.lamp_current_a ==
              hall().projectors[0].flux.lamp_current_a);
        CHECK(layout->projectors[1] == hall().projectors[1]);
        const auto again = rows_of(*layout);
        for (std::size_t i = 0; i < rows.size(); ++i)
            check_close(again[i].value, rows[i].value, tests::relative(1e-8, "rounding"));
        const study::Study adopted = studied(*layout);
        const auto twice = study::check_meter(adopted, kFilm, rows);
        REQUIRE(twice);
        CHECK(twice->signs == Signs{light::MeterSign::off_centre});
        check_close(twice->fit.flux_ratio(), 1.0, tests::relative(1e-8, "rounding"));
    }

    TEST_CASE("round trip: what a format's setting holds back stays out of the flux adopted") {
        room::Layout dimmed = hall();
        dimmed.projectors[0].formats[0].light_fraction = 0.5;
        const auto rows = rows_of(dimmed);
        const auto check = study::check_meter(studied(dimmed), kFilm, rows);
        REQUIRE(check);
        const auto layout = study::metered_layout(dimmed, *check);
        REQUIRE(layout);
        const auto again = rows_of(*layout);
        for (std::size_t i = 0; i < rows.size(); ++i)
            check_close(again[i].value, rows[i].value, tests::relative(1e-8, "rounding"));
    }

    TEST_CASE("refuses: a fit that no layout can hold") {
        auto rows = rows_of(hall());
        for (MeterRow& row : rows)
            row.value *= 1000.0;
        const auto layout = study::metered_layout(hall(), checked(rows));
        REQUIRE_FALSE(layout);
        CHECK(layout.problems().front().where.find("measured_flux_lm") != std::string::npos);
    }

    TEST_CASE("refuses: places and seats that are not there, repeats, and no light at all") {
        MeterRow row;
        row.file = "r.csv";
        row.line = 7;
        row.value = 40.0;
        row.place_m = {9.0, 0.0};
        CHECK(first_problem({row}).what.find("right edge") != std::string::npos);
        CHECK(first_problem({row}).line == 7);
        row.place_m = {0.0, -5.0};
        CHECK(first_problem({row}).what.find("lower edge") != std::string::npos);
        row.place_m = {0.0, 0.0};
        row.seat = "Z99";
        CHECK(first_problem({row}).where == "seat");
        row.seat.clear();
        CHECK(first_problem({row, row}).what.find("read before") != std::string::npos);
        row.value = 0.0;
        CHECK(first_problem({row}).what.find("over 0") != std::string::npos);
        CHECK_FALSE(study::check_meter(hall_study(), kFilm, {}));
    }

    TEST_CASE("refuses: a format that the projector does not show") {
        room::Layout layout = hall();
        layout.projectors[0].formats.erase(layout.projectors[0].formats.begin());
        const study::Study study = studied(layout);
        MeterRow row;
        row.point = light::kCentre;
        row.value = 40.0;
        CHECK_FALSE(study::check_meter(study, kFilm, {row}));
        CHECK(*study::metered_format(study, 0) == 1);
    }

    TEST_CASE("five readings alike are an even picture, with no hot spot to mend") {
        auto rows = rows_of(hall());
        rows.resize(5);
        for (MeterRow& row : rows)
            row.value = 50.0;
        const MeterCheck check = checked(rows);
        CHECK(check.fit.part(light::kCorner).value > 0.95);
        // The oblique beam gives an even gate a slope, so that even readings want one at the gate.
        CHECK(std::count(check.signs.begin(), check.signs.end(), light::MeterSign::off_centre) ==
              0);
    }

    TEST_CASE("readings that are all alike are named before anything is moved") {
        auto rows = rows_of(hall());
        rows.resize(5);
        for (MeterRow& row : rows)
            row.value = 50.0;
        const auto told = [](const std::vector<MeterRow>& read) {
            const auto advice =
                study::meter_advice(hall_study(), checked(read), base::UnitSystem::metric);
            return advice.front().starts_with("All 5 places read the same, 50.0 cd/m²");
        };
        CHECK(told(rows));
        rows.back().value = 50.1;
        CHECK_FALSE(told(rows));
    }

    TEST_CASE("readings that a wrong unit would explain are asked about") {
        const auto asked = [](double times) {
            auto rows = rows_of(hall());
            for (MeterRow& row : rows)
                row.value *= times;
            const MeterCheck check = checked(rows);
            REQUIRE(check.signs.size() == 1);
            const auto advice = study::meter_advice(hall_study(), check, base::UnitSystem::metric);
            return advice.front().find("its own unit") != std::string::npos;
        };
        CHECK(asked(1.0 / base::kCdm2PerFootLambert));  // foot-lamberts taken for cd/m2
        CHECK(asked(base::kCdm2PerFootLambert));
        CHECK_FALSE(asked(0.7));
        CHECK_FALSE(asked(1.4));
    }

    TEST_CASE("what too few readings can't determine is said") {
        auto rows = rows_of(hall());
        rows.resize(2);  // centre and left
        const MeterCheck check = checked(rows);
        const auto notes = study::meter_notes(check, base::UnitSystem::metric);
        const auto told = [&](const std::string& part) {
            return std::any_of(notes.begin(), notes.end(), [&](const std::string& note) {
                return note.find(part) != std::string::npos;
            });
        };
        CHECK(check.fit.part(light::kAcross).state == light::PartState::held);
        CHECK(told("Hot spot across: held at the layout's value"));
        CHECK(told("Hot spot up: held at the layout's value"));
        CHECK(told("no more readings than fitted parts"));
    }

    TEST_CASE("JSON holds what the check holds") {
        const MeterCheck check = checked(rows_of(with_light(0.8, 0.6, 0.1, -0.08)));
        const auto json = nlohmann::json::parse(study::meter_json(hall_study(), check));
        CHECK(json["projector"] == hall().projectors[0].name);
        CHECK(json["parts"].size() == 4);
        CHECK(json["parts"][1]["value"].get<double>() == check.fit.part(light::kCorner).value);
        CHECK(json["readings"].size() == 9);
        CHECK(json["readings"][5]["point"] == "top_left");
        CHECK(json["signs"][0] == "off_centre");
        CHECK(json["freedom"] == 5);
        CHECK_FALSE(json["cautions"].empty());
    }
}
