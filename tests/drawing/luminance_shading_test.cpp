// SPDX-License-Identifier: MIT
#include "drawing/luminance_shading.hpp"

#include "drawing/palette.hpp"
#include "drawing/room_mesh.hpp"
#include "drawing/studied_room.hpp"
#include "support/check.hpp"

#include <algorithm>

using namespace rakeline;
using base::UnitSystem;
using drawing::Ink;
using tests::check_close;
using tests::items_of;
using tests::studied;

namespace {

const tests::Tolerance kRounding = tests::absolute(1e-9, "rounding");

study::LuminanceScale scale_of(double least, double most) {
    return {.least_cdm2 = least,
            .most_cdm2 = most,
            .window_least_cdm2 = 37.8,
            .window_most_cdm2 = 58.2};
}

std::vector<std::string> texts(const drawing::Drawing& drawing) {
    std::vector<std::string> out;
    for (const auto& label : items_of<drawing::Label>(drawing))
        out.push_back(label.text);
    return out;
}

bool has(const std::vector<std::string>& all, const std::string& text) {
    return std::ranges::find(all, text) != all.end();
}

drawing::DrawingChoice lit_choice(int seat) {
    drawing::DrawingChoice choice;
    choice.seat = seat;
    choice.luminance = true;
    return choice;
}

/// The value under a point of the flat screen, linear on the map's triangles as contours are.
std::optional<double> value_at(const light::LuminanceMap& map, glm::dvec2 halves) {
    for (const auto& [a, b, c] : map.triangles) {
        const auto& p = map.places[static_cast<std::size_t>(a)];
        const auto& q = map.places[static_cast<std::size_t>(b)];
        const auto& r = map.places[static_cast<std::size_t>(c)];
        const glm::dvec2 u = q.halves - p.halves, v = r.halves - p.halves, w = halves - p.halves;
        const double all = u.x * v.y - u.y * v.x;
        const double s = (w.x * v.y - w.y * v.x) / all, t = (u.x * w.y - u.y * w.x) / all;
        if (s < -1e-9 || t < -1e-9 || s + t > 1.0 + 1e-9) continue;
        return p.cdm2 + s * (q.cdm2 - p.cdm2) + t * (r.cdm2 - p.cdm2);
    }
    return std::nullopt;
}

}  // namespace

TEST_SUITE("drawing/luminance_shading") {
    TEST_CASE("levels are round in the unit in use, ends included") {
        const auto metric = drawing::luminance_levels(scale_of(35.0, 60.0), UnitSystem::metric);
        REQUIRE(metric.size() == 6);
        CHECK(metric.front().text == "35");
        CHECK(metric.back().text == "60");
        check_close(metric[1].cdm2, 40.0, kRounding);
        // 1 fL = 3.42626 cd/m2 (10.764 / pi, as reported).
        const auto imperial = drawing::luminance_levels(scale_of(35.0, 60.0), UnitSystem::imperial);
        REQUIRE(imperial.size() == 7);
        CHECK(imperial.front().text == "11");
        CHECK(imperial.back().text == "17");
        check_close(imperial.front().cdm2, 11.0 * 3.42626, tests::absolute(1e-4, "six digits"));
    }

    TEST_CASE("the palette runs from the scale's least to its greatest and no farther") {
        const study::LuminanceScale scale = scale_of(40.0, 60.0);
        CHECK(drawing::palette_place(scale, 40.0) == 0.0);
        CHECK(drawing::palette_place(scale, 55.0) == 0.75);
        CHECK(drawing::palette_place(scale, 99.0) == 1.0);
        CHECK(drawing::palette_place(scale, 0.0) == 0.0);
    }

    TEST_CASE("lines over the palette reach 3 : 1 against it, on either half") {
        // WCAG 2.1: 3 : 1 is what graphical objects need.
        const auto relative = [](const drawing::Rgb& c) {
            const auto linear = [](double x) {
                return x <= 0.04045 ? x / 12.92 : std::pow((x + 0.055) / 1.055, 2.4);
            };
            return 0.2126 * linear(c.r) + 0.7152 * linear(c.g) + 0.0722 * linear(c.b);
        };
        for (int i = 0; i <= 100; ++i) {
            const double place = i / 100.0;
            const bool dark = drawing::ink_over(place) == Ink::over_dark;
            const double line = relative(dark ? drawing::kOverDark : drawing::kOverBright);
            const double ground = relative(drawing::cividis(place));
            CHECK((std::max(line, ground) + 0.05) / (std::min(line, ground) + 0.05) >= 3.0);
        }
    }

    TEST_CASE("the scale has both units, the unit in use across the bar, and the window") {
        for (const UnitSystem units : {UnitSystem::metric, UnitSystem::imperial}) {
            const drawing::Drawing scale =
                drawing::luminance_scale_drawing(scale_of(35.0, 60.0), 24.0, units);
            CHECK(tests::bounds_hold_all(scale));
            const auto words = texts(scale);
            CHECK(has(words, "cd/m²"));
            CHECK(has(words, "fL"));
            CHECK(has(words, "40"));
            CHECK(has(words, "14"));
            const bool metric = units == UnitSystem::metric;
            CHECK(has(words, std::string("bracket: reference limit, ") +
                                 (metric ? "37.8 to 58.2 cd/m²" : "11.03 to 16.99 fL")));
        }
    }

    TEST_CASE("contours lie where the map has their value, and only there") {
        const study::Study& study = studied("steep-240");
        const drawing::DrawingChoice choice = lit_choice(3);
        const auto seen = drawing::chosen_luminance(study, choice);
        REQUIRE(seen);
        drawing::OpeningPage page;
        page.pitch_m = 1e-3;  // so that gaps are small
        page.point = [](glm::dvec2 halves) { return std::optional(halves); };
        page.line = [](const std::vector<glm::dvec2>& line) {
            return std::vector<std::vector<glm::dvec2>>(1, line);
        };
        drawing::Drawing drawing;
        drawing::add_luminance(*seen, page, UnitSystem::metric, drawing);
        const auto levels = drawing::luminance_levels(seen->scale, UnitSystem::metric);
        const auto lines = items_of<drawing::Line>(drawing);
        REQUIRE(lines.size() >= 2);
        for (const drawing::Line& line : lines) {
            const glm::dvec2 at = line.points[line.points.size() / 2];
            const auto value = value_at(seen->map, at);
            REQUIRE(value);
            const bool on_level = std::ranges::any_of(
                levels, [&](const auto& level) { return std::abs(level.cdm2 - *value) < 1e-6; });
            CHECK(on_level);
        }
        const auto shadings = items_of<drawing::Shading>(drawing);
        REQUIRE(shadings.size() == 1);
        CHECK(shadings[0].triangles.size() == std::size_t{2} * 60 * 40);
    }

    TEST_CASE("screen and seat's view show the map of the seat, with its scale") {
        for (const char* name : tests::kDemoRooms) {
            INFO(name);
            const study::Study& study = studied(name);
            const drawing::Drawing screen = drawing::screen_face(study, lit_choice(1));
            const auto view = drawing::seat_view(study, lit_choice(1));
            REQUIRE(view);
            for (const drawing::Drawing* drawing : {&screen, &*view}) {
                CHECK(tests::bounds_hold_all(*drawing));
                CHECK(items_of<drawing::Shading>(*drawing).size() == 2);  // map and scale
                CHECK(has(texts(*drawing), "fL"));
            }
            const drawing::Drawing plain = drawing::screen_face(study, {});
            CHECK(items_of<drawing::Shading>(plain).empty());
        }
    }

    TEST_CASE("in 3D the map stands on the picture, between sheet and masking") {
        const study::Study& study = studied("grand-620");
        const auto seen = study::seat_luminance(study, 0, 0, 5);
        REQUIRE(seen);
        const auto mesh = drawing::screen_luminance(study, *seen, UnitSystem::metric);
        REQUIRE(mesh.part.vertices.size() == seen->map.places.size());
        CHECK(mesh.part.indices.size() == 3 * seen->map.triangles.size());
        CHECK(mesh.contour_step > 0.0);
        const auto& o = study.picture.openings[0].uv;
        for (std::size_t i = 0; i < mesh.part.vertices.size(); i += 37) {
            const glm::dvec2 uv =
                o.centre() + 0.5 * glm::dvec2(o.width(), o.height()) * seen->map.places[i].halves;
            const glm::dvec3 on_sheet = geometry::point_at(study.picture.surface, uv);
            check_close(glm::distance(mesh.part.vertices[i].position, on_sheet), 0.008, kRounding);
            CHECK(mesh.part.vertices[i].uv.x ==
                  drawing::palette_place(seen->scale, seen->map.places[i].cdm2));
        }
    }

    TEST_CASE("without a picture or a seat nothing is asked for") {
        const study::Study& study = studied("screening-24");
        CHECK_FALSE(drawing::chosen_luminance(study, {}));
        drawing::DrawingChoice choice = lit_choice(0);
        CHECK(drawing::chosen_luminance(study, choice));
        choice.seat.reset();
        const auto reference = drawing::chosen_luminance(study, choice);
        REQUIRE(reference);
        CHECK(reference->seat == study.reference_seat);
    }
}
