// SPDX-License-Identifier: MIT
#include "room/refusal.hpp"
#include "room/valid_room.hpp"

#include <cmath>
#include <limits>

using namespace rakeline;
using namespace rakeline::room;
using tests::check_refused;
using tests::valid_room;

namespace {

/// The valid room after one edit.
template <class Edit>
Layout edited(const Edit& edit) {
    Layout layout = valid_room();
    edit(layout);
    return layout;
}

}  // namespace

TEST_SUITE("room/layout_check") {
    TEST_CASE("a valid room has no problems") {
        const base::Problems problems = check_layout(valid_room());
        INFO(base::text(problems));
        CHECK(problems.empty());
    }

    TEST_CASE("a bare room without projectors, seats and loudspeakers is a valid early design") {
        CHECK(check_layout(Layout{}).empty());
    }

    TEST_CASE("refuses: a radius under half the picture width") {
        check_refused(edited([](Layout& x) {
                          x.screen.radius_m = 4.9;
                          x.loudspeakers.clear();
                      }),
                      {"screen.radius_m", "4.9 m is less than half the picture width 10 m",
                       "use 0 for a flat screen or at least 5.1 m"});
        CHECK(check_layout(edited([](Layout& x) {
                  x.screen.radius_m = 5.1;
                  x.screen.setback_m = 0.5;
                  x.seating[0].first_row_back_m = 6.0;
                  x.loudspeakers[0].back_m = 0.2;
              })).empty());
    }

    TEST_CASE("refuses: a frame wider than the hall at its side edges") {
        check_refused(
            edited([](Layout& x) { x.screen.width_m = 12.5; }),
            {"screen.width_m", "12.5 m is wider than the hall, which is 12 m", "narrower"});
        // Walls that close in toward the booth leave less at the edges of a curved screen.
        check_refused(edited([](Layout& x) {
                          x.screen.width_m = 11.8;
                          x.screen.radius_m = 12.0;
                          x.hall.splay_rad = base::radians(-3.0);
                          x.loudspeakers.clear();
                      }),
                      {"screen.width_m", "wider than the hall, which is 11.7", "narrower"});
    }

    TEST_CASE("refuses: a frame taller than the hall, or above its ceiling") {
        check_refused(edited([](Layout& x) { x.screen.height_m = 6.6; }),
                      {"screen.height_m", "6.6 m is taller than the hall of 6.5 m", "lower"});
        check_refused(edited([](Layout& x) { x.screen.sill_m = 2.4; }),
                      {"screen.sill_m", "upper edge stands at 6.6 m, above the ceiling at 6.5 m",
                       "lower the sill by 0.1 m"});
    }

    TEST_CASE("refuses: a tilted frame that leans through the screen wall") {
        check_refused(edited([](Layout& x) {
                          x.screen.tilt_rad = base::radians(10.0);
                          x.screen.setback_m = 0.3;
                          x.loudspeakers.clear();
                      }),
                      // 2.1 m sin 10 deg = 0.3647 m
                      {"screen.tilt_deg", "passes 0.065 m through the screen wall",
                       "set it back by more than 0.365 m"});
    }

    TEST_CASE("refuses: a screen beyond the booth wall") {
        check_refused(
            edited([](Layout& x) {
                x.screen.setback_m = 20.2;
                x.seating.clear();
                x.audience.reference_seat.clear();
            }),
            {"screen.setback_m", "reaches to 20.2 m, beyond the booth wall at 20 m", "nearer"});
    }

    TEST_CASE("refuses: measured gains that do not run outward from the lobe's middle") {
        const auto with_gains = [](std::vector<GainPoint> gains) {
            return edited([&](Layout& x) {
                x.screen.surface.lobe = LobeKind::mirror;
                x.screen.surface.gain_table = gains;
            });
        };
        check_refused(with_gains({{0.0, 1.8}}),
                      {"screen.surface.gain_table", "nothing of other angles", "two or more"});
        check_refused(with_gains({{0.1, 1.8}, {0.5, 1.0}}),
                      {"screen.surface.gain_table[0].angle_deg", "not at 0", "middle"});
        check_refused(with_gains({{0.0, 1.8}, {0.5, 1.0}, {0.5, 0.9}}),
                      {"screen.surface.gain_table[2].angle_deg", "do not rise", "outward"});
        Layout matte = with_gains({{0.0, 1.8}, {0.5, 1.0}});
        matte.screen.surface.lobe = LobeKind::matte;
        check_refused(matte, {"screen.surface.gain_table", "no lobe", "mirror or retro"});
        CHECK(check_layout(with_gains({{0.0, 1.8}, {0.5, 1.0}})).empty());
    }

    TEST_CASE("refuses: house lights without a name, or outside the hall") {
        const auto with_light = [](const HouseLight& light) {
            return edited([&](Layout& x) { x.stray_light.lights = {{.name = "Exit"}, light}; });
        };
        check_refused(with_light({.name = ""}),
                      {"stray_light.lights[1].name", "has no name", "one of its own"});
        check_refused(with_light({.name = "Exit"}),
                      {"stray_light.lights[1].name", "is the name of", "name of its own"});
        check_refused(with_light({.name = "Foyer", .back_m = 20.5}),
                      {"stray_light.lights[1].back_m", "beyond the booth wall", "into the hall"});
        check_refused(
            with_light({.name = "Side", .across_m = -30.0}),
            {"stray_light.lights[1].across_m", "outside the side walls", "into the hall"});
        check_refused(with_light({.name = "Roof", .up_m = 20.0}),
                      {"stray_light.lights[1].up_m", "above the ceiling", "into the hall"});
        CHECK(check_layout(with_light({.name = "Aisle"})).empty());
    }

    TEST_CASE("refuses: holes that overlap") {
        const auto with_holes = [](PerforationPattern pattern, double diameter_m) {
            return edited([&](Layout& x) { x.screen.perforation = {pattern, diameter_m, 0.002}; });
        };
        check_refused(
            with_holes(PerforationPattern::staggered, 0.002),
            {"screen.perforation.hole_diameter_m", "overlap at a pitch of 0.002 m", "smaller"});
        CHECK(check_layout(with_holes(PerforationPattern::none, 0.002)).empty());
        CHECK(check_layout(with_holes(PerforationPattern::square, 0.0019)).empty());
    }

    TEST_CASE("refuses: a lobe that does not rise above the matte part") {
        check_refused(edited([](Layout& x) { x.screen.surface.lobe = LobeKind::retro; }),
                      {"screen.surface.peak_gain", "1 is no more than the matte part 1",
                       "make the lobe matte"});
    }

    TEST_CASE("refuses: an opening larger than the frame") {
        const auto four_way = [](double width_m) {
            return edited([&](Layout& x) {
                x.screen.masking = MaskingMode::four_way;
                x.formats[0].opening_width_m = width_m;
            });
        };
        check_refused(four_way(10.1), {"formats[0].opening_width_m",
                                       "10.1 m is wider than the frame of 10 m", "leave it out"});
        check_refused(four_way(8.0),
                      {"formats[0].opening_width_m", "would be 4.324 m high", "leave it out"});
        CHECK(check_layout(four_way(7.7)).empty());
    }

    TEST_CASE("refuses: a floor profile that is missing, too short or not rising") {
        const auto by_profile = [](std::vector<FloorPoint> points) {
            return edited([&](Layout& x) {
                x.hall.floor = FloorMode::by_profile;
                x.hall.floor_profile = std::move(points);
            });
        };
        check_refused(by_profile({}), {"hall.floor_profile", "there are none", "by_seating"});
        check_refused(by_profile({{0.0, 0.0}}), {"hall.floor_profile", "there is 1", "add points"});
        check_refused(by_profile({{0.0, 0.0}, {9.0, 0.5}, {9.0, 1.0}}),
                      {"hall.floor_profile[2].back_m",
                       "9 m is not beyond the point before it at 9 m", "from the screen wall"});
        CHECK(check_layout(by_profile({{0.0, 0.0}, {20.0, 1.0}})).empty());
    }

    TEST_CASE("refuses: side walls that meet in front of the booth") {
        check_refused(edited([](Layout& x) {
                          x.hall.splay_rad = base::radians(-17.0);
                          x.seating.clear();
                          x.audience.reference_seat.clear();
                          x.loudspeakers.clear();
                          x.screen.width_m = 8.0;
                      }),
                      // 6 m / tan 17 deg = 19.625 m
                      {"hall.splay_deg", "meet 19.625 m from the screen wall", "close in less"});
    }

    TEST_CASE("refuses: no name for a file of limits") {
        check_refused(edited([](Layout& x) { x.limits_file.clear(); }),
                      {"limits_file", "names no file of limits", "practice/theatre.json"});
    }

    TEST_CASE("property: every problem of a many-sided wreck names a field that exists") {
        Layout wreck = valid_room();
        wreck.screen.radius_m = 2.0;
        wreck.formats[1].name = "1.85";
        wreck.projectors[0].formats[1].lens = "prime 41";
        wreck.lenses[1].focal_length_long_m = 0.02;
        wreck.seating[1].first_row = "7";
        wreck.loudspeakers[1].across_m = 40.0;
        const std::string text = write_layout(wreck);
        const auto problems = tests::problems_of(text);
        CHECK(problems.size() >= 6);
        for (const base::Problem& problem : problems) {
            INFO(base::text(problem));
            const std::string key = problem.where.substr(problem.where.rfind('.') + 1);
            const auto line = static_cast<std::size_t>(problem.line - 1);
            CHECK(tests::contains(tests::lines_of(text).at(line), key));
        }
        CHECK(std::ranges::is_sorted(problems, {}, &base::Problem::line));
    }

    TEST_CASE("refuses: numbers, choices and texts that an edit could bring and a file could not") {
        const auto found = [](const Layout& layout) {
            const base::Problems problems = check_layout(layout);
            INFO(base::text(problems));
            REQUIRE(problems.size() == 1);
            CHECK(problems == check_field_ranges(layout));
            return problems.front();
        };
        const double nan = std::numeric_limits<double>::quiet_NaN();
        const double infinity = std::numeric_limits<double>::infinity();
        CHECK(found(edited([&](Layout& x) { x.hall.width_m = nan; })).where == "hall.width_m");
        CHECK(found(edited([&](Layout& x) { x.screen.tilt_rad = infinity; })).what ==
              "is not a finite number");
        CHECK(found(edited([&](Layout& x) { x.formats[1].opening_width_m = nan; })).where ==
              "formats[1].opening_width_m");
        CHECK(found(edited([](Layout& x) { x.seating[1].rows = 0; })).where == "seating[1].rows");
        CHECK(found(edited([](Layout& x) { x.hall.floor = static_cast<FloorMode>(7); })).mend ==
              "choose by_seating or by_profile");
        CHECK(found(edited([](Layout& x) { x.name = "caf\xe9"; })).what == "is not UTF-8 text");
        CHECK(found(edited([](Layout& x) { x.name = std::string("a\0b", 3); })).where == "name");
        CHECK(found(edited([](Layout& x) { x.lenses.resize(201, x.lenses[0]); })).where ==
              "lenses");
    }
}
