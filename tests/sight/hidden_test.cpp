// SPDX-License-Identifier: MIT
#include "sight/hidden.hpp"

#include "sight/seated_room.hpp"
#include "support/check.hpp"

#include <algorithm>
#include <functional>
#include <numbers>
#include <numeric>

using namespace rakeline;
using tests::absolute;
using tests::check_close;
using tests::relative;

namespace {

/// A flat picture 4 m by 2 m about the origin, one eye `back_m` before its middle, and one head.
struct OneHead {
    glm::dvec3 eye{0.0, 0.0, 10.0};
    sight::Head head{{0.0, 0.0, 5.0}, 0.1, 0.15, -1};
    std::vector<sight::Wall> walls;

    sight::HiddenInput input() const {
        picture::Opening opening;
        opening.uv = {-2.0, 2.0, -1.0, 1.0};
        return {geometry::standing_patch({0.0, 0.0, 0.0}, 0.0, 0.0),
                opening,
                {&eye, 1},
                {&head, 1},
                walls};
    }
    sight::SeatHidden seat(int columns = 2048) const {
        return sight::hidden_picture(input(), {columns, 1}).front();
    }
};

constexpr double kArea_m2 = 8.0;

}  // namespace

TEST_SUITE("sight/hidden") {
    TEST_CASE("golden: a sphere before the eye casts the disc of its tangent cone") {
        // Source: derived here: half angle asin(r / d), so on the surface a disc of radius
        // D tan(asin(r / d)) = D r / sqrt(d^2 - r^2).
        OneHead room;
        room.head.half_height_m = room.head.radius_m;
        const double radius = 10.0 * 0.1 / std::sqrt(25.0 - 0.01);
        const double area = std::numbers::pi * radius * radius;
        check_close(room.seat(16384).hidden_fraction, area / kArea_m2,
                    relative(1e-5, "columns leave an error of their width to the 3/2"));
        check_close(room.seat(16384).clear_above_m, 1.0 + radius,
                    absolute(1e-5, "the middle of the disc lies between two columns"));
    }

    TEST_CASE("golden: an upright spheroid casts the ellipse of the squeezed room's sphere") {
        OneHead room;
        const double radius = 10.0 * 0.1 / std::sqrt(25.0 - 0.01);
        const double area = std::numbers::pi * radius * radius * 1.5;
        check_close(room.seat(16384).hidden_fraction, area / kArea_m2,
                    relative(1e-5, "columns leave an error of their width to the 3/2"));
    }

    TEST_CASE("golden: a wall hides what a straight line over its edge leaves") {
        // Edge 0.2 m below the eye at half the distance: 0.4 m below it on the surface; 1 m wide:
        // 2 m there. 0.6 m x 2 m of 8 m2.
        OneHead room;
        room.head.centre.y = 100.0;
        room.walls = {{{-0.5, -0.2, 5.0}, {0.5, -0.2, 5.0}, sight::WallHides::below, -1.0, -1}};
        const auto rounding = absolute(1e-6, "single precision");
        check_close(room.seat().hidden_fraction, 1.2 / kArea_m2, rounding);
        check_close(room.seat().clear_above_m, 0.6, rounding);
        room.walls.front().hides = sight::WallHides::above;
        CHECK(room.seat().hidden_fraction == 0.0);  // from an eye above it
        room.walls.front().from.y = room.walls.front().to.y = 0.3;
        check_close(room.seat().hidden_fraction, 0.4 * 2.0 / kArea_m2, rounding);
        check_close(room.seat().clear_above_m, 2.0, rounding);
        room.walls.front() = {{-0.5, -0.2, 5.0}, {0.5, -0.2, 5.0}, sight::WallHides::below, 0.1};
        CHECK(room.seat().hidden_fraction == 0.0);  // stands on a floor above the eye
    }

    TEST_CASE("a head behind the eye, behind the surface or of the eye itself hides nothing") {
        OneHead room;
        for (const double back : {10.3, 12.0, -0.2, -4.0}) {
            room.head.centre.z = back;
            CHECK(room.seat().hidden_fraction == 0.0);
        }
        room.head.centre = room.eye;
        room.head.eye = 0;
        CHECK(room.seat().hidden_fraction == 0.0);
    }

    TEST_CASE("an eye inside another's head sees nothing") {
        OneHead room;
        room.head.centre = room.eye + glm::dvec3(0.02, 0.05, 0.01);
        check_close(room.seat().hidden_fraction, 1.0, absolute(1e-6, "single precision"));
        check_close(room.seat().clear_above_m, 2.0, absolute(1e-6, "single precision"));
    }

    TEST_CASE("a head right over the eye hides from its lower edge up") {
        // The tangent in the middle plane: eye at the origin, sphere of radius 0.1 centred 0.2 m up
        // and 0.05 m ahead: tangent elevation = atan2(0.2, 0.05) - asin(0.1 / 0.2062) = 46.93 deg;
        // the surface is 0.5 m away, so the edge stands 0.535 m over the eye.
        OneHead room;
        room.eye = {0.0, 0.0, 0.5};
        room.head = {{0.0, 0.2, 0.45}, 0.1, 0.1, -1};
        const auto outline = sight::clear_outline(room.input(), 0, 4001);
        const auto& middle = outline.columns[2000];
        REQUIRE(middle.size() == 1);
        check_close(middle.front().bottom_m, -1.0, absolute(0.0, "the lower edge"));
        const double elevation = std::atan2(0.2, 0.05) - std::asin(0.1 / std::hypot(0.2, 0.05));
        check_close(middle.front().top_m, 0.5 * std::tan(elevation),
                    absolute(1e-9, "closed form on the middle line"));
        check_close(room.seat().clear_above_m, 2.0, absolute(1e-6, "single precision"));
    }

    TEST_CASE("a head that touches the surface hides its whole outline") {
        OneHead room;
        room.head.centre.z = 0.05;
        const double near = room.seat().hidden_fraction;
        room.head.centre.z = 0.2;
        CHECK(near > 0.9 * room.seat().hidden_fraction);
        CHECK(near < room.seat().hidden_fraction);
    }

    TEST_CASE(
        "from behind a flat surface nothing is hidden, and the seat says that it sees the back") {
        OneHead room;
        room.eye.z = -3.0;
        CHECK(room.seat().sees_back);
        CHECK(room.seat().hidden_fraction == 0.0);
        room.eye.z = 3.0;
        CHECK(!room.seat().sees_back);
    }

    TEST_CASE("a strongly curved screen turns its back to eyes far aside") {
        tests::RoomShape shape;
        shape.rows = 1;
        shape.seats = 60;
        shape.first_back_m = 2.0;
        shape.screen_radius_m = 7.2;
        const auto room = tests::seated_room(shape, 1);
        const auto seats = sight::hidden_picture(room.input());
        CHECK(seats.front().sees_back);
        CHECK(seats.back().sees_back);
        CHECK(!seats[30].sees_back);
    }

    TEST_CASE("a room without seats has no results, one without heads hides nothing") {
        OneHead room;
        sight::HiddenInput in = room.input();
        in.eyes = {};
        CHECK(sight::hidden_picture(in).empty());
        in = room.input();
        in.heads = {};
        CHECK(sight::hidden_picture(in) == std::vector<sight::SeatHidden>(1));
    }

    TEST_CASE("the fractions alone are those of the seats") {
        const auto room = tests::seated_room({}, 3);
        const auto seats = sight::hidden_picture(room.input());
        std::vector<double> fractions(room.eyes.size());
        sight::hidden_fractions(room.input(), {}, fractions);
        for (std::size_t i = 0; i < seats.size(); ++i)
            REQUIRE(fractions[i] == seats[i].hidden_fraction);
    }

    TEST_CASE("outline, shares and fraction of a seat tell one story") {
        tests::RoomShape shape;
        shape.seat_backs = true;
        shape.rake_rad = 0.05;
        const auto room = tests::seated_room(shape, 4);
        for (const int seat : {12, 260, 487}) {
            const double fraction =
                sight::hidden_picture(room.input(), {256, 1})[static_cast<std::size_t>(seat)]
                    .hidden_fraction;
            const auto outline = sight::clear_outline(room.input(), seat, 256);
            double clear_m = 0.0;
            for (const auto& column : outline.columns) {
                for (const auto& interval : column)
                    clear_m += interval.top_m - interval.bottom_m;
            }
            const auto single = absolute(1e-5, "the fraction is worked in single precision");
            check_close(1.0 - clear_m / (256 * room.opening.height_m), fraction, single);
            const auto shares = sight::hiding_shares(room.input(), seat, 256);
            const double sum = std::accumulate(
                shares.begin(), shares.end(), 0.0,
                [](double s, const sight::HidingShare& share) { return s + share.fraction; });
            check_close(sum, fraction, single);
            CHECK(std::ranges::is_sorted(shares, std::greater{}, &sight::HidingShare::fraction));
        }
    }

    TEST_CASE("who sits right in front hides the most, and one behind another's head nothing") {
        OneHead room;
        const sight::Head nearer{{0.0, 0.0, 8.0}, 0.1, 0.15, -1};
        const std::vector<sight::Head> heads{room.head, nearer};
        sight::HiddenInput in = room.input();
        in.heads = heads;
        const auto shares = sight::hiding_shares(in, 0);
        REQUIRE(shares.size() == 1);
        CHECK(shares.front().index == 1);
        CHECK(!shares.front().wall);
    }
}
