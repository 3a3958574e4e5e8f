// SPDX-License-Identifier: MIT
#pragma once

#include "base/units.hpp"
#include "light/stray_light.hpp"

#include <array>
#include <cmath>
#include <random>

/// Light followed photon by photon through a box of diffuse walls: what the integrating room of
/// light/stray_light.hpp leaves out is how unevenly surfaces see each other.
namespace rakeline::tests {

/// A hall as a box with the picture in the wall z = 0, in metres; floor y = 0, x from the middle.
struct TracedRoom {
    glm::dvec3 size{10.0, 5.0, 15.0};
    double wall = 0.1, ceiling = 0.1, floor = 0.1, picture = 1.0;
    glm::dvec2 picture_low{-4.0, 1.0}, picture_high{4.0, 4.0};

    double picture_area() const {
        const glm::dvec2 d = picture_high - picture_low;
        return d.x * d.y;
    }
};

class RoomTrace {
public:
    RoomTrace(const TracedRoom& room, unsigned seed) : room_(room), random_(seed) {}

    /// Mean illuminance of the picture, lx, from a lumen of an all-round light, first hits left
    /// out.
    double from_light(const glm::dvec3& place, int photons) {
        double sum = 0.0;
        for (int i = 0; i < photons; ++i)
            sum += follow(place, all_round(), 0);
        return sum / (photons * room_.picture_area());
    }

    /// The same of a lumen that the picture sends back evenly and diffusely.
    double from_picture(int photons) {
        double sum = 0.0;
        for (int i = 0; i < photons; ++i) {
            const glm::dvec2 spread = room_.picture_high - room_.picture_low;
            const glm::dvec2 at = room_.picture_low + spread * glm::dvec2(unit(), unit());
            sum += follow({at.x, at.y, 0.0}, diffuse({0.0, 0.0, 1.0}), 1);
        }
        return sum / (photons * room_.picture_area());
    }

private:
    double unit() { return std::uniform_real_distribution<double>(0.0, 1.0)(random_); }

    glm::dvec3 all_round() {
        const double z = 2.0 * unit() - 1.0;
        const double turn = 2.0 * base::kPi * unit();
        const double r = std::sqrt(1.0 - z * z);
        return {r * std::cos(turn), r * std::sin(turn), z};
    }

    /// By the cosine law about the inward normal.
    glm::dvec3 diffuse(const glm::dvec3& normal) {
        return glm::normalize(normal + 0.999999 * all_round());
    }

    struct Hit {
        glm::dvec3 place{0.0};
        glm::dvec3 normal{0.0};
        double reflectance = 0.0;
        bool picture = false;
    };

    Hit hit(const glm::dvec3& from, const glm::dvec3& way) const {
        const glm::dvec3 low{-0.5 * room_.size.x, 0.0, 0.0};
        const glm::dvec3 high{0.5 * room_.size.x, room_.size.y, room_.size.z};
        int axis = 0;
        double nearest = 1e300;
        for (int a = 0; a < 3; ++a) {
            if (way[a] == 0.0) continue;
            const double t = ((way[a] > 0.0 ? high[a] : low[a]) - from[a]) / way[a];
            if (t < nearest) {
                nearest = t;
                axis = a;
            }
        }
        Hit out;
        out.place = from + nearest * way;
        out.place[axis] = way[axis] > 0.0 ? high[axis] : low[axis];
        out.normal[axis] = way[axis] > 0.0 ? -1.0 : 1.0;
        out.reflectance = axis == 1 ? (way.y > 0.0 ? room_.ceiling : room_.floor) : room_.wall;
        out.picture = axis == 2 && way.z < 0.0 && out.place.x > room_.picture_low.x &&
                      out.place.x < room_.picture_high.x && out.place.y > room_.picture_low.y &&
                      out.place.y < room_.picture_high.y;
        if (out.picture) out.reflectance = room_.picture;
        return out;
    }

    /// What of one photon falls on the picture, after a bounce at the least.
    double follow(glm::dvec3 at, glm::dvec3 way, int bounces) {
        double left = 1.0;
        double sum = 0.0;
        for (; left > 1e-7 && bounces < 500; ++bounces) {
            const Hit next = hit(at, way);
            if (next.picture && bounces > 0) sum += left;
            left *= next.reflectance;
            at = next.place;
            way = diffuse(next.normal);
        }
        return sum;
    }

    TracedRoom room_;
    std::mt19937 random_;
};

inline light::StrayRoom stray_room(const TracedRoom& traced) {
    light::StrayRoom room{
        .width_m = traced.size.x, .length_m = traced.size.z, .height_m = traced.size.y};
    room.light.wall_reflectance = traced.wall;
    room.light.ceiling_reflectance = traced.ceiling;
    room.light.floor_reflectance = traced.floor;
    return room;
}

}  // namespace rakeline::tests
