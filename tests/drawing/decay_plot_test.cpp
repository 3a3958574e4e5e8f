// SPDX-License-Identifier: MIT
#include "drawing/decay_plot.hpp"

#include "drawing/studied_room.hpp"
#include "support/demo_rooms.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <string>

using namespace rakeline;
using namespace rakeline::drawing;

namespace {

std::vector<std::string> words_of(const Drawing& drawing) {
    std::vector<std::string> out;
    for (const Item& item : drawing.items)
        if (const auto* label = std::get_if<Label>(&item)) out.push_back(label->text);
    return out;
}

bool says(const Drawing& drawing, const std::string& part) {
    const auto words = words_of(drawing);
    return std::any_of(words.begin(), words.end(), [&](const std::string& text) {
        return text.find(part) != std::string::npos;
    });
}

const Line* thick_line(const Drawing& drawing) {
    for (const Item& item : drawing.items) {
        const auto* line = std::get_if<Line>(&item);
        if (line && line->ink == Ink::sound && line->weight == Weight::cut) return line;
    }
    return nullptr;
}

}  // namespace

TEST_SUITE("drawing/decay_plot") {
    TEST_CASE("six octaves, each at its own label, within the chart") {
        for (const char* name : tests::kDemoRooms) {
            const study::Study study = study::compute_study(tests::demo_brief(name));
            const Drawing drawing = decay_plot(study);
            const Line* eyring = thick_line(drawing);
            REQUIRE(eyring);
            REQUIRE(eyring->points.size() == 6);
            for (const Item& item : drawing.items) {
                const auto* label = std::get_if<Label>(&item);
                if (!label || label->text != "1k") continue;
                CHECK(std::abs(label->at.x - eyring->points[3].x) < 1e-12);
            }
            for (const glm::dvec2 p : eyring->points) {
                CHECK(p.y > 0.0);
                CHECK(p.y <= 1.0);
            }
            for (const char* octave : {"125", "250", "500", "1k", "2k", "4k"})
                CHECK(says(drawing, octave));
        }
    }

    TEST_CASE("a curve's height is the figure's value on the axis that the words state") {
        const study::Study study = study::compute_study(tests::demo_brief("converted-hall-96"));
        const Drawing drawing = decay_plot(study);
        // The axis: from the labels "0... s", the height of the last one is its value.
        double top_s = 0.0;
        double top_y = 0.0;
        for (const Item& item : drawing.items) {
            const auto* label = std::get_if<Label>(&item);
            if (!label || label->anchor != Anchor::right || !label->text.ends_with(" s")) continue;
            const double s = std::stod(label->text);
            if (s <= top_s) continue;
            top_s = s;
            top_y = label->at.y;
        }
        REQUIRE(top_s > 0.0);
        const study::Figure* figure = study::find_figure(study, "sound.decay_eyring");
        REQUIRE(figure);
        const Line* eyring = thick_line(drawing);
        REQUIRE(eyring);
        for (std::size_t i = 0; i < figure->values.size(); ++i)
            CHECK(std::abs(eyring->points[i].y - figure->values[i].si / top_s * top_y) < 1e-9);
    }

    TEST_CASE("a room too small for the standard has no recommended range, and says none") {
        auto brief = std::make_shared<room::Brief>(*tests::demo_brief("screening-24"));
        CHECK(says(decay_plot(study::compute_study(brief)), "recommended"));
        brief->layout.hall = {.width_m = 2.5, .length_m = 4.0, .height_m = 2.5};
        brief->layout.seating.clear();
        brief->layout.audience.reference_seat.clear();
        brief->layout.loudspeakers.clear();
        CHECK_FALSE(says(decay_plot(study::compute_study(brief)), "recommended"));
    }
}
