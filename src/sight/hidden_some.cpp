// SPDX-License-Identifier: MIT
#include "sight/hidden_some.hpp"

#include <map>

namespace rakeline::sight {

std::vector<double> hidden_from_some(const geometry::Patch& surface,
                                     const picture::Opening& opening,
                                     Blockers house,
                                     std::span<const Looking> looking) {
    std::map<int, int> eye_of_seat;
    std::vector<glm::dvec3> eyes;
    for (const Looking& one : looking) {
        eye_of_seat.emplace(one.seat, static_cast<int>(eyes.size()));
        eyes.push_back(one.eye);
    }
    const auto renumber = [&](int& eye) {
        const auto found = eye_of_seat.find(eye);
        eye = found == eye_of_seat.end() ? -1 : found->second;
    };
    for (Head& head : house.heads)
        renumber(head.eye);
    for (Wall& wall : house.walls)
        renumber(wall.eye);
    std::vector<double> out(eyes.size());
    hidden_fractions({surface, opening, eyes, house.heads, house.walls}, {}, out);
    return out;
}

}  // namespace rakeline::sight
