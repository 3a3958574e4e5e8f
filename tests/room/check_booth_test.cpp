// SPDX-License-Identifier: MIT
#include "room/refusal.hpp"
#include "room/valid_room.hpp"

using namespace rakeline;
using namespace rakeline::room;
using tests::check_refused;
using tests::valid_room;

namespace {

template <class Edit>
Layout edited(const Edit& edit) {
    Layout layout = valid_room();
    edit(layout);
    return layout;
}

}  // namespace

TEST_SUITE("room/check_booth") {
    TEST_CASE("refuses: doubled and missing names") {
        check_refused(edited([](Layout& x) { x.formats.push_back(x.formats[0]); }),
                      {"formats[2].name", "\"1.85\" is the name of formats[0] already", "own"});
        check_refused(edited([](Layout& x) { x.projectors[1].name = x.projectors[0].name; }),
                      {"projectors[1].name", "\"digital\" is the name of projectors[0]", "own"});
        check_refused(edited([](Layout& x) { x.lenses.push_back(x.lenses[1]); }),
                      {"lenses[2].name", "\"zoom 35-55\" is the name of lenses[1]", "own"});
        check_refused(edited([](Layout& x) {
                          x.lenses[0].name.clear();
                          x.projectors[1].formats[0].lens.clear();
                      }),
                      {"lenses[0].name", "has no name", "give it one"});
    }

    TEST_CASE("refuses: a format that the room does not have") {
        check_refused(edited([](Layout& x) { x.projectors[1].formats[0].format = "2.35"; }),
                      {"projectors[1].formats[0].format", "the room has no format called \"2.35\"",
                       "did you mean \"2.39\"?"});
    }

    TEST_CASE("refuses: a format that one projector makes twice") {
        check_refused(edited([](Layout& x) {
                          x.projectors[0].formats.push_back(x.projectors[0].formats[0]);
                      }),
                      {"projectors[0].formats[2].format", "makes \"1.85\" twice", "keep one"});
    }

    TEST_CASE("refuses: a format that no projector makes, but only where there are projectors") {
        const Layout unmade = edited([](Layout& x) {
            x.formats.push_back({"1.37", 1.37, std::nullopt});
        });
        check_refused(unmade,
                      {"formats[2].name", "no projector makes \"1.37\"", "take the format"});
        Layout early = unmade;
        early.projectors.clear();
        CHECK(check_layout(early).empty());
    }

    TEST_CASE("refuses: a projector that makes no format") {
        check_refused(edited([](Layout& x) { x.projectors[1].formats.clear(); }),
                      {"projectors[1].formats", "\"film\" makes no format", "list the formats"});
    }

    TEST_CASE("refuses: a lens that the room does not have") {
        check_refused(edited([](Layout& x) { x.projectors[1].formats[0].lens = "prime 50"; }),
                      {"projectors[1].formats[0].lens", "no lens called \"prime 50\"",
                       "did you mean \"prime 40\"?"});
    }

    TEST_CASE("refuses: a zoom whose range is reversed") {
        check_refused(edited([](Layout& x) {
                          x.lenses[1].focal_length_long_m = 0.03;
                          x.projectors[0].formats[0].lens.clear();
                      }),
                      {"lenses[1].focal_length_long_m",
                       "long end of 30 mm is shorter than its short end of 35 mm", "exchange"});
    }

    TEST_CASE("refuses: a prime with two focal lengths") {
        check_refused(edited([](Layout& x) { x.lenses[0].focal_length_long_m = 0.05; }),
                      {"lenses[0].focal_length_long_m",
                       "50 mm differs from the focal length of the prime, 40 mm", "repeat"});
    }

    TEST_CASE("refuses: a zoom position that the lens does not reach") {
        check_refused(
            edited([](Layout& x) { x.projectors[0].formats[0].focal_length_m = 0.06; }),
            {"projectors[0].formats[0].focal_length_m",
             "60 mm is outside what the lens \"zoom 35-55\" reaches, 35 mm to 55 mm", "within"});
        check_refused(edited([](Layout& x) { x.projectors[1].formats[0].focal_length_m = 0.045; }),
                      {"projectors[1].formats[0].focal_length_m", "reaches, 40 mm", "within"});
        CHECK(check_layout(edited([](Layout& x) {
                  x.projectors[0].formats[0].focal_length_m = 0.055;
              })).empty());
    }

    TEST_CASE("refuses: more pixels in use than the imager has") {
        check_refused(edited([](Layout& x) { x.projectors[0].formats[1].pixels_wide = 4096; }),
                      {"projectors[0].formats[1].pixels_wide",
                       "4096 pixels are more than the imager's 2048", "fewer"});
        check_refused(edited([](Layout& x) { x.projectors[0].formats[1].pixels_high = 1081; }),
                      {"projectors[0].formats[1].pixels_high", "1081 pixels", "fewer"});
        // Film has no imager, whatever stands there.
        CHECK(check_layout(edited([](Layout& x) {
                  x.projectors[1].formats[0].pixels_wide = 4096;
              })).empty());
    }

    TEST_CASE("refuses: an aperture larger than the lit gate") {
        check_refused(edited([](Layout& x) { x.projectors[1].formats[0].gate_width_m = 0.022; }),
                      {"projectors[1].formats[0].gate_width_m",
                       "22 mm is more than the 21.3 mm of the gate", "lit_width_m larger"});
        check_refused(edited([](Layout& x) { x.projectors[1].lit_height_m = 0.017; }),
                      {"projectors[1].formats[0].gate_height_m", "more than the 17 mm",
                       "lit_height_m larger"});
        CHECK(check_layout(edited([](Layout& x) {
                  x.projectors[0].formats[0].gate_width_m = 0.05;
              })).empty());
    }

    TEST_CASE("refuses: a lens on the wrong side of the screen") {
        check_refused(edited([](Layout& x) { x.projectors[1].back_m = 1.2; }),
                      {"projectors[1].back_m", "not behind the seats' side of the screen",
                       "into the booth, beyond 20 m"});
    }

    TEST_CASE("refuses: a lens in the hall whose light should pass a port") {
        const auto hung = [](int panes) {
            return edited([&](Layout& x) {
                x.projectors[1].back_m = 18.0;
                x.projectors[1].port.panes = panes;
            });
        };
        check_refused(hung(1), {"projectors[1].back_m", "in front of the booth wall at 20 m",
                                "give its port 0 panes"});
        CHECK(check_layout(hung(0)).empty());
    }
}
