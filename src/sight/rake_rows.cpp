// SPDX-License-Identifier: MIT
#include "sight/rake_rows.hpp"

#include "sight/row_clearance.hpp"

namespace rakeline::sight {
namespace {

/// A row of the plan to be cleared, and by how much of the wanted C.
struct Target {
    int row = 0;  ///< index in SeatPlan::rows
    double wanted_share = 1.0;
};

std::vector<Target> targets_of(const room::SeatPlan& plan, const room::Row& row, RakeOver over) {
    if (over == RakeOver::row_in_front)
        return row.row_in_front ? std::vector<Target>{{*row.row_in_front, 1.0}}
                                : std::vector<Target>{};
    std::vector<Target> out;
    if (row.second_row_in_front) out.push_back({*row.second_row_in_front, 1.0});
    const auto block_of = [&](int r) { return plan.rows.at(static_cast<std::size_t>(r)).block; };
    const bool has_two_ahead =
        row.second_row_in_front && block_of(*row.second_row_in_front) == row.block;
    if (!has_two_ahead && row.row_in_front) out.push_back({*row.row_in_front, 0.5});
    return out;
}

/// The lines of one row over one target, a format each.
bool add_lines(const geometry::Patch& surface,
               std::span<const picture::Opening> openings,
               const room::SeatPlan& plan,
               const room::Row& row,
               Target target,
               int first_row,
               std::vector<SightOver>& out) {
    const room::Row& ahead = plan.rows.at(static_cast<std::size_t>(target.row));
    for (std::size_t f = 0; f < openings.size(); ++f) {
        const glm::dvec3 focus = nearest_focus(surface, openings[f], row.centre_eye);
        const auto terms = clearance_terms(row.centre_eye, ahead.centre_eye, focus);
        if (!terms) return false;
        SightOver line;
        if (ahead.block == row.block) line.ahead = target.row - first_row;
        line.ahead_eye_m = ahead.centre_eye.y;
        line.share = terms->distance_m / (terms->distance_m + terms->tread_m);
        line.focus_up_m = focus.y;
        line.wanted_share = target.wanted_share;
        line.format = static_cast<int>(f);
        out.push_back(line);
    }
    return true;
}

RakeRow bare_row(const room::SeatPlan& plan, const room::Row& row, double ceiling_m) {
    RakeRow out;
    out.letter = row.letter;
    out.floor_m = row.centre_floor.y;
    out.ceiling_m = ceiling_m;
    if (row.row_in_front) {
        const room::Row& front = plan.rows.at(static_cast<std::size_t>(*row.row_in_front));
        if (front.block == row.block) out.spacing_m = row.centre_floor.z - front.centre_floor.z;
    }
    return out;
}

}  // namespace

std::optional<RakeRows> rake_rows(const geometry::Patch& surface,
                                  std::span<const picture::Opening> openings,
                                  const room::SeatPlan& plan,
                                  int block,
                                  RakeOver over,
                                  double ceiling_m) {
    RakeRows out;
    int first_row = -1;
    for (std::size_t i = 0; i < plan.rows.size(); ++i) {
        const room::Row& row = plan.rows[i];
        if (row.block != block) continue;
        if (first_row < 0) first_row = static_cast<int>(i);
        out.eye_height_m = row.centre_eye.y - row.centre_floor.y;
        RakeRow here = bare_row(plan, row, ceiling_m);
        for (const Target& target : targets_of(plan, row, over)) {
            if (!add_lines(surface, openings, plan, row, target, first_row, here.over))
                return std::nullopt;
        }
        out.rows.push_back(std::move(here));
    }
    return out;
}

double c_over(const SightOver& over, double eye_m, double eye_ahead_m) {
    return over.share * eye_m + (1.0 - over.share) * over.focus_up_m - eye_ahead_m;
}

double eye_ahead(const RakeRows& rows, const SightOver& over, std::span<const double> floor_m) {
    if (!over.ahead) return over.ahead_eye_m;
    return floor_m[static_cast<std::size_t>(*over.ahead)] + rows.eye_height_m;
}

std::vector<std::optional<RowSight>> row_sights(const RakeRows& rows,
                                                std::span<const double> floor_m,
                                                double wanted_c_m) {
    std::vector<std::optional<RowSight>> out;
    for (std::size_t n = 0; n < rows.rows.size(); ++n) {
        std::optional<RowSight> worst;
        double least_spare = 0.0;
        for (const SightOver& over : rows.rows[n].over) {
            const double c =
                c_over(over, floor_m[n] + rows.eye_height_m, eye_ahead(rows, over, floor_m));
            const double spare = c - over.wanted_share * wanted_c_m;
            if (worst && spare >= least_spare) continue;
            worst = RowSight{c, over.wanted_share, over.format};
            least_spare = spare;
        }
        out.push_back(worst);
    }
    return out;
}

}  // namespace rakeline::sight
