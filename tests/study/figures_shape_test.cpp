// SPDX-License-Identifier: MIT
#include "study/study.hpp"
#include "support/check.hpp"
#include "support/demo_rooms.hpp"

#include <cmath>

using namespace rakeline;
using namespace rakeline::tests;

namespace {

double value(const study::Study& study, const char* id, const study::Place& place) {
    const study::Figure* figure = study::find_figure(study, id, place);
    REQUIRE_MESSAGE(figure, id);
    return study::value_at(*figure).value();
}

study::Place place_of(const picture::ProjectedPicture& picture) {
    study::Place place;
    place.projector = picture.projector;
    place.format = picture.format;
    return place;
}

const tests::Tolerance kRounding = tests::relative(1e-12, "rounding");

}  // namespace

TEST_SUITE("study/figures_shape") {
    TEST_CASE("golden: a lens pitched down at an upright flat screen makes the edges of the cone") {
        // A gate point (x, y) at b behind the lens leaves it by b axis + x right + y up; pitched
        // down by t that is (x, y cos t - b sin t, -(b cos t + y sin t)). On a screen that stands d
        // before the lens a gate a wide is a d / (b cos t + y sin t) wide at the gate height y.
        // Source: derived here.
        room::Brief brief = *demo_brief("screening-24");
        const double pitch = base::radians(4.0);
        room::Projector& projector = brief.layout.projectors.front();
        projector.aim = {.mode = room::AimMode::angles, .pitch_rad = pitch};
        for (room::FormatUse& use : projector.formats)
            use.shift_across = 0.0;
        const auto study = study::compute_study(std::make_shared<const room::Brief>(brief));
        const auto& picture = study.picture.pictures.at(0);
        REQUIRE(brief.layout.screen.radius_m == 0.0);
        REQUIRE(brief.layout.screen.tilt_rad == 0.0);
        const double away = projector.back_m - brief.layout.screen.setback_m;
        const double behind = picture.map.pose().image_distance_m;
        const double shift = picture.map.pose().shift_m.y;
        const auto width_at = [&](double y) {
            return picture.gate_size_m.x * away /
                   (behind * std::cos(pitch) + (y + shift) * std::sin(pitch));
        };
        const double half = 0.5 * picture.gate_size_m.y;
        const study::Place place = place_of(picture);
        check_close(value(study, "picture.width_top", place), width_at(half), kRounding);
        check_close(value(study, "picture.width_bottom", place), width_at(-half), kRounding);
        check_close(value(study, "picture.height_left", place),
                    value(study, "picture.height_right", place), kRounding);
    }

    TEST_CASE("keystone follows by its formula from the edges that stand beside it") {
        for (const char* name : kDemoRooms) {
            INFO(name);
            const auto study = study::compute_study(demo_brief(name));
            for (const auto& picture : study.picture.pictures) {
                const study::Place place = place_of(picture);
                const auto of = [&](const char* id) { return value(study, id, place); };
                const auto imbalance = [](double a, double b) { return 2.0 * (b - a) / (b + a); };
                const auto tight = absolute(1e-12, "rounding of a difference near 1");
                check_close(of("picture.keystone_vertical"),
                            imbalance(of("picture.width_top"), of("picture.width_bottom")), tight);
                check_close(of("picture.keystone_horizontal"),
                            imbalance(of("picture.height_left"), of("picture.height_right")),
                            tight);
            }
        }
    }

    TEST_CASE("the share past an edge is its length over the opening's size on the surface") {
        const auto study = study::compute_study(demo_brief("steep-240"));
        for (const auto& picture : study.picture.pictures) {
            const study::Place place = place_of(picture);
            const auto& format =
                study.layout().formats.at(static_cast<std::size_t>(picture.format));
            const double radius = study.layout().screen.radius_m;
            const double chord = value(study, "picture.width", place);
            // Arc over a chord: 2 r asin(c / 2 r).
            const double arc = 2.0 * radius * std::asin(0.5 * chord / radius);
            INFO(format.name);
            check_close(value(study, "picture.overfill_left_share", place),
                        value(study, "picture.overfill_left", place) / arc, kRounding);
            check_close(
                value(study, "picture.overfill_top_share", place),
                value(study, "picture.overfill_top", place) / value(study, "picture.height", place),
                kRounding);
        }
    }
}
