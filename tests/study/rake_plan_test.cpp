// SPDX-License-Identifier: MIT
#include "study/rake_plan.hpp"

#include "study/rake_words.hpp"
#include "support/check.hpp"
#include "support/demo_rooms.hpp"

#include <algorithm>
#include <cmath>

using namespace rakeline;
using namespace rakeline::study;
using tests::absolute;
using tests::check_close;

namespace {

constexpr auto kMetric = base::UnitSystem::metric;

Study studied(const std::string& name) {
    return compute_study(tests::demo_brief(name));
}

Study studied_again(const Study& study, const room::Layout& layout) {
    return compute_study(
        std::make_shared<const room::Brief>(room::Brief{layout, study.brief->limits}));
}

/// The registered C-value of a row, the least of all formats.
double registered_c(const Study& study, int row, const char* id = "sight.c_value") {
    double least = 1e9;
    for (const Figure& figure : study.figures) {
        if (std::string(figure.definition->id) != id) continue;
        if (const auto value = value_at(figure, row)) least = std::min(least, *value);
    }
    return least;
}

std::vector<int> rows_of(const Study& study, int block) {
    std::vector<int> out;
    for (int r = 0; r < static_cast<int>(study.seats.rows.size()); ++r) {
        if (study.seats.rows[static_cast<std::size_t>(r)].block == block) out.push_back(r);
    }
    return out;
}

struct Block {
    const char* room;
    int block;
};
constexpr Block kBlocks[] = {{"steep-240", 0},
                             {"converted-hall-96", 0},
                             {"screening-24", 0},
                             {"grand-620", 0},
                             {"grand-620", 1}};

}  // namespace

TEST_SUITE("study/rake_plan") {
    TEST_CASE("round trip: the study of a raked layout has the C that the plan reports") {
        for (const auto& [name, block] : kBlocks) {
            INFO(name, " block ", block);
            const Study before = studied(name);
            sight::RakeOptions options = rake_options(before, block, kMetric);
            options.flight_rows = 2;
            const auto plan = rake_plan(before, block, options);
            REQUIRE(plan);
            REQUIRE(plan->buildable());
            const auto layout = raked_layout(before.layout(), block, plan->built().floor_m);
            REQUIRE(layout);
            const auto read = room::read_layout(room::write_layout(*layout), "new.json");
            REQUIRE(read);
            const Study after = studied_again(before, *read);
            const std::vector<int> rows = rows_of(after, block);
            REQUIRE(rows.size() == plan->built().sights.size());
            for (std::size_t n = 1; n < rows.size(); ++n) {
                check_close(registered_c(after, rows[n]), plan->built().sights[n]->c_m,
                            absolute(1e-10, "risers are kept to the picometre"));
            }
        }
    }

    TEST_CASE("round trip: the second row's C too, where the seats are staggered") {
        const Study before = studied("steep-240");
        sight::RakeOptions options = rake_options(before, 0, kMetric);
        options.over = sight::RakeOver::second_row;
        options.wanted_c_m = 0.12;
        const auto plan = rake_plan(before, 0, options);
        REQUIRE(plan);
        CHECK(plan->built().meets);
        const auto layout = raked_layout(before.layout(), 0, plan->built().floor_m);
        REQUIRE(layout);
        const Study after = studied_again(before, *layout);
        for (int n = 2; n < 12; ++n) {
            check_close(registered_c(after, n, "sight.c_value_second"),
                        plan->built().sights[static_cast<std::size_t>(n)]->c_m,
                        absolute(1e-10, "risers are kept to the picometre"));
        }
    }

    TEST_CASE("the demo room as built stands on what the solver makes of its twin") {
        const Study steep = studied("steep-240");
        const auto plan = rake_plan(steep, 0, rake_options(steep, 0, kMetric));
        REQUIRE(plan);
        const auto layout = raked_layout(steep.layout(), 0, plan->built().floor_m);
        REQUIRE(layout);
        const auto built = tests::demo_brief("steep-240-built");
        CHECK(layout->seating == built->layout.seating);
    }

    TEST_CASE("exact floors are the equal-clearance floors of the seat plan") {
        const Study steep = studied("steep-240");
        const auto plan = rake_plan(steep, 0, rake_options(steep, 0, kMetric));
        REQUIRE(plan);
        for (std::size_t n = 0; n < steep.seats.rows.size(); ++n) {
            check_close(plan->stages.front().floor_m[n], steep.seats.rows[n].centre_floor.y,
                        absolute(1e-12, "one recursion, worked twice"));
        }
    }

    TEST_CASE("a block on the hall's profile takes it to a floor by seating") {
        const Study before = studied("screening-24");
        REQUIRE(before.layout().hall.floor == room::FloorMode::by_profile);
        const auto plan = rake_plan(before, 0, rake_options(before, 0, kMetric));
        REQUIRE(plan);
        const auto layout = raked_layout(before.layout(), 0, plan->built().floor_m);
        REQUIRE(layout);
        CHECK(layout->hall.floor == room::FloorMode::by_seating);
        CHECK(layout->seating[0].floor == room::BlockFloor::flights);
        const Study after = studied_again(before, *layout);
        check_close(after.seats.rows[0].centre_floor.y, before.seats.rows[0].centre_floor.y,
                    absolute(1e-12, "the first row stays"));
    }

    TEST_CASE("rows under a balcony have it for a ceiling, and the beam over them is the study's") {
        const Study grand = studied("grand-620");
        const auto rows = rake_rows_of(grand, 0, sight::RakeOver::row_in_front);
        REQUIRE(rows);
        const double hall = grand.layout().hall.height_m;
        CHECK(rows->rows.front().ceiling_m == hall);
        // The balcony's first tread is at 5.5 m and begins at 21.7 - 0.7 = 21.0 m; the last row
        // stands at 11.4 + 15 x 1.0 + 1.4 = 27.8 m under treads that rise.
        CHECK(rows->rows.back().ceiling_m >= 5.5);
        CHECK(rows->rows.back().ceiling_m < hall);
        CHECK(rows->rows.front().beam_m.has_value());
        // Nothing hangs over the balcony but the hall's ceiling.
        const auto up = rake_rows_of(grand, 1, sight::RakeOver::row_in_front);
        REQUIRE(up);
        for (const sight::RakeRow& row : up->rows)
            CHECK(row.ceiling_m == hall);
    }

    TEST_CASE("property: a floor built under the beam leaves the headroom asked, in a new study") {
        const Study before = studied("converted-hall-96");
        sight::RakeOptions options = rake_options(before, 0, kMetric);
        options.headroom_m.reset();
        options.wanted_c_m = 0.4;
        options.beam_headroom_m = 1.35;
        const auto plan = rake_plan(before, 0, options);
        REQUIRE(plan);
        REQUIRE(plan->buildable());
        CHECK_FALSE(plan->built().meets);
        CHECK(rake_verdict(*plan, kMetric).find("under the beam") != std::string::npos);
        const auto layout = raked_layout(before.layout(), 0, plan->built().floor_m);
        REQUIRE(layout);
        const Study after = studied_again(before, *layout);
        for (const room::Platform& tread : after.seats.platforms) {
            if (!tread.row || *tread.row == 0) continue;
            for (const picture::ProjectedPicture& p : after.picture.pictures) {
                const auto clear = picture::beam_clearance(
                    {p.map, p.gate_size_m, after.layout().hall.length_m}, std::span(&tread, 1));
                if (clear) CHECK(clear->height_m >= 1.35 - 1e-6);
            }
        }
    }

    TEST_CASE("the lowest sill gives the block its C in a new study, and no lower one does") {
        const Study before = studied("converted-hall-96");
        sight::RakeOptions options;
        options.wanted_c_m = 0.06;
        const auto found = sill_for_floor(before, 0, options);
        REQUIRE(found);
        REQUIRE(found->has_value());
        const auto layout = with_sill(before.layout(), (*found)->value_m);
        REQUIRE(layout);
        const Study after = studied_again(before, *layout);
        double least = 1e9;
        for (int n = 1; n < 8; ++n)
            least = std::min(least, registered_c(after, n));
        check_close(least, 0.06, absolute(1e-11, "closed form"));
        check_close(registered_c(after, (*found)->row), least, absolute(1e-12, "the row named"));
    }

    TEST_CASE("the spacing found gives the block its C in a new study") {
        const Study before = studied("steep-240-built");
        sight::RakeOptions options;
        options.wanted_c_m = 0.15;
        const auto found = spacing_for_floor(before, 0, options);
        REQUIRE(found);
        REQUIRE(found->has_value());
        CHECK_FALSE((*found)->to_top);
        CHECK((*found)->greatest.value_m > 1.15);
        const auto layout = with_spacing(before.layout(), 0, (*found)->greatest.value_m);
        REQUIRE(layout);
        const Study after = studied_again(before, *layout);
        double least = 1e9;
        for (int n = 1; n < 12; ++n)
            least = std::min(least, registered_c(after, n));
        check_close(least, 0.15, absolute(1e-7, "halved to 0.1 um of spacing"));
    }

    TEST_CASE("refuses: options out of range, a single row, too large a search") {
        const Study steep = studied("steep-240");
        sight::RakeOptions options = rake_options(steep, 0, kMetric);
        options.wanted_c_m = 2.0;
        const auto high = rake_plan(steep, 0, options);
        REQUIRE_FALSE(high);
        CHECK(high.problems().front().where == "wanted_c_m");
        options.wanted_c_m = 0.12;
        options.riser_step_m = 0.001;
        options.flight_rows = 11;
        options.flights_most = 200;
        const auto large = rake_plan(steep, 0, options);
        REQUIRE_FALSE(large);
        CHECK(large.problems().front().where == "riser_step_m");
        room::Layout one = steep.layout();
        one.seating[0].rows = 1;
        const Study single = studied_again(steep, one);
        const auto none = rake_plan(single, 0, rake_options(single, 0, kMetric));
        REQUIRE_FALSE(none);
        CHECK(none.problems().front().where == "seating[0].rows");
    }

    TEST_CASE("cautions name rows that need steps, low steps and floors too steep for a ramp") {
        const Study steep = studied("steep-240");
        const auto plan = rake_plan(steep, 0, rake_options(steep, 0, kMetric));
        REQUIRE(plan);
        const auto has = [](const std::vector<std::string>& lines, const char* part) {
            return std::ranges::any_of(lines, [part](const std::string& line) {
                return line.find(part) != std::string::npos;
            });
        };
        const auto lines = rake_cautions(*plan, 0.2, kMetric);
        CHECK(has(lines, "intermediate steps up to row B, C, D"));
        CHECK(has(lines, "From row B on"));
        CHECK(has(lines, "local building and fire codes"));
        CHECK_FALSE(has(lines, "overlooked"));
        CHECK(has(rake_cautions(*plan, 0.1, kMetric), "overlooked"));
    }
}
