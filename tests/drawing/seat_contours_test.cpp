// SPDX-License-Identifier: MIT
#include "drawing/seat_contours.hpp"

#include "drawing/studied_room.hpp"
#include "support/check.hpp"

#include <algorithm>
#include <cmath>
#include <random>
#include <set>

using namespace rakeline;
using drawing::contours;
using drawing::SeatMesh;
using tests::absolute;
using tests::check_close;
using tests::studied;

namespace {

/// A level block of seats on a grid, without a format or machine, and a figure made up over it.
struct Made {
    study::Study study;
    study::Figure figure;
};

study::Study seats_of(const room::SeatBlock& block) {
    room::Brief brief;
    brief.layout.hall.width_m = 40.0;
    brief.layout.hall.length_m = 40.0;
    brief.layout.seating = {block};
    study::Study study;
    study.brief = std::make_shared<const room::Brief>(brief);
    study.seats = room::place_seats(
        {brief.layout.hall, brief.layout.screen, brief.layout.seating, brief.layout.audience});
    return study;
}

template <class Value>
Made made(const room::SeatBlock& block, Value value) {
    Made out{seats_of(block), {}};
    out.figure.definition = study::find_definition("sight.off_axis");
    for (int i = 0; i < static_cast<int>(out.study.seats.seats.size()); ++i) {
        const glm::dvec3& at = out.study.seats.seats[static_cast<std::size_t>(i)].floor;
        out.figure.values.push_back({i, value(at.x, at.z)});
    }
    return out;
}

SeatMesh mesh_of(const Made& m) {
    return drawing::seat_mesh(m.study, m.figure, 0);
}

double area(const SeatMesh& mesh) {
    double sum = 0.0;
    for (const auto& [a, b, c] : mesh.triangles) {
        const auto& p = mesh.points[static_cast<std::size_t>(a)];
        const glm::dvec2 u = mesh.points[static_cast<std::size_t>(b)] - p;
        const glm::dvec2 v = mesh.points[static_cast<std::size_t>(c)] - p;
        sum += 0.5 * std::abs(u.x * v.y - u.y * v.x);
    }
    return sum;
}

const auto kRounding = absolute(1e-9, "rounding of places some metres away");

}  // namespace

TEST_SUITE("drawing/seat_contours") {
    TEST_CASE("the mesh of a straight block covers it from first seat to last row, and no more") {
        const room::SeatBlock block{.rows = 6, .seats_per_row = 9};
        const Made m = made(block, [](double, double) { return 0.0; });
        check_close(area(mesh_of(m)), 8.0 * block.seat_pitch_m * 5.0 * block.row_spacing_m,
                    kRounding);
        CHECK(mesh_of(m).triangles.size() == 2u * 8u * 5u);
    }

    TEST_CASE("property: where the value is linear in plan the contours are its straight lines") {
        std::mt19937 random(20260107);
        std::uniform_real_distribution<double> slope(-1.0, 1.0);
        for (int draw = 0; draw < 40; ++draw) {
            INFO("draw ", draw, " of seed 20260107");
            const double a = slope(random), b = slope(random);
            room::SeatBlock block{.rows = 7, .seats_per_row = 10, .seats_added_per_row = 1};
            block.row_radius_m = draw % 2 ? 18.0 : 0.0;
            block.staggered = draw % 3 == 0;
            block.aisles = {{.after_seat = 4, .width_m = 1.2}};
            const auto value = [&](double x, double z) { return a * x + b * z; };
            const SeatMesh mesh = mesh_of(made(block, value));
            const auto [least, most] = std::minmax_element(mesh.values.begin(), mesh.values.end());
            for (const double share : {0.2, 0.5, 0.8}) {
                const double level = std::lerp(*least, *most, share);
                const auto lines = contours(mesh, level);
                CHECK_FALSE(lines.empty());
                for (const auto& line : lines)
                    for (const glm::dvec2& p : line)
                        check_close(value(p.x, p.y), level, kRounding);
            }
        }
    }

    TEST_CASE("a ring about a peak closes on itself and runs at the peak's distance") {
        const room::SeatBlock block{.rows = 21, .seats_per_row = 31, .row_spacing_m = 0.5};
        const auto far_from = [](double x, double z) { return std::hypot(x, z - 10.0); };
        const auto lines = contours(mesh_of(made(block, far_from)), 3.0);
        REQUIRE(lines.size() == 1);
        CHECK(glm::length(lines[0].front() - lines[0].back()) < 1e-12);
        for (const glm::dvec2& p : lines[0])
            // A chord of a bent line is off it by h^2 / 8 r, h the triangle's longest side 0.75 m.
            check_close(far_from(p.x, p.y), 3.0, absolute(0.75 * 0.75 / 8.0 / 3.0, "sagitta"));
    }

    TEST_CASE("property: a house that mirrors itself has contours that do") {
        const room::SeatBlock block{
            .rows = 6, .seats_per_row = 9, .seats_added_per_row = 2, .row_radius_m = 20.0};
        const SeatMesh mesh =
            mesh_of(made(block, [](double x, double z) { return x * x + 0.3 * z; }));
        std::multiset<std::pair<long, long>> right, left;
        for (const auto& line : contours(mesh, 4.0))
            for (const glm::dvec2& p : line) {
                right.insert({std::lround(p.x * 1e6), std::lround(p.y * 1e6)});
                left.insert({std::lround(-p.x * 1e6), std::lround(p.y * 1e6)});
            }
        CHECK(right.size() > 4);
        CHECK(right == left);
    }

    TEST_CASE("an aisle is bridged, a void is not") {
        room::SeatBlock block{.rows = 5, .seats_per_row = 12};
        const auto across = [](double, double z) { return z; };
        for (const double width : {1.2, 3.0}) {
            block.aisles = {{.after_seat = 6, .width_m = width}};
            INFO(width);
            // A line of equal distance runs along a row: from wall to wall, or in two halves.
            const auto lines = contours(mesh_of(made(block, across)), 7.7);
            CHECK(lines.size() == (width < 2.0 ? 1u : 2u));
        }
        block.aisles.clear();
        block.cross_aisles = {{.after_row = 3, .width_m = 3.0}};
        CHECK(contours(mesh_of(made(block, [](double x, double) { return x; })), 0.1).size() == 2);
    }

    TEST_CASE("no contour reaches past the seats, nor stands where the level is out of range") {
        const room::SeatBlock block{.rows = 4, .seats_per_row = 8};
        const SeatMesh mesh = mesh_of(made(block, [](double x, double) { return x; }));
        const auto [low, high] = std::minmax_element(mesh.values.begin(), mesh.values.end());
        CHECK(contours(mesh, *low - 0.01).empty());
        CHECK(contours(mesh, *high + 0.01).empty());
        for (const auto& line : contours(mesh, 1.0))
            for (const glm::dvec2& p : line) {
                CHECK(p.y >= block.first_row_back_m - 1e-9);
                CHECK(p.y <= block.first_row_back_m + 3.0 * block.row_spacing_m + 1e-9);
            }
    }

    TEST_CASE("seats without a value leave a hole") {
        Made m = made({.rows = 5, .seats_per_row = 9}, [](double x, double) { return x; });
        const double whole = area(mesh_of(m));
        m.figure.values.erase(m.figure.values.begin() + 22);  // the middle of the middle row
        CHECK(area(mesh_of(m)) <= whole + 1e-9);
        CHECK(mesh_of(m).points.size() == 44);
    }

    TEST_CASE("levels are round, evenly apart, within the range and eight at most") {
        using drawing::round_levels;
        CHECK(round_levels(0.0, 1.0) == std::vector<double>{1 * 0.2, 2 * 0.2, 3 * 0.2, 4 * 0.2});
        CHECK(round_levels(21.0, 61.0) == std::vector<double>{25, 30, 35, 40, 45, 50, 55, 60});
        CHECK(round_levels(5.0, 5.0).empty());
        std::mt19937 random(20260108);
        std::uniform_real_distribution<double> power(-3.0, 3.0), start(-1.0, 1.0);
        for (int draw = 0; draw < 500; ++draw) {
            const double range = std::pow(10.0, power(random));
            const double least = 3.0 * range * start(random);
            const auto levels = round_levels(least, least + range);
            INFO("draw ", draw, " of seed 20260108: ", least, " to ", least + range);
            CHECK(levels.size() >= 3);
            CHECK(levels.size() <= 9);
            for (const double level : levels) {
                CHECK(level > least);
                CHECK(level < least + range);
            }
        }
    }
}

TEST_SUITE("drawing/plan_contours") {
    TEST_CASE("the plan of every demo room has labelled contours and the limit in its own ink") {
        for (const char* name : tests::kDemoRooms) {
            const study::Study& study = studied(name);
            drawing::DrawingChoice choice;
            study::Place place;
            place.format = 0;
            choice.seat_figure = study::find_figure(study, "sight.subtended_width", place);
            const std::size_t plain = drawing::plan(study, choice).items.size();
            choice.contours = true;
            const drawing::Drawing plan = drawing::plan(study, choice);
            INFO(name);
            CHECK(plain > 0);
            CHECK(tests::bounds_hold_all(plan));
            int numbered = 0;
            for (const auto& label : tests::items_of<drawing::Label>(plan))
                numbered += label.ink == drawing::Ink::line && label.text.ends_with("°");
            CHECK(numbered >= 2);
        }
    }

    TEST_CASE("a line at the limit parts the seats that keep it from those that miss it") {
        const study::Study& study = studied("screening-24");
        drawing::DrawingChoice choice;
        study::Place place;
        place.format = 0;
        choice.seat_figure = study::find_figure(study, "sight.off_axis", place);
        choice.contours = true;
        int heavy = 0;
        for (const auto& line : tests::items_of<drawing::Line>(drawing::plan(study, choice)))
            heavy += line.weight == drawing::Weight::cut && line.ink == drawing::Ink::missed;
        CHECK(heavy >= 2);  // at either side, and cut for the number
    }

    TEST_CASE("levels follow the unit system: feet have round numbers of their own") {
        const study::Study& study = studied("grand-620");
        drawing::DrawingChoice choice;
        choice.seat_figure = study::find_figure(study, "sound.arrival_spread");
        REQUIRE(choice.seat_figure);
        choice.contours = true;
        choice.units = base::UnitSystem::imperial;
        int numbered = 0;
        for (const auto& label : tests::items_of<drawing::Label>(drawing::plan(study, choice)))
            numbered += label.text.ends_with(" ms");
        CHECK(numbered >= 2);
    }

    TEST_CASE("without a figure along the seats the plan stays as it is") {
        const study::Study& study = studied("screening-24");
        drawing::DrawingChoice choice;
        const std::size_t items = drawing::plan(study, choice).items.size();
        choice.contours = true;
        CHECK(drawing::plan(study, choice).items.size() == items);
    }
}
