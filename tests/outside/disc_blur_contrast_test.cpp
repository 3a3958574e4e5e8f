// SPDX-License-Identifier: MIT
// Source: lines seen through a uniform disc of blur, diameter c, keep 2 J1(x) / x of their
// contrast, x = pi c / period; textbook optics (the transform of a disc), from memory. J1 from the
// GNU Scientific Library. The limits on blur state that share; this holds them to it.
#include "base/units.hpp"
#include "support/check.hpp"
#include "support/demo_rooms.hpp"

#include <gsl/gsl_sf_bessel.h>

using namespace rakeline;
using namespace rakeline::tests;

namespace {

/// The finest lines of a source have a period of two details.
double contrast_kept(double blur_over_detail) {
    const double x = 0.5 * base::kPi * blur_over_detail;
    return 2.0 * gsl_sf_bessel_J1(x) / x;
}

/// The same by adding up the disc in thin strips along the lines.
double contrast_by_strips(double blur_over_detail) {
    constexpr int kStrips = 20000;
    double sum = 0.0;
    double area = 0.0;
    for (int i = 0; i < kStrips; ++i) {
        const double s = (i + 0.5) / kStrips * 2.0 - 1.0;  // across the disc, -1 ... +1
        const double length = std::sqrt(1.0 - s * s);
        area += length;
        sum += length * std::cos(0.5 * base::kPi * blur_over_detail * s);
    }
    return sum / area;
}

const room::Limit& blur_limit(const room::LimitSet& set) {
    for (const room::Limit& limit : set.limits)
        if (limit.figure == "picture.blur_ratio") return limit;
    FAIL("no limit on the blur");
    return set.limits.front();
}

}  // namespace

TEST_SUITE("outside/disc_blur_contrast") {
    TEST_CASE("golden: adding up the disc gives the Bessel form") {
        for (const double ratio : {0.1, 0.5, 1.0, 2.0}) {
            check_close(contrast_by_strips(ratio), contrast_kept(ratio),
                        relative(1e-5, "strips at the disc's ends"));
        }
    }

    TEST_CASE("golden: the limits state the contrast that is kept at them") {
        for (const char* name : {"converted-hall-96", "screening-24"}) {
            const auto brief = demo_brief(name);
            const room::Limit& limit = blur_limit(brief->limits);
            REQUIRE(limit.most);
            const std::string kept =
                std::to_string(std::lround(100.0 * contrast_kept(*limit.most))) + " %";
            INFO(limit.source, " against ", kept);
            CHECK(limit.source.find(kept) != std::string::npos);
        }
    }
}
