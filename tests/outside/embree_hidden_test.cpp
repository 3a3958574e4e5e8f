// SPDX-License-Identifier: MIT
/// The hidden fraction against rays. Source: Embree 3.13.5, a general-purpose ray tracer.
#include "support/embree_rays.hpp"

#include <doctest/doctest.h>

#include <cmath>

using namespace rakeline;

namespace {

constexpr unsigned kRooms = 200;
// 512 x 128 = 65,536 rays a seat; what they themselves leave is about 0.0001 RMS, and up to 0.0005
// where a balcony's level edge runs along a whole row of them.
constexpr int kAcross = 512;
constexpr int kUp = 128;

struct Spread {
    double squares = 0.0, worst = 0.0;
    std::size_t seats = 0;

    void add(double error) {
        squares += error * error;
        worst = std::max(worst, std::abs(error));
        ++seats;
    }
    double rms() const { return std::sqrt(squares / static_cast<double>(seats)); }
};

}  // namespace

TEST_SUITE("outside/embree_hidden") {
    TEST_CASE("golden: in 200 random rooms every seat's hidden fraction agrees with 65,536 rays") {
        const auto device = tests::embree_device();
        Spread standard;
        Spread fine;
        for (unsigned seed = 1; seed <= kRooms; ++seed) {
            const auto room = tests::seated_room(tests::random_shape(seed), seed);
            const auto scene = tests::embree_scene(device.get(), room);
            const auto truth =
                tests::embree_hidden(room, scene.get(), tests::ray_grid(room, kAcross, kUp));
            const auto ours = sight::hidden_picture(room.input());
            const auto many = sight::hidden_picture(room.input(), {2048, 0});
            for (std::size_t i = 0; i < truth.size(); ++i) {
                INFO("seed ", seed, " seat ", i);
                CHECK(std::abs(ours[i].hidden_fraction - truth[i]) < 0.002);
                CHECK(std::abs(many[i].hidden_fraction - truth[i]) < 0.001);
                standard.add(ours[i].hidden_fraction - truth[i]);
                fine.add(many[i].hidden_fraction - truth[i]);
            }
        }
        MESSAGE(standard.seats, " seats; 128 columns: RMS ", standard.rms(), " worst ",
                standard.worst, "; 2048 columns: RMS ", fine.rms(), " worst ", fine.worst);
        CHECK(standard.rms() < 0.0004);
        CHECK(fine.rms() < 0.0001);
    }
}
