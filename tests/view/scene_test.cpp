// SPDX-License-Identifier: MIT
#include "view/scene.hpp"

#include "drawing/luminance_shading.hpp"
#include "drawing/palette.hpp"
#include "support/check.hpp"
#include "support/demo_rooms.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <array>

using namespace rakeline;
using drawing::Shows;

namespace {

constexpr int kWidth = 640;
constexpr int kHeight = 400;

const study::Study& steep() {
    static const study::Study study = study::compute_study(tests::demo_brief("steep-240"));
    return study;
}

const drawing::RoomMesh& steep_mesh() {
    static const drawing::RoomMesh mesh = drawing::room_mesh(steep(), {});
    return mesh;
}

view::Picture picture_of(const view::Camera& camera, const view::SceneOptions& options) {
    auto picture = view::offscreen_picture(steep_mesh(), camera, options, kWidth, kHeight);
    if (!picture) FAIL(base::text(picture.problems()));
    return *picture;
}

/// The steep room's screen as its reference seat sees it.
struct Lit {
    study::SeatLuminance seen;
    drawing::ScreenLuminance screen;
};

Lit lit_screen() {
    const auto seen = study::seat_luminance(steep(), 0, 0, *steep().reference_seat);
    REQUIRE(seen);
    auto screen = drawing::screen_luminance(steep(), *seen, base::UnitSystem::metric);
    screen.contour_step = 0.0;  // colours alone
    return {*seen, screen};
}

/// Column and row from the lower left.
struct Pixel {
    int x = 0;
    int y = 0;
};

Pixel pixel_of(const view::Camera& camera, const glm::dvec3& p) {
    const double aspect = static_cast<double>(kWidth) / kHeight;
    const glm::dvec4 clip =
        camera.clip_from_camera(aspect) * camera.camera_from_room() * glm::dvec4(p, 1.0);
    REQUIRE(clip.w > 0.0);
    return {static_cast<int>((0.5 + 0.5 * clip.x / clip.w) * kWidth),
            static_cast<int>((0.5 + 0.5 * clip.y / clip.w) * kHeight)};
}

std::array<int, 3> colour_at(const view::Picture& picture, Pixel at) {
    REQUIRE(at.x >= 0);
    REQUIRE(at.x < kWidth);
    REQUIRE(at.y >= 0);
    REQUIRE(at.y < kHeight);
    const std::size_t row = static_cast<std::size_t>(kHeight - 1 - at.y);
    const std::size_t first = 4 * (row * kWidth + static_cast<std::size_t>(at.x));
    return {picture.rgba[first], picture.rgba[first + 1], picture.rgba[first + 2]};
}

int brightness(const std::array<int, 3>& c) {
    return c[0] + c[1] + c[2];
}

/// A point of the chart's field, clear of its lines: a quarter of a column from the middle, a
/// little above the centre line.
glm::dvec3 chart_point(const study::Study& study) {
    return picture::opening_point(study.picture.surface, study.picture.openings[0], 0.04, 0.1);
}

glm::dvec3 cushion_of(const drawing::SeatInstance& place) {
    return glm::dvec3(place.room_from_seat * glm::dvec4(0.0, 0.45, -0.1, 1.0));
}

glm::dvec3 back_of(const drawing::SeatInstance& place) {
    return glm::dvec3(place.room_from_seat * glm::dvec4(0.0, 0.80, 0.2, 1.0));
}

/// Counts of pixels that differ by more than a few steps.
std::size_t changed(const view::Picture& a, const view::Picture& b) {
    std::size_t count = 0;
    for (std::size_t i = 0; i < a.rgba.size(); i += 4) {
        int most = 0;
        for (std::size_t k = 0; k < 3; ++k)
            most = std::max(most, std::abs(a.rgba[i + k] - b.rgba[i + k]));
        if (most > 6) ++count;
    }
    return count;
}

std::vector<view::SeatPaint> plain_paint() {
    return std::vector<view::SeatPaint>(steep().seats.seats.size());
}

}  // namespace

TEST_SUITE("view/scene") {
    TEST_CASE("the chart is where the picture stands, and the brightest thing in the view") {
        const view::Camera camera = view::overview(steep());
        const view::Picture picture = picture_of(camera, {});
        const int chart = brightness(colour_at(picture, pixel_of(camera, chart_point(steep()))));
        CHECK(chart > 3 * 190);
        int brightest = 0;
        for (std::size_t i = 0; i < picture.rgba.size(); i += 4) {
            brightest =
                std::max(brightest, picture.rgba[i] + picture.rgba[i + 1] + picture.rgba[i + 2]);
        }
        CHECK(chart > brightest - 3 * 14);
        const auto below = steep().seats.seats.front().floor;
        CHECK(brightness(colour_at(picture, pixel_of(camera, below))) < chart / 2);
    }

    TEST_CASE("the luminance stands in the chart's place, in the palette's colours") {
        const Lit lit = lit_screen();
        const view::Camera camera = view::seat_camera(steep(), *steep().reference_seat, 0);
        view::SceneOptions options = view::seat_options(*steep().reference_seat);
        options.heads = false;
        options.luminance = true;
        const auto picture =
            view::offscreen_picture(steep_mesh(), camera, options, kWidth, kHeight, {}, lit.screen);
        REQUIRE(picture);
        for (const auto& [across, up] : {std::pair{30, 23}, {9, 30}, {49, 21}, {56, 35}}) {
            const auto index = static_cast<std::size_t>(up * 61 + across);
            const auto pixel = pixel_of(camera, lit.screen.part.vertices.at(index).position);
            const auto colour = colour_at(*picture, pixel);
            const drawing::Rgb want = drawing::cividis(
                drawing::palette_place(lit.seen.scale, lit.seen.map.at(across, up).cdm2));
            // Kept as eight bits of a root, then half a step of noise twice over.
            CHECK(std::abs(colour[0] - 255.0 * want.r) < 6.0);
            CHECK(std::abs(colour[1] - 255.0 * want.g) < 6.0);
            CHECK(std::abs(colour[2] - 255.0 * want.b) < 6.0);
        }
    }

    TEST_CASE("the chart follows the masking: outside the opening it is black") {
        const study::Study& study = steep();
        view::SceneOptions options;
        options.beams = false;
        for (std::size_t f = 0; f < study.picture.openings.size(); ++f) {
            drawing::DrawingChoice choice;
            choice.format = static_cast<int>(f);
            const view::Camera camera = view::seat_camera(study, 120, static_cast<int>(f));
            const auto picture = view::offscreen_picture(drawing::room_mesh(study, choice), camera,
                                                         options, kWidth, kHeight);
            REQUIRE(picture);
            const auto at = [&](double across, double up) {
                const auto p = picture::opening_point(study.picture.surface,
                                                      study.picture.openings[f], across, up);
                return brightness(colour_at(*picture, pixel_of(camera, p)));
            };
            CHECK(at(0.97, 0.9) > 3 * 150);
            CHECK(at(1.04, 0.9) < 3 * 30);
            CHECK(at(-0.97, 0.9) > 3 * 150);
            CHECK(at(-1.04, 0.9) < 3 * 30);
        }
    }

    TEST_CASE("the ground behind the room is the window's, whatever sRGB state was left on") {
        const view::Picture picture = picture_of(view::overview(steep()), {});
        const auto corner = colour_at(picture, {kWidth - 2, kHeight / 3});
        const std::array<int, 3> ground = {0x14, 0x16, 0x1A};
        for (std::size_t k = 0; k < 3; ++k)
            CHECK(std::abs(corner[k] - ground[k]) <= 1);
    }

    TEST_CASE("drawing twice gives the same bytes") {
        view::SceneOptions options;
        options.heads = true;
        options.seats = plain_paint();
        options.seats[17].selected = true;
        options.seats[40].missed = true;
        const view::Camera camera = view::overview(steep());
        CHECK(picture_of(camera, options).rgba == picture_of(camera, options).rgba);
    }

    TEST_CASE("a seat has its colour, and only that seat changes with it") {
        const view::Camera camera = view::overview(steep());
        view::SceneOptions options;
        options.seats = plain_paint();
        const view::Picture before = picture_of(camera, options);
        const std::size_t seat = 200;
        options.seats[seat].r = 0.1f;
        options.seats[seat].g = 0.2f;
        options.seats[seat].b = 0.9f;
        const view::Picture after = picture_of(camera, options);
        const Pixel at = pixel_of(camera, back_of(steep_mesh().seats[seat]));
        const auto blue = colour_at(after, at);
        CHECK(blue[2] > blue[0] + 40);
        const auto grey = colour_at(before, at);
        CHECK(std::abs(grey[2] - grey[0]) < 30);
        const std::size_t count = changed(before, after);
        CHECK(count > 20);
        CHECK(count < 4000);
    }

    TEST_CASE("a seat that misses has a mark, not only a colour") {
        const view::Camera camera = view::overview(steep());
        view::SceneOptions options;
        options.seats = plain_paint();
        const view::Picture before = picture_of(camera, options);
        options.seats[200].missed = true;
        const view::Picture after = picture_of(camera, options);
        CHECK(changed(before, after) > 15);
        int orange = 0;
        for (std::size_t i = 0; i < after.rgba.size(); i += 4) {
            const bool mark =
                after.rgba[i] > 190 && after.rgba[i + 1] < 140 && after.rgba[i + 2] < 110;
            const bool was = before.rgba[i] > 190 && before.rgba[i + 1] < 140;
            if (mark && !was) ++orange;
        }
        CHECK(orange > 5);
    }

    TEST_CASE("the selected seat stands out in the lamp's colour") {
        const view::Camera camera = view::overview(steep());
        view::SceneOptions options;
        options.seats = plain_paint();
        const view::Picture before = picture_of(camera, options);
        options.seats[120].selected = true;
        CHECK(changed(before, picture_of(camera, options)) > 40);
    }

    TEST_CASE("others' heads are in the view from a seat, its own head and chair are not") {
        const study::Study& study = steep();
        const int seat = static_cast<int>(study.seats.seats.size()) - 8;
        const view::Camera camera = view::seat_camera(study, seat, 0);
        view::SceneOptions options;
        options.beams = false;
        options.ceiling = true;
        options.hidden_seat = seat;
        const view::Picture empty = picture_of(camera, options);
        options.heads = true;
        const view::Picture full = picture_of(camera, options);
        CHECK(changed(empty, full) > 200);
        // With its own head drawn around the eye, next to nothing of the picture would be left.
        CHECK(brightness(colour_at(full, pixel_of(camera, chart_point(study)))) > 3 * 180);
        // Seen from outside, the hidden one has gone with head and chair.
        options.ceiling = false;
        const view::Camera outside = view::overview(study);
        const view::Picture gone = picture_of(outside, options);
        options.hidden_seat = -1;
        CHECK(changed(gone, picture_of(outside, options)) > 50);
    }

    TEST_CASE("beams are a veil: they add light and hide nothing") {
        const view::Camera camera = view::overview(steep());
        view::SceneOptions options;
        options.beams = false;
        const view::Picture without = picture_of(camera, options);
        const view::Picture with = picture_of(camera, {});
        CHECK(changed(without, with) > 2000);
        std::size_t darker = 0;
        for (std::size_t i = 0; i < with.rgba.size(); ++i) {
            // The beam's edges are lines over the bright chart.
            if (with.rgba[i] + 3 < without.rgba[i] && without.rgba[i] < 150) ++darker;
        }
        CHECK(darker < 50);
    }

    TEST_CASE("contact shading only darkens, and leaves the chart alone") {
        const view::Camera camera = view::overview(steep());
        view::SceneOptions options;
        options.contact_shading = false;
        const view::Picture flat = picture_of(camera, options);
        const view::Picture shaded = picture_of(camera, {});
        CHECK(changed(flat, shaded) > 500);
        CHECK(std::ranges::equal(flat.rgba, shaded.rgba, [](int a, int b) { return b <= a + 1; }));
        const Pixel at = pixel_of(camera, chart_point(steep()));
        CHECK(colour_at(flat, at) == colour_at(shaded, at));
    }

    TEST_CASE("a pixel picks what is drawn there: each seat at the middle of its back") {
        const view::Camera camera = view::overview(steep());
        std::size_t hit = 0;
        const base::Problems problems = view::with_offscreen_context([&] {
            view::Scene scene;
            scene.load(steep_mesh());
            for (const drawing::SeatInstance& place : steep_mesh().seats) {
                const Pixel at = pixel_of(camera, back_of(place));
                const Shows shows = scene.pick(at.x, at.y, kWidth, kHeight, camera, {});
                if (shows == Shows{Shows::Kind::seat, place.seat}) ++hit;
            }
            const Pixel chart = pixel_of(camera, chart_point(steep()));
            CHECK(scene.pick(chart.x, chart.y, kWidth, kHeight, camera, {}) ==
                  Shows{Shows::Kind::screen, 0});
            CHECK(scene.pick(kWidth - 2, kHeight / 3, kWidth, kHeight, camera, {}) == Shows{});
            CHECK(scene.pick(-1, 5, kWidth, kHeight, camera, {}) == Shows{});
        });
        REQUIRE(problems.empty());
        // The few others stand behind a neighbour.
        CHECK(hit > steep_mesh().seats.size() * 9 / 10);
    }

    TEST_CASE("a seat that is not drawn is not picked, and what lies behind it is") {
        const int seat = 120;
        view::Camera camera;
        camera.target = cushion_of(steep_mesh().seats[static_cast<std::size_t>(seat)]);
        camera.pitch_rad = 1.3;
        camera.yaw_rad = 0.0;
        camera.distance_m = 4.0;
        const base::Problems problems = view::with_offscreen_context([&] {
            view::Scene scene;
            scene.load(steep_mesh());
            view::SceneOptions options;
            const Pixel at = pixel_of(camera, camera.target);
            CHECK(scene.pick(at.x, at.y, kWidth, kHeight, camera, options) ==
                  Shows{Shows::Kind::seat, seat});
            options.hidden_seat = seat;
            const Shows behind = scene.pick(at.x, at.y, kWidth, kHeight, camera, options);
            CHECK(behind ==
                  Shows{Shows::Kind::row, steep().seats.seats[static_cast<std::size_t>(seat)].row});
        });
        REQUIRE(problems.empty());
    }

    TEST_CASE("a wall between the eye and the room is left out unless the ceiling is wanted") {
        const room::Hall& hall = steep().layout().hall;
        view::Camera camera;
        camera.target = {0.0, 1.0, 0.5 * hall.length_m};
        camera.yaw_rad = 1.5708;  // from beyond the right wall
        camera.pitch_rad = 0.05;
        camera.distance_m = 0.5 * hall.width_m + 10.0;
        const base::Problems problems = view::with_offscreen_context([&] {
            view::Scene scene;
            scene.load(steep_mesh());
            const auto middle = [&](const view::SceneOptions& options) {
                return scene.pick(kWidth / 2, kHeight / 2 + 60, kWidth, kHeight, camera, options);
            };
            view::SceneOptions closed;
            closed.ceiling = true;
            closed.seats = plain_paint();
            const view::Picture inside = picture_of(camera, {});
            const view::Picture outside = picture_of(camera, closed);
            CHECK(changed(inside, outside) > 5000);
            CHECK(middle(closed) == Shows{Shows::Kind::hall, 0});
        });
        REQUIRE(problems.empty());
    }

    TEST_CASE("refuses: a picture of no size or of an endless one") {
        for (const int width : {0, -3, 8193}) {
            const auto picture =
                view::offscreen_picture(steep_mesh(), view::overview(steep()), {}, width, kHeight);
            REQUIRE_FALSE(picture);
            CHECK(picture.problems().front().where == "picture size");
            CHECK_FALSE(picture.problems().front().mend.empty());
        }
    }

    TEST_CASE("a scene can be loaded again with another room") {
        const study::Study small = study::compute_study(tests::demo_brief("screening-24"));
        const drawing::RoomMesh mesh = drawing::room_mesh(small, {});
        const view::Camera camera = view::overview(small);
        const base::Problems problems = view::with_offscreen_context([&] {
            view::Scene reused;
            reused.load(steep_mesh());
            reused.load(mesh);
            view::Scene fresh;
            fresh.load(mesh);
            for (const drawing::SeatInstance& place : mesh.seats) {
                const Pixel at = pixel_of(camera, back_of(place));
                CHECK(reused.pick(at.x, at.y, kWidth, kHeight, camera, {}) ==
                      fresh.pick(at.x, at.y, kWidth, kHeight, camera, {}));
            }
        });
        REQUIRE(problems.empty());
    }
}
