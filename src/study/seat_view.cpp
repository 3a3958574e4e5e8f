// SPDX-License-Identifier: MIT
#include "study/seat_view.hpp"

#include "study/slices.hpp"

#include <algorithm>
#include <functional>

namespace rakeline::study {
namespace {

std::optional<int> owner_of(const SeatView& view, const sight::HidingShare& share) {
    const auto index = static_cast<std::size_t>(share.index);
    const int eye = share.wall ? view.house.walls.at(index).eye : view.house.heads.at(index).eye;
    return eye < 0 ? std::nullopt : std::optional(eye);
}

}  // namespace

SeatView seat_view(const Study& study, int format, int seat, int columns) {
    const sight::SightInput in = sight_input(study);
    SeatView view{.house = sight::full_house(in.seats, in.blocks, in.audience)};
    std::vector<glm::dvec3> eyes(in.seats.seats.size());
    std::ranges::transform(in.seats.seats, eyes.begin(), &room::Seat::eye);
    const sight::HiddenInput hidden{.surface = in.surface,
                                    .opening = in.openings.at(static_cast<std::size_t>(format)),
                                    .eyes = eyes,
                                    .heads = view.house.heads,
                                    .walls = view.house.walls};
    view.clear = sight::clear_outline(hidden, seat, columns);
    view.shares = sight::hiding_shares(hidden, seat, columns);
    return view;
}

std::vector<SeatShare> shares_by_seat(const SeatView& view) {
    std::vector<SeatShare> out;
    for (const sight::HidingShare& share : view.shares) {
        const std::optional<int> owner = owner_of(view, share);
        const auto known = std::ranges::find(out, owner, &SeatShare::seat);
        if (known == out.end())
            out.push_back({owner, share.fraction});
        else
            known->fraction += share.fraction;
    }
    std::ranges::stable_sort(out, std::greater{}, &SeatShare::fraction);
    return out;
}

}  // namespace rakeline::study
