// SPDX-License-Identifier: MIT
// Source: L. P. Clerc, Photography: Theory and Practice, section on lantern projection (about 807):
// two worked examples of lens, distance and picture.
#include "base/units.hpp"
#include "picture/throw.hpp"
#include "support/check.hpp"

using namespace rakeline;
using namespace rakeline::tests;
using base::kMetresPerFoot;
using base::kMetresPerInch;

TEST_SUITE("outside/clerc_thin_lens") {
    TEST_CASE("golden: a 6 in lens shows a 3 in slide 90 in wide from 15.5 ft") {
        // Clerc: magnification 30, distance 31 times the focal length, 15.5 ft.
        const double slide = 3.0 * kMetresPerInch;
        const double width =
            picture::picture_width(slide, 15.5 * kMetresPerFoot, 6.0 * kMetresPerInch);
        check_close(width / kMetresPerInch, 90.0, printed_digits(0));
        check_close(width / slide, 30.0, printed_digits(0));
        check_close(picture::focal_length(slide, 15.5 * kMetresPerFoot, 90.0 * kMetresPerInch) /
                        kMetresPerInch,
                    6.0, printed_digits(0));
        // All the printed numbers are whole, so the sum comes out exactly.
        check_close(width / slide, 30.0, relative(1e-12, "30 by 31 exactly, to rounding"));
    }

    TEST_CASE("golden: a 5 in lens at 33 1/3 ft shows a 23/25 by 17/25 in frame 73 by 54 in") {
        // Clerc: magnification 79; he prints 73 in by 54 in.
        const double focal = 5.0 * kMetresPerInch;
        const double distance = 100.0 / 3.0 * kMetresPerFoot;
        const double width = picture::picture_width(23.0 / 25.0 * kMetresPerInch, distance, focal);
        const double height = picture::picture_width(17.0 / 25.0 * kMetresPerInch, distance, focal);
        check_close(width / kMetresPerInch, 73.0, printed_digits(0));
        check_close(height / kMetresPerInch, 54.0, printed_digits(0));
        check_close(picture::picture_width(1.0, distance, focal), 79.0, printed_digits(0));
        // The field approximation would give 80 and a frame of 73.6 in: the case tells them apart.
        check_close(width / kMetresPerInch, 0.92 * 79.0, relative(1e-12, "79 exactly"));
    }
}
