// SPDX-License-Identifier: MIT
#include "picture/port.hpp"

#include "picture/tried_beam.hpp"

using namespace rakeline;
using namespace rakeline::tests;
using geometry::Rectangle;

namespace {

constexpr double kFNumber = 2.0;

/// A room whose projector has a lens, so that its pupil is known.
picture::PictureInput room_with_lens(Dice& dice) {
    picture::PictureInput in = random_room(dice);
    in.lenses = {{.name = "any",
                  .kind = room::LensKind::zoom,
                  .focal_length_m = 0.001,
                  .focal_length_long_m = 1.0,
                  .f_number = kFNumber}};
    in.projectors[0].formats[0].lens = "any";
    return in;
}

Rectangle light_of(const picture::ProjectedPicture& p) {
    REQUIRE(p.port_light);
    return *p.port_light;
}

/// Where the ray from a pupil point (c, s in the unit disc) to a gate's picture point meets the
/// wall.
glm::dvec2 at_wall(const picture::ProjectedPicture& p,
                   glm::dvec2 pupil,
                   glm::dvec2 gate,
                   double wall) {
    const picture::Pose& pose = p.map.pose();
    const double r = 0.5 * p.focal_length_used_m / kFNumber;
    const glm::dvec3 from = pose.lens + r * (pupil.x * pose.right + pupil.y * pose.up);
    const auto uv = p.map.screen_from_gate(gate_point(p, gate.x, gate.y));
    REQUIRE(uv);
    const glm::dvec3 to = geometry::point_at(p.map.surface(), *uv);
    const glm::dvec3 at = from + (from.z - wall) / (from.z - to.z) * (to - from);
    return {at.x, at.y};
}

void take_in(Rectangle& r, glm::dvec2 p) {
    r = {std::min(r.left, p.x), std::max(r.right, p.x), std::min(r.bottom, p.y),
         std::max(r.top, p.y)};
}

/// How far a point lies outside a convex outline, past the worst of its sides; negative: inside.
double beyond(const std::vector<glm::dvec2>& outline, glm::dvec2 p) {
    double most = -1e9;
    for (std::size_t i = 0; i < outline.size(); ++i) {
        const glm::dvec2 a = outline[i], side = outline[(i + 1) % outline.size()] - a;
        if (glm::length(side) < 1e-9) continue;
        const glm::dvec2 d = p - a;
        most = std::max(most, (d.x * side.y - d.y * side.x) / glm::length(side));
    }
    return most;
}

/// A picture 8 m by 4 m straight before the lens, 20 m away; the wall half a metre before it.
picture::PictureInput square_on() {
    picture::PictureInput in = room_with_level_beam();
    in.lenses = {
        {.name = "prime", .focal_length_m = 0.05, .focal_length_long_m = 0.05, .f_number = 2.0}};
    room::Projector& p = in.projectors[0];
    p.across_m = 0.5;
    p.aim.mode = room::AimMode::angles;
    p.port = {.across_m = 0.5, .up_m = 5.0, .width_m = 0.3, .height_m = 0.2};
    return in;
}

}  // namespace

TEST_SUITE("picture/port") {
    TEST_CASE("square on, the light is the beam's cut and the pupil's share round it") {
        picture::PictureInput in = square_on();
        in.projectors[0].formats[0].lens = "prime";
        const auto p = only_picture(in);
        const Rectangle light = light_of(p);
        // f = 50 mm at 20 m: picture 0.02 (20 - 0.05)/0.05 = 7.98 m wide. A fortieth of the way to
        // it: 3.99/40 = 0.09975 m; pupil 12.5 mm in radius, 39/40 of that.
        const double pupil = 0.0125 * 39.0 / 40.0;
        check_close(light.right, 0.5 + 0.09975 + pupil, absolute(1e-12, "rounding"));
        check_close(light.left, 0.5 - 0.09975 - pupil, absolute(1e-12, "rounding"));
        check_close(light.top, 5.0 + 0.049875 + pupil, absolute(1e-12, "rounding"));
        check_close(light.bottom, 5.0 - 0.049875 - pupil, absolute(1e-12, "rounding"));
        const double margin = picture::port_margin(in.projectors[0].port, light);
        check_close(margin, std::min(0.15 - 0.09975, 0.1 - 0.049875) - pupil,
                    absolute(1e-12, "rounding"));
    }

    TEST_CASE("without a lens the rays through its middle alone count") {
        const Rectangle light = light_of(only_picture(square_on()));
        check_close(light.width(), 8.0 / 40.0, absolute(1e-12, "rounding"));
        check_close(light.height(), 4.0 / 40.0, absolute(1e-12, "rounding"));
    }

    TEST_CASE("the margin of a port beside the light says how far the wall cuts in") {
        const room::Port port{.across_m = 3.0, .up_m = 5.0, .width_m = 0.4, .height_m = 0.4};
        const Rectangle light{.left = -0.1, .right = 0.1, .bottom = 4.9, .top = 5.1};
        check_close(picture::port_margin(port, light), -0.1 - 2.8, absolute(1e-12, "rounding"));
    }

    TEST_CASE("a lens in the hall, or with its pupil through the wall, needs no port") {
        picture::PictureInput in = square_on();
        in.projectors[0].back_m = 20.4;
        CHECK_FALSE(only_picture(in).port_light);
        in.projectors[0].back_m = 20.5;
        CHECK_FALSE(only_picture(in).port_light);
    }

    TEST_CASE(
        "property: every ray from the pupil to the picture passes the opening, and some "
        "touch each of its sides") {
        Dice dice(81);
        for (int i = 0; i < 60; ++i) {
            INFO("seed 81, case ", i);
            const picture::PictureInput in = room_with_lens(dice);
            const auto p = only_picture(in);
            const Rectangle light = light_of(p);
            const double wall = in.booth_wall_back_m;
            Rectangle tried{1e9, -1e9, 1e9, -1e9};
            for (int k = 0; k < 180; ++k) {
                const double angle = 2.0 * base::kPi * k / 180.0;
                const glm::dvec2 rim(std::cos(angle), std::sin(angle));
                for (int e = 0; e <= 32; ++e) {
                    const double s = -1.0 + e / 16.0;
                    for (const glm::dvec2 gate : {glm::dvec2(s, 1.0), glm::dvec2(s, -1.0),
                                                  glm::dvec2(1.0, s), glm::dvec2(-1.0, s)})
                        take_in(tried, at_wall(p, rim, gate, wall));
                }
                const glm::dvec2 inner = std::sqrt(dice.between(0.0, 1.0)) * rim;
                take_in(tried, at_wall(p, inner, {dice.between(-1.0, 1.0), dice.between(-1.0, 1.0)},
                                       wall));
            }
            constexpr double kRim = 1e-6;  // a curved rim between its samples
            CHECK(tried.left >= light.left - kRim);
            CHECK(tried.right <= light.right + kRim);
            CHECK(tried.bottom >= light.bottom - kRim);
            CHECK(tried.top <= light.top + kRim);
            const Tolerance touch = absolute(1e-4, "2 degrees of the pupil, 32 parts of an edge");
            check_close(tried.left, light.left, touch);
            check_close(tried.right, light.right, touch);
            check_close(tried.bottom, light.bottom, touch);
            check_close(tried.top, light.top, touch);
        }
    }

    TEST_CASE("property: the outline touches its rectangle and no ray passes beyond it") {
        Dice dice(82);
        for (int i = 0; i < 40; ++i) {
            INFO("seed 82, case ", i);
            const picture::PictureInput in = room_with_lens(dice);
            const auto p = only_picture(in);
            const Rectangle light = light_of(p);
            const auto outline =
                picture::port_outline(picture::port_beam(p, in.lenses, in.booth_wall_back_m), 72);
            REQUIRE(outline.size() == 72);
            CHECK(geometry::signed_area(outline) > 0.0);
            CHECK(geometry::signed_area(outline) < light.area() + 1e-9);
            for (int k = 0; k < 500; ++k) {
                const double angle = dice.between(0.0, 2.0 * base::kPi);
                const glm::dvec2 at = at_wall(p, {std::cos(angle), std::sin(angle)},
                                              {dice.between(-1.0, 1.0), dice.between(-1.0, 1.0)},
                                              in.booth_wall_back_m);
                // A rounded corner's arc between two of its points stands off by its radius, at
                // most 0.03 m, times 1 - cos 2.5 degrees.
                CHECK(beyond(outline, at) <= 0.03 * (1.0 - std::cos(base::radians(2.5))));
            }
            Rectangle box{1e9, -1e9, 1e9, -1e9};
            for (const glm::dvec2& corner : outline)
                take_in(box, corner);
            const Tolerance rounding = absolute(1e-9, "rounding");
            check_close(box.left, light.left, rounding);
            check_close(box.right, light.right, rounding);
            check_close(box.bottom, light.bottom, rounding);
            check_close(box.top, light.top, rounding);
        }
    }

    TEST_CASE("property: the mirrored room needs the mirrored port, a doubled one twice as much") {
        Dice dice(83);
        for (int i = 0; i < 200; ++i) {
            INFO("seed 83, case ", i);
            const picture::PictureInput in = room_with_lens(dice);
            const Rectangle light = light_of(only_picture(in));
            const Rectangle image = light_of(only_picture(mirrored(in)));
            const Rectangle large = light_of(only_picture(doubled(in)));
            const Tolerance rounding = absolute(1e-9, "rounding");
            check_close(image.left, -light.right, rounding);
            check_close(image.right, -light.left, rounding);
            check_close(image.top, light.top, rounding);
            check_close(large.width(), 2.0 * light.width(), rounding);
            check_close(large.height(), 2.0 * light.height(), rounding);
            check_close(large.centre().y, 2.0 * light.centre().y, rounding);
        }
    }

    TEST_CASE("property: a faster lens never needs a smaller port") {
        Dice dice(84);
        for (int i = 0; i < 100; ++i) {
            INFO("seed 84, case ", i);
            picture::PictureInput in = room_with_lens(dice);
            const Rectangle slow = light_of(only_picture(in));
            in.lenses[0].f_number = dice.between(1.6, kFNumber);
            const Rectangle fast = light_of(only_picture(in));
            CHECK(fast.width() >= slow.width());
            CHECK(fast.height() >= slow.height());
        }
    }

    TEST_CASE("the opening of a projector holds the light of all its formats and no more") {
        picture::PictureInput in = square_on();
        in.formats.push_back({.name = "1.00", .aspect_ratio = 1.0, .opening_width_m = {}});
        room::FormatUse use = in.projectors[0].formats[0];
        use.format = "1.00";
        use.gate_width_m = use.gate_height_m = 0.01;
        use.shift_up = 0.2;
        in.projectors[0].formats.push_back(use);
        const picture::PictureStudy study = picture::study_picture(in);
        REQUIRE(study.pictures.size() == 2);
        const auto opening = picture::port_opening(study, 0);
        REQUIRE(opening);
        const Rectangle a = light_of(study.pictures[0]), b = light_of(study.pictures[1]);
        CHECK(b.top > a.top);
        CHECK(*opening == Rectangle{a.left, a.right, std::min(a.bottom, b.bottom), b.top});
        CHECK_FALSE(picture::port_opening(study, 1));
    }
}
