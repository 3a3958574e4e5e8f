// SPDX-License-Identifier: MIT
#include "study/study_json.hpp"

#include "support/check.hpp"
#include "support/demo_rooms.hpp"

#include <nlohmann/json.hpp>

using namespace rakeline;
using nlohmann::json;

namespace {

const json* find(const json& figures, const std::string& id) {
    for (const json& figure : figures) {
        if (figure.at("id") == id) return &figure;
    }
    return nullptr;
}

}  // namespace

TEST_SUITE("study/study_json") {
    TEST_CASE("figures carry id, subject, unit and either a value or values") {
        for (const char* name : tests::kDemoRooms) {
            const auto study = study::compute_study(tests::demo_brief(name));
            const json out = json::parse(study::study_json(study));
            CHECK(out.at("figures").size() == study.figures.size());
            CHECK(out.at("findings").size() == study.findings.size());
            for (const json& figure : out.at("figures")) {
                INFO(name, ": ", figure.at("id").dump());
                CHECK(figure.at("id").get<std::string>().starts_with(
                    figure.at("subject").get<std::string>()));
                CHECK(figure.at("unit").is_string());
                CHECK(figure.contains("value") != figure.contains("values"));
                CHECK(figure.contains("limit") == figure.contains("holds"));
            }
        }
    }

    TEST_CASE("angles come out in degrees and values by seat, row and band") {
        const auto study = study::compute_study(tests::demo_brief("converted-hall-96"));
        const json out = json::parse(study::study_json(study));
        const json& figures = out.at("figures");
        const json* down = find(figures, "picture.angle_down");
        REQUIRE(down != nullptr);
        CHECK(down->at("unit") == "deg");
        tests::check_close(
            down->at("value").get<double>(),
            base::degrees(*study::value_at(*study::find_figure(study, "picture.angle_down"))),
            tests::relative(1e-15, "one conversion"));
        const json* off_axis = find(figures, "sight.off_axis");
        REQUIRE(off_axis != nullptr);
        CHECK(off_axis->at("values").size() == study.seats.seats.size());
        CHECK(off_axis->at("values").contains(study.seats.seats.back().name));
        const json* c = find(figures, "sight.c_value");
        REQUIRE(c != nullptr);
        CHECK_FALSE(c->at("values").contains(study.seats.rows.front().letter));
        CHECK(c->at("values").contains(study.seats.rows.back().letter));
        const json* loss = find(figures, "sound.screen_loss");
        REQUIRE(loss != nullptr);
        CHECK(loss->at("values").contains("1000"));
        const json* level = find(figures, "sound.direct_level");
        REQUIRE(level != nullptr);
        CHECK(level->at("band_hz").get<double>() == 63.0);
        CHECK(level->contains("loudspeaker"));
    }

    TEST_CASE("one format leaves the others out and keeps what is per none") {
        const auto study = study::compute_study(tests::demo_brief("converted-hall-96"));
        const json out = json::parse(study::study_json(study, 1));
        for (const json& figure : out.at("figures")) {
            if (figure.contains("format")) {
                CHECK(figure.at("format") == study.layout().formats[1].name);
            }
        }
        CHECK(find(out.at("figures"), "room.seats") != nullptr);
    }

    TEST_CASE("the register lists every definition") {
        const json out = json::parse(study::register_json());
        CHECK(out.size() == study::figure_register().size());
    }
}
