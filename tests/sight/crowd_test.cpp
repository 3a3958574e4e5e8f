// SPDX-License-Identifier: MIT
#include "sight/crowd.hpp"

#include "sight/blockers.hpp"
#include "sight/crowd_rooms.hpp"
#include "support/check.hpp"

#include <algorithm>
#include <cmath>

using namespace rakeline;
using namespace rakeline::tests;

namespace {

sight::CrowdStudy sampled(const CrowdRoom& room, unsigned threads = 0) {
    auto out = sight::sample_crowds(room.input(), {.threads = threads});
    REQUIRE(out);
    return *out;
}

/// Hidden fraction of every seat in crowd `k`, by the hidden picture's own front door.
std::vector<double> hidden_in(const sight::SightInput& in, std::size_t format, int k, int columns) {
    sight::SeatedCrowd crowd;
    sight::seat_crowd(in.seats, in.audience, k, crowd);
    const auto walls = sight::full_house(in.seats, in.blocks, in.audience).walls;
    std::vector<double> out(crowd.eyes.size());
    sight::hidden_fractions({.surface = in.surface,
                             .opening = in.openings[format],
                             .eyes = crowd.eyes,
                             .heads = crowd.heads,
                             .walls = walls},
                            {.columns = columns, .threads = 1}, out);
    return out;
}

double mean_share(const sight::CrowdStudy& study) {
    double sum = 0.0;
    int count = 0;
    for (const auto& format : study.formats) {
        for (const sight::Chance& chance : format.seats) {
            sum += chance.share();
            ++count;
        }
    }
    return sum / count;
}

void check_all_clear(const sight::CrowdStudy& study) {
    CHECK(study.reached);
    CHECK(study.drawn == sight::kCrowdBatch);
    for (const auto& format : study.formats) {
        CHECK(format.room == sight::Chance{sight::kCrowdBatch, sight::kCrowdBatch});
        for (const sight::Chance& chance : format.seats)
            CHECK(chance == sight::Chance{sight::kCrowdBatch, sight::kCrowdBatch});
    }
}

bool is_clear(double hidden_fraction) {
    return hidden_fraction <= 1.0 - sight::kClearFraction;
}

}  // namespace

TEST_SUITE("sight/crowd") {
    TEST_CASE("property: one, two or four threads count the same crowds") {
        for (unsigned seed = 1; seed <= 4; ++seed) {
            const CrowdRoom room = random_crowd_room(seed);
            const sight::CrowdStudy one = sampled(room, 1);
            CHECK(sampled(room, 2) == one);
            CHECK(sampled(room, 4) == one);
        }
    }

    TEST_CASE("property: counts are those of each crowd worked out on its own, in any order") {
        for (unsigned seed = 11; seed <= 14; ++seed) {
            const sight::SightInput in = random_crowd_room(seed).input();
            const auto study = sight::sample_crowds(in);
            REQUIRE(study);
            for (std::size_t f = 0; f < in.openings.size(); ++f) {
                std::vector<int> clear(in.seats.seats.size(), 0);
                int rooms = 0;
                for (int k = study->drawn - 1; k >= 0; --k) {
                    const auto hidden = hidden_in(in, f, k, sight::kCrowdColumns);
                    for (std::size_t i = 0; i < hidden.size(); ++i)
                        if (k < study->formats[f].seats[i].drawn && is_clear(hidden[i])) ++clear[i];
                    if (k < study->formats[f].room.drawn && std::ranges::all_of(hidden, is_clear))
                        ++rooms;
                }
                for (std::size_t i = 0; i < clear.size(); ++i)
                    CHECK(study->formats[f].seats[i].clear == clear[i]);
                CHECK(study->formats[f].room.clear == rooms);
            }
        }
    }

    TEST_CASE("few columns decide as many do, all but once in two hundred") {
        int flips = 0;
        int asked = 0;
        for (unsigned seed = 21; seed <= 26; ++seed) {
            const sight::SightInput in = random_crowd_room(seed).input();
            for (int k = 0; k < 60; ++k) {
                const auto few = hidden_in(in, 0, k, sight::kCrowdColumns);
                const auto many = hidden_in(in, 0, k, 256);
                for (std::size_t i = 0; i < few.size(); ++i) {
                    ++asked;
                    if (is_clear(few[i]) != is_clear(many[i])) ++flips;
                }
            }
        }
        INFO(flips, " of ", asked);
        CHECK(flips * 200 < asked);
    }

    TEST_CASE("where nobody can hide anything every seat is clear in every crowd") {
        CrowdRoom one_row = crowd_room(1, 12);
        check_all_clear(sampled(one_row));
        CrowdRoom cliff = crowd_room(5, 8);
        cliff.block().riser_m = 1.2;
        check_all_clear(sampled(cliff));
        CrowdRoom nobody = crowd_room(6, 8);
        nobody.crowd().taken_fraction = 0.0;
        nobody.block().seat_back_m = 0.5;
        check_all_clear(sampled(nobody));
    }

    TEST_CASE("an empty house keeps its seat backs") {
        CrowdRoom backs = crowd_room(6, 8);
        backs.block().riser_m = 0.0;
        backs.block().seat_back_m = 1.3;
        backs.plan.screen.sill_m = 0.3;
        backs.crowd().taken_fraction = 0.0;
        CHECK(mean_share(sampled(backs)) < 0.9);
    }

    TEST_CASE("property: whoever stays away hides nothing, crowd by crowd") {
        for (unsigned seed = 31; seed <= 34; ++seed) {
            CrowdRoom room = random_crowd_room(seed);
            std::vector<double> before;
            for (const double taken : {1.0, 0.7, 0.4, 0.0}) {
                room.crowd().taken_fraction = taken;
                const sight::SightInput in = room.input();
                std::vector<double> now;
                for (int k = 0; k < 40; ++k)
                    for (const double hidden : hidden_in(in, 0, k, sight::kCrowdColumns))
                        now.push_back(hidden);
                for (std::size_t i = 0; i < before.size(); ++i)
                    CHECK(now[i] <= before[i] + 1e-5);  // single precision in the kernel
                before = now;
            }
        }
    }

    TEST_CASE("property: an emptier house and steeper rows never make the mean chance less") {
        for (unsigned seed = 41; seed <= 44; ++seed) {
            CrowdRoom room = random_crowd_room(seed);
            room.block().riser_m = 0.08;
            double before = -1.0;
            for (const double taken : {1.0, 0.75, 0.5, 0.25}) {
                room.crowd().taken_fraction = taken;
                const double share = mean_share(sampled(room));
                // Seats stop at their own number of crowds, so that noise of a few of them is left.
                CHECK(share >= before - 0.01);
                before = share;
            }
            room.crowd().taken_fraction = 1.0;
            before = -1.0;
            for (const double riser_m : {0.0, 0.1, 0.2, 0.3, 0.45}) {
                room.block().riser_m = riser_m;
                const double share = mean_share(sampled(room));
                CHECK(share >= before - 0.01);
                before = share;
            }
            CHECK(before > 0.95);
        }
    }

    TEST_CASE("property: before a picture that is over all heads, who slumps hides less") {
        // All sink alike, which is as if the picture rose; seat backs are out of the way.
        for (unsigned seed = 51; seed <= 54; ++seed) {
            CrowdRoom room = random_crowd_room(seed);
            room.block().riser_m = 0.0;
            room.block().seat_back_m = 0.5;
            room.plan.screen.sill_m = 1.5;
            double before = -1.0;
            for (const double slump_m : {0.0, 0.05, 0.1, 0.15}) {
                room.crowd().slump_m = slump_m;
                const double share = mean_share(sampled(room));
                CHECK(share >= before - 0.01);
                before = share;
            }
        }
    }

    TEST_CASE(
        "property: every interval is as narrow as was asked, and no seat did more than needed") {
        for (unsigned seed = 61; seed <= 63; ++seed) {
            for (const double precision : {0.1, 0.03}) {
                CrowdRoom room = random_crowd_room(seed);
                room.crowd().precision = precision;
                const sight::CrowdStudy study = sampled(room);
                CHECK(study.reached);
                for (const auto& format : study.formats) {
                    CHECK(sight::wilson_interval(format.room).half_width() <= precision);
                    for (const sight::Chance& chance : format.seats) {
                        CHECK(sight::wilson_interval(chance).half_width() <= precision);
                        CHECK(chance.drawn % sight::kCrowdBatch == 0);
                        CHECK(chance.drawn <= study.drawn);
                    }
                }
            }
        }
    }

    TEST_CASE("property: over many seeds the intervals hold the truth 95 times in 100") {
        CrowdRoom room = crowd_room(5, 5);
        room.ratios = {1.85};
        room.crowd().precision = 0.01;
        room.crowd().seed = 777777;
        const sight::CrowdStudy truth = sampled(room);
        room.crowd().precision = 0.05;
        int held = 0;
        int asked = 0;
        for (int seed = 1; seed <= 80; ++seed) {
            room.crowd().seed = seed;
            const sight::CrowdStudy study = sampled(room);
            for (std::size_t i = 0; i < study.formats[0].seats.size(); ++i) {
                const double p = truth.formats[0].seats[i].share();
                if (p < 0.02 || p > 0.98) continue;  // sure seats would flatter the count
                const auto interval = sight::wilson_interval(study.formats[0].seats[i]);
                ++asked;
                if (interval.low <= p && p <= interval.high) ++held;
            }
        }
        REQUIRE(asked >= 400);
        // Neighbours share their crowds, so that the count scatters more than independent draws.
        check_close(static_cast<double>(held) / asked, 0.95,
                    absolute(0.03, "sampling, and a truth that is itself sampled"));
    }

    TEST_CASE("the cap on crowds ends a wish that is too fine, and says so") {
        CrowdRoom room = crowd_room(3, 2);
        room.ratios = {1.85};
        room.block().riser_m = 0.05;
        room.crowd().precision = 0.001;
        const sight::CrowdStudy study = sampled(room);
        CHECK_FALSE(study.reached);
        CHECK(study.drawn == sight::kMostCrowds);
    }

    TEST_CASE("who is told to stop leaves nothing, and at once") {
        const sight::SightInput in = crowd_room(6, 10).input();
        std::stop_source stop;
        int reports = 0;
        const auto stop_after_one = [&](const sight::CrowdProgress& p) {
            ++reports;
            CHECK(p.drawn == sight::kCrowdBatch);
            CHECK(p.open > 0);
            CHECK(p.all == 2 * 61);
            stop.request_stop();
        };
        CHECK_FALSE(
            sight::sample_crowds(in, {.stop = stop.get_token(), .progress = stop_after_one}));
        CHECK(reports == 1);
        CHECK_FALSE(sight::sample_crowds(
            in, {.stop = stop.get_token(), .progress = [&](const auto&) { ++reports; }}));
        CHECK(reports == 1);
    }

    TEST_CASE("a room without seats or formats is done before it begins") {
        CrowdRoom room = crowd_room(3, 3);
        room.ratios.clear();
        CHECK(sampled(room).formats.empty());
        room.ratios = {1.85};
        room.plan.seating.clear();
        const sight::CrowdStudy study = sampled(room);
        CHECK(study.reached);
        CHECK(study.drawn == 0);
        REQUIRE(study.formats.size() == 1);
        CHECK(study.formats[0].seats.empty());
    }

    TEST_CASE("eyes stand over cushion and slump, at wheelchair places evenly over their range") {
        CrowdRoom room = crowd_room(2, 6);
        room.block().wheelchair_places = {{"A", 1}};
        room.crowd().seat_height_m = 0.5;
        const sight::SightInput in = room.input();
        sight::SeatedCrowd high;
        sight::SeatedCrowd low;
        const auto place = static_cast<std::size_t>(
            std::ranges::find_if(in.seats.seats, &room::Seat::wheelchair) - in.seats.seats.begin());
        REQUIRE(place < in.seats.seats.size());
        double mean = 0.0;
        constexpr int kCrowds = 2000;
        for (int k = 0; k < kCrowds; ++k) {
            sight::seat_crowd(in.seats, in.audience, k, high);
            room::Audience slumped = in.audience;
            slumped.crowd.slump_m += 0.04;
            sight::seat_crowd(in.seats, slumped, k, low);
            for (std::size_t i = 0; i < high.eyes.size(); ++i) {
                const double by = high.eyes[i].y - low.eyes[i].y;
                check_close(by, i == place ? 0.0 : 0.04, absolute(1e-12, "rounding"));
            }
            const double up = high.eyes[place].y - in.seats.seats[place].floor.y;
            CHECK(up >= in.audience.wheelchair_eye_low_m);
            CHECK(up <= in.audience.wheelchair_eye_high_m);
            mean += up / kCrowds;
        }
        check_close(mean, 0.5 * (1.09 + 1.295),
                    absolute(4.0 * 0.205 / std::sqrt(12.0 * kCrowds), "four deviations"));
    }

    TEST_CASE("the share of seats taken is that of the heads, and another seed another crowd") {
        CrowdRoom room = crowd_room(6, 10);
        room.crowd().taken_fraction = 0.6;
        const sight::SightInput in = room.input();
        sight::SeatedCrowd crowd;
        double heads = 0.0;
        for (int k = 0; k < 500; ++k) {
            sight::seat_crowd(in.seats, in.audience, k, crowd);
            CHECK(crowd.eyes.size() == in.seats.seats.size());
            heads += static_cast<double>(crowd.heads.size()) / 500.0;
        }
        check_close(heads / 60.0, 0.6,
                    absolute(4.0 * std::sqrt(0.24 / 30000.0), "four deviations of a count"));
        room.crowd().seed = 2;
        sight::SeatedCrowd other;
        sight::seat_crowd(in.seats, room.plan.audience, 499, other);
        CHECK(other.eyes != crowd.eyes);
    }
}
