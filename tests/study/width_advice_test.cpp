// SPDX-License-Identifier: MIT
#include "study/width_advice.hpp"

#include "study/figure_values.hpp"
#include "study/width_words.hpp"
#include "support/check.hpp"
#include "support/demo_rooms.hpp"

#include <algorithm>
#include <cmath>
#include <set>

using namespace rakeline;
using namespace rakeline::study;
using tests::absolute;
using tests::check_close;
using tests::kDemoRooms;

namespace {

const auto kMillimetre = absolute(1e-3, "ends are found to the millimetre");

room::Limit limit_on(const char* figure, std::optional<double> least, std::optional<double> most) {
    return {.figure = figure, .least = least, .most = most, .source = "made up", .mend = {}};
}

/// Single seats at these places (across, back) before a flat screen with its sill at 1 m.
room::Brief seats_at(const std::vector<glm::dvec2>& places) {
    room::Brief brief;
    room::Layout& layout = brief.layout;
    layout.hall.width_m = 60.0;
    layout.hall.length_m = 60.0;
    layout.hall.height_m = 40.0;
    layout.screen.setback_m = 0.0;
    layout.screen.sill_m = 1.0;
    layout.formats = {{.name = "2.39", .aspect_ratio = 2.39, .opening_width_m = {}}};
    layout.screen.width_m = 2.39 * layout.screen.height_m;
    char row = 'A';
    for (const glm::dvec2& place : places) {
        room::SeatBlock block;
        block.name = std::string("block ") + row;
        block.first_row = std::string(1, row++);
        block.rows = 1;
        block.seats_per_row = 1;
        block.across_m = place.x;
        block.first_row_back_m = place.y;
        layout.seating.push_back(block);
    }
    REQUIRE(room::check_layout(layout).empty());
    return brief;
}

Study studied(const room::Brief& brief) {
    return compute_study(std::make_shared<const room::Brief>(brief));
}

WidthAdvice advice(const Study& study, double share = 1.0, int format = 0) {
    const auto found = width_advice(study, format, share);
    REQUIRE(found);
    return *found;
}

/// How many seats keep what, by the study's own figures.
struct Kept {
    int seats = 0;             ///< that keep every limit on the viewing angles of the format
    double least_share = 1.0;  ///< over bounds: of the seats that one holds, those that keep it
};

bool is_angle(const Figure& figure) {
    return std::ranges::any_of(angle_figures(), [&](const FigureDefinition& d) {
        return figure.definition->id == std::string(d.id);
    });
}

Kept kept_by_study(const Study& study, int format) {
    Kept out;
    std::set<int> losers;
    for (const Figure& figure : study.figures) {
        if (!is_angle(figure) || figure.format != format) continue;
        for (const int limit : figure.limits) {
            const auto& one = study.brief->limits.limits.at(static_cast<std::size_t>(limit));
            int held = 0, under = 0, over = 0;
            for (const Value& value : figure.values) {
                if (!applies_at(study, figure, limit, value.index)) continue;
                ++held;
                under += one.least && value.si < *one.least;
                over += one.most && value.si > *one.most;
                if (verdict_of(value.si, one) == Verdict::missed) losers.insert(value.index);
            }
            for (const int lost : {under, over})
                out.least_share = std::min(out.least_share, 1.0 - static_cast<double>(lost) / held);
        }
    }
    out.seats = static_cast<int>(study.seats.seats.size() - losers.size());
    return out;
}

bool keeps_at(const Study& study, const WidthAdvice& found, double width_m) {
    const auto layout = with_picture_width(study.layout(), found.format, width_m);
    REQUIRE(layout);
    const Kept kept = kept_by_study(studied({*layout, study.brief->limits}), found.format);
    return kept.seats >= found.wanted && kept.least_share >= found.share - 1e-9;
}

bool in_ranges(const WidthAdvice& advice, double width_m) {
    return std::any_of(advice.ranges.begin(), advice.ranges.end(), [&](const WidthRange& r) {
        return width_m >= r.least_m - 1e-9 && width_m <= r.most_m + 1e-9;
    });
}

}  // namespace

TEST_SUITE("study/width_advice") {
    TEST_CASE("golden: one seat on the centre line allows the width 2 D tan(a)") {
        // In plan each half of the picture is D tan(a) wide, the angle to the farther edge being a.
        room::Brief brief = seats_at({{0.0, 10.0}});
        for (const double degrees : {25.0, 30.0, 40.0}) {
            const double a = base::radians(degrees);
            brief.limits.limits = {limit_on("sight.off_axis_far", {}, a)};
            const WidthAdvice found = advice(studied(brief));
            INFO(degrees);
            REQUIRE(found.ranges.size() == 1);
            check_close(found.ranges[0].most_m, 2.0 * 10.0 * std::tan(a), kMillimetre);
            CHECK(found.ranges[0].most_m <= 2.0 * 10.0 * std::tan(a));
            REQUIRE(found.ranges[0].above.size() == 1);
            CHECK(found.ranges[0].above[0] == WidthStop{0, false, {0}});
            CHECK(found.ranges[0].below.empty());
        }
    }

    TEST_CASE("golden: a seat off the centre gives away twice its offset") {
        room::Brief brief = seats_at({{3.0, 10.0}});
        const double a = base::radians(50.0);
        brief.limits.limits = {limit_on("sight.off_axis_far", {}, a)};
        check_close(advice(studied(brief)).ranges.at(0).most_m, 2.0 * (10.0 * std::tan(a) - 3.0),
                    kMillimetre);
    }

    TEST_CASE("golden: the true angle of one seat between two bounds, with the picture's rise") {
        // The picture's centre stands at sill + W / 2r, so that W = k sqrt(D^2 + (c + W / 2r)^2)
        // with k = 2 tan(a / 2), c = sill - eye: a quadratic in W.
        room::Brief brief = seats_at({{0.0, 12.0}});
        const double least = base::radians(35.0), most = base::radians(55.0);
        brief.limits.limits = {limit_on("sight.subtended_width", least, most)};
        const Study study = studied(brief);
        const auto width = [&](double angle) {
            const double k2 = 4.0 * std::pow(std::tan(angle / 2.0), 2);
            const double c = 1.0 - brief.layout.audience.eye_height_m, r = 2.0 * 2.39;
            const double qa = 1.0 - k2 / (r * r), qb = -2.0 * k2 * c / r;
            const double qc = -k2 * (144.0 + c * c);
            return (-qb + std::sqrt(qb * qb - 4.0 * qa * qc)) / (2.0 * qa);
        };
        const WidthAdvice found = advice(study);
        REQUIRE(found.ranges.size() == 1);
        check_close(found.ranges[0].least_m, width(least), kMillimetre);
        check_close(found.ranges[0].most_m, width(most), kMillimetre);
        CHECK(found.ranges[0].below == std::vector<WidthStop>{{0, true, {0}}});
        CHECK(found.ranges[0].above == std::vector<WidthStop>{{0, false, {0}}});
    }

    TEST_CASE("where one of two seats is enough, the widths can fall apart into two ranges") {
        room::Brief brief = seats_at({{0.0, 8.0}, {0.0, 24.0}});
        const double least = std::atan(3.0 / 8.0), most = std::atan(4.0 / 8.0);
        brief.limits.limits = {limit_on("sight.off_axis_far", least, most)};
        const Study study = studied(brief);
        const WidthAdvice half = advice(study, 0.5);
        REQUIRE(half.ranges.size() == 2);
        // Widths 2 D tan(a): 6 to 8 m from 8 m, and 18 to 24 m from 24 m.
        const double ends[] = {half.ranges[0].least_m, half.ranges[0].most_m,
                               half.ranges[1].least_m, half.ranges[1].most_m};
        const double wanted[] = {6.0, 8.0, 18.0, 24.0};
        for (int i = 0; i < 4; ++i)
            check_close(ends[i], wanted[i], absolute(1.1e-3, "a millimetre and rounding"));
        CHECK(half.ranges[0].above == std::vector<WidthStop>{{0, false, {0}}});
        CHECK(half.ranges[1].below == std::vector<WidthStop>{{0, true, {1}}});
        const WidthAdvice all = advice(study, 1.0);
        CHECK(all.ranges.empty());
        CHECK(all.kept_best == 1);
        CHECK(in_ranges(half, all.best_m));
        CHECK(all.missed_best == std::vector<WidthStop>{{0, false, {0}}});
    }

    TEST_CASE("a rule for the last row is not outvoted by the rows in front of it") {
        room::Brief brief = seats_at({{0.0, 8.0}, {0.0, 9.0}, {0.0, 10.0}, {0.0, 24.0}});
        room::Limit far = limit_on("sight.off_axis_far", std::atan(6.0 / 24.0), {});
        far.scope = room::LimitScope::last_row;
        brief.limits.limits = {far};
        const WidthAdvice found = advice(studied(brief), 0.75);
        REQUIRE(found.ranges.size() == 1);
        check_close(found.ranges[0].least_m, 12.0, absolute(1.1e-3, "a millimetre and rounding"));
        CHECK(found.ranges[0].below == std::vector<WidthStop>{{0, true, {3}}});
    }

    TEST_CASE("a range of a few millimetres is found where one seat loses as another gains") {
        // The nearer seat keeps up to W = 2 D1 tan(a1), the farther from 2 D2 tan(a2) on, in plan.
        room::Brief brief = seats_at({{0.0, 8.0}, {0.0, 24.0}});
        room::Limit near = limit_on("sight.off_axis_far", {}, std::atan(10.004 / 16.0));
        near.scope = room::LimitScope::first_row;
        room::Limit far = limit_on("sight.off_axis_far", std::atan(9.999 / 48.0), {});
        far.scope = room::LimitScope::last_row;
        brief.limits.limits = {near, far};
        const WidthAdvice all = advice(studied(brief), 1.0);
        REQUIRE(all.ranges.size() == 1);
        check_close(all.ranges[0].least_m, 9.999, absolute(1.1e-3, "a millimetre and rounding"));
        check_close(all.ranges[0].most_m, 10.004, absolute(1.1e-3, "a millimetre and rounding"));
    }

    TEST_CASE("golden: in the demo rooms the study agrees, millimetre by millimetre at the ends") {
        for (const char* name : kDemoRooms) {
            const Study study = compute_study(tests::demo_brief(name));
            for (int format = 0; format < 2; ++format) {
                for (const double share : {0.6, 0.9}) {
                    const WidthAdvice found = advice(study, share, format);
                    INFO(name, ", format ", format, ", share ", share);
                    CHECK(found.kept_now == kept_by_study(study, format).seats);
                    std::vector<double> widths{found.best_m};
                    for (const WidthRange& r : found.ranges) {
                        for (const double end : {r.least_m, r.most_m})
                            for (const double by : {-1e-3, 0.0, 1e-3})
                                widths.push_back(end + by);
                    }
                    for (const double width : widths) {
                        if (width < found.least_m || width > found.most_m) continue;
                        INFO(width);
                        CHECK(keeps_at(study, found, width) == in_ranges(found, width));
                    }
                }
            }
        }
    }

    TEST_CASE("golden: brute force over all widths of a small room finds the same ranges") {
        const Study study = compute_study(tests::demo_brief("screening-24"));
        const WidthAdvice found = advice(study, 0.75);
        int agreed = 0;
        for (double width = found.least_m; width <= found.most_m; width += 0.0371) {
            INFO(width);
            CHECK(keeps_at(study, found, width) == in_ranges(found, width));
            ++agreed;
        }
        CHECK(agreed > 40);
    }

    TEST_CASE("property: what more seats keep is within what fewer keep") {
        for (const char* name : kDemoRooms) {
            const Study study = compute_study(tests::demo_brief(name));
            WidthAdvice wide = advice(study, 0.05);
            for (const double share : {0.3, 0.5, 0.7, 0.8, 0.9, 0.95, 1.0}) {
                INFO(name, ", share ", share);
                const WidthAdvice narrow = advice(study, share);
                for (const WidthRange& r : narrow.ranges) {
                    CHECK(in_ranges(wide, r.least_m));
                    CHECK(in_ranges(wide, r.most_m));
                }
                if (narrow.kept_best < narrow.wanted) CHECK(narrow.ranges.empty());
                CHECK(narrow.kept_best == wide.kept_best);
                wide = narrow;
            }
        }
    }

    TEST_CASE("the room bounds what is tried, and says why") {
        room::Brief brief = seats_at({{0.0, 10.0}});
        brief.layout.hall.height_m = 8.0;
        const Study study = studied(brief);
        const WidthAdvice found = advice(study);
        CHECK(found.limits == 0);
        REQUIRE(found.ranges.size() == 1);
        // From the sill at 1 m to the ceiling at 8 m: 7 m high, 2.39 times as wide.
        check_close(found.most_m, 7.0 * 2.39, kMillimetre);
        CHECK(found.why_most.find("ceiling") != std::string::npos);
        CHECK(with_picture_width(brief.layout, 0, found.most_m));
        CHECK_FALSE(with_picture_width(brief.layout, 0, found.most_m + 2e-3));
    }

    TEST_CASE("a layout with another width keeps sill, setback, radius and the openings' ratios") {
        for (const char* name : kDemoRooms) {
            const Study study = compute_study(tests::demo_brief(name));
            const room::Layout& before = study.layout();
            const auto after =
                with_picture_width(before, 1, 0.9 * study.picture.openings[1].width_m);
            INFO(name);
            REQUIRE(after);
            CHECK(after->screen.sill_m == before.screen.sill_m);
            CHECK(after->screen.radius_m == before.screen.radius_m);
            CHECK(after->seating == before.seating);
            for (std::size_t f = 0; f < before.formats.size(); ++f)
                check_close(picture::masked_opening(after->screen, after->formats[f]).width_m,
                            0.9 * study.picture.openings[f].width_m,
                            tests::relative(1e-12, "rounding"));
        }
    }

    TEST_CASE("refuses: a share that is none, a room without seats") {
        const Study study = studied(seats_at({{0.0, 10.0}}));
        for (const double share : {0.0, -0.1, 1.1, std::nan("")})
            CHECK_FALSE(width_advice(study, 0, share));
        room::Brief empty = seats_at({{0.0, 10.0}});
        empty.layout.seating.clear();
        CHECK_FALSE(width_advice(studied(empty), 0, 0.9));
    }

    TEST_CASE("the words name widths, limit and seat in both unit systems") {
        room::Brief brief = seats_at({{0.0, 10.0}});
        brief.limits.limits = {limit_on("sight.off_axis_far", {}, base::radians(45.0))};
        const Study study = studied(brief);
        const WidthAdvice found = advice(study);
        using base::UnitSystem;
        const auto verdict = [&](UnitSystem s) { return width_verdict(study, found, s); };
        CHECK(verdict(UnitSystem::metric).find("20.000 m wide") != std::string::npos);
        CHECK(verdict(UnitSystem::imperial).find("65.617 ft wide") != std::string::npos);
        const auto reasons = width_reasons(study, found, UnitSystem::metric);
        CHECK(std::any_of(reasons.begin(), reasons.end(), [](const std::string& s) {
            return s.find("A1 misses") != std::string::npos &&
                   s.find("at most 45.00°") != std::string::npos;
        }));
    }
}
