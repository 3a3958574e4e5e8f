// SPDX-License-Identifier: MIT
#include "picture/picture_study.hpp"

#include "picture/random_room.hpp"
#include "picture/throw.hpp"
#include "support/check.hpp"

using namespace rakeline;
using namespace rakeline::tests;
using picture::PictureInput;
using picture::PictureStudy;
using picture::ProjectedPicture;

namespace {

/// A digital projector 20 m before a flat upright screen, level with its centre, one format.
PictureInput plain_room() {
    PictureInput in;
    in.screen.width_m = 10.0;
    in.screen.height_m = 4.0;
    in.screen.sill_m = 2.0;
    in.screen.setback_m = 1.0;
    in.formats = {{.name = "2.39", .aspect_ratio = 2.39, .opening_width_m = {}}};
    room::Projector p;
    p.up_m = 4.0;
    p.back_m = 21.0;
    p.formats = {room::FormatUse{}};
    in.projectors = {p};
    in.booth_wall_back_m = 20.5;
    return in;
}

room::Lens lens(room::LensKind kind, double short_m, double long_m) {
    room::Lens l;
    l.name = "fitted";
    l.kind = kind;
    l.focal_length_m = short_m;
    l.focal_length_long_m = long_m;
    return l;
}

PictureInput with_lens(const room::Lens& l) {
    PictureInput in = plain_room();
    in.lenses = {l};
    in.projectors[0].formats[0].lens = "fitted";
    return in;
}

void check_refused(const PictureInput& in, const std::string& why) {
    const PictureStudy study = picture::study_picture(in);
    CHECK(study.pictures.empty());
    REQUIRE(study.none.size() == 1);
    INFO("said: ", study.none[0].why);
    CHECK(study.none[0].why.find(why) != std::string::npos);
    CHECK_FALSE(study.none[0].mend.empty());
}

/// A random room whose projector is aimed by angles, near the screen's centre.
PictureInput aimed_by_angles(Dice& dice) {
    PictureInput in = random_room(dice);
    room::Projector& p = in.projectors[0];
    p.aim.mode = room::AimMode::angles;
    p.aim.yaw_rad = std::atan2(-p.across_m, p.back_m) + dice.between(-0.02, 0.02);
    p.aim.pitch_rad = std::atan2(p.up_m - in.screen.sill_m - 0.5 * in.screen.height_m, p.back_m) +
                      dice.between(-0.02, 0.02);
    return in;
}

}  // namespace

TEST_SUITE("picture/picture_study") {
    TEST_CASE("a plain room: throw, gate, focal lengths and axis by hand") {
        const ProjectedPicture p = only_picture(plain_room());
        const Tolerance rounding = relative(1e-12, "rounding");
        check_close(p.throw_m, 20.0, rounding);
        check_close(p.gate_size_m.x, 2048 * 13.68e-6, rounding);
        check_close(p.gate_size_m.y, 858 * 13.68e-6, rounding);
        const double width = 4.0 * 2.39;
        check_close(p.focal_length_m, 0.02801664 * 20.0 / (width + 0.02801664), rounding);
        check_close(p.focal_length_field_m, 0.02801664 * 20.0 / width, rounding);
        CHECK(p.focal_length_used_m == p.focal_length_m);
        check_close(p.angle_down_rad, 0.0, absolute(1e-12, "rounding"));
        check_close(p.angle_across_rad, 0.0, absolute(1e-12, "rounding"));
        CHECK_FALSE(p.lens);
        REQUIRE(p.port_point);
        check_close(p.port_point->z, 20.5, rounding);
        check_close(p.shape.corners[1].x - p.shape.corners[0].x, width, rounding);
    }

    TEST_CASE("film takes the aperture, stretched by the squeeze") {
        PictureInput in = plain_room();
        in.projectors[0].kind = room::SourceKind::film;
        in.projectors[0].formats[0].squeeze = 2.0;
        const ProjectedPicture p = only_picture(in);
        CHECK(p.gate_size_m == glm::dvec2(0.020955, 0.017526));
        check_close(p.focal_length_m, picture::focal_length(0.04191, 20.0, 9.56),
                    relative(1e-12, "rounding"));
        check_close(p.shape.corners[1].x - p.shape.corners[0].x, 9.56, relative(1e-12, "rounding"));
    }

    TEST_CASE("the focal length used: set, prime, zoom within its range, else the wanted one") {
        const double wanted = only_picture(plain_room()).focal_length_m;
        using room::LensKind;
        const auto used = [](const PictureInput& in) {
            return only_picture(in).focal_length_used_m;
        };
        CHECK(used(with_lens(lens(LensKind::prime, 0.045, 0.045))) == 0.045);
        CHECK(used(with_lens(lens(LensKind::zoom, 0.040, 0.080))) == wanted);
        CHECK(used(with_lens(lens(LensKind::zoom, 0.070, 0.080))) == 0.070);
        CHECK(used(with_lens(lens(LensKind::zoom, 0.030, 0.040))) == 0.040);
        PictureInput set = with_lens(lens(LensKind::zoom, 0.030, 0.080));
        set.projectors[0].formats[0].focal_length_m = 0.052;
        CHECK(used(set) == 0.052);
        CHECK(only_picture(set).lens == 0);
        CHECK(only_picture(set).focal_length_m == wanted);
    }

    TEST_CASE("angles: a lens above looks down, one at the left runs to the right") {
        PictureInput in = plain_room();
        in.projectors[0].up_m = 4.0 + 20.0 * std::tan(base::radians(12.0));
        in.projectors[0].across_m = -20.0 * std::tan(base::radians(5.0));
        const ProjectedPicture p = only_picture(in);
        check_close(p.angle_down_rad, base::radians(12.0), relative(1e-12, "rounding"));
        check_close(p.angle_across_rad, base::radians(5.0), relative(1e-12, "rounding"));
        check_close(p.axis_point.x, 0.0, absolute(1e-12, "rounding"));
        check_close(p.axis_point.y, 4.0, relative(1e-12, "rounding"));
    }

    TEST_CASE("a screen leaning back toward the lens takes its tilt off the angle down") {
        PictureInput in = plain_room();
        in.projectors[0].up_m = 4.0 + 20.0 * std::tan(base::radians(12.0));
        in.screen.tilt_rad = base::radians(5.0);
        check_close(only_picture(in).angle_down_rad, base::radians(7.0),
                    relative(1e-12, "rounding"));
        in.screen.tilt_rad = base::radians(12.0);
        check_close(only_picture(in).shape.keystone_vertical, 0.0, absolute(1e-12, "rounding"));
    }

    TEST_CASE("aimed by angles, shift brings the picture onto the opening without keystone") {
        PictureInput in = plain_room();
        room::Projector& p = in.projectors[0];
        p.aim.mode = room::AimMode::angles;
        p.up_m = 5.0;  // 1 m over the picture's centre, axis level
        p.formats[0].pixels_high = 858;
        const double picture_height = 9.56 * 858 / 2048;
        p.formats[0].shift_up = -1.0 / picture_height;
        const ProjectedPicture shown = only_picture(in);
        check_close(shown.shape.keystone_vertical, 0.0, absolute(1e-12, "rounding"));
        check_close(shown.shape.corners[0].y, 0.5 * picture_height, relative(1e-12, "rounding"));
        check_close(shown.shape.corners[3].y, -0.5 * picture_height, relative(1e-12, "rounding"));
        check_close(shown.axis_point.y, 5.0, relative(1e-12, "rounding"));
    }

    TEST_CASE("aimed at the picture, the axis follows the opening of each format") {
        PictureInput in = plain_room();
        in.screen.masking = room::MaskingMode::common_width;  // top moves
        in.formats.push_back({.name = "3.2", .aspect_ratio = 3.2, .opening_width_m = {}});
        room::FormatUse other;
        other.format = "3.2";
        in.projectors[0].formats.push_back(other);
        const PictureStudy study = picture::study_picture(in);
        REQUIRE(study.pictures.size() == 2);
        for (const ProjectedPicture& p : study.pictures) {
            const auto& opening = study.openings[static_cast<std::size_t>(p.format)];
            const glm::dvec3 centre = picture::opening_point(study.surface, opening, 0.0, 0.0);
            check_close(glm::length(p.axis_point - centre), 0.0, absolute(1e-12, "rounding"));
        }
        CHECK(study.pictures[1].axis_point.y < study.pictures[0].axis_point.y);
    }

    TEST_CASE("pictures come by projector, then format; a pair without a use is left out") {
        PictureInput in = plain_room();
        in.formats.insert(in.formats.begin(),
                          {.name = "1.85", .aspect_ratio = 1.85, .opening_width_m = {}});
        room::Projector both = in.projectors[0];
        room::FormatUse flat;
        flat.format = "1.85";
        both.formats.push_back(flat);
        in.projectors.push_back(both);
        const PictureStudy study = picture::study_picture(in);
        REQUIRE(study.pictures.size() == 3);
        CHECK(study.none.empty());
        CHECK(study.openings.size() == 2);
        CHECK(picture::find_picture(study, 0, 0) == nullptr);
        CHECK(picture::find_picture(study, 0, 1) == &study.pictures[0]);
        CHECK(picture::find_picture(study, 1, 0) == &study.pictures[1]);
        CHECK(picture::find_picture(study, 1, 1) == &study.pictures[2]);
        CHECK(study.pictures[1].use == 1);
        CHECK(study.pictures[2].use == 0);
    }

    TEST_CASE("refuses: an axis that misses the surface, or meets its back, makes no picture") {
        PictureInput away = plain_room();
        away.projectors[0].aim.mode = room::AimMode::angles;
        away.projectors[0].aim.yaw_rad = base::radians(120.0);
        check_refused(away, "misses the picture surface");
        PictureInput behind = plain_room();
        behind.projectors[0].back_m = -3.0;
        check_refused(behind, "back of the picture surface");
        PictureInput beside = plain_room();
        beside.screen.radius_m = 6.0;
        beside.projectors[0].across_m = -20.0;
        beside.projectors[0].back_m = 3.0;
        check_refused(beside, "back of the picture surface");
    }

    TEST_CASE("refuses: a picture that runs off the surface, a lens too long or unknown") {
        PictureInput off = plain_room();
        off.projectors[0].aim.mode = room::AimMode::angles;
        off.projectors[0].aim.yaw_rad = base::radians(85.0);
        off.projectors[0].formats[0].focal_length_m = 0.03;
        check_refused(off, "part of the picture misses");
        PictureInput longer = plain_room();
        longer.projectors[0].formats[0].focal_length_m = 25.0;
        check_refused(longer, "not shorter than the throw");
        PictureInput unknown = plain_room();
        unknown.projectors[0].formats[0].lens = "lost";
        check_refused(unknown, "\"lost\"");
    }

    TEST_CASE("a projector inside the screen's cylinder makes its picture") {
        PictureInput in = plain_room();
        in.screen.radius_m = 15.0;
        in.projectors[0].back_m = 12.0;
        const ProjectedPicture p = only_picture(in);
        check_close(p.throw_m, 11.0, relative(1e-12, "rounding"));
        CHECK(p.shape.corners[1].x > p.shape.corners[0].x);
    }

    TEST_CASE("property: without shift the axis meets the picture's own centre of the gate") {
        Dice dice(74);
        for (int i = 0; i < 1000; ++i) {
            INFO("seed 74, case ", i);
            PictureInput in = aimed_by_angles(dice);
            in.projectors[0].formats[0].shift_up = 0.0;
            in.projectors[0].formats[0].shift_across = 0.0;
            const ProjectedPicture p = only_picture(in);
            const auto uv = p.map.screen_from_gate({0.0, 0.0});
            REQUIRE(uv);
            const glm::dvec3 middle = geometry::point_at(p.map.surface(), *uv);
            check_close(glm::length(middle - p.axis_point), 0.0, absolute(1e-9, "rounding"));
            const glm::dvec3 lens = p.map.pose().lens;
            check_close(glm::length(p.axis_point - lens), p.throw_m, relative(1e-12, "rounding"));
        }
    }

    TEST_CASE("the same room studied twice gives the same bits") {
        Dice dice(75);
        const PictureInput in = random_room(dice);
        const ProjectedPicture a = only_picture(in);
        const ProjectedPicture b = only_picture(in);
        CHECK(a.shape.outline == b.shape.outline);
        CHECK(a.overfill == b.overfill);
        CHECK(a.crop == b.crop);
    }
}
