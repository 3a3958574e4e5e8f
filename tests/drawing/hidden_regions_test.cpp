// SPDX-License-Identifier: MIT
#include "drawing/hidden_regions.hpp"

#include "support/check.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <random>

using namespace rakeline;
using drawing::HiddenRegion;
using sight::ClearInterval;

namespace {

const geometry::Rectangle kOpening{-2.0, 2.0, -1.0, 1.0};

double area_of(const HiddenRegion& region) {
    return geometry::signed_area(drawing::outline_of(region));
}

double area_of(const std::vector<HiddenRegion>& regions) {
    double area = 0.0;
    for (const HiddenRegion& region : regions)
        area += area_of(region);
    return area;
}

double hidden_by_columns(const sight::ClearOutline& clear) {
    double area = 0.0;
    for (const auto& column : clear.columns) {
        double hidden = kOpening.height();
        for (const ClearInterval& c : column)
            hidden -= c.top_m - c.bottom_m;
        area += hidden * clear.column_width_m;
    }
    return area;
}

/// Each column with up to three clear intervals, some with none, some whole.
sight::ClearOutline random_outline(unsigned seed) {
    std::mt19937 random(seed);
    std::uniform_real_distribution<double> height(kOpening.bottom, kOpening.top);
    sight::ClearOutline out{kOpening.left, kOpening.width() / 40, {}};
    for (int j = 0; j < 40; ++j) {
        std::vector<double> cuts(2 * (random() % 4));
        std::ranges::generate(cuts, [&] { return height(random); });
        std::ranges::sort(cuts);
        if (random() % 5 == 0) cuts = {kOpening.bottom, kOpening.top};
        auto& column = out.columns.emplace_back();
        for (std::size_t i = 0; i + 1 < cuts.size(); i += 2)
            column.push_back({cuts[i], cuts[i + 1]});
    }
    return out;
}

}  // namespace

TEST_SUITE("drawing/hidden_regions") {
    TEST_CASE("a bar along the lower edge is one region of its own area") {
        const sight::ClearOutline clear{-2.0, 0.5,
                                        std::vector(8, std::vector<ClearInterval>{{-0.6, 1.0}})};
        const auto regions = drawing::hidden_regions(clear, kOpening);
        REQUIRE(regions.size() == 1);
        tests::check_close(area_of(regions), 4.0 * 0.4, tests::absolute(1e-12, "closed form"));
        CHECK(regions[0].low.front() == glm::dvec2(-2.0, -1.0));
        CHECK(regions[0].high.back() == glm::dvec2(2.0, -0.6));
    }

    TEST_CASE("a picture that is clear has no region, one that is all hidden has one") {
        sight::ClearOutline clear{-2.0, 0.5,
                                  std::vector(8, std::vector<ClearInterval>{{-1.0, 1.0}})};
        CHECK(drawing::hidden_regions(clear, kOpening).empty());
        clear.columns.assign(8, {});
        const auto all = drawing::hidden_regions(clear, kOpening);
        REQUIRE(all.size() == 1);
        tests::check_close(area_of(all), kOpening.area(), tests::absolute(1e-12, "closed form"));
    }

    TEST_CASE("two that meet over a gap become three: both sides of the gap, and what they share") {
        const std::vector<ClearInterval> two{{-0.8, 0.0}, {0.5, 1.0}}, one{{0.5, 1.0}};
        const sight::ClearOutline clear{-2.0, 1.0, {two, two, one, one}};
        const auto regions = drawing::hidden_regions(clear, kOpening);
        CHECK(regions.size() == 3);
        tests::check_close(area_of(regions), 2.0 * (0.2 + 0.5) + 2.0 * 1.5,
                           tests::absolute(1e-12, "closed form"));
    }

    TEST_CASE("property: the regions' areas sum to what the columns hide, all counter-clockwise") {
        for (unsigned seed = 0; seed < 200; ++seed) {
            const sight::ClearOutline clear = random_outline(seed);
            const auto regions = drawing::hidden_regions(clear, kOpening);
            INFO("seed ", seed);
            tests::check_close(area_of(regions), hidden_by_columns(clear),
                               tests::absolute(1e-11, "rounding of some hundred terms"));
            for (const HiddenRegion& region : regions) {
                CHECK(area_of(region) > 0.0);
                REQUIRE(region.low.size() == region.high.size());
                for (std::size_t i = 0; i < region.low.size(); ++i) {
                    CHECK(region.low[i].x == region.high[i].x);
                    CHECK(region.low[i].y <= region.high[i].y);
                    CHECK((i == 0 || region.low[i - 1].x < region.low[i].x));
                }
            }
        }
    }

    TEST_CASE("property: hatching stays in its regions and none of a broad one is without") {
        for (unsigned seed = 0; seed < 50; ++seed) {
            const auto regions = drawing::hidden_regions(random_outline(seed), kOpening);
            for (const auto& line : drawing::hatching(regions, 0.05)) {
                REQUIRE(line.size() > 1);
                for (const glm::dvec2& p : line) {
                    CHECK(std::ranges::any_of(regions, [&](const HiddenRegion& region) {
                        for (std::size_t i = 0; i < region.low.size(); ++i)
                            if (region.low[i].x == p.x && p.y >= region.low[i].y &&
                                p.y <= region.high[i].y)
                                return true;
                        return false;
                    }));
                }
            }
        }
        const sight::ClearOutline all{-2.0, 0.05, std::vector<std::vector<ClearInterval>>(80)};
        const auto lines = drawing::hatching(drawing::hidden_regions(all, kOpening), 0.1);
        // Every line v = u - k 0.1 that passes the opening: k from -2 - 1 to 2 + 1 over 0.1.
        CHECK(lines.size() >= 58);
        CHECK(lines.size() <= 61);
    }
}
