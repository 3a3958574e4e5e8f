// SPDX-License-Identifier: MIT
#include "study/rake_words.hpp"

#include "sight/aisle_steps.hpp"

#include <algorithm>
#include <cmath>

namespace rakeline::study {
namespace {

using base::Unit;

std::string length(double metres, base::UnitSystem system) {
    return base::quantity_text(metres, Unit::millimetre, system);
}

const std::string& letter(const sight::RakePlan& plan, int row) {
    return plan.rows.rows.at(static_cast<std::size_t>(row)).letter;
}

const char* cause_of(sight::Restriction restriction) {
    switch (restriction) {
        case sight::Restriction::exact:
        case sight::Restriction::step:
            return "the greatest riser that a layout holds";
        case sight::Restriction::flights:
            return "the number of rows or flights that share a riser";
        case sight::Restriction::riser:
            return "the greatest riser";
        case sight::Restriction::slope:
            return "the greatest slope";
        case sight::Restriction::ceiling:
            return "the headroom under the ceiling or balcony";
        case sight::Restriction::beam:
            break;
    }
    return "the headroom under the beam";
}

/// The first stage that keeps a row from its C.
const sight::RakeStage& stage_that_fails(const sight::RakePlan& plan) {
    return *std::ranges::find_if(plan.stages, [](const auto& stage) { return !stage.meets; });
}

struct Climb {
    std::string row;
    sight::AisleSteps steps;
};

std::vector<Climb> climbs(const sight::RakePlan& plan, double step_most_m) {
    std::vector<Climb> out;
    const auto& floor = plan.built().floor_m;
    for (std::size_t n = 1; n < floor.size(); ++n) {
        const auto& row = plan.rows.rows[n];
        const auto steps = sight::aisle_steps(floor[n] - floor[n - 1], row.spacing_m, step_most_m);
        if (steps.count > 0) out.push_back({row.letter, steps});
    }
    return out;
}

/// "B, C and D".
std::string listed(const std::vector<std::string>& names) {
    std::string out;
    for (std::size_t i = 0; i < names.size(); ++i)
        out += (i == 0 ? "" : i + 1 == names.size() ? " and " : ", ") + names[i];
    return out;
}

void add_between(const std::vector<Climb>& all,
                 base::UnitSystem system,
                 double most_m,
                 std::vector<std::string>& out) {
    std::vector<std::string> rows;
    for (const Climb& climb : all) {
        if (climb.steps.count > 1) rows.push_back(climb.row);
    }
    if (rows.empty()) return;
    out.push_back("Steps between rows: the aisle needs intermediate steps up to row " +
                  listed(rows) + ", where the riser is over " + length(most_m, system) + ".");
}

void add_uneven(const std::vector<Climb>& all,
                base::UnitSystem system,
                std::vector<std::string>& out) {
    if (all.empty()) return;
    const auto [low, high] = std::ranges::minmax_element(
        all, {}, [](const Climb& climb) { return std::abs(climb.steps.riser_m); });
    const double least = std::abs(low->steps.riser_m);
    const double most = std::abs(high->steps.riser_m);
    // 3/16 in between neighbouring risers: International Building Code 2021, 1011.5.4, from memory.
    constexpr double kAlike_m = 0.0048;
    if (most - least > kAlike_m) {
        out.push_back("Uneven steps trip people: the aisle's steps rise from " +
                      length(least, system) + " to " + length(most, system) +
                      " along it. Codes bound the difference and ask for marked and lit nosings.");
    }
    if (least < sight::kAisleStepLeast_m) {
        out.push_back("A low step is overlooked: up to row " + low->row + " one rises " +
                      length(least, system) + ", under " +
                      length(sight::kAisleStepLeast_m, system) +
                      " (IBC 2021 stepped aisles, from memory). Ramp it, or mark and light it.");
    }
}

void add_steepness(const sight::RakePlan& plan, std::vector<std::string>& out) {
    const auto& floor = plan.built().floor_m;
    for (std::size_t n = 1; n < floor.size(); ++n) {
        const double spacing = plan.rows.rows[n].spacing_m;
        if (floor[n] - floor[n - 1] <= sight::kSteepestRamp * spacing) continue;
        out.push_back("From row " + plan.rows.rows[n].letter +
                      " on the floor rises more than 2 in 12 (9.5°), which US practice of 1945 put "
                      "on steps; today's codes ask for steps sooner.");
        return;
    }
}

}  // namespace

const char* restriction_title(sight::Restriction restriction) {
    switch (restriction) {
        case sight::Restriction::exact:
            return "exact recursion";
        case sight::Restriction::step:
            return "risers rounded to the step";
        case sight::Restriction::flights:
            return "rows grouped in flights";
        case sight::Restriction::riser:
            return "greatest riser";
        case sight::Restriction::slope:
            return "greatest slope";
        case sight::Restriction::ceiling:
            return "headroom under the ceiling";
        case sight::Restriction::beam:
            break;
    }
    return "headroom under the beam";
}

std::string rake_verdict(const sight::RakePlan& plan, base::UnitSystem system) {
    if (!plan.buildable()) {
        const std::string row = plan.blocked_row ? letter(plan, *plan.blocked_row) : "A";
        return "Nothing can be built: row " + row + " lacks " + cause_of(plan.built().restriction) +
               " even on a level floor.";
    }
    const sight::RakeStage& built = plan.built();
    const double wanted = plan.options.wanted_c_m;
    if (built.meets) {
        return "Every row has its wanted C of " + length(wanted, system) +
               "; the last row stands " + base::quantity_text(built.rise_m(), Unit::metre, system) +
               " over the first.";
    }
    const double spare = built.spare_m(wanted);
    return "The wanted C of " + length(wanted, system) +
           " can't be built: " + cause_of(stage_that_fails(plan).restriction) +
           " takes it first. The nearest floor " + "falls short by " + length(-spare, system) +
           ", most in row " + letter(plan, *built.least_row) + ".";
}

std::vector<std::string> rake_cautions(const sight::RakePlan& plan,
                                       double step_most_m,
                                       base::UnitSystem system) {
    std::vector<std::string> out;
    const std::vector<Climb> all = climbs(plan, step_most_m);
    add_between(all, system, step_most_m, out);
    add_uneven(all, system, out);
    add_steepness(plan, out);
    out.push_back(
        "Risers, goings, aisle widths, handrails, lit nosings and headroom are set by the local "
        "building and fire codes, and a licensed architect checks them: a floor that suits the "
        "eyes is not for that reason allowed. Balconies count here by their floor alone, without "
        "the depth of what carries it.");
    return out;
}

}  // namespace rakeline::study
