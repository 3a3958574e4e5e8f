// SPDX-License-Identifier: MIT
// Sources, named beside each row: viewing rules as reported (SMPTE EG 18-1994, SMPTE 196M-2003
// clause 9, EDCF, the 2-and-6 rule), their numbers worked from a = 2 atan(W / 2D); and a worked
// first-row case of a 12 m picture of 2.39.
#include "base/units.hpp"
#include "sight/test_picture.hpp"
#include "sight/viewing_angles.hpp"
#include "support/check.hpp"

#include <functional>

using namespace rakeline;
using namespace rakeline::tests;
using base::degrees;

namespace {

/// Where a falling function of the distance passes through `wanted`.
double distance_for(double wanted, const std::function<double(double)>& at) {
    double near = 0.01;
    double far = 1000.0;
    for (int i = 0; i < 100; ++i) {
        const double middle = 0.5 * (near + far);
        (at(middle) > wanted ? near : far) = middle;
    }
    return near;
}

/// One metre wide, the eye level with its middle on the centre line: plan and true angle agree.
double width_angle_deg(double distance_widths) {
    const Picture p = picture_of({.width_m = 1.0, .height_m = 0.4, .sill_m = 0.0});
    return degrees(
        sight::viewing_angles(p.surface, p.opening, {0.0, 0.2, distance_widths}).subtended_width);
}

/// The first-row case: W 12 m, 2.39, lower edge at 1.20 m.
Picture first_row_picture() {
    return picture_of({.width_m = 12.0, .height_m = 12.0 / 2.39, .sill_m = 1.20});
}

}  // namespace

TEST_SUITE("outside/viewing_angle_tables") {
    TEST_CASE("golden: distance in picture widths for the angles that rules name") {
        struct RuleRow {
            const char* source;
            double angle_deg;
            double distance_widths;
        };
        for (const RuleRow& row : {
                 RuleRow{"SMPTE EG 18-1994 as reported, back row", 30.0, 1.8660},
                 RuleRow{"certification programme, recommended", 36.0, 1.5388},
                 RuleRow{"certification programme, acceptable", 26.0, 2.1657},
                 RuleRow{"worked", 40.0, 1.3737},
                 RuleRow{"home-cinema literature", 45.0, 1.2071},
                 RuleRow{"home-cinema literature", 50.0, 1.0723},
                 RuleRow{"EDCF, front row under 80", 80.0, 0.5959},
             }) {
            INFO(row.source, ": ", row.angle_deg);
            check_close(distance_for(row.angle_deg, width_angle_deg), row.distance_widths,
                        printed_digits(4));
        }
    }

    TEST_CASE("golden: angles at the distances that rules name") {
        check_close(width_angle_deg(0.6), 79.61, printed_digits(2));  // EDCF, as D = 0.6 W
        check_close(width_angle_deg(2.0), 28.07, printed_digits(2));  // 2-and-6 rule (SMPE, 1940s)
        check_close(width_angle_deg(6.0), 9.53, printed_digits(2));
        // SMPTE 196M-2003 clause 9, 3 +- 1 picture heights; the angles for 2.39.
        check_close(width_angle_deg(2.0 / 2.39), 61.72, printed_digits(2));
        check_close(width_angle_deg(3.0 / 2.39), 43.44, printed_digits(2));
        check_close(width_angle_deg(4.0 / 2.39), 33.27, printed_digits(2));
    }

    TEST_CASE("golden: distance for each metre from eye to picture top") {
        // Worked cotangents; the 40 degree one is also printed in a French designer's note.
        struct TopRow {
            double angle_deg;
            double factor;
        };
        for (const TopRow& row : {TopRow{15, 3.7321}, TopRow{25, 2.1445}, TopRow{30, 1.7321},
                                  TopRow{35, 1.4281}, TopRow{40, 1.1918}, TopRow{45, 1.0}}) {
            const Picture p = picture_of({.width_m = 4.0, .height_m = 2.0, .sill_m = 0.2});
            const auto top_at = [&](double distance) {
                const glm::dvec3 eye(0.0, 1.2, distance);  // one metre under the top
                return degrees(sight::viewing_angles(p.surface, p.opening, eye).elevation_top);
            };
            check_close(distance_for(row.angle_deg, top_at), row.factor, printed_digits(4));
        }
    }

    TEST_CASE("golden: the first-row case, elevations and the far edge") {
        // Worked: eye 1.12 m up, 6 m from a 12 m picture of 2.39 with its lower edge at 1.20 m.
        const Picture p = first_row_picture();
        const auto centre = sight::viewing_angles(p.surface, p.opening, {0.0, 1.12, 6.0});
        check_close(degrees(centre.elevation_top), 40.37, printed_digits(2));
        check_close(degrees(centre.elevation_centre), 23.35, printed_digits(2));
        check_close(degrees(centre.elevation_bottom), 0.76, printed_digits(2));
        const auto side = sight::viewing_angles(p.surface, p.opening, {4.0, 1.12, 6.0});
        check_close(degrees(side.off_axis_far), 59.04, printed_digits(2));
        const auto top_at = [&](double distance) {
            const glm::dvec3 eye(0.0, 1.12, distance);
            return degrees(sight::viewing_angles(p.surface, p.opening, eye).elevation_top);
        };
        check_close(distance_for(35.0, top_at), 7.285, printed_digits(3));
    }

    TEST_CASE("golden: the first-row case, widths in plan") {
        // The source's widths are angles in plan; ours are true angles, equal to them for an eye
        // level with the picture's middle, and smaller from 1.12 m.
        const Picture p = first_row_picture();
        const double middle = 1.20 + 0.5 * p.opening.height_m;
        const auto width_at = [&](double across, double up) {
            return degrees(
                sight::viewing_angles(p.surface, p.opening, {across, up, 6.0}).subtended_width);
        };
        check_close(width_at(0.0, middle), 90.00, printed_digits(2));
        check_close(width_at(4.0, middle), 77.47, printed_digits(2));
        CHECK(width_at(0.0, 1.12) < 90.0);
        CHECK(width_at(4.0, 1.12) < 77.47);
    }
}
