// SPDX-License-Identifier: MIT
#include "picture/plate.hpp"

#include "geometry/polygon.hpp"
#include "picture/random_room.hpp"
#include "support/check.hpp"

#include <algorithm>

using namespace rakeline;
using namespace rakeline::tests;
using picture::Opening;
using picture::Plate;
using picture::PlateView;
using picture::ProjectedPicture;

namespace {

constexpr int kPlates = 10000;
const Tolerance kTenthOfMillimetre = absolute(1e-4, "0.1 mm on the screen");

/// A room with its picture, and a part of its opening that the picture covers.
struct Case {
    ProjectedPicture picture;
    Opening opening;
};

Opening shrunk(const Opening& o, double share) {
    const glm::dvec2 c = o.uv.centre();
    const glm::dvec2 half = 0.5 * share * glm::dvec2(o.uv.width(), o.uv.height());
    return {.uv = {c.x - half.x, c.x + half.x, c.y - half.y, c.y + half.y},
            .width_m = share * o.width_m,
            .height_m = share * o.height_m,
            .area_m2 = share * share * o.area_m2};
}

Case random_case(Dice& dice, double share) {
    const auto study = picture::study_picture(random_room(dice));
    REQUIRE(study.pictures.size() == 1);
    return {study.pictures[0], shrunk(study.openings[0], share)};
}

/// Distance of a surface point from the border of an opening with round corners.
double off_border(const Opening& opening, double radius_m, glm::dvec2 p) {
    const geometry::Rectangle& o = opening.uv;
    const glm::dvec2 inner = glm::clamp(p, glm::dvec2(o.left + radius_m, o.bottom + radius_m),
                                        glm::dvec2(o.right - radius_m, o.top - radius_m));
    if (radius_m > 0.0 || inner != p) return std::abs(glm::length(p - inner) - radius_m);
    return std::min({p.x - o.left, o.right - p.x, p.y - o.bottom, o.top - p.y});
}

/// Whether all of the opening's border is lit through the aperture: a plate can be filed then.
bool within_aperture(const Case& c) {
    const glm::dvec2 half = 0.5 * c.picture.gate_size_m;
    const glm::dvec2 to = 0.5 * glm::dvec2(c.opening.uv.width(), c.opening.uv.height());
    for (int k = 0; k <= 100; ++k) {
        const double s = 0.02 * k - 1.0;
        for (const glm::dvec2 at : {glm::dvec2(s, 1), {s, -1}, {1, s}, {-1, s}}) {
            const auto gate = c.picture.map.gate_from_screen(c.opening.uv.centre() + to * at);
            if (!gate || std::abs(gate->x) > half.x || std::abs(gate->y) > half.y) return false;
        }
    }
    return true;
}

/// Greatest distance from the border on the screen of points all along the plate's outline.
double worst_on_screen(const Case& c, const Plate& plate) {
    double worst = 0.0;
    for (std::size_t i = 0; i < plate.outline_m.size(); ++i) {
        const glm::dvec2 from = plate.outline_m[i];
        const glm::dvec2 to = plate.outline_m[(i + 1) % plate.outline_m.size()];
        for (int k = 0; k < 13; ++k) {
            const auto uv = c.picture.map.screen_from_gate(from + (k / 13.0) * (to - from));
            if (!uv) return 1e9;  // said once for the outline, not for each of a million points
            worst = std::max(worst, off_border(c.opening, plate.corner_radius_m, *uv));
        }
    }
    return worst;
}

/// Distance of a gate point from a closed outline.
double off_outline(const std::vector<glm::dvec2>& outline, glm::dvec2 p) {
    double least = 1e9;
    for (std::size_t i = 0; i < outline.size(); ++i) {
        const glm::dvec2 side = outline[(i + 1) % outline.size()] - outline[i];
        const double t =
            std::clamp(glm::dot(p - outline[i], side) / glm::dot(side, side), 0.0, 1.0);
        least = std::min(least, glm::length(p - outline[i] - t * side));
    }
    return least;
}

/// A film projector 20 m before a flat upright screen, level with its centre, lens as wanted.
picture::PictureInput square_on_room() {
    picture::PictureInput in;
    in.screen.width_m = 10.0;
    in.screen.height_m = 6.0;
    in.screen.sill_m = 1.0;
    in.screen.setback_m = 1.0;
    in.formats = {{.name = "only", .aspect_ratio = 0.825 / 0.602, .opening_width_m = {}}};
    room::Projector p;
    p.kind = room::SourceKind::film;
    p.up_m = 4.0;
    p.back_m = 21.0;
    room::FormatUse use;
    use.format = "only";
    use.gate_width_m = 0.020955;
    use.gate_height_m = 0.0152908;
    p.formats = {use};
    in.projectors = {p};
    return in;
}

Case square_on_case(double focal_length_share) {
    auto in = square_on_room();
    const double wanted = picture::study_picture(in).pictures.at(0).focal_length_m;
    if (focal_length_share != 1.0)
        in.projectors[0].formats[0].focal_length_m = wanted * focal_length_share;
    const auto study = picture::study_picture(in);
    return {study.pictures.at(0), study.openings.at(0)};
}

void check_refused(const base::Result<Plate>& plate, const std::string& says) {
    REQUIRE_FALSE(plate);
    INFO("said: ", base::text(plate.problems()));
    CHECK(plate.problems()[0].what.find(says) != std::string::npos);
    CHECK_FALSE(plate.problems()[0].mend.empty());
}

}  // namespace

TEST_SUITE("picture/plate") {
    TEST_CASE("property: a sharp outline has the plate's corners among its points, in order") {
        Dice dice(77);
        for (int i = 0; i < 60; ++i) {
            const Case c = random_case(dice, 0.5);
            const auto sharp = picture::plate_outline({.picture = c.picture, .opening = c.opening});
            REQUIRE(sharp);
            const auto& outline = sharp->outline_m;
            std::size_t from = 0;
            for (const glm::dvec2 corner : sharp->corners_m) {
                const auto found =
                    std::find(outline.begin() + static_cast<long>(from), outline.end(), corner);
                REQUIRE(found != outline.end());
                from = static_cast<std::size_t>(found - outline.begin()) + 1;
            }
            const glm::dvec2 bottom_left(c.opening.uv.left, c.opening.uv.bottom);
            const auto seen = c.picture.map.screen_from_gate(sharp->corners_m[0]);
            REQUIRE(seen);
            CHECK(glm::length(*seen - bottom_left) < 1e-6);
            const auto round = picture::plate_outline(
                {.picture = c.picture, .opening = c.opening, .corner_radius_m = 0.1});
            REQUIRE(round);
            CHECK(round->corners_m == sharp->corners_m);
        }
    }

    TEST_CASE("property: light through 10,000 plates meets the opening within 0.1 mm all along") {
        Dice dice(51);
        int curved = 0;
        int made = 0;
        for (int i = 0; made < kPlates; ++i) {
            INFO("seed 51, case ", i);
            REQUIRE(i < 2 * kPlates);
            const Case c = random_case(dice, 0.75);
            const auto plate = picture::plate_outline({c.picture, c.opening});
            REQUIRE(bool(plate) == within_aperture(c));
            if (!plate) continue;
            ++made;
            curved += c.picture.map.surface().flat() ? 0 : 1;
            check_close(worst_on_screen(c, *plate), 0.0, kTenthOfMillimetre);
        }
        CHECK(curved > kPlates / 4);
    }

    TEST_CASE("property: rounded corners are met within 0.1 mm too") {
        Dice dice(52);
        int made = 0;
        for (int i = 0; i < 500; ++i) {
            INFO("seed 52, case ", i);
            const Case c = random_case(dice, 0.75);
            const double radius = dice.between(0.01, 0.5) * c.opening.uv.height();
            const auto plate =
                picture::plate_outline({c.picture, c.opening, room::SourceKind::film, radius});
            if (!plate) continue;
            ++made;
            check_close(worst_on_screen(c, *plate), 0.0, kTenthOfMillimetre);
        }
        CHECK(made > 250);
    }

    TEST_CASE("round trip: every point of the opening's border comes back to the plate's outline") {
        Dice dice(53);
        int made = 0;
        for (int i = 0; i < 500; ++i) {
            INFO("seed 53, case ", i);
            const Case c = random_case(dice, 0.75);
            const auto plate = picture::plate_outline({c.picture, c.opening});
            if (!plate) continue;
            ++made;
            const geometry::Rectangle& o = c.opening.uv;
            // Lens to screen over lens to gate, less a third for the nearer side of a turned one.
            const double scale = 0.66 * c.picture.throw_m / c.picture.map.pose().image_distance_m;
            const double x = dice.between(o.left, o.right);
            const double y = dice.between(o.bottom, o.top);
            for (const glm::dvec2 uv :
                 {glm::dvec2(x, o.top), {x, o.bottom}, {o.left, y}, {o.right, y}}) {
                const auto gate = c.picture.map.gate_from_screen(uv);
                REQUIRE(gate);
                check_close(scale * off_outline(plate->outline_m, *gate), 0.0, kTenthOfMillimetre);
            }
        }
        CHECK(made > 250);
    }

    TEST_CASE("on a flat screen four points are enough, and they are the corners") {
        Dice dice(54);
        int made = 0;
        for (int i = 0; i < 300; ++i) {
            const Case c = random_case(dice, 0.75);
            if (!c.picture.map.surface().flat()) continue;
            const auto plate = picture::plate_outline({c.picture, c.opening});
            if (!plate) continue;
            ++made;
            REQUIRE(plate->outline_m.size() == 4);
            CHECK(plate->outline_m[0] ==
                  *c.picture.map.gate_from_screen({c.opening.uv.left, c.opening.uv.bottom}));
            CHECK(plate->outline_m[2] ==
                  *c.picture.map.gate_from_screen({c.opening.uv.right, c.opening.uv.top}));
            CHECK(geometry::signed_area(plate->outline_m) > 0.0);
        }
        CHECK(made > 70);
    }

    TEST_CASE("property: a room mirrored left to right has the mirrored plate") {
        Dice dice(58);
        int made = 0;
        for (int i = 0; i < 300; ++i) {
            INFO("seed 58, case ", i);
            auto in = random_room(dice);
            const auto plate_of = [](const picture::PictureInput& room) {
                const auto study = picture::study_picture(room);
                return picture::plate_outline(
                    {study.pictures.at(0), shrunk(study.openings.at(0), 0.75)});
            };
            const auto here = plate_of(in);
            room::Projector& p = in.projectors[0];
            p.across_m = -p.across_m;
            p.aim.roll_rad = -p.aim.roll_rad;
            p.formats[0].shift_across = -p.formats[0].shift_across;
            const auto there = plate_of(in);
            REQUIRE(bool(here) == bool(there));
            if (!here) continue;
            ++made;
            for (const glm::dvec2 q : here->outline_m) {
                check_close(off_outline(there->outline_m, {-q.x, q.y}), 0.0,
                            absolute(1e-12, "rounding"));
            }
        }
        CHECK(made > 150);
    }

    TEST_CASE("square-on with the lens wanted, the plate is the nominal aperture") {
        const Case c = square_on_case(1.0);
        const auto plate = picture::plate_outline({c.picture, c.opening});
        REQUIRE(plate);
        REQUIRE(plate->outline_m.size() == 4);
        const Tolerance rounding = absolute(1e-8, "the ratio's height to a hundredth of a micron");
        check_close(plate->outline_m[2].x, 0.5 * 0.020955, absolute(1e-16, "rounding"));
        check_close(plate->outline_m[2].y, 0.5 * 0.0152908, rounding);
        check_close(plate->outline_m[0].x, -0.5 * 0.020955, absolute(1e-16, "rounding"));
        check_close(plate->outline_m[0].y, -0.5 * 0.0152908, rounding);
    }

    TEST_CASE("square-on with a shorter lens, the plate is that aperture scaled") {
        const Case c = square_on_case(0.9);
        const auto plate = picture::plate_outline({c.picture, c.opening});
        REQUIRE(plate);
        // W = A (D - f) / f, so the plate's width is W f / (D - f).
        const double f = c.picture.focal_length_used_m;
        const double width = c.opening.width_m * f / (20.0 - f);
        check_close(2.0 * plate->outline_m[2].x, width, relative(1e-13, "rounding"));
        check_close(2.0 * plate->outline_m[2].y, c.opening.height_m * f / (20.0 - f),
                    relative(1e-13, "rounding"));
        CHECK(width < 0.9 * 0.020955);
    }

    TEST_CASE("the filing allowance moves every side of the plate inward by itself") {
        const Case c = square_on_case(0.9);
        const auto whole = picture::plate_outline({c.picture, c.opening});
        const auto less =
            picture::plate_outline({c.picture, c.opening, room::SourceKind::film, 0.0, 0.0002});
        REQUIRE(whole);
        REQUIRE(less);
        const Tolerance rounding = absolute(1e-15, "rounding");
        check_close(whole->outline_m[2].x - less->outline_m[2].x, 0.0002, rounding);
        check_close(whole->outline_m[2].y - less->outline_m[2].y, 0.0002, rounding);
        check_close(less->outline_m[0].x - whole->outline_m[0].x, 0.0002, rounding);
        check_close(less->outline_m[0].y - whole->outline_m[0].y, 0.0002, rounding);
    }

    TEST_CASE("property: with an allowance every point stands that far inside the whole plate") {
        Dice dice(55);
        int made = 0;
        for (int i = 0; i < 300; ++i) {
            INFO("seed 55, case ", i);
            const Case c = random_case(dice, 0.75);
            const double radius = dice.one_in(2) ? 0.0 : 0.05 * c.opening.uv.height();
            const double allowance = dice.between(0.00005, 0.0006);
            const auto film = room::SourceKind::film;
            const auto whole = picture::plate_outline({c.picture, c.opening, film, radius});
            const auto less =
                picture::plate_outline({c.picture, c.opening, film, radius, allowance});
            if (!whole) continue;
            REQUIRE(less);
            ++made;
            for (const glm::dvec2 p : less->outline_m) {
                check_close(off_outline(whole->outline_m, p), allowance,
                            absolute(2e-7, "the mitre between short chords"));
            }
        }
        CHECK(made > 150);
    }
}

TEST_SUITE("picture/plate, seen") {
    TEST_CASE("a mark at the picture's top left stands bottom right from the lamp") {
        const auto lamp = picture::seen({-0.004, 0.003}, PlateView::from_lamp);
        CHECK(lamp == glm::dvec2(0.004, -0.003));
        const auto lens = picture::seen({-0.004, 0.003}, PlateView::from_lens);
        CHECK(lens == glm::dvec2(-0.004, -0.003));
    }

    TEST_CASE("property: a viewer in the room sees the gate as the views say") {
        Dice dice(56);
        for (int i = 0; i < 500; ++i) {
            INFO("seed 56, case ", i);
            const auto p = only_picture(random_room(dice));
            picture::Pose pose = p.map.pose();
            pose.squeeze = 1.0;  // the film itself: the squeeze lies beyond the gate
            const picture::PictureMap film(p.map.surface(), pose);
            // Light runs from the gate point through the lens: the gate lies against the ray.
            const auto place = [&](glm::dvec2 gate) {
                return pose.lens - film.ray(gate).direction;
            };
            const glm::dvec2 mark = gate_point(p, dice.between(-1, 1), dice.between(-1, 1));
            const glm::dvec3 from_centre = place(mark) - place({0.0, 0.0});
            for (const bool lamp : {true, false}) {
                const glm::dvec3 looking = lamp ? pose.axis : -pose.axis;
                const glm::dvec3 right = glm::cross(looking, pose.up);
                const glm::dvec2 looked(glm::dot(from_centre, right),
                                        glm::dot(from_centre, pose.up));
                const auto view = lamp ? PlateView::from_lamp : PlateView::from_lens;
                check_close(glm::length(picture::seen(mark, view) - looked), 0.0,
                            absolute(1e-14, "rounding"));
            }
        }
    }

    TEST_CASE("both views of an outline go counter-clockwise and hold the same area") {
        Dice dice(57);
        const Case c = random_case(dice, 0.5);
        const auto plate = picture::plate_outline({c.picture, c.opening});
        REQUIRE(plate);
        const double area = geometry::signed_area(plate->outline_m);
        for (const auto view : {PlateView::from_lamp, PlateView::from_lens}) {
            const auto outline = picture::outline_seen(*plate, view);
            check_close(geometry::signed_area(outline), area, relative(1e-12, "rounding"));
        }
    }

    TEST_CASE("a keystoned plate is wide at the picture's top, which is low from both sides") {
        // From above, light falls farther to the picture's foot and spreads: the plate must narrow
        // there, at the picture's bottom, which stands high in the gate.
        auto in = square_on_room();
        in.projectors[0].up_m = 9.0;
        in.projectors[0].formats[0].focal_length_m = 0.05;
        const auto study = picture::study_picture(in);
        const auto plate = picture::plate_outline({study.pictures.at(0), study.openings.at(0)});
        REQUIRE(plate);
        for (const auto view : {PlateView::from_lamp, PlateView::from_lens}) {
            double high = 0.0;
            double low = 0.0;
            for (const glm::dvec2 p : picture::outline_seen(*plate, view))
                (p.y > 0.0 ? high : low) = std::abs(p.x);
            CHECK(low > high * 1.01);
        }
    }
}

TEST_SUITE("picture/plate, extent") {
    TEST_CASE("a plate by hand: over all, and where its sides cross the aperture's centre lines") {
        // A trapezium 12 mm wide below and 8 mm above, 6 mm high, its foot 2 mm under the middle.
        const Plate plate{
            .outline_m = {{-0.006, -0.002}, {0.006, -0.002}, {0.004, 0.004}, {-0.004, 0.004}}};
        const auto extent = picture::plate_extent(plate);
        const Tolerance rounding = relative(1e-12, "rounding");
        check_close(extent.width_m, 0.012, rounding);
        check_close(extent.height_m, 0.006, rounding);
        // A third of the way up, each side has come in by a third of 2 mm.
        REQUIRE(extent.left_m);
        check_close(*extent.left_m, 0.006 - 0.002 / 3.0, rounding);
        check_close(*extent.right_m, 0.006 - 0.002 / 3.0, rounding);
        check_close(*extent.bottom_m, 0.002, rounding);
        check_close(*extent.top_m, 0.004, rounding);
    }

    TEST_CASE("a plate wholly above the aperture's middle has no sides on the level centre line") {
        const Plate plate{
            .outline_m = {{-0.006, 0.001}, {0.006, 0.001}, {0.006, 0.004}, {-0.006, 0.004}}};
        const auto extent = picture::plate_extent(plate);
        CHECK_FALSE(extent.left_m);
        CHECK_FALSE(extent.right_m);
        check_close(*extent.bottom_m, -0.001, relative(1e-12, "rounding"));
    }

    TEST_CASE("golden: square-on the plate's sides follow from the thin lens") {
        const Case c = square_on_case(0.9);
        const auto plate = picture::plate_outline({c.picture, c.opening});
        REQUIRE(plate);
        const auto extent = picture::plate_extent(*plate);
        // Square to the axis a length in the gate grows to (D - f) / f of itself on the screen.
        const double f = c.picture.focal_length_used_m;
        const double shrink = f / (c.picture.throw_m - f);
        const Tolerance rounding = relative(1e-9, "rounding");
        check_close(extent.width_m, shrink * c.opening.uv.width(), rounding);
        check_close(extent.height_m, shrink * c.opening.uv.height(), rounding);
        check_close(*extent.left_m + *extent.right_m, extent.width_m, rounding);
        check_close(*extent.bottom_m + *extent.top_m, extent.height_m, rounding);
    }

    TEST_CASE("property: the points of the sides, mapped to the screen, stand on its edges") {
        Dice dice(91);
        for (int i = 0; i < 200; ++i) {
            INFO("seed 91, case ", i);
            const Case c = random_case(dice, dice.between(0.4, 0.65));
            const auto plate = picture::plate_outline({c.picture, c.opening});
            REQUIRE(plate);
            const auto extent = picture::plate_extent(*plate);
            const auto on_screen = [&](double x, double y) {
                const auto uv = c.picture.map.screen_from_gate({x, y});
                REQUIRE(uv);
                return *uv;
            };
            const Tolerance chord = absolute(picture::kPlateTolerance_m + 1e-9, "chords");
            REQUIRE(extent.left_m);
            REQUIRE(extent.top_m);
            check_close(on_screen(-*extent.left_m, 0.0).x, c.opening.uv.left, chord);
            check_close(on_screen(*extent.right_m, 0.0).x, c.opening.uv.right, chord);
            check_close(on_screen(0.0, *extent.top_m).y, c.opening.uv.top, chord);
            check_close(on_screen(0.0, -*extent.bottom_m).y, c.opening.uv.bottom, chord);
        }
    }
}

TEST_SUITE("picture/plate, refusals") {
    TEST_CASE("refuses: an opening that reaches outside the aperture, with the edge") {
        const Case c = square_on_case(1.05);
        check_refused(picture::plate_outline({c.picture, c.opening}), "outside the aperture");
        auto in = square_on_room();
        in.projectors[0].formats[0].focal_length_m = 0.03;
        in.projectors[0].formats[0].shift_up = 0.4;
        const auto study = picture::study_picture(in);
        check_refused(picture::plate_outline({study.pictures.at(0), study.openings.at(0)}),
                      "at the picture's bottom");
    }

    TEST_CASE("refuses: digital projectors, and requests that leave no plate") {
        const Case c = square_on_case(0.9);
        const auto film = room::SourceKind::film;
        check_refused(picture::plate_outline({c.picture, c.opening, room::SourceKind::digital}),
                      "digital");
        check_refused(picture::plate_outline({c.picture, c.opening, film, 0.0, -0.001}),
                      "negative");
        check_refused(picture::plate_outline({c.picture, c.opening, film, 0.0, 0.008}),
                      "leaves no opening");
        check_refused(picture::plate_outline({c.picture, c.opening, film, 3.7, 0.0}),
                      "corner radius");
        check_refused(picture::plate_outline({c.picture, c.opening, film, -0.1, 0.0}),
                      "corner radius");
    }
}
