// SPDX-License-Identifier: MIT
// Source: ISO 26431-1:2008 as reported by two texts (digital: 48.0 cd/m2 at the picture's centre,
// sides measured besides in a theatre, corners in a review room); SMPTE ST 196 and RP 51 (film:
// 55 cd/m2, no film in the gate, shutter running; theatres 12 to 22 fL, review rooms 16 +-2 fL);
// SMPTE RP 431-2:2011 as reported (contrast). Stereo at the eye: CST/FNCF booth guide 2010 p. 44, a
// trade page (7 fL, 5 to 9) and memory (4.5 +-1 fL), which disagree.
#include "light/light_study.hpp"
#include "support/check.hpp"
#include "support/demo_rooms.hpp"

#include <string>

using namespace rakeline;
using tests::check_close;
using tests::printed_digits;

namespace {

struct Window {
    const char* figure;
    room::SourceKind kind;
    std::optional<double> least;
    std::optional<double> most;
    double rounding = 1e-9;  ///< of the limit kept, where the source has another unit
};

constexpr auto kFilm = room::SourceKind::film;
constexpr auto kDigital = room::SourceKind::digital;

/// The one limit of a demo room's practice on a figure of such a machine.
const room::Limit& limit_of(const room::LimitSet& limits, const Window& window) {
    const room::Limit* found = nullptr;
    for (const room::Limit& limit : limits.limits) {
        if (limit.figure != window.figure || limit.source_kind.value_or(window.kind) != window.kind)
            continue;
        REQUIRE_MESSAGE(!found, window.figure);
        found = &limit;
    }
    REQUIRE_MESSAGE(found, window.figure);
    return *found;
}

void check_windows(const char* room, const std::vector<Window>& windows) {
    const auto brief = tests::demo_brief(room);
    for (const Window& window : windows) {
        const room::Limit& limit = limit_of(brief->limits, window);
        INFO(window.figure);
        const auto same = [&](const std::optional<double>& a, const std::optional<double>& b) {
            REQUIRE(a.has_value() == b.has_value());
            if (a) check_close(*a, *b, tests::absolute(window.rounding, "rounded by who kept it"));
        };
        same(limit.least, window.least);
        same(limit.most, window.most);
        CHECK_FALSE(limit.source.empty());
    }
}

constexpr double kFl = 3.4262591;  // cd/m2

}  // namespace

TEST_SUITE("outside/iso_26431_targets") {
    TEST_CASE("golden: digital pictures aim at 48.0 cd/m2, film at 55") {
        check_close(light::target_luminance_cdm2(room::SourceKind::digital), 48.0,
                    printed_digits(1));
        check_close(light::target_luminance_cdm2(room::SourceKind::film), 55.0, printed_digits(0));
    }

    TEST_CASE("golden: luminance is read at the centre, four sides and four corners") {
        CHECK(light::point_place(light::kCentre) == glm::dvec2(0.0, 0.0));
        for (const auto side : {light::kLeft, light::kRight, light::kTop, light::kBottom}) {
            const glm::dvec2 place = light::point_place(side);
            CHECK(place.x * place.y == 0.0);  // on the middle line of the picture
            CHECK(std::max(std::abs(place.x), std::abs(place.y)) > 0.85);
        }
        for (const auto corner :
             {light::kTopLeft, light::kTopRight, light::kBottomRight, light::kBottomLeft}) {
            const glm::dvec2 place = light::point_place(corner);
            CHECK(std::min(std::abs(place.x), std::abs(place.y)) > 0.85);
        }
    }

    TEST_CASE("golden: theatres and review rooms are held against the windows as reported") {
        check_windows("steep-240",
                      {{"light.luminance_reference", kDigital, 48.0 - 10.2, 48.0 + 10.2},
                       {"light.luminance_reference", kFilm, 12.0 * kFl, 22.0 * kFl, 0.5},
                       {"light.side_ratio", kDigital, 0.75, 0.90},
                       {"light.side_ratio", kFilm, 0.75, 0.90},
                       {"light.sequential_contrast", kDigital, 1200.0, {}},
                       {"light.in_picture_contrast", kDigital, 100.0, {}}});
        check_windows("screening-24",
                      {{"light.luminance_reference", kDigital, 48.0 - 3.5, 48.0 + 3.5},
                       {"light.luminance_reference", kFilm, 55.0 - 7.0, 55.0 + 7.0},
                       {"light.side_ratio", kDigital, 0.80, 0.90},
                       {"light.corner_ratio", kDigital, 0.80, 0.90},
                       {"light.sequential_contrast", kDigital, 1500.0, {}},
                       {"light.in_picture_contrast", kDigital, 100.0, {}}});
    }

    TEST_CASE("golden: stereo is held against what any of the disagreeing sources takes") {
        for (const char* room : {"steep-240", "screening-24"}) {
            check_windows(room, {{"light.stereo_high", kDigital, (4.5 - 1.0) * kFl, {}, 0.05},
                                 {"light.stereo_low", kDigital, {}, 9.0 * kFl, 0.05}});
            const auto brief = tests::demo_brief(room);
            for (const char* figure : {"light.stereo_high", "light.stereo_low"}) {
                const Window any{figure, kDigital, {}, {}};
                CHECK(limit_of(brief->limits, any).source.find("disagree") != std::string::npos);
            }
        }
    }
}
