// SPDX-License-Identifier: MIT
#include "sound/arrival.hpp"

#include "base/units.hpp"
#include "support/check.hpp"

#include <random>

using namespace rakeline;
using namespace rakeline::tests;
using room::Channel;
using sound::Arrival;

namespace {

constexpr double kSpeed = 343.2;
const Tolerance kTime = absolute(1e-12, "rounding of times of some ten ms");

double between(std::mt19937& random, double least, double most) {
    return least + (most - least) * static_cast<double>(random()) / 4294967295.0;
}

room::Loudspeaker at(Channel channel, double across, double up, double back) {
    room::Loudspeaker l;
    l.channel = channel;
    l.across_m = across;
    l.up_m = up;
    l.back_m = back;
    return l;
}

struct Room {
    std::vector<room::Loudspeaker> loudspeakers;
    std::vector<glm::dvec3> ears;
    std::optional<int> reference;

    sound::ArrivalInput input() const { return {loudspeakers, ears, reference, kSpeed}; }
};

Room random_room(std::mt19937& random) {
    Room r;
    for (const Channel c : {Channel::left, Channel::centre, Channel::right, Channel::sub_bass})
        r.loudspeakers.push_back(at(c, between(random, -5, 5), between(random, 1, 5), 0.5));
    for (int i = 0; i < 4; ++i)
        r.loudspeakers.push_back(at(Channel::surround, i % 2 == 0 ? -8.0 : 8.0,
                                    between(random, 2, 5), between(random, 6, 20)));
    for (int i = 0; i < 20; ++i)
        r.ears.push_back({between(random, -7, 7), between(random, 1, 3), between(random, 5, 19)});
    r.reference = static_cast<int>(random() % r.ears.size());
    return r;
}

}  // namespace

TEST_SUITE("sound/arrival") {
    TEST_CASE("a channel is heard when the first of its loudspeakers is, delays counted") {
        Room r;
        r.ears = {{0, 1, 10}};
        r.loudspeakers = {at(Channel::left, -3, 1, 6), at(Channel::left, 0, 1, 0)};
        auto heard = sound::study_arrival(r.input()).seats.front();
        check_close(heard.left_s.value(), 5.0 / kSpeed, kTime);
        r.loudspeakers[0].delay_s = 0.05;
        heard = sound::study_arrival(r.input()).seats.front();
        check_close(heard.left_s.value(), 10.0 / kSpeed, kTime);
        CHECK_FALSE(heard.spread_s());
        CHECK_FALSE(heard.outer_lead_s());
        CHECK_FALSE(heard.screen_lead_s());
    }

    TEST_CASE("leads and spread follow by hand from the arrivals") {
        const sound::ChannelArrivals a{0.020, 0.024, 0.031, 0.029};
        check_close(a.spread_s().value(), 0.011, kTime);
        check_close(a.outer_lead_s().value(), 0.004, kTime);
        check_close(a.screen_lead_s().value(), 0.009, kTime);
        const sound::ChannelArrivals centre_first{0.026, 0.024, 0.031, 0.022};
        check_close(centre_first.outer_lead_s().value(), -0.002, kTime);
        check_close(centre_first.screen_lead_s().value(), -0.002, kTime);
    }

    TEST_CASE("property: with the delays suggested all arrive together at the reference seat") {
        std::mt19937 random(631);
        for (int round = 0; round < 100; ++round) {
            Room r = random_room(random);
            const auto delays = sound::suggested_delays(r.input()).value();
            for (std::size_t i = 0; i < delays.size(); ++i)
                r.loudspeakers[i].delay_s = delays[i];
            const auto seat = static_cast<std::size_t>(*r.reference);
            const auto heard = sound::study_arrival(r.input()).seats[seat];
            check_close(heard.spread_s().value(), 0.0, kTime);
            CHECK(heard.screen_lead_s().value() >= sound::kSurroundMargin_s - 1e-12);
            const double together = heard.centre_s.value();
            bool undelayed = false;
            for (const room::Loudspeaker& l : r.loudspeakers) {
                const glm::dvec3 from{l.across_m, l.up_m, l.back_m};
                const double arrives = glm::distance(from, r.ears[seat]) / kSpeed + l.delay_s;
                if (l.channel == Channel::surround) {
                    // Fifteen milliseconds after, or later where that takes no delay at all.
                    if (l.delay_s > 0.0)
                        check_close(arrives, together + sound::kSurroundMargin_s, kTime);
                    continue;
                }
                check_close(arrives, together, kTime);
                undelayed = undelayed || l.delay_s == 0.0;
            }
            CHECK(undelayed);
        }
    }

    TEST_CASE("property: what is set already does not change what is suggested") {
        std::mt19937 random(632);
        for (int round = 0; round < 30; ++round) {
            Room r = random_room(random);
            const auto before = sound::suggested_delays(r.input());
            for (room::Loudspeaker& l : r.loudspeakers)
                l.delay_s = between(random, 0.0, 0.1);
            CHECK(sound::suggested_delays(r.input()) == before);
        }
    }

    TEST_CASE("property: arrivals do not change if the room is seen in a mirror") {
        std::mt19937 random(633);
        for (int round = 0; round < 30; ++round) {
            const Room r = random_room(random);
            Room m = r;
            for (room::Loudspeaker& l : m.loudspeakers) {
                l.across_m = -l.across_m;
                if (l.channel == Channel::left || l.channel == Channel::right)
                    l.channel = l.channel == Channel::left ? Channel::right : Channel::left;
            }
            for (glm::dvec3& ear : m.ears)
                ear.x = -ear.x;
            const Arrival one = sound::study_arrival(r.input());
            const Arrival other = sound::study_arrival(m.input());
            CHECK(one.suggested_delay_s == other.suggested_delay_s);
            for (std::size_t s = 0; s < r.ears.size(); ++s) {
                CHECK(one.seats[s].left_s == other.seats[s].right_s);
                CHECK(one.seats[s].spread_s() == other.seats[s].spread_s());
                CHECK(one.seats[s].outer_lead_s() == other.seats[s].outer_lead_s());
            }
        }
    }

    TEST_CASE("without a reference seat, or without a screen loudspeaker, nothing is suggested") {
        std::mt19937 random(634);
        Room r = random_room(random);
        r.reference.reset();
        CHECK_FALSE(sound::suggested_delays(r.input()));
        CHECK(sound::study_arrival(r.input()).suggested_delay_s.empty());
        r.reference = 0;
        r.loudspeakers.erase(r.loudspeakers.begin(), r.loudspeakers.begin() + 4);
        CHECK_FALSE(sound::suggested_delays(r.input()));
    }

    TEST_CASE("the centre is heard to the right of and above the picture's, by hand") {
        const auto offset = sound::image_offset({0, 1, 10}, {10, 1, 0}, {0, 11, 0});
        check_close(offset.across_rad, base::radians(45.0), kTime);
        check_close(offset.up_rad, base::radians(-45.0), kTime);
        const auto none = sound::image_offset({2, 1, 10}, {1, 3, 0}, {1, 3, 0});
        CHECK(none.across_rad == 0.0);
        CHECK(none.up_rad == 0.0);
    }
}
