// SPDX-License-Identifier: MIT
#include "drawing/loss_plot.hpp"

#include "drawing/studied_room.hpp"
#include "support/check.hpp"

#include <algorithm>

using namespace rakeline;
using namespace rakeline::tests;

namespace {

constexpr auto kMetric = base::UnitSystem::metric;

bool has_label(const drawing::Drawing& drawing, const std::string& part) {
    const auto labels = items_of<drawing::Label>(drawing);
    return std::any_of(labels.begin(), labels.end(), [&](const drawing::Label& label) {
        return label.text.find(part) != std::string::npos;
    });
}

study::Study edited(const char* room, const std::function<void(room::Layout&)>& edit) {
    auto brief = std::make_shared<room::Brief>(*demo_brief(room));
    edit(brief->layout);
    return study::compute_study(brief);
}

}  // namespace

TEST_SUITE("drawing/loss_plot") {
    TEST_CASE("the plot names its axes with units, its curves, its limits and the loudspeaker") {
        const drawing::Drawing plot = drawing::loss_plot(studied("steep-240"), {}, kMetric);
        for (const char* part : {"frequency, Hz", "31.5", "500", "16k", " dB", "0°", "30°", "45°",
                                 "60°", "75°", "angle from square", "conventions", "apart",
                                 "3 dB at 6 kHz", "gap ", "ripple ", "headroom ", "house curve"}) {
            INFO(part);
            CHECK(has_label(plot, part));
        }
        CHECK_FALSE(has_label(plot, "measured"));
    }

    TEST_CASE("everything lies within the bounds, in every demo room and shape") {
        for (const char* name : kDemoRooms) {
            for (const drawing::PlotShape& shape :
                 {drawing::PlotShape{}, drawing::PlotShape{4.0, 0.3}})
                CHECK(bounds_hold_all(drawing::loss_plot(studied(name), {}, kMetric, shape)));
        }
    }

    TEST_CASE("the chosen channel is drawn; a surround gives way to the centre") {
        const study::Study& study = studied("steep-240");
        const auto& all = study.layout().loudspeakers;
        const auto index = [&](room::Channel channel) {
            return static_cast<int>(
                std::find_if(all.begin(), all.end(),
                             [&](const room::Loudspeaker& l) { return l.channel == channel; }) -
                all.begin());
        };
        const int left = index(room::Channel::left);
        const int centre = index(room::Channel::centre);
        const auto named = [&](int chosen, int expected) {
            return has_label(drawing::loss_plot(study, chosen, kMetric),
                             all[static_cast<std::size_t>(expected)].name + ": gap");
        };
        CHECK(named(left, left));
        CHECK(named(index(room::Channel::surround), centre));
    }

    TEST_CASE("a measured sheet shows its points and no band; feet follow the unit system") {
        const study::Study study = edited("steep-240", [](room::Layout& x) {
            x.screen.loss_table = {{250.0, 0.2}, {4000.0, 2.0}, {12500.0, 7.0}};
        });
        const drawing::Drawing plot = drawing::loss_plot(study, {}, base::UnitSystem::imperial);
        CHECK(has_label(plot, "squares: measured"));
        CHECK_FALSE(has_label(plot, "conventions"));
        CHECK(has_label(plot, " ft"));
        CHECK(items_of<drawing::Fill>(plot).size() == 3);
    }

    TEST_CASE("without a screen channel the sheet stands alone") {
        const study::Study study =
            edited("steep-240", [](room::Layout& x) { x.loudspeakers.clear(); });
        const drawing::Drawing plot = drawing::loss_plot(study, {}, kMetric);
        CHECK_FALSE(has_label(plot, "headroom"));
        CHECK(has_label(plot, "75°"));
        CHECK(bounds_hold_all(plot));
    }
}
