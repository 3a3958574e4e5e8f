// SPDX-License-Identifier: MIT
#include "sight/wheelchair.hpp"

#include "sight/hidden_some.hpp"

#include <algorithm>

namespace rakeline::sight {
namespace {

/// What every step works on.
struct House {
    const geometry::Patch& surface;
    const picture::Opening& opening;
    const room::SeatPlan& plan;
    const std::vector<room::SeatBlock>& blocks;
    const Blockers& people;
    const room::Audience& audience;

    const room::Seat& seat(int i) const { return plan.seats.at(static_cast<std::size_t>(i)); }
    const room::Row& row_of(int i) const {
        return plan.rows.at(static_cast<std::size_t>(seat(i).row));
    }
    glm::dvec3 eye_at(int i, double height_m) const {
        return seat(i).floor + glm::dvec3(0.0, height_m, 0.0);
    }
};

std::vector<int> places_of(const room::SeatPlan& plan) {
    std::vector<int> out;
    for (std::size_t i = 0; i < plan.seats.size(); ++i)
        if (plan.seats[i].wheelchair) out.push_back(static_cast<int>(i));
    return out;
}

/// Over the row in front, for an eye so high above its floor.
std::optional<OverRow> over_front(const House& house, int place, double height_m) {
    const auto front = house.row_of(place).row_in_front;
    if (!front) return std::nullopt;
    return over_row(house.surface, house.opening, house.plan, house.blocks,
                    house.eye_at(place, height_m), *front);
}

/// The hidden part for all places, their own eyes at this height, everyone else as usual.
std::vector<double> hidden_at(const House& house, const std::vector<int>& places, double height_m) {
    std::vector<Looking> looking;
    for (const int place : places)
        looking.push_back({place, house.eye_at(place, height_m)});
    return hidden_from_some(house.surface, house.opening, house.people, looking);
}

/// The nearest seats of the rows that look over this place's row.
std::vector<Looking> seats_behind(const House& house, int place) {
    std::vector<int> seats;
    for (std::size_t i = 0; i < house.plan.seats.size(); ++i) {
        const int seat = static_cast<int>(i);
        if (house.row_of(seat).row_in_front == house.seat(place).row) seats.push_back(seat);
    }
    const auto away = [&](int seat) {
        return glm::distance(house.seat(seat).floor, house.seat(place).floor);
    };
    std::ranges::stable_sort(seats, {}, away);
    if (seats.size() > kSeatsTriedBehind) {
        // Seats as far away as the last stay in, so that a mirrored room tries the same ones.
        constexpr double kEqual_m = 1e-9;
        const double reach_m = away(seats[kSeatsTriedBehind - 1]) + kEqual_m;
        std::erase_if(seats, [&](int seat) { return away(seat) > reach_m; });
    }
    std::vector<Looking> out;
    for (const int seat : seats)
        out.push_back({seat, house.seat(seat).eye});
    return out;
}

/// What the seats behind lose by the tall person in this place: with them, less without them.
void add_what_it_hides(const House& house, WheelchairSight& sight) {
    const std::vector<Looking> behind = seats_behind(house, sight.seat);
    if (behind.empty()) return;
    Blockers with = house.people;
    const auto own = std::ranges::find(with.heads, sight.seat, &Head::eye);
    own->centre = house.eye_at(sight.seat, house.audience.wheelchair_eye_high_m);
    Blockers without = with;
    without.heads.erase(without.heads.begin() + (own - with.heads.begin()));
    const auto all = hidden_from_some(house.surface, house.opening, with, behind);
    const auto others = hidden_from_some(house.surface, house.opening, without, behind);
    for (std::size_t i = 0; i < behind.size(); ++i) {
        const double lost = all[i] - others[i];
        if (sight.behind && lost <= sight.hides_fraction) continue;
        sight.behind = behind[i].seat;
        sight.hides_fraction = lost;
    }
}

}  // namespace

std::vector<WheelchairSight> wheelchair_sights(const geometry::Patch& surface,
                                               const picture::Opening& opening,
                                               const room::SeatPlan& plan,
                                               const std::vector<room::SeatBlock>& blocks,
                                               const Blockers& people,
                                               const room::Audience& audience) {
    const House house{surface, opening, plan, blocks, people, audience};
    const std::vector<int> places = places_of(plan);
    std::vector<WheelchairSight> out;
    if (places.empty()) return out;
    const auto low = hidden_at(house, places, audience.wheelchair_eye_low_m);
    const auto high = hidden_at(house, places, audience.wheelchair_eye_high_m);
    for (std::size_t i = 0; i < places.size(); ++i) {
        WheelchairSight& sight = out.emplace_back();
        sight.seat = places[i];
        sight.low = over_front(house, places[i], audience.wheelchair_eye_low_m);
        sight.high = over_front(house, places[i], audience.wheelchair_eye_high_m);
        sight.hidden_low_fraction = low[i];
        sight.hidden_high_fraction = high[i];
        add_what_it_hides(house, sight);
    }
    return out;
}

}  // namespace rakeline::sight
