// SPDX-License-Identifier: MIT
#include "drawing/frequency_axis.hpp"

#include "drawing/studied_room.hpp"
#include "support/check.hpp"

using namespace rakeline;
using namespace rakeline::tests;

TEST_SUITE("drawing/frequency_axis") {
    TEST_CASE("an octave is as long everywhere on the axis, and 1 kHz is its middle") {
        CHECK(drawing::octaves(1000.0) == 0.0);
        check_close(drawing::octaves(16000.0) - drawing::octaves(8000.0), 1.0,
                    relative(1e-14, "rounding of a logarithm"));
        check_close(drawing::octaves(125.0), -3.0, relative(1e-14, "rounding of a logarithm"));
    }

    TEST_CASE("golden: the labels are the octaves of ISO 266 from 31.5 Hz to 16 kHz") {
        std::string all;
        for (const drawing::Tick& tick :
             drawing::octave_ticks(drawing::frequency_scale(20.0, 20000.0)))
            all += tick.text + " ";
        CHECK(all == "31.5 63 125 250 500 1k 2k 4k 8k 16k ");
        const auto few = drawing::octave_ticks(drawing::frequency_scale(100.0, 1000.0));
        REQUIRE(few.size() == 4);
        CHECK(few.front().text == "125");
        CHECK(few.back().at == 0.0);
    }

    TEST_CASE("the axis has every label once, an upright for each, and its unit") {
        drawing::Drawing drawing;
        const drawing::Scale scale = drawing::frequency_scale(20.0, 20000.0);
        drawing::Chart chart(drawing, {0.0, 3.0, 0.0, 1.0}, scale, {0.0, 10.0}, 0.15);
        drawing::draw_frequency_axis(chart, scale);
        const auto labels = items_of<drawing::Label>(drawing);
        CHECK(labels.size() == 11);
        CHECK(labels.back().text == "frequency, Hz");
        drawing::Drawing narrow;
        drawing::Chart small(narrow, {0.0, 1.5, 0.0, 1.0}, scale, {0.0, 10.0}, 0.15);
        drawing::draw_frequency_axis(small, scale);
        CHECK(items_of<drawing::Label>(narrow).size() == 6);
        CHECK(items_of<drawing::Line>(narrow).size() == 20);
        // An upright through the field and a short stroke below it each.
        CHECK(items_of<drawing::Line>(drawing).size() == 20);
    }
}
