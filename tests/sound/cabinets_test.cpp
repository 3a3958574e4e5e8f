// SPDX-License-Identifier: MIT
#include "sound/cabinets.hpp"

#include "base/units.hpp"
#include "sound/random_sound_room.hpp"
#include "support/check.hpp"

#include <algorithm>
#include <cmath>

using namespace rakeline;
using namespace rakeline::tests;
using sound::Cabinet;
using sound::CabinetRoom;

namespace {

const auto kRounding = absolute(1e-12, "rounding of lengths of some metres");

room::Loudspeaker box_at(const glm::dvec3& front, const glm::dvec3& size) {
    room::Loudspeaker l;
    l.across_m = front.x;
    l.up_m = front.y;
    l.back_m = front.z;
    l.cabinet_width_m = size.x;
    l.cabinet_height_m = size.y;
    l.cabinet_depth_m = size.z;
    return l;
}

room::Loudspeaker random_box(SoundDice& dice) {
    room::Loudspeaker l =
        box_at({dice.between(-1, 1), dice.between(-1, 1), dice.between(-1, 1)},
               {dice.between(0.1, 1), dice.between(0.1, 1), dice.between(0.1, 1)});
    l.yaw_rad = dice.between(-3, 3);
    l.pitch_rad = dice.between(-1.5, 1.5);
    return l;
}

bool inside(const Cabinet& c, const glm::dvec3& point) {
    const glm::dvec3 from = point - c.at(0.0, 0.0, 0.5);
    return std::abs(glm::dot(from, c.axes.across)) < 0.5 * c.width_m &&
           std::abs(glm::dot(from, c.axes.up)) < 0.5 * c.height_m &&
           std::abs(glm::dot(from, c.axes.forward)) < 0.5 * c.depth_m;
}

/// Least distance between points of two boxes' insides and skins, looked for on a grid; true if a
/// point of one lies within the other.
struct Looked {
    double distance_m = 1e9;
    bool overlap = false;
};
Looked looked_for(const Cabinet& a, const Cabinet& b) {
    constexpr int kSteps = 6;
    const auto points = [](const Cabinet& c) {
        std::vector<glm::dvec3> out;
        for (int i = 0; i <= kSteps; ++i)
            for (int j = 0; j <= kSteps; ++j)
                for (int k = 0; k <= kSteps; ++k)
                    out.push_back(
                        c.at(2.0 * i / kSteps - 1.0, 2.0 * j / kSteps - 1.0, 1.0 * k / kSteps));
        return out;
    };
    const auto of_a = points(a), of_b = points(b);
    Looked out;
    for (const auto& p : of_a)
        for (const auto& q : of_b)
            out.distance_m = std::min(out.distance_m, glm::distance(p, q));
    const auto meets = [](const auto& all, const Cabinet& c) {
        return std::any_of(all.begin(), all.end(), [&](const auto& p) { return inside(c, p); });
    };
    out.overlap = meets(of_a, b) || meets(of_b, a);
    return out;
}

sound::SoundInput screen_room() {
    sound::SoundInput in;
    in.surface = geometry::standing_patch({0, 3.0, 1.2}, 0.0, 0.0);
    in.screen_height_m = 4.0;
    in.standing_height_m = 1.8;
    return in;
}

}  // namespace

TEST_SUITE("sound/cabinets") {
    TEST_CASE("the front's middle is the acoustic centre and the corners lie round it") {
        room::Loudspeaker l = box_at({1, 2, 0.9}, {0.6, 1.0, 0.5});
        const auto corners = sound::cabinet_of(l).corners();
        check_close(glm::distance(corners[0], {0.7, 1.5, 0.9}), 0.0, kRounding);
        check_close(glm::distance(corners[7], {1.3, 2.5, 0.4}), 0.0, kRounding);
        l.yaw_rad = base::radians(90.0);
        // Facing +x: the back lies toward -x.
        check_close(sound::cabinet_of(l).at(0, 0, 1).x, 0.5, kRounding);
    }

    TEST_CASE("boxes face to face are as far apart as their faces") {
        const Cabinet a = sound::cabinet_of(box_at({0, 2, 1}, {0.6, 1.0, 0.5}));
        const Cabinet b = sound::cabinet_of(box_at({1.0, 2, 1}, {0.6, 1.0, 0.5}));
        check_close(sound::gap_between(a, b), 0.4, kRounding);
        const Cabinet into = sound::cabinet_of(box_at({0.5, 2, 1}, {0.6, 1.0, 0.5}));
        check_close(sound::gap_between(a, into), -0.1, kRounding);
    }

    TEST_CASE("property: a gap is never more than the distance, and below zero where boxes meet") {
        SoundDice dice(20260421);
        int met = 0;
        for (int i = 0; i < 150; ++i) {
            INFO("draw ", i, " of seed 20260421");
            const Cabinet a = sound::cabinet_of(random_box(dice));
            const Cabinet b = sound::cabinet_of(random_box(dice));
            const double gap = sound::gap_between(a, b);
            const Looked seen = looked_for(a, b);
            check_close(gap, sound::gap_between(b, a), kRounding);
            CHECK(gap <= seen.distance_m + 1e-12);
            if (seen.overlap) CHECK(gap < 0.0);
            // Points of both lie within a step of the nearest ones.
            if (gap < -0.5) CHECK(seen.overlap);
            met += seen.overlap ? 1 : 0;
        }
        CHECK(met > 10);
        CHECK(met < 130);
    }

    TEST_CASE("behind a sheet distances are square to it") {
        const auto flat = geometry::standing_patch({0, 3.0, 1.2}, 0.0, 0.0);
        check_close(sound::behind_sheet_m(flat, {4.0, 1.0, 0.4}), 0.8, kRounding);
        check_close(sound::behind_sheet_m(flat, {4.0, 1.0, 2.0}), -0.8, kRounding);
        const auto curved = geometry::standing_patch({0, 3.0, 1.2}, 20.0, 0.0);
        check_close(sound::behind_sheet_m(curved, {0.0, 5.0, 0.2}), 1.0, kRounding);
        check_close(sound::behind_sheet_m(curved, {3.0, 4.0, 0.0}), std::hypot(3.0, 21.2) - 20.0,
                    kRounding);
        const auto leaning = geometry::standing_patch({0, 3.0, 1.2}, 0.0, 0.3);
        check_close(sound::behind_sheet_m(leaning, leaning.centre - 0.7 * leaning.normal), 0.7,
                    kRounding);
    }

    TEST_CASE("a cabinet behind the screen has its room to sheet, wall and frame") {
        sound::SoundInput in = screen_room();
        in.loudspeakers = {box_at({0, 3.5, 0.9}, {0.6, 1.0, 0.5})};
        const CabinetRoom room = sound::study_cabinets(in).front();
        check_close(room.to_sheet_m.value(), 0.3, kRounding);
        check_close(room.to_wall_m.value(), 0.4, kRounding);
        check_close(room.inside_picture_m.value(), 1.0, kRounding);
        check_close(room.height_fraction.value(), 2.5 / 4.0, kRounding);
        CHECK_FALSE(room.apart_m);
        CHECK_FALSE(room.over_heads_m);
    }

    TEST_CASE("turned down, a cabinet's lower front edge draws back and its upper comes forward") {
        sound::SoundInput in = screen_room();
        in.loudspeakers = {box_at({0, 3.5, 0.9}, {0.6, 1.0, 0.5})};
        in.loudspeakers[0].pitch_rad = base::radians(10.0);
        const CabinetRoom room = sound::study_cabinets(in).front();
        check_close(room.to_sheet_m.value(), 0.3 - 0.5 * std::sin(base::radians(10.0)), kRounding);
        // The lower back edge.
        check_close(room.to_wall_m.value(),
                    0.9 - 0.5 * std::cos(base::radians(10.0)) - 0.5 * std::sin(base::radians(10.0)),
                    kRounding);
    }

    TEST_CASE("a surround hangs over people who stand at the seat below it") {
        sound::SoundInput in = screen_room();
        room::Loudspeaker surround = box_at({-5, 4.0, 8.0}, {0.4, 0.5, 0.3});
        surround.channel = room::Channel::surround;
        surround.behind_screen = false;
        surround.yaw_rad = base::radians(90.0);
        in.loudspeakers = {surround};
        in.seat_floors = {{-4.0, 1.0, 8.0}, {-4.0, 0.0, 5.0}};
        const CabinetRoom room = sound::study_cabinets(in).front();
        check_close(room.over_heads_m.value(), 4.0 - 0.25 - 1.0 - 1.8, kRounding);
        CHECK_FALSE(room.to_sheet_m);
        CHECK_FALSE(room.height_fraction);
        in.seat_floors.clear();
        CHECK_FALSE(sound::study_cabinets(in).front().over_heads_m);
    }
}
