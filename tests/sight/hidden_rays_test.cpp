// SPDX-License-Identifier: MIT
/// What one head hides of a column, against straight lines from the eye through it: heads at arm's
/// length, right over and under the eye, about it and behind it, before surfaces of all kinds.
#include "sight/hidden_room.hpp"
#include "sight/seated_room.hpp"
#include "support/check.hpp"

#include <algorithm>

using namespace rakeline;

namespace {

constexpr int kColumns = 24;
constexpr int kPoints = 97;

struct OneHeadRoom {
    tests::SeatedRoom room;

    explicit OneHeadRoom(unsigned seed) {
        std::mt19937 random(seed);
        tests::RoomShape shape = tests::random_shape(seed);
        tests::set_screen(shape, room);
        const auto drawn = [&](double least, double most) {
            return tests::drawn(random, least, most);
        };
        const glm::dvec3 eye(drawn(-3.0, 3.0), drawn(0.9, 4.0), drawn(9.0, 20.0));
        room.eyes = {eye};
        const double reach = seed % 2 == 0 ? 0.3 : 1.5;
        const glm::dvec3 off(drawn(-reach, reach), drawn(-reach, reach), drawn(-reach, reach));
        room.heads = {{eye + off, drawn(0.06, 0.2), drawn(0.06, 0.2), -1}};
    }
};

/// Whether the straight line from the eye to `p` meets the spheroid: less than 0 by how much, in
/// the square of its radius, in the room in which the head is a ball of radius 1 about the origin.
double clearance(const glm::dvec3& eye, const glm::dvec3& p, const sight::Head& head) {
    const glm::dvec3 size(head.radius_m, head.half_height_m, head.radius_m);
    const glm::dvec3 from = (eye - head.centre) / size;
    const glm::dvec3 way = (p - eye) / size;
    const double t = std::clamp(-glm::dot(from, way) / glm::dot(way, way), 0.0, 1.0);
    const glm::dvec3 nearest = from + t * way;
    return glm::dot(nearest, nearest) - 1.0;
}

bool is_clear(const std::vector<sight::ClearInterval>& column, double v) {
    return std::ranges::any_of(
        column, [&](const sight::ClearInterval& i) { return i.bottom_m <= v && v <= i.top_m; });
}

}  // namespace

TEST_SUITE("sight/hidden_rays") {
    TEST_CASE(
        "property: points of a column are hidden where a straight line to them meets the head") {
        int hidden = 0;
        int clear = 0;
        for (unsigned seed = 1; seed <= 3000; ++seed) {
            const OneHeadRoom one(seed);
            const auto& room = one.room;
            const auto outline = sight::clear_outline(room.input(), 0, kColumns);
            const geometry::Rectangle& uv = room.opening.uv;
            for (int j = 0; j < kColumns; ++j) {
                const double u = uv.left + uv.width() * (j + 0.5) / kColumns;
                for (int i = 0; i < kPoints; ++i) {
                    const double v = uv.bottom + uv.height() * (i + 0.5) / kPoints;
                    const double off = clearance(
                        room.eyes[0], geometry::point_at(room.surface, {u, v}), room.heads[0]);
                    if (std::abs(off) < 1e-7) continue;  // touches, to rounding
                    const bool seen = is_clear(outline.columns[static_cast<std::size_t>(j)], v);
                    if (seen != (off > 0.0)) {
                        INFO("seed ", seed, " column ", j, " v ", v, " off by ", off);
                        CHECK(seen == (off > 0.0));
                    }
                    ++(off > 0.0 ? clear : hidden);
                }
            }
        }
        CHECK(hidden > 100000);
        CHECK(clear > 100000);
    }

    TEST_CASE("property: fraction and top of one near head are those of its outline") {
        for (unsigned seed = 1; seed <= 3000; ++seed) {
            const OneHeadRoom one(seed);
            const auto in = one.room.input();
            const auto columns = sight::hidden::picture_columns(in.surface, in.opening, kColumns);
            const auto seat = sight::hidden_picture(in, {kColumns, 1}).front();
            const auto plain = sight::hidden::exact_seat(in, columns, 0);
            INFO("seed ", seed);
            tests::check_close(seat.hidden_fraction, plain.hidden_fraction,
                               tests::absolute(2e-5, "single precision"));
            CHECK(seat.sees_back == plain.sees_back);
        }
    }
}
