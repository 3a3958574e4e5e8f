// SPDX-License-Identifier: MIT
// Source: two worked examples posted to a stereo-projection mailing list, 1996.
#include "base/units.hpp"
#include "picture/throw.hpp"
#include "support/check.hpp"

using namespace rakeline;
using namespace rakeline::tests;
using base::kMetresPerFoot;
using base::kMetresPerInch;

TEST_SUITE("outside/projection_mailing_list") {
    TEST_CASE("golden: a 4 in lens enlarges a 28 mm frame 60 times from 244 in") {
        // Post: 66 in over 28 mm is 60 times, (60 + 1) x 4 in = 244 in.
        const double enlarged =
            picture::picture_width(1.0, 244.0 * kMetresPerInch, 4.0 * kMetresPerInch);
        check_close(enlarged, 60.0, printed_digits(0));
        const double width =
            picture::picture_width(0.028, 244.0 * kMetresPerInch, 4.0 * kMetresPerInch);
        // The post rounds the enlargement to a whole 60 (59.87): half a frame either way.
        check_close(width / kMetresPerInch, 66.0,
                    absolute(0.5 * 0.028 / kMetresPerInch, "half a unit of the printed 60"));
    }

    TEST_CASE("golden: a 5 in lens at 15 ft shows a 28 mm frame 39 in wide") {
        // Post: enlargement 180 / 5 - 1 = 35; prints 39 in.
        const double width =
            picture::picture_width(0.028, 15.0 * kMetresPerFoot, 5.0 * kMetresPerInch);
        check_close(width / 0.028, 35.0, printed_digits(0));
        check_close(width / kMetresPerInch, 39.0, printed_digits(0));
    }
}
