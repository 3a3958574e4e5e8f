// SPDX-License-Identifier: MIT
#include "sight/crowd.hpp"
#include "sight/people.hpp"

namespace rakeline::sight {
namespace {

double eye_over_floor(const Person& person, const room::Audience& audience, bool wheelchair) {
    if (!wheelchair) {
        const room::Crowd& crowd = audience.crowd;
        return crowd.seat_height_m + person.sitting_eye_m - crowd.slump_m;
    }
    const double range_m = audience.wheelchair_eye_high_m - audience.wheelchair_eye_low_m;
    return audience.wheelchair_eye_low_m + person.place_in_range * range_m;
}

}  // namespace

void seat_crowd(const room::SeatPlan& plan,
                const room::Audience& audience,
                int k,
                SeatedCrowd& out) {
    out.eyes.clear();
    out.heads.clear();
    const room::Crowd& crowd = audience.crowd;
    for (std::size_t i = 0; i < plan.seats.size(); ++i) {
        const room::Seat& seat = plan.seats[i];
        const base::CountedRandom numbers{static_cast<std::uint64_t>(crowd.seed),
                                          static_cast<std::uint64_t>(k), i};
        const Person person = draw_person(numbers, crowd.women_fraction);
        const double up_m = eye_over_floor(person, audience, seat.wheelchair);
        const glm::dvec3 eye = seat.floor + glm::dvec3(0.0, up_m, 0.0);
        out.eyes.push_back(eye);
        if (person.comes_at_fraction >= crowd.taken_fraction) continue;
        out.heads.push_back(
            {eye, 0.5 * person.head_breadth_m, person.eye_to_crown_m, static_cast<int>(i)});
    }
}

}  // namespace rakeline::sight
