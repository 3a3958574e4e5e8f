// SPDX-License-Identifier: MIT
#include "sight/row_ends.hpp"

namespace rakeline::sight {

std::vector<RowEnds> row_ends(const geometry::Patch& surface,
                              const picture::Opening& opening,
                              const room::SeatPlan& plan,
                              const std::vector<room::SeatBlock>& blocks) {
    std::vector<RowEnds> out;
    out.reserve(plan.rows.size());
    for (const room::Row& row : plan.rows) {
        RowEnds& ends = out.emplace_back();
        if (row.seat_count == 0) continue;
        const auto over = [&](int seat, std::optional<int> front) -> std::optional<OverRow> {
            if (!front) return std::nullopt;
            const glm::dvec3 eye = plan.seats.at(static_cast<std::size_t>(seat)).eye;
            return over_row(surface, opening, plan, blocks, eye, *front);
        };
        const int first = row.first_seat;
        const int last = row.first_seat + row.seat_count - 1;
        ends.left = over(first, row.row_in_front);
        ends.right = over(last, row.row_in_front);
        if (!blocks.at(static_cast<std::size_t>(row.block)).staggered) continue;
        ends.second_left = over(first, row.second_row_in_front);
        ends.second_right = over(last, row.second_row_in_front);
    }
    return out;
}

bool right_end_is_worse(const std::optional<OverRow>& left, const std::optional<OverRow>& right) {
    constexpr double kEqual_m = 1e-9;
    if (!left || !right) return right.has_value();
    return right->c_m < left->c_m - kEqual_m;
}

}  // namespace rakeline::sight
