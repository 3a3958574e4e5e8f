// SPDX-License-Identifier: MIT
#include "light/picture_bounce.hpp"

#include "base/units.hpp"
#include "light/stray_light.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace rakeline::light {
namespace {

/// The hall before the picture.
struct Box {
    double half_front = 0.0, half_booth = 0.0;  ///< half widths at the picture and at the booth
    double front = 0.0, booth = 0.0;            ///< z of both
    double height = 0.0;
    double splay_rad = 0.0;

    double half_at(double z) const {
        return half_front + (z - front) / (booth - front) * (half_booth - half_front);
    }
};

Box box_of(const StrayRoom& room, const UprightPicture& picture) {
    const auto half_at = [&](double z) {
        return 0.5 * room.width_m + z * std::tan(room.splay_rad);
    };
    const double front = std::min(picture.centre.z, 0.99 * room.length_m);
    return {half_at(front), half_at(room.length_m), front,
            room.length_m,  room.height_m,          room.splay_rad};
}

struct Element {
    glm::dvec3 place{0.0};
    glm::dvec3 normal{0.0};
    double area = 0.0;
};

void add(const Element& e, double reflectance, const UprightPicture& picture, FirstBounce& sum) {
    const double seen = seen_fraction(e.place, e.normal, picture);
    sum.landed_lm += seen * e.area;
    sum.reflected_lm += reflectance * seen * e.area;
    sum.returned_lm += reflectance * seen * seen * e.area;
}

/// Middle and length of cell `i` of a run from the picture back: cells grow with the distance.
struct Step {
    double middle = 0.0;
    double length = 0.0;
};

Step step_back(const Box& box, int i) {
    const auto edge = [&](int n) {
        const double share = static_cast<double>(n) / kBounceCells;
        return box.front + (box.booth - box.front) * share * share;
    };
    return {0.5 * (edge(i) + edge(i + 1)), edge(i + 1) - edge(i)};
}

/// Middle of cell `i` of equal ones between two bounds.
double middle(double low, double high, int i) {
    return low + (high - low) * (i + 0.5) / kBounceCells;
}

/// Both side walls, ceiling and floor along one cell of the hall's length.
void add_ring(const StrayRoom& room,
              const Box& box,
              const Step& back,
              const UprightPicture& picture,
              FirstBounce& sum) {
    const double half = box.half_at(back.middle);
    const double c = std::cos(box.splay_rad), s = std::sin(box.splay_rad);
    const double wall_area = box.height / kBounceCells * back.length / c;
    const double level_area = 2.0 * half / kBounceCells * back.length;
    const double floor = floor_reflectance(room);
    for (int i = 0; i < kBounceCells; ++i) {
        const double up = middle(0.0, box.height, i);
        const double across = middle(-half, half, i);
        const double wall = room.light.wall_reflectance;
        add({{half, up, back.middle}, {-c, 0.0, s}, wall_area}, wall, picture, sum);
        add({{-half, up, back.middle}, {c, 0.0, s}, wall_area}, wall, picture, sum);
        add({{across, box.height, back.middle}, {0.0, -1.0, 0.0}, level_area},
            room.light.ceiling_reflectance, picture, sum);
        add({{across, 0.0, back.middle}, {0.0, 1.0, 0.0}, level_area}, floor, picture, sum);
    }
}

void add_booth_wall(const StrayRoom& room,
                    const Box& box,
                    const UprightPicture& picture,
                    FirstBounce& sum) {
    const double area = 2.0 * box.half_booth * box.height / (kBounceCells * kBounceCells);
    for (int i = 0; i < kBounceCells; ++i) {
        for (int j = 0; j < kBounceCells; ++j) {
            const glm::dvec3 place{middle(-box.half_booth, box.half_booth, i),
                                   middle(0.0, box.height, j), box.booth};
            add({place, {0.0, 0.0, -1.0}, area}, room.light.wall_reflectance, picture, sum);
        }
    }
}

}  // namespace

double seen_fraction(const glm::dvec3& place,
                     const glm::dvec3& normal,
                     const UprightPicture& picture) {
    const glm::dvec2 half = 0.5 * picture.size;
    std::array<glm::dvec3, 4> ways = {{{-half.x, -half.y, 0.0},
                                       {half.x, -half.y, 0.0},
                                       {half.x, half.y, 0.0},
                                       {-half.x, half.y, 0.0}}};
    for (glm::dvec3& way : ways)
        way = glm::normalize(picture.centre + way - place);
    double sum = 0.0;
    for (std::size_t i = 0; i < ways.size(); ++i) {
        const glm::dvec3& from = ways[i];
        const glm::dvec3& to = ways[(i + 1) % ways.size()];
        const glm::dvec3 across = glm::cross(from, to);
        const double sine = glm::length(across);
        if (sine <= 0.0) continue;
        sum += std::atan2(sine, glm::dot(from, to)) * glm::dot(across, normal) / sine;
    }
    return std::abs(sum) / (2.0 * base::kPi);
}

FirstBounce first_bounce(const StrayRoom& room, const UprightPicture& picture) {
    const Box box = box_of(room, picture);
    FirstBounce sum;
    for (int i = 0; i < kBounceCells; ++i)
        add_ring(room, box, step_back(box, i), picture, sum);
    add_booth_wall(room, box, picture, sum);
    return sum;
}

}  // namespace rakeline::light
