// SPDX-License-Identifier: MIT
#include "light/meter_advice.hpp"

#include <doctest/doctest.h>

using namespace rakeline::light;

namespace {

using Signs = std::vector<MeterSign>;

/// A fit that agrees with its layout: 10,000 lm, corners at 80 % of the peak, hot spot centred.
MeterFit agreeing() {
    MeterFit fit;
    fit.parts[kPeak] = {10000.0, 10000.0, PartState::fitted, 50.0};
    fit.parts[kCorner] = {0.80, 0.80, PartState::fitted, 0.01};
    fit.parts[kAcross] = {0.0, 0.0, PartState::fitted, 0.01};
    fit.parts[kUp] = {0.0, 0.0, PartState::fitted, 0.01};
    fit.readings = {{50.0, 50.0, 0.3, 0.0}};
    return fit;
}

MeterFit with(LawPart part, double value, double error) {
    MeterFit fit = agreeing();
    fit.parts[part].value = value;
    fit.parts[part].error = error;
    return fit;
}

}  // namespace

TEST_SUITE("light/meter_advice") {
    TEST_CASE("a fit that agrees with the layout shows no sign") {
        CHECK(meter_signs(agreeing()).empty());
    }

    TEST_CASE("a hot spot counts by the slope that it gives the gate, and by its error") {
        // One edge over the other: 4 (1 - 0.80) h of the peak, 10 % at h = 0.125.
        for (const LawPart part : {kAcross, kUp}) {
            CHECK(meter_signs(with(part, 0.126, 0.01)) == Signs{MeterSign::off_centre});
            CHECK(meter_signs(with(part, -0.126, 0.01)) == Signs{MeterSign::off_centre});
            CHECK(meter_signs(with(part, 0.124, 0.01)).empty());
            CHECK(meter_signs(with(part, 0.126, 0.064)).empty());  // under two errors
        }
    }

    TEST_CASE("the fall-off counts from 5 % of the corners on, and by its error") {
        CHECK(meter_signs(with(kCorner, 0.749, 0.01)) == Signs{MeterSign::too_steep});
        CHECK(meter_signs(with(kCorner, 0.751, 0.01)).empty());
        CHECK(meter_signs(with(kCorner, 0.749, 0.026)).empty());
        // Brighter corners alone are no fault; with less flux the light goes past the gate.
        CHECK(meter_signs(with(kCorner, 0.90, 0.01)).empty());
        MeterFit flat = with(kCorner, 0.90, 0.01);
        flat.parts[kPeak].value = 8000.0;
        CHECK(meter_signs(flat) == Signs{MeterSign::too_flat});
        flat.dip = 4.0;
        CHECK(meter_signs(flat) == Signs{MeterSign::hollow, MeterSign::dim});
    }

    TEST_CASE("flux counts from a tenth on, and by its error") {
        CHECK(meter_signs(with(kPeak, 8990.0, 50.0)) == Signs{MeterSign::dim});
        CHECK(meter_signs(with(kPeak, 9010.0, 50.0)).empty());
        CHECK(meter_signs(with(kPeak, 8990.0, 600.0)).empty());
        CHECK(meter_signs(with(kPeak, 11010.0, 50.0)) == Signs{MeterSign::bright});
        MeterFit held = with(kPeak, 8000.0, 50.0);
        held.parts[kPeak].state = PartState::held;
        CHECK(meter_signs(held).empty());
    }

    TEST_CASE("scatter and a hollow middle count by chance and by errors, and stand in order") {
        MeterFit fit = agreeing();
        fit.chance = 0.011;
        fit.dip = 2.9;
        CHECK(meter_signs(fit).empty());
        fit.chance = 0.009;
        fit.dip = 3.1;
        fit.parts[kAcross].value = 0.2;
        fit.parts[kPeak].value = 7000.0;
        CHECK(meter_signs(fit) ==
              Signs{MeterSign::uneven, MeterSign::off_centre, MeterSign::hollow, MeterSign::dim});
    }

    TEST_CASE("the reading furthest off is so in its own uncertainties") {
        MeterFit fit = agreeing();
        fit.readings = {{50.0, 51.0, 1.0, 0.0}, {50.0, 50.9, 0.3, 0.0}, {50.0, 48.0, 2.0, 0.0}};
        CHECK(furthest_reading(fit) == 1);
    }
}
