// SPDX-License-Identifier: MIT
#include "sound/reflections.hpp"

#include "sound/direct_path.hpp"
#include "sound/hall_room.hpp"
#include "support/check.hpp"

#include <algorithm>

using namespace rakeline;
using namespace rakeline::tests;
using sound::ReflectedPath;
using sound::SeatReflections;
using sound::Wall;

namespace {

const sound::Air kAir;
const Tolerance kLength = absolute(1e-11, "rounding of lengths of some ten metres");

/// A loudspeaker that sends alike into the whole hall before it.
room::Loudspeaker wide_at(const glm::dvec3& p) {
    room::Loudspeaker l;
    l.across_m = p.x;
    l.up_m = p.y;
    l.back_m = p.z;
    l.coverage_across_rad = l.coverage_up_rad = base::radians(180.0);
    l.piston_radius_m = 0.5;
    return l;
}

glm::dvec3 place_of(const room::Loudspeaker& l) {
    return {l.across_m, l.up_m, l.back_m};
}

std::vector<SeatReflections> heard(const sound::HallInput& hall,
                                   const room::Loudspeaker& l,
                                   const std::vector<glm::dvec3>& ears) {
    const sound::Beam beam(l, sound::kReflectionBand_hz, kAir);
    return sound::seat_reflections(
        {sound::wall_planes(hall), sound::wall_returns(hall.acoustics, 3), kAir.sound_speed_m_s()},
        l, beam, ears);
}

const ReflectedPath* by(const std::vector<ReflectedPath>& paths,
                        Wall first,
                        std::optional<Wall> second = {}) {
    const auto found = std::find_if(paths.begin(), paths.end(), [&](const ReflectedPath& p) {
        return p.first == first && p.second == second;
    });
    return found == paths.end() ? nullptr : &*found;
}

const sound::WallPlane& plane(const sound::WallPlanes& walls, Wall wall) {
    return walls[static_cast<std::size_t>(wall)];
}

/// The corners of a path, source and ear with them.
std::vector<glm::dvec3> corners(const ReflectedPath& p, const glm::dvec3& a, const glm::dvec3& b) {
    if (p.second) return {a, p.at_first, p.at_second, b};
    return {a, p.at_first, b};
}

void check_mirrored(const sound::WallPlane& wall,
                    const glm::dvec3& before,
                    const glm::dvec3& at,
                    const glm::dvec3& after) {
    const glm::dvec3 in = glm::normalize(at - before);
    const glm::dvec3 out = glm::normalize(after - at);
    const glm::dvec3 mirrored = in - 2.0 * glm::dot(in, wall.inward) * wall.inward;
    check_close(glm::length(out - mirrored), 0.0,
                absolute(1e-9, "rounding; corners may stand centimetres apart"));
    check_close(wall.before_m(at), 0.0, kLength);
}

}  // namespace

TEST_SUITE("sound/reflections") {
    TEST_CASE("a side wall sends sound back as if from its mirror image, by hand") {
        const sound::HallInput hall = box_hall(10.0, 6.0, 20.0);
        // Left wall at x = -5: the image of (1, 2, 0.5) is (-11, 2, 0.5).
        const auto paths =
            sound::reflected_paths(sound::wall_planes(hall), {1, 2, 0.5}, {1, 2, 9.5});
        const ReflectedPath* left = by(paths, Wall::left);
        REQUIRE(left);
        check_close(left->length_m, std::hypot(12.0, 9.0), kLength);
        check_close(left->at_first.x, -5.0, kLength);
        check_close(left->at_first.z, 5.0, kLength);
        const ReflectedPath* rear = by(paths, Wall::rear);
        REQUIRE(rear);
        check_close(rear->length_m, 40.0 - 0.5 - 9.5, kLength);
        const ReflectedPath* ceiling = by(paths, Wall::ceiling);
        REQUIRE(ceiling);
        check_close(ceiling->length_m, std::hypot(9.0, 8.0), kLength);
        // To the rear wall and back by the screen wall: 19.5 + 20 + 9.5.
        const ReflectedPath* round = by(paths, Wall::rear, Wall::screen);
        REQUIRE(round);
        check_close(round->length_m, 49.0, kLength);
        CHECK_FALSE(by(paths, Wall::screen));
    }

    TEST_CASE(
        "property: a path is as long as its straight parts, and leaves each wall as it came") {
        std::mt19937 random(621);
        int twice = 0;
        for (int round = 0; round < 300; ++round) {
            const sound::HallInput hall = random_hall(random);
            const auto walls = sound::wall_planes(hall);
            const glm::dvec3 from = point_in(random, hall);
            const glm::dvec3 to = point_in(random, hall);
            for (const ReflectedPath& path : sound::reflected_paths(walls, from, to)) {
                const auto way = corners(path, from, to);
                double length = 0.0;
                for (std::size_t i = 1; i < way.size(); ++i)
                    length += glm::distance(way[i - 1], way[i]);
                check_close(path.length_m, length, absolute(1e-10, "rounding of a sum of lengths"));
                CHECK(path.length_m > glm::distance(from, to));
                check_mirrored(plane(walls, path.first), way[0], way[1], way[2]);
                if (!path.second) continue;
                check_mirrored(plane(walls, *path.second), way[1], way[2], way[3]);
                ++twice;
            }
        }
        CHECK(twice > 1000);
    }

    TEST_CASE("property: what is heard does not change if the hall is seen in a mirror") {
        std::mt19937 random(622);
        for (int round = 0; round < 100; ++round) {
            const sound::HallInput hall = random_hall(random);
            room::Loudspeaker l = wide_at(point_in(random, hall));
            l.coverage_across_rad = base::radians(80.0);
            l.yaw_rad = between(random, -0.5, 0.5);
            const glm::dvec3 ear = point_in(random, hall);
            room::Loudspeaker m = l;
            m.across_m = -l.across_m;
            m.yaw_rad = -l.yaw_rad;
            const auto one = heard(hall, l, {ear}).front();
            const auto other = heard(hall, m, {{-ear.x, ear.y, ear.z}}).front();
            const auto alike = [](const auto& a, const auto& b) {
                REQUIRE(a.has_value() == b.has_value());
                if (!a) return;
                check_close(a->delay_s, b->delay_s, absolute(1e-12, "rounding, some ten ms"));
                check_close(a->level_db, b->level_db, absolute(1e-9, "rounding, some ten dB"));
            };
            alike(one.first, other.first);
            alike(one.strongest, other.strongest);
            alike(one.echo, other.echo);
        }
    }

    TEST_CASE("property: levels against the direct sound stay when everything grows alike") {
        std::mt19937 random(623);
        for (int round = 0; round < 60; ++round) {
            sound::HallInput hall = random_hall(random);
            const glm::dvec3 from = point_in(random, hall), ear = point_in(random, hall);
            const auto small = heard(hall, wide_at(from), {ear}).front();
            const double scale = between(random, 1.0, 3.0);
            hall.width_m *= scale;
            hall.height_m *= scale;
            hall.length_m *= scale;
            const auto large = heard(hall, wide_at(scale * from), {scale * ear}).front();
            REQUIRE(small.strongest.has_value() == large.strongest.has_value());
            if (!small.strongest) continue;
            check_close(large.strongest->level_db, small.strongest->level_db,
                        absolute(1e-9, "rounding, some ten dB"));
            check_close(large.strongest->delay_s, scale * small.strongest->delay_s,
                        absolute(1e-12, "rounding, some ten ms"));
            CHECK(large.strongest->first == small.strongest->first);
        }
    }

    TEST_CASE("property: the sieve keeps what a plain look at all paths finds") {
        std::mt19937 random(624);
        for (int round = 0; round < 300; ++round) {
            const sound::HallInput hall = random_hall(random);
            room::Loudspeaker l = wide_at(point_in(random, hall));
            l.coverage_across_rad = base::radians(between(random, 40.0, 120.0));
            l.coverage_up_rad = base::radians(between(random, 30.0, 90.0));
            const glm::dvec3 ear = point_in(random, hall);
            const geometry::Patch none;
            l.behind_screen = false;
            const auto toward = [&](const glm::dvec3& to) {
                const auto path = sound::direct_path(l, none, to);
                return sound::directivity_db(l, sound::kReflectionBand_hz, path.off_axis_across_rad,
                                             path.off_axis_up_rad, kAir);
            };
            const auto returns = sound::wall_returns(hall.acoustics, 3);
            const double direct = glm::distance(place_of(l), ear);
            double strongest = -1e9, first = 1e9, echo = -1e9;
            for (const auto& p :
                 sound::reflected_paths(sound::wall_planes(hall), place_of(l), ear)) {
                double kept = returns[static_cast<std::size_t>(p.first)];
                if (p.second) kept *= returns[static_cast<std::size_t>(*p.second)];
                const double level = 20.0 * std::log10(direct / p.length_m) +
                                     10.0 * std::log10(kept) + toward(p.at_first) - toward(ear);
                const double delay = (p.length_m - direct) / kAir.sound_speed_m_s();
                strongest = std::max(strongest, level);
                if (level >= sound::kHeardReflectionDb) first = std::min(first, delay);
                if (delay >= sound::kEchoAfter_s) echo = std::max(echo, level);
            }
            const auto kept = heard(hall, l, {ear}).front();
            const Tolerance db = absolute(1e-9, "rounding, some ten dB");
            REQUIRE(kept.strongest.has_value() == (strongest > -1e9));
            if (kept.strongest) check_close(kept.strongest->level_db, strongest, db);
            REQUIRE(kept.first.has_value() == (first < 1e9));
            if (kept.first) check_close(kept.first->delay_s, first, absolute(1e-12, "rounding"));
            REQUIRE(kept.echo.has_value() == (echo > -1e9));
            if (kept.echo) check_close(kept.echo->level_db, echo, db);
        }
    }

    TEST_CASE("a wall that takes all sends nothing back; a bare one on the way does") {
        sound::HallInput hall = box_hall(10.0, 6.0, 20.0);
        hall.acoustics = evenly(1.0);
        const room::Loudspeaker l = wide_at({0, 2, 0.5});
        CHECK(heard(hall, l, {{0, 1.2, 10}}).front() == SeatReflections{});
        hall.acoustics.rear_wall = alike(0.0);
        const auto kept = heard(hall, l, {{0, 1.2, 10}}).front();
        REQUIRE(kept.echo);
        CHECK(kept.echo->first == Wall::rear);
        CHECK_FALSE(kept.echo->second);
        // By hand: 19.5 m on to the wall and 10 back, against 9.5; eyes 0.8 m below.
        const double later_m = std::hypot(29.5, 0.8) - std::hypot(9.5, 0.8);
        check_close(kept.echo->delay_s, later_m / kAir.sound_speed_m_s(),
                    relative(1e-12, "rounding"));
    }

    TEST_CASE("a beam that points down sends less to the ceiling") {
        const sound::HallInput hall = [] {
            sound::HallInput h = box_hall(10.0, 6.0, 20.0);
            h.acoustics = evenly(1.0);
            h.acoustics.ceiling = alike(0.1);
            return h;
        }();
        room::Loudspeaker l = wide_at({0, 3, 0.5});
        l.coverage_up_rad = base::radians(40.0);
        const auto level = heard(hall, l, {{0, 1.2, 10}}).front().strongest.value();
        l.pitch_rad = base::radians(10.0);
        const auto down = heard(hall, l, {{0, 1.2, 10}}).front().strongest.value();
        CHECK(down.level_db < level.level_db - 3.0);
        CHECK(down.delay_s == level.delay_s);
    }

    TEST_CASE("the same seats give the same bits on one thread and on several") {
        std::mt19937 random(625);
        const sound::HallInput hall = random_hall(random);
        const room::Loudspeaker l = wide_at(point_in(random, hall));
        std::vector<glm::dvec3> ears;
        for (int i = 0; i < 900; ++i)
            ears.push_back(point_in(random, hall));
        const auto together = heard(hall, l, ears);
        for (std::size_t i = 0; i < ears.size(); i += 7)
            CHECK(heard(hall, l, {ears[i]}).front() == together[i]);
    }
}
