// SPDX-License-Identifier: MIT
#include "drawing/blur_bands.hpp"

#include "picture/random_room.hpp"
#include "support/check.hpp"

#include <algorithm>

using namespace rakeline;
using namespace rakeline::tests;
using drawing::FocusSide;

namespace {

double distance_along_axis(const picture::PictureMap& map, glm::dvec2 uv) {
    return glm::dot(geometry::point_at(map.surface(), uv) - map.pose().lens, map.pose().axis);
}

double area_of(const drawing::BlurBand& band) {
    double area = 0.0;
    for (const auto& polygon : band.polygons)
        area += geometry::signed_area(polygon);
    return area;
}

}  // namespace

TEST_SUITE("drawing/blur_bands") {
    TEST_CASE("property: both sides of a distance fill the opening, and their rim lies at it") {
        Dice dice(20261125);
        int contours = 0;
        for (int i = 0; i < 200; ++i) {
            INFO("room ", i);
            const auto in = random_room(dice);
            const auto study = picture::study_picture(in);
            REQUIRE(study.pictures.size() == 1);
            const auto& map = study.pictures[0].map;
            const auto& opening = study.openings[0];
            const auto focus = picture::best_focus(map, opening, 2.0);
            REQUIRE(focus);
            const double at =
                std::lerp(focus->nearest_m, focus->farthest_m, dice.between(0.05, 0.95));
            const auto behind = drawing::blur_band(map, opening.uv, at, FocusSide::behind);
            const auto before = drawing::blur_band(map, opening.uv, at, FocusSide::before);
            check_close(area_of(behind) + area_of(before), opening.uv.area(),
                        relative(1e-3, "64 columns on a curved rim"));
            CHECK(area_of(behind) > 0.0);
            CHECK(area_of(before) > 0.0);
            for (const auto& line : behind.contours)
                for (const glm::dvec2& p : line) {
                    ++contours;
                    check_close(distance_along_axis(map, p), at, absolute(1e-8, "rounding, m"));
                }
        }
        CHECK(contours > 1000);
    }

    TEST_CASE("a distance beyond the opening leaves all of it on one side") {
        Dice dice(7);
        const auto study = picture::study_picture(random_room(dice));
        const auto& opening = study.openings.at(0);
        const auto& map = study.pictures.at(0).map;
        const auto none = drawing::blur_band(map, opening.uv, 1e3, FocusSide::behind);
        const auto all = drawing::blur_band(map, opening.uv, 1e3, FocusSide::before);
        CHECK(none.polygons.empty());
        CHECK(all.contours.empty());
        check_close(area_of(all), opening.uv.area(), relative(1e-12, "rounding"));
    }

    TEST_CASE("steps are round and few") {
        CHECK(drawing::round_steps(0.9).size() == 4);
        check_close(drawing::round_steps(0.9).front(), 0.2, absolute(1e-12, "rounding"));
        for (double most = 0.003; most < 40.0; most *= 1.07) {
            INFO(most);
            const auto steps = drawing::round_steps(most);
            CHECK(steps.size() >= 2);
            CHECK(steps.size() <= 7);
            CHECK(steps.back() < most);
        }
    }
}
