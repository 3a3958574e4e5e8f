// SPDX-License-Identifier: MIT
#include "sight/standing.hpp"

#include "sight/hidden_some.hpp"
#include "sight/row_clearance.hpp"

namespace rakeline::sight {
namespace {

Wall body_of(const room::PlaceAlong& place, const room::Audience& audience) {
    const glm::dvec3 rightward{-place.facing.z, 0.0, place.facing.x};
    const glm::dvec3 shoulders =
        place.floor + glm::dvec3(0.0, kShoulderHeightShare * audience.standing_height_m, 0.0);
    const glm::dvec3 half = 0.5 * standing_pitch(audience) * rightward;
    return {shoulders - half, shoulders + half, WallHides::below, place.floor.y, -1};
}

Head head_of(const room::PlaceAlong& place, const room::Audience& audience) {
    const double eye_m = audience.standing_height_m - audience.eye_to_crown_m;
    return {place.floor + glm::dvec3(0.0, eye_m, 0.0), 0.5 * audience.head_breadth_m,
            audience.eye_to_crown_m, -1};
}

}  // namespace

double standing_pitch(const room::Audience& audience) {
    return kShoulderBreadthShare * audience.standing_height_m;
}

Blockers standing_people(const std::vector<room::CrossAisleLine>& aisles,
                         const room::Audience& audience) {
    Blockers out;
    for (const room::CrossAisleLine& aisle : aisles) {
        for (const room::PlaceAlong& place : aisle.standing) {
            out.heads.push_back(head_of(place, audience));
            out.walls.push_back(body_of(place, audience));
        }
    }
    return out;
}

std::vector<int> aisles_ahead(const room::SeatPlan& plan,
                              const std::vector<room::CrossAisleLine>& aisles,
                              int row) {
    std::vector<int> out;
    std::optional<int> here = row;
    while (here) {
        for (std::size_t i = 0; i < aisles.size(); ++i)
            if (aisles[i].row_behind == *here) out.push_back(static_cast<int>(i));
        here = plan.rows.at(static_cast<std::size_t>(*here)).row_in_front;
    }
    return out;
}

std::vector<std::optional<OverStanding>> over_standing(
    const geometry::Patch& surface,
    const picture::Opening& opening,
    const room::SeatPlan& plan,
    const std::vector<room::CrossAisleLine>& aisles,
    const room::Audience& audience) {
    const glm::dvec3 stature{0.0, audience.standing_height_m, 0.0};
    std::vector<std::optional<OverStanding>> out(plan.rows.size());
    for (std::size_t r = 0; r < plan.rows.size(); ++r) {
        const glm::dvec3 eye = plan.rows[r].centre_eye;
        const glm::dvec3 focus = nearest_focus(surface, opening, eye);
        for (const int aisle : aisles_ahead(plan, aisles, static_cast<int>(r))) {
            const glm::dvec3 crown = aisles[static_cast<std::size_t>(aisle)].middle + stature;
            const auto c_m = clearance(eye, crown, focus);
            if (!c_m || (out[r] && out[r]->c_m <= *c_m)) continue;
            out[r] = OverStanding{crown, focus, *c_m, aisle};
        }
    }
    return out;
}

std::vector<std::optional<double>> hidden_standing(const geometry::Patch& surface,
                                                   const picture::Opening& opening,
                                                   const room::SeatPlan& plan,
                                                   const std::vector<room::CrossAisleLine>& aisles,
                                                   const Blockers& house,
                                                   const room::Audience& audience) {
    std::vector<std::optional<double>> out(plan.seats.size());
    std::vector<Looking> looking;
    for (std::size_t i = 0; i < plan.seats.size(); ++i) {
        const room::Seat& seat = plan.seats[i];
        if (aisles_ahead(plan, aisles, seat.row).empty()) continue;
        looking.push_back({static_cast<int>(i), seat.eye});
    }
    if (looking.empty()) return out;
    Blockers all = house;
    const Blockers people = standing_people(aisles, audience);
    all.heads.insert(all.heads.end(), people.heads.begin(), people.heads.end());
    all.walls.insert(all.walls.end(), people.walls.begin(), people.walls.end());
    const std::vector<double> hidden = hidden_from_some(surface, opening, all, looking);
    for (std::size_t i = 0; i < looking.size(); ++i)
        out[static_cast<std::size_t>(looking[i].seat)] = hidden[i];
    return out;
}

}  // namespace rakeline::sight
