// SPDX-License-Identifier: MIT
#include "support/check.hpp"
#include "support/demo_rooms.hpp"
#include "view/scene.hpp"

#include <doctest/doctest.h>
#include <glm/gtc/matrix_transform.hpp>

#include <algorithm>
#include <random>

using namespace rakeline;

namespace {

double largest_difference(const glm::dmat4& a, const glm::dmat4& b) {
    double most = 0.0;
    for (int c = 0; c < 4; ++c) {
        for (int r = 0; r < 4; ++r)
            most = std::max(most, std::abs(a[c][r] - b[c][r]));
    }
    return most;
}

/// In -1 ... 1 where the view shows it; nothing if it lies behind the eye.
std::optional<glm::dvec2> seen(const view::Camera& camera, double aspect, const glm::dvec3& p) {
    const glm::dvec4 clip =
        camera.clip_from_camera(aspect) * camera.camera_from_room() * glm::dvec4(p, 1.0);
    if (clip.w <= 0.0) return std::nullopt;
    return glm::dvec2(clip.x, clip.y) / clip.w;
}

bool within_view(const view::Camera& camera, double aspect, const glm::dvec3& p) {
    const auto at = seen(camera, aspect, p);
    return at && std::abs(at->x) <= 1.0 && std::abs(at->y) <= 1.0;
}

std::vector<glm::dvec3> opening_rim(const study::Study& study, int format) {
    const picture::Opening& opening = study.picture.openings[static_cast<std::size_t>(format)];
    std::vector<glm::dvec3> rim;
    for (int i = -8; i <= 8; ++i) {
        for (const double side : {-1.0, 1.0}) {
            const double along = i / 8.0;
            rim.push_back(picture::opening_point(study.picture.surface, opening, along, side));
            rim.push_back(picture::opening_point(study.picture.surface, opening, side, along));
        }
    }
    return rim;
}

}  // namespace

TEST_SUITE("view/camera") {
    TEST_CASE("property: matrices are glm's lookAt and perspective") {
        constexpr unsigned kSeed = 411;
        INFO("seed ", kSeed);
        std::mt19937 random(kSeed);
        std::uniform_real_distribution<double> unit(0.0, 1.0);
        for (int i = 0; i < 50; ++i) {
            view::Camera camera;
            camera.target = {unit(random), 2.0 * unit(random), 20.0 * unit(random)};
            camera.yaw_rad = 6.0 * unit(random) - 3.0;
            camera.pitch_rad = 1.4 * unit(random);
            camera.distance_m = 5.0 + 40.0 * unit(random);
            camera.field_rad = 0.3 + unit(random);
            const glm::dmat4 view =
                glm::lookAt(camera.position(), camera.target, glm::dvec3(0.0, 1.0, 0.0));
            CHECK(largest_difference(camera.camera_from_room(), view) < 1e-12);
            const double aspect = view::kFullAspect + unit(random);
            const glm::dmat4 lens =
                glm::perspective(camera.field_rad, aspect, camera.near_m(), camera.far_m());
            CHECK(largest_difference(camera.clip_from_camera(aspect), lens) < 1e-12);
            tests::check_close(glm::distance(camera.position(), camera.target), camera.distance_m,
                               tests::absolute(1e-9, "the orbit's radius"));
        }
    }

    TEST_CASE("without yaw the camera stands behind its target, with yaw to the right of it") {
        view::Camera camera;
        camera.target = {0.0, 0.0, 10.0};
        camera.yaw_rad = 0.0;
        camera.pitch_rad = 0.3;
        CHECK(camera.position().z > 10.0);
        CHECK(camera.position().y > 0.0);
        CHECK(std::abs(camera.position().x) < 1e-12);
        camera.yaw_rad = 0.4;
        CHECK(camera.position().x > 0.0);
    }

    TEST_CASE("a narrow view keeps the width of the field") {
        view::Camera camera;
        const glm::dvec3 aside = camera.target + glm::dvec3(3.0, 0.0, -2.0);
        const double at_full = seen(camera, view::kFullAspect, aside)->x;
        for (const double aspect : {0.5, 0.9, 1.3}) {
            tests::check_close(seen(camera, aspect, aside)->x, at_full,
                               tests::absolute(1e-9, "the same place across the view"));
        }
    }

    TEST_CASE("the overview holds every seat and the whole picture frame, in wide and tall views") {
        for (const char* name : tests::kDemoRooms) {
            const study::Study study = study::compute_study(tests::demo_brief(name));
            const view::Camera camera = view::overview(study);
            double widest = 0.0;
            for (const double aspect : {0.8, 1.6, 2.4}) {
                INFO(name, " aspect ", aspect);
                for (const room::Seat& seat : study.seats.seats) {
                    CHECK(within_view(camera, aspect, seat.floor));
                    CHECK(within_view(camera, aspect, seat.eye));
                }
                for (std::size_t f = 0; f < study.picture.openings.size(); ++f) {
                    for (const glm::dvec3& p : opening_rim(study, static_cast<int>(f))) {
                        CHECK(within_view(camera, aspect, p));
                        if (aspect == 1.6) {
                            widest = std::max({widest, std::abs(seen(camera, aspect, p)->x),
                                               std::abs(seen(camera, aspect, p)->y)});
                        }
                    }
                }
            }
            CHECK(widest > 0.7);  // and fills the view
            CHECK(camera.position().z > 0.5 * study.layout().hall.length_m);
        }
    }

    TEST_CASE("a seat's camera is at its eye and holds the whole opening") {
        for (const char* name : tests::kDemoRooms) {
            const study::Study study = study::compute_study(tests::demo_brief(name));
            for (std::size_t s = 0; s < study.seats.seats.size(); s += 5) {
                for (std::size_t f = 0; f < study.picture.openings.size(); ++f) {
                    INFO(name, " ", study.seats.seats[s].name, " format ", f);
                    const view::Camera camera =
                        view::seat_camera(study, static_cast<int>(s), static_cast<int>(f));
                    CHECK(camera.position() == study.seats.seats[s].eye);
                    for (const glm::dvec3& p : opening_rim(study, static_cast<int>(f))) {
                        CHECK(within_view(camera, 1.6, p));
                        CHECK(within_view(camera, 1.0, p));
                    }
                }
            }
        }
    }
}
