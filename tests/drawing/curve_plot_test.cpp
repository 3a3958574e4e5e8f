// SPDX-License-Identifier: MIT
#include "drawing/curve_plot.hpp"

#include "drawing/studied_room.hpp"
#include "study/curve_trials.hpp"
#include "support/check.hpp"

#include <algorithm>

using namespace rakeline;
using namespace rakeline::tests;

namespace {

light::CurvatureHelp help_of(const char* name) {
    auto help = study::curve_trials(studied(name), 0, 0);
    REQUIRE(help);
    return *help;
}

bool has_label(const drawing::Drawing& drawing, const std::string& part) {
    const auto labels = items_of<drawing::Label>(drawing);
    return std::any_of(labels.begin(), labels.end(), [&](const drawing::Label& label) {
        return label.text.find(part) != std::string::npos;
    });
}

}  // namespace

TEST_SUITE("drawing/curve_plot") {
    TEST_CASE("the plot names its axes with units and marks the screen as it is and the best") {
        const auto help = help_of("steep-240");
        const drawing::Drawing metric = drawing::curve_plot(help, base::UnitSystem::metric);
        for (const char* part : {"sagitta", "tilt", "0 %", "100 %", "flat", " m", "°",
                                 "now: ", "most even: ", "darkest over brightest", "crop"}) {
            INFO(part);
            CHECK(has_label(metric, part));
        }
        CHECK(has_label(drawing::curve_plot(help, base::UnitSystem::imperial), " ft"));
    }

    TEST_CASE("everything lies within the bounds, in every demo room") {
        for (const char* name : kDemoRooms)
            CHECK(bounds_hold_all(drawing::curve_plot(help_of(name), base::UnitSystem::metric)));
    }

    TEST_CASE("a plot shaped for a field has the field's proportions, whatever its lettering") {
        const auto help = help_of("steep-240");
        for (const glm::dvec2 field : {glm::dvec2(577.0, 206.0), glm::dvec2(1000.0, 480.0)}) {
            for (const double pitch : {12.0, 16.0}) {
                const auto shape = drawing::plot_shape(field, pitch);
                const auto plot = drawing::curve_plot(help, base::UnitSystem::metric, shape);
                const glm::dvec2 size = plot.high - plot.low;
                const double rows =
                    field.y / size.y * shape.pitch;  // as painted to fill the height
                check_close(rows, pitch, relative(0.02, "lettering a little within the bounds"));
                check_close(size.x / size.y, field.x / field.y,
                            relative(0.03, "lettering a little within the bounds"));
            }
        }
    }

    TEST_CASE("trials behind the wall are shaded, others not") {
        auto help = help_of("steep-240");
        const auto fills = [&] {
            return items_of<drawing::Fill>(drawing::curve_plot(help, base::UnitSystem::metric))
                .size();
        };
        for (auto* trials : {&help.curves, &help.tilts})
            for (auto& trial : *trials)
                trial.clear_of_wall = true;
        CHECK(fills() == 0);
        help.tilts.back().clear_of_wall = false;
        CHECK(fills() == 1);
    }
}
