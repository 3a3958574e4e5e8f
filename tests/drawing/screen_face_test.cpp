// SPDX-License-Identifier: MIT
#include "drawing/drawing.hpp"
#include "drawing/studied_room.hpp"
#include "picture/focus.hpp"
#include "support/check.hpp"

#include <algorithm>

// Its rounding to whole numbers would cost what the comparison is about.
#define BOOST_GEOMETRY_NO_ROBUSTNESS
#include <boost/geometry.hpp>
#include <boost/geometry/geometries/multi_polygon.hpp>
#include <boost/geometry/geometries/point_xy.hpp>
#include <boost/geometry/geometries/polygon.hpp>

using namespace rakeline;
using drawing::Ink;
using tests::check_close;
using tests::items_of;
using tests::studied;

namespace {

namespace bg = boost::geometry;
using BoostPoint = bg::model::d2::point_xy<double>;
using BoostPolygon = bg::model::polygon<BoostPoint>;
using BoostPolygons = bg::model::multi_polygon<BoostPolygon>;

const tests::Tolerance kExact = tests::absolute(1e-12, "the same number by another route");

BoostPolygon in_boost(const std::vector<glm::dvec2>& points) {
    BoostPolygon polygon;
    for (const auto& p : points)
        bg::append(polygon.outer(), BoostPoint(p.x, p.y));
    bg::correct(polygon);
    return polygon;
}

BoostPolygon in_boost(const geometry::Rectangle& r) {
    return in_boost({{r.left, r.bottom}, {r.right, r.bottom}, {r.right, r.top}, {r.left, r.top}});
}

/// Area of the first outside the second, by Boost.Geometry.
double area_outside(const BoostPolygon& of, const BoostPolygon& other) {
    BoostPolygons rest;
    bg::difference(of, other, rest);
    return bg::area(rest);
}

double area_of(const drawing::Drawing& face, Ink ink) {
    double area = 0.0;
    for (const auto& fill : items_of<drawing::Fill>(face))
        if (fill.ink == ink) area += std::abs(geometry::signed_area(fill.points));
    return area;
}

drawing::DrawingChoice choice_of(const picture::ProjectedPicture& picture, bool blur = false) {
    drawing::DrawingChoice choice;
    choice.projector = picture.projector;
    choice.format = picture.format;
    choice.blur = blur;
    return choice;
}

const picture::Opening& opening_of(const study::Study& study,
                                   const picture::ProjectedPicture& picture) {
    return study.picture.openings.at(static_cast<std::size_t>(picture.format));
}

study::Place place_of(const picture::ProjectedPicture& picture) {
    study::Place place;
    place.projector = picture.projector;
    place.format = picture.format;
    return place;
}

/// The demo room with its first projector's lens taken out of every use, so that each picture is
/// the exact one, square on a flat screen before it.
study::Study square_on() {
    room::Brief brief = *tests::demo_brief("screening-24");
    room::Projector& projector = brief.layout.projectors.front();
    brief.layout.screen.tilt_rad = 0.0;
    brief.layout.screen.radius_m = 0.0;
    projector.across_m = 0.0;
    projector.up_m = brief.layout.screen.sill_m + 0.5 * brief.layout.screen.height_m;
    projector.aim = {};
    brief.layout.formats.resize(1);
    projector.formats.resize(1);
    room::FormatUse& use = projector.formats.front();
    use.lens.clear();
    use.focal_length_m.reset();
    use.shift_up = use.shift_across = 0.0;
    use.pixels_wide = 1850;
    use.pixels_high = 1000;
    brief.layout.formats.front().aspect_ratio = 1.85;
    return study::compute_study(std::make_shared<const room::Brief>(brief));
}

/// Left and right changed over: the projectors' places and everything that turns or shifts.
study::Study mirrored(const char* name) {
    room::Brief brief = *tests::demo_brief(name);
    for (room::Projector& projector : brief.layout.projectors) {
        projector.across_m = -projector.across_m;
        projector.port.across_m = -projector.port.across_m;
        projector.aim.yaw_rad = -projector.aim.yaw_rad;
        projector.aim.roll_rad = -projector.aim.roll_rad;
        for (room::FormatUse& use : projector.formats)
            use.shift_across = -use.shift_across;
    }
    return study::compute_study(std::make_shared<const room::Brief>(brief));
}

bool has_label(const drawing::Drawing& face, const std::string& part) {
    const auto labels = items_of<drawing::Label>(face);
    return std::any_of(labels.begin(), labels.end(), [&](const drawing::Label& label) {
        return label.text.find(part) != std::string::npos;
    });
}

}  // namespace

TEST_SUITE("drawing/screen_face") {
    TEST_CASE("bounds hold every point of every item, with the blur and without") {
        for (const char* name : tests::kDemoRooms) {
            INFO(name);
            const study::Study& study = studied(name);
            for (const auto& picture : study.picture.pictures)
                for (const bool blur : {false, true})
                    CHECK(tests::bounds_hold_all(
                        drawing::screen_face(study, choice_of(picture, blur))));
        }
    }

    TEST_CASE("the picture's outline is the map's own, and the opening's the masking's") {
        const study::Study& study = studied("steep-240");
        for (const auto& picture : study.picture.pictures) {
            const auto face = drawing::screen_face(study, choice_of(picture));
            int rims = 0;
            bool opening = false;
            for (const auto& line : items_of<drawing::Line>(face)) {
                if (line.ink == Ink::beam && line.closed) {
                    ++rims;
                    CHECK(line.points == picture.shape.outline);
                }
                if (line.weight == drawing::Weight::cut)
                    opening = line.points.at(0) == glm::dvec2(opening_of(study, picture).uv.left,
                                                              opening_of(study, picture).uv.bottom);
            }
            CHECK(rims == 1);
            CHECK(opening);
        }
    }

    TEST_CASE("golden: fills have the areas that Boost.Geometry finds for picture and opening") {
        int dark = 0;
        for (const char* name : tests::kDemoRooms) {
            INFO(name);
            const study::Study& study = studied(name);
            for (const auto& picture : study.picture.pictures) {
                const auto face = drawing::screen_face(study, choice_of(picture));
                const BoostPolygon rim = in_boost(picture.shape.outline);
                const BoostPolygon hole = in_boost(opening_of(study, picture).uv);
                const double area = opening_of(study, picture).area_m2;
                const auto tight =
                    tests::absolute(1e-6 * area, "the rim is a polyline of 256 points there");
                check_close(area_of(face, Ink::near), area_outside(rim, hole), tight);
                check_close(area_of(face, Ink::missed), area_outside(hole, rim), tight);
                dark += area_of(face, Ink::missed) > 0.0;
            }
        }
        CHECK(dark >= 1);  // else the second area was never tried
    }

    TEST_CASE("fills have the areas that the figures on overfill and dark parts say") {
        for (const char* name : tests::kDemoRooms) {
            INFO(name);
            const study::Study& study = studied(name);
            for (const auto& picture : study.picture.pictures) {
                const auto face = drawing::screen_face(study, choice_of(picture));
                const double area = opening_of(study, picture).area_m2;
                const auto tight = tests::absolute(1e-6, "polylines on a curved screen");
                const auto figure = [&](const char* id) {
                    return tests::figure_value(study, id, place_of(picture));
                };
                check_close(area_of(face, Ink::near) / area, figure("picture.overfill"), tight);
                check_close(area_of(face, Ink::missed) / area, figure("picture.uncovered"), tight);
            }
        }
    }

    TEST_CASE("square on a flat screen with the exact lens nothing is astray and nothing bows") {
        const study::Study study = square_on();
        REQUIRE(study.picture.pictures.size() == 1);
        const auto& picture = study.picture.pictures.front();
        const auto face = drawing::screen_face(study, choice_of(picture));
        CHECK(area_of(face, Ink::near) == 0.0);
        CHECK(area_of(face, Ink::missed) == 0.0);
        check_close(tests::figure_value(study, "picture.bow_top", place_of(picture)), 0.0, kExact);
        CHECK_FALSE(has_label(face, "bows"));
        // Its columns stand upright.
        for (const auto& line : items_of<drawing::Line>(face)) {
            if (line.ink != Ink::quiet || line.closed || line.points.size() < 20) continue;
            const glm::dvec2 run = line.points.back() - line.points.front();
            CHECK(std::min(std::abs(run.x), std::abs(run.y)) < 1e-9);
        }
    }

    TEST_CASE("property: a mirrored room gives the mirrored outline and the same fills") {
        for (const char* name : tests::kDemoRooms) {
            INFO(name);
            const study::Study& plain = studied(name);
            const study::Study other = mirrored(name);
            REQUIRE(other.picture.pictures.size() == plain.picture.pictures.size());
            for (std::size_t i = 0; i < plain.picture.pictures.size(); ++i) {
                const auto& picture = plain.picture.pictures[i];
                const auto a = drawing::screen_face(plain, choice_of(picture, true));
                const auto b = drawing::screen_face(other, choice_of(picture, true));
                std::vector<glm::dvec2> turned = other.picture.pictures[i].shape.outline;
                for (glm::dvec2& p : turned)
                    p.x = -p.x;
                const auto tight = tests::absolute(1e-9, "rounding");
                check_close(area_outside(in_boost(turned), in_boost(picture.shape.outline)), 0.0,
                            tests::absolute(1e-7, "slivers of rounding along the rim, m2"));
                for (const Ink ink : {Ink::near, Ink::missed, Ink::line})
                    check_close(area_of(a, ink), area_of(b, ink),
                                tests::relative(1e-4, "columns of the blur stand mirrored"));
                check_close(a.low.y, b.low.y, tight);
                check_close(a.high.y, b.high.y, tight);
            }
        }
    }

    TEST_CASE("lengths around it are the figures") {
        for (const char* name : tests::kDemoRooms) {
            INFO(name);
            const study::Study& study = studied(name);
            const auto& picture = study.picture.pictures.front();
            const auto face = drawing::screen_face(study, choice_of(picture));
            std::vector<double> shown, wanted;
            for (const auto& d : items_of<drawing::Dimension>(face))
                shown.push_back(drawing::length_m(d));
            for (const char* id :
                 {"picture.width_top", "picture.width_bottom", "picture.height_left",
                  "picture.height_right", "picture.mask_left", "picture.mask_right",
                  "picture.mask_top", "picture.mask_bottom"})
                wanted.push_back(tests::figure_value(study, id, place_of(picture)));
            std::sort(shown.begin(), shown.end());
            std::sort(wanted.begin(), wanted.end());
            REQUIRE(shown.size() == wanted.size());
            for (std::size_t i = 0; i < shown.size(); ++i)
                check_close(shown[i], wanted[i], kExact);
        }
    }

    TEST_CASE("every edge's overfill is written beside it, in the units asked for") {
        const study::Study& study = studied("converted-hall-96");
        for (const auto units : {base::UnitSystem::metric, base::UnitSystem::imperial}) {
            const auto& picture = study.picture.pictures.back();
            drawing::DrawingChoice choice = choice_of(picture);
            choice.units = units;
            const auto face = drawing::screen_face(study, choice);
            for (const char* id : {"picture.overfill_left", "picture.overfill_right",
                                   "picture.overfill_top", "picture.overfill_bottom"}) {
                const double past = tests::figure_value(study, id, place_of(picture));
                CHECK(has_label(
                    face, "past " + base::quantity_text(past, base::Unit::millimetre, units)));
            }
        }
    }

    TEST_CASE("where the picture falls short its edge is in the colour of what is missed") {
        const study::Study& study = studied("grand-620");
        const auto* picture = picture::find_picture(study.picture, 0, 1);
        REQUIRE(picture);
        REQUIRE(tests::figure_value(study, "picture.overfill_left", place_of(*picture)) < 0.0);
        int missed = 0;
        for (const auto& label :
             items_of<drawing::Label>(drawing::screen_face(study, choice_of(*picture))))
            missed += label.ink == Ink::missed && label.text.starts_with("past ");
        CHECK(missed == 1);
    }

    TEST_CASE("the blur's bands grow toward the worst, and the worst is the figure") {
        int tried = 0;
        for (const char* name : tests::kDemoRooms) {
            const study::Study& study = studied(name);
            for (const auto& picture : study.picture.pictures) {
                INFO(name);
                const auto face = drawing::screen_face(study, choice_of(picture, true));
                const double area = opening_of(study, picture).area_m2;
                double last = 2.0 * area;
                double both = 0.0;
                for (const auto& fill : items_of<drawing::Fill>(face)) {
                    if (fill.ink != Ink::line) continue;
                    const double part = std::abs(geometry::signed_area(fill.points));
                    CHECK(part <= area * (1.0 + 1e-9));
                    both += part;
                    last = part;
                }
                if (both == 0.0) continue;
                ++tried;
                CHECK(last < 0.5 * area);
                const double worst = tests::figure_value(study, "picture.blur", place_of(picture));
                CHECK(
                    has_label(face, "worst " + base::quantity_text(worst, base::Unit::millimetre)));
                CHECK(has_label(face, "sharp"));
            }
        }
        CHECK(tried >= 10);
    }

    TEST_CASE("contours run where the blur is a whole number of their steps") {
        const study::Study& study = studied("steep-240");
        for (const auto& picture : study.picture.pictures) {
            const auto& lens = study.layout().lenses.at(static_cast<std::size_t>(*picture.lens));
            const auto focus =
                picture::best_focus(picture.map, opening_of(study, picture), lens.f_number);
            REQUIRE(focus);
            const auto face = drawing::screen_face(study, choice_of(picture, true));
            constexpr double kStep_m = 1e-4;
            CHECK(has_label(face, "0.1"));
            int points = 0;
            for (const auto& line : items_of<drawing::Line>(face)) {
                if (line.ink != Ink::line || line.weight != drawing::Weight::helper) continue;
                for (const glm::dvec2& p : line.points) {
                    const auto blur =
                        picture::blur_at(picture.map, p, focus->pupil_m, focus->best_m);
                    REQUIRE(blur);
                    const double steps = *blur / kStep_m;
                    check_close(steps, std::round(steps),
                                tests::absolute(2e-3, "ends at a number's gap lie on chords"));
                    ++points;
                }
            }
            CHECK(points > 100);
        }
    }

    TEST_CASE("without a lens there is no f-number, and the drawing says so") {
        const study::Study study = square_on();
        const auto face =
            drawing::screen_face(study, choice_of(study.picture.pictures.front(), true));
        CHECK(has_label(face, "no f-number"));
        CHECK(area_of(face, Ink::line) == 0.0);
    }

    TEST_CASE("a pair without a picture has its frame and says why") {
        room::Brief brief = *tests::demo_brief("converted-hall-96");
        brief.layout.projectors.front().aim = {.mode = room::AimMode::angles,
                                               .yaw_rad = base::radians(60.0)};
        const auto study = study::compute_study(std::make_shared<const room::Brief>(brief));
        REQUIRE_FALSE(study.picture.none.empty());
        const auto face = drawing::screen_face(study, {});
        CHECK(has_label(face, "no picture: " + study.picture.none.front().why));
        CHECK(tests::bounds_hold_all(face));
        CHECK(area_of(face, Ink::near) == 0.0);
    }

    TEST_CASE("a format that a projector does not show is said to be none of its own") {
        const study::Study& study = studied("grand-620");
        drawing::DrawingChoice choice;
        choice.projector = 1;
        choice.format = 0;
        CHECK(has_label(drawing::screen_face(study, choice), "does not show it"));
    }

    TEST_CASE("a room without formats or projectors still has a frame") {
        const auto study = study::compute_study(std::make_shared<const room::Brief>(room::Brief{}));
        const auto face = drawing::screen_face(study, {});
        CHECK(tests::bounds_hold_all(face));
        CHECK(items_of<drawing::Dimension>(face).empty());
    }
}
