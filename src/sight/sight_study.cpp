// SPDX-License-Identifier: MIT
#include "sight/sight_study.hpp"

#include "sight/blockers.hpp"

namespace rakeline::sight {

namespace {

std::vector<glm::dvec3> eyes_of(const room::SeatPlan& plan) {
    std::vector<glm::dvec3> eyes;
    eyes.reserve(plan.seats.size());
    for (const room::Seat& seat : plan.seats)
        eyes.push_back(seat.eye);
    return eyes;
}

/// `hidden` gives the hidden picture of a format by its index.
template <class Hidden>
SightStudy study_with(const SightInput& in, Hidden hidden) {
    const std::vector<glm::dvec3> eyes = eyes_of(in.seats);
    const Blockers house = full_house(in.seats, in.blocks, in.audience);
    SightStudy out;
    out.formats.reserve(in.openings.size());
    for (std::size_t f = 0; f < in.openings.size(); ++f) {
        const picture::Opening& opening = in.openings[f];
        FormatSight format;
        format.seats.reserve(eyes.size());
        for (const glm::dvec3& eye : eyes)
            format.seats.push_back(viewing_angles(in.surface, opening, eye));
        format.rows = row_clearances(in.surface, opening, in.seats, in.blocks);
        format.ends = row_ends(in.surface, opening, in.seats, in.blocks);
        format.standing =
            over_standing(in.surface, opening, in.seats, in.cross_aisles, in.audience);
        format.hidden_standing =
            hidden_standing(in.surface, opening, in.seats, in.cross_aisles, house, in.audience);
        format.wheelchairs =
            wheelchair_sights(in.surface, opening, in.seats, in.blocks, house, in.audience);
        format.hidden = hidden(f, HiddenInput{.surface = in.surface,
                                              .opening = opening,
                                              .eyes = eyes,
                                              .heads = house.heads,
                                              .walls = house.walls});
        out.formats.push_back(std::move(format));
    }
    return out;
}

}  // namespace

SightStudy study_sight(const SightInput& in) {
    return study_with(in, [](std::size_t, const HiddenInput& one) { return hidden_picture(one); });
}

SightStudy SightCache::update(const SightInput& in) {
    hidden_.resize(in.openings.size());
    return study_with(in, [this](std::size_t format, const HiddenInput& one) {
        return hidden_[format].update(one);
    });
}

std::vector<HidingShare> seat_hiding_shares(const SightInput& in, int format, int seat) {
    const std::vector<glm::dvec3> eyes = eyes_of(in.seats);
    const Blockers house = full_house(in.seats, in.blocks, in.audience);
    return hiding_shares({.surface = in.surface,
                          .opening = in.openings.at(static_cast<std::size_t>(format)),
                          .eyes = eyes,
                          .heads = house.heads,
                          .walls = house.walls},
                         seat);
}

}  // namespace rakeline::sight
