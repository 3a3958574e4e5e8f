// SPDX-License-Identifier: MIT
// Properties of the picture on 10,000 random valid rooms each. Whole studies, with seats, light and
// sound, are held to the same symmetries in tests/study/picture_symmetry_test.cpp, on fewer rooms.
#include "geometry/homography.hpp"
#include "geometry/polygon.hpp"
#include "picture/any_room.hpp"
#include "picture/throw.hpp"
#include "support/turned_room.hpp"

#include <glm/matrix.hpp>

using namespace rakeline;
using namespace rakeline::tests;
using picture::PictureMap;
using picture::ProjectedPicture;

namespace {

constexpr int kRooms = 10000;

/// That the rooms were of all kinds.
struct Kinds {
    int flat = 0, curved = 0, film = 0, imager = 0, by_angles = 0, squeezed = 0, strong_curve = 0;

    void count(const room::Layout& layout) {
        const room::Projector& p = layout.projectors[0];
        const double radius = layout.screen.radius_m;
        ++(radius == 0.0 ? flat : curved);
        ++(p.kind == room::SourceKind::film ? film : imager);
        by_angles += p.aim.mode == room::AimMode::angles ? 1 : 0;
        squeezed += p.formats[0].squeeze != 1.0 ? 1 : 0;
        strong_curve += radius > 0.0 && radius < layout.screen.width_m ? 1 : 0;
    }
    void check_all_seen() const {
        for (const int n : {flat, curved, film, imager, by_angles, squeezed})
            CHECK(n > kRooms / 5);
        CHECK(strong_curve > kRooms / 50);
    }
};

/// Where the ray meets the plane, as the solution of lens + t q = centre + u across + v up.
glm::dvec2 solved_on_plane(const PictureMap& map, glm::dvec2 gate) {
    const geometry::Patch& plane = map.surface();
    const auto ray = map.ray(gate);
    const glm::dmat3 columns(plane.across, plane.up, -ray.direction);
    const glm::dvec3 uvt = glm::inverse(columns) * (ray.origin - plane.centre);
    return {uvt.x, uvt.y};
}

/// A tolerance for lengths of rooms of this size.
Tolerance rounding_on(const room::Layout& layout) {
    return absolute(1e-11 * layout.projectors[0].back_m, "rounding, by the size of the room");
}

/// The point found lies on the ray and on the cylinder, on the half toward the screen wall, and the
/// light arrives there from the seats' side.
void check_on_cylinder(const PictureMap& map,
                       glm::dvec2 gate,
                       glm::dvec2 uv,
                       const Tolerance& rounding) {
    const geometry::Patch& surface = map.surface();
    const glm::dvec3 point = geometry::point_at(surface, uv);
    const auto ray = map.ray(gate);
    const glm::dvec3 to = point - ray.origin;
    const glm::dvec3 along = glm::normalize(ray.direction);
    check_close(glm::length(to - glm::dot(to, along) * along), 0.0, rounding);
    CHECK(glm::dot(to, along) > 0.0);
    const glm::dvec3 from_axis = point - surface.centre - surface.radius_m * surface.normal;
    const glm::dvec3 outward = from_axis - glm::dot(from_axis, surface.up) * surface.up;
    check_close(glm::length(outward), surface.radius_m, rounding);
    CHECK(glm::dot(outward, surface.normal) < 0.0);
    CHECK(glm::dot(outward, along) > 0.0);
}

/// The box that a picture fills on the unrolled surface.
geometry::Rectangle box_of(const std::vector<glm::dvec2>& outline) {
    geometry::Rectangle box{1e9, -1e9, 1e9, -1e9};
    for (const glm::dvec2 p : outline) {
        box.left = std::min(box.left, p.x);
        box.right = std::max(box.right, p.x);
        box.bottom = std::min(box.bottom, p.y);
        box.top = std::max(box.top, p.y);
    }
    return box;
}

/// The same projector with another focal length, focused at the same throw.
PictureMap with_focal_length(const ProjectedPicture& p, double focal_length_m) {
    picture::Pose pose = p.map.pose();
    pose.focal_length_m = focal_length_m;
    pose.image_distance_m = picture::image_distance(focal_length_m, p.throw_m);
    return {p.map.surface(), pose};
}

/// A flat upright room, the lens wanted, on the screen's middle but for what a case turns.
room::Layout plain(room::Layout layout) {
    layout.screen.radius_m = 0.0;
    layout.screen.masking = room::MaskingMode::fixed;
    room::Projector& p = layout.projectors[0];
    p.across_m = 0.0;
    p.up_m = layout.screen.sill_m + 0.5 * layout.screen.height_m;
    p.aim = {};
    p.formats[0].shift_up = p.formats[0].shift_across = 0.0;
    p.formats[0].focal_length_m.reset();
    return layout;
}

ProjectedPicture picture_of(const room::Layout& layout) {
    return only_picture(picture_input(layout));
}

void check_mirrored(const ProjectedPicture& a, const ProjectedPicture& b) {
    const Tolerance near = absolute(1e-9, "rounding");
    check_close(b.throw_m, a.throw_m, near);
    check_close(b.angle_down_rad, a.angle_down_rad, near);
    check_close(b.angle_across_rad, -a.angle_across_rad, near);
    check_close(b.focal_length_m, a.focal_length_m, near);
    check_close(b.shape.keystone_vertical, a.shape.keystone_vertical, near);
    check_close(b.shape.keystone_horizontal, -a.shape.keystone_horizontal, near);
    check_close(b.shape.side_slope_rad, a.shape.side_slope_rad, near);
    check_close(b.overfill, a.overfill, near);
    check_close(b.crop, a.crop, near);
    check_close(b.uncovered, a.uncovered, near);
    const std::array<std::size_t, 4> other{1, 0, 3, 2};  // the corner on the other side
    for (std::size_t i = 0; i < 4; ++i) {
        const glm::dvec2 here = a.shape.corners[i];
        check_close(glm::length(b.shape.corners[other[i]] - glm::dvec2(-here.x, here.y)), 0.0,
                    near);
    }
}

void check_doubled(const ProjectedPicture& a, const ProjectedPicture& b) {
    const Tolerance same = absolute(1e-12, "twice is exact in binary, but for what is cut off");
    check_close(b.throw_m, 2.0 * a.throw_m, same);
    check_close(b.focal_length_m, 2.0 * a.focal_length_m, same);
    check_close(b.angle_down_rad, a.angle_down_rad, same);
    check_close(b.angle_across_rad, a.angle_across_rad, same);
    check_close(b.shape.keystone_vertical, a.shape.keystone_vertical, same);
    check_close(b.shape.keystone_horizontal, a.shape.keystone_horizontal, same);
    check_close(b.shape.side_slope_rad, a.shape.side_slope_rad, same);
    check_close(b.shape.bow_top_m, 2.0 * a.shape.bow_top_m, same);
    check_close(b.overfill, a.overfill, same);
    check_close(b.crop, a.crop, same);
    check_close(b.uncovered, a.uncovered, same);
}

}  // namespace

TEST_SUITE("picture/properties") {
    TEST_CASE("round trip: gate to screen to gate within 1e-9 of the gate's width, 10,000 rooms") {
        Kinds kinds;
        Dice dice(500);
        for_rooms(501, kRooms, [&](const room::Layout& layout, const ProjectedPicture& p) {
            kinds.count(layout);
            for (int k = 0; k < 6; ++k) {
                // A corner now and then, where the map bends most.
                const glm::dvec2 gate =
                    k == 0 ? gate_point(p, dice.one_in(2) ? 1 : -1, 1)
                           : gate_point(p, dice.between(-1, 1), dice.between(-1, 1));
                const auto uv = p.map.screen_from_gate(gate);
                REQUIRE(uv);
                const auto back = p.map.gate_from_screen(*uv);
                REQUIRE(back);
                check_close(glm::length(*back - gate), 0.0,
                            absolute(1e-9 * p.gate_size_m.x, "1e-9 of the gate's width"));
                if (!p.map.surface().flat())
                    check_on_cylinder(p.map, gate, *uv, rounding_on(layout));
            }
        });
        kinds.check_all_seen();
    }

    TEST_CASE("property: a plane's closed form is where each ray meets it, 10,000 rooms") {
        Dice dice(510);
        int made = 0;
        for_layouts(511, kRooms + kRooms / 20, [&](room::Layout layout) {
            layout.screen.radius_m = 0.0;
            const auto study = picture::study_picture(picture_input(layout));
            if (study.pictures.empty()) return;  // beside the opening, for one
            ++made;
            const ProjectedPicture& p = study.pictures.front();
            const auto h = p.map.homography();
            REQUIRE(h);
            for (int k = 0; k < 3; ++k) {
                const glm::dvec2 gate = gate_point(p, dice.between(-1, 1), dice.between(-1, 1));
                const glm::dvec2 solved = solved_on_plane(p.map, gate);
                const auto closed = geometry::mapped(*h, gate);
                REQUIRE(closed);
                check_close(glm::length(*closed - solved), 0.0, rounding_on(layout));
                const auto traced = p.map.screen_from_gate(gate);
                REQUIRE(traced);
                check_close(glm::length(*traced - solved), 0.0, rounding_on(layout));
            }
        });
        CHECK(made >= kRooms);
    }

    TEST_CASE("property: a longer lens's picture lies within the shorter one's, 10,000 rooms") {
        // With a shift under half a gate the lens axis runs through the gate, and a longer lens
        // draws every gate point nearer to it.
        Dice dice(530);
        for_rooms(531, kRooms, [&](const room::Layout&, const ProjectedPicture& p) {
            const PictureMap longer_map =
                with_focal_length(p, p.focal_length_used_m * dice.between(1.001, 1.5));
            const auto longer = picture::picture_shape(longer_map, p.gate_size_m);
            REQUIRE(longer);
            const geometry::Rectangle a = box_of(p.shape.outline);
            const geometry::Rectangle b = box_of(longer->outline);
            CHECK(b.width() < a.width());
            CHECK(b.height() < a.height());
            CHECK((b.left > a.left && b.right < a.right && b.bottom > a.bottom && b.top < a.top));
            CHECK(geometry::signed_area(longer->outline) < geometry::signed_area(p.shape.outline));
        });
    }

    TEST_CASE("property: keystone grows with the angle down, 10,000 rooms") {
        Dice dice(540);
        for_layouts(541, kRooms, [&](const room::Layout& layout) {
            room::Layout room = plain(layout);
            room.screen.tilt_rad = base::radians(dice.between(-15.0, 14.0));
            const ProjectedPicture flatter = picture_of(room);
            room.screen.tilt_rad -=
                base::radians(dice.between(0.01, 5.0));  // the top comes forward
            const ProjectedPicture steeper = picture_of(room);
            CHECK(steeper.angle_down_rad > flatter.angle_down_rad);
            CHECK(steeper.shape.keystone_vertical > flatter.shape.keystone_vertical);
            CHECK(steeper.angle_down_rad * steeper.shape.keystone_vertical >= 0.0);
        });
    }

    TEST_CASE("property: sideways keystone is W sin a / L, so grows with the angle, 10,000 rooms") {
        Dice dice(550);
        for_layouts(551, kRooms, [&](const room::Layout& layout) {
            room::Layout room = plain(layout);
            room.screen.tilt_rad = 0.0;
            room.projectors[0].across_m = room.screen.width_m * dice.between(-0.4, 0.35);
            const ProjectedPicture before = picture_of(room);
            room.projectors[0].across_m -= room.screen.width_m * dice.between(0.001, 0.05);
            const ProjectedPicture after = picture_of(room);
            CHECK(after.angle_across_rad > before.angle_across_rad);
            CHECK(after.shape.keystone_horizontal > before.shape.keystone_horizontal);
            // 2 tan a tan(half the field), the field filling W at the throw L / cos a.
            const double width = picture::masked_opening(room.screen, room.formats[0]).width_m;
            const double level = room.projectors[0].back_m - room.screen.setback_m;
            check_close(after.shape.keystone_horizontal,
                        std::sin(after.angle_across_rad) * width / level,
                        absolute(1e-10, "rounding"));
        });
    }

    TEST_CASE("property: mirrored, or twice as large, a room has the same picture so, 10,000") {
        for_rooms(561, kRooms, [&](const room::Layout& layout, const ProjectedPicture& p) {
            check_mirrored(p, picture_of(mirrored(layout)));
            check_doubled(p, picture_of(doubled(layout)));
        });
    }
}
