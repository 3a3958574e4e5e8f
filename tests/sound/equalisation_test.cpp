// SPDX-License-Identifier: MIT
#include "sound/equalisation.hpp"

#include "support/check.hpp"

#include <cmath>

using namespace rakeline;
using namespace rakeline::tests;
using room::HouseCurve;
using sound::kThirds;
using sound::third_at;
using sound::Thirds;

namespace {

room::Playback playback(HouseCurve curve, double to_hz) {
    room::Playback out;
    out.house_curve = curve;
    out.equalise_to_hz = to_hz;
    return out;
}

/// 0 to 1 kHz, then 2 dB more with every octave.
Thirds sloping_loss() {
    Thirds loss{};
    for (std::size_t i = 0; i < kThirds.size(); ++i)
        loss[i] = std::max(0.0, 2.0 * std::log2(kThirds[i] / 1000.0));
    return loss;
}

}  // namespace

TEST_SUITE("sound/equalisation") {
    TEST_CASE("to a flat curve, what is lost is put back, up to the highest band and no farther") {
        const auto eq =
            sound::equalisation(sloping_loss(), Thirds{}, playback(HouseCurve::flat, 8000.0));
        check_close(*eq.boost_db[third_at(8000.0)], 6.0, absolute(1e-12, "rounding"));
        check_close(*eq.boost_db[third_at(250.0)], 0.0, absolute(1e-12, "rounding"));
        check_close(eq.headroom_db, 6.0, absolute(1e-12, "the highest band's boost"));
        CHECK_FALSE(eq.boost_db[third_at(10000.0)]);
        CHECK_FALSE(eq.boost_db[third_at(31.5)]);
        CHECK(eq.boost_db[third_at(40.0)]);
    }

    TEST_CASE("what the gap adds need not be put back") {
        Thirds gap{};
        gap[third_at(4000.0)] = 1.5;
        gap[third_at(1000.0)] = 0.5;
        const auto eq =
            sound::equalisation(sloping_loss(), gap, playback(HouseCurve::flat, 4000.0));
        check_close(*eq.boost_db[third_at(4000.0)], 4.0 - 1.5 + 0.5, absolute(1e-12, "rounding"));
        CHECK(*eq.boost_db[third_at(1000.0)] == 0.0);
    }

    TEST_CASE("where the house curve asks for less treble, less is put back") {
        const auto flat =
            sound::equalisation(sloping_loss(), Thirds{}, playback(HouseCurve::flat, 10000.0));
        const auto fallen =
            sound::equalisation(sloping_loss(), Thirds{}, playback(HouseCurve::x_curve, 10000.0));
        check_close(*flat.boost_db[third_at(10000.0)] - *fallen.boost_db[third_at(10000.0)], 7.0,
                    absolute(1e-12, "the nominal curve at 10 kHz"));
        CHECK(*fallen.boost_db[third_at(10000.0)] < 0.0);
        // 2 kHz lies on the level part: 2 dB of loss there are still to be made good.
        check_close(fallen.headroom_db, 2.0, absolute(1e-12, "at 2 kHz"));
    }

    TEST_CASE("cuts cost no headroom") {
        const auto eq =
            sound::equalisation(Thirds{}, Thirds{}, playback(HouseCurve::x_curve, 16000.0));
        CHECK(eq.headroom_db == 0.0);
        CHECK(*eq.boost_db[third_at(16000.0)] == -11.0);
    }

    TEST_CASE(
        "golden: the nominal curve falls by 3 dB an octave above 2 kHz and twice that above "
        "10 kHz") {
        // ISO 2969 and SMPTE ST 202 as reported; thirds rounded to whole decibels.
        for (std::size_t i = third_at(2000.0); i < kThirds.size(); ++i) {
            const double above_2k = std::log2(kThirds[i] / 2000.0);
            const double above_10k = std::max(0.0, std::log2(kThirds[i] / 10000.0));
            check_close(sound::house_curve_db(HouseCurve::x_curve, i),
                        -3.0 * (above_2k + above_10k),
                        absolute(0.15, "nominal thirds are not exact thirds, levels are rounded"));
            CHECK(sound::house_curve_db(HouseCurve::flat, i) == 0.0);
        }
        for (std::size_t i = third_at(63.0); i < third_at(2000.0); ++i)
            CHECK(sound::house_curve_db(HouseCurve::x_curve, i) == 0.0);
        CHECK(sound::house_curve_db(HouseCurve::x_curve, third_at(50.0)) == -1.0);
        CHECK(sound::house_curve_db(HouseCurve::x_curve, third_at(40.0)) == -2.0);
    }
}
