// SPDX-License-Identifier: MIT
#include "light/stray_light.hpp"

#include "base/assert.hpp"
#include "base/units.hpp"

#include <algorithm>
#include <cmath>

namespace rakeline::light {
namespace {

/// Areas and what of the light on them they reflect, added up.
class Surfaces {
public:
    void add(double area_m2, double reflectance) {
        area_m2_ += area_m2;
        reflecting_m2_ += area_m2 * reflectance;
    }
    double area_m2() const { return area_m2_; }
    double mean_reflectance() const { return area_m2_ > 0.0 ? reflecting_m2_ / area_m2_ : 0.0; }

private:
    double area_m2_ = 0.0;
    double reflecting_m2_ = 0.0;
};

/// What of the hall's level area seats cover, and the whole of it.
struct Level {
    double plan_m2 = 0.0;
    double seated_m2 = 0.0;
};

double booth_width_m(const StrayRoom& room) {
    return room.width_m + 2.0 * room.length_m * std::tan(room.splay_rad);
}

Level level_of(const StrayRoom& room) {
    const double plan_m2 = 0.5 * (room.width_m + booth_width_m(room)) * room.length_m;
    return {plan_m2, std::min(room.seated_floor_m2, plan_m2)};
}

/// Everything but the picture.
Surfaces other_surfaces(const StrayRoom& room, double picture_area_m2) {
    const room::StrayLight& of = room.light;
    const Level level = level_of(room);
    const double sides_m2 = 2.0 * room.height_m * room.length_m / std::cos(room.splay_rad);
    const double screen_wall_m2 = std::max(0.0, room.width_m * room.height_m - picture_area_m2);
    Surfaces all;
    all.add(sides_m2 + screen_wall_m2 + booth_width_m(room) * room.height_m, of.wall_reflectance);
    all.add(level.plan_m2, of.ceiling_reflectance);
    all.add(level.plan_m2 - level.seated_m2, of.floor_reflectance);
    all.add(level.seated_m2 + room.seated_balcony_m2, of.audience_reflectance);
    return all;
}

}  // namespace

double floor_reflectance(const StrayRoom& room) {
    const Level level = level_of(room);
    const double seated = level.seated_m2 / level.plan_m2;
    return seated * room.light.audience_reflectance + (1.0 - seated) * room.light.floor_reflectance;
}

Enclosure enclosure(const StrayRoom& room, double picture_area_m2, double picture_reflectance) {
    const double reflectance = std::min(1.0, picture_reflectance);
    Surfaces all = other_surfaces(room, picture_area_m2);
    all.add(picture_area_m2, reflectance);
    return {.area_m2 = all.area_m2(),
            .mean_reflectance = all.mean_reflectance(),
            .picture_area_m2 = picture_area_m2,
            .picture_reflectance = reflectance};
}

double returned_lx(const Enclosure& room, double flux_lm) {
    RL_ASSERT(room.area_m2 > 0.0 && room.mean_reflectance < 1.0);
    return flux_lm * room.mean_reflectance / (room.area_m2 * (1.0 - room.mean_reflectance));
}

double bounce_fraction(const Enclosure& room, const FirstBounce& first) {
    return room.picture_reflectance *
           (first.returned_lm / room.picture_area_m2 + returned_lx(room, first.reflected_lm));
}

double direct_lx(const room::HouseLight& light, const glm::dvec3& place, const glm::dvec3& normal) {
    const glm::dvec3 way = glm::dvec3(light.across_m, light.up_m, light.back_m) - place;
    const double toward = glm::dot(way, normal);
    if (toward <= 0.0) return 0.0;
    const double distance_m = std::max(glm::length(way), kNearestLight_m);
    const double cosine = toward / glm::length(way);
    return light.flux_lm * cosine / (4.0 * base::kPi * distance_m * distance_m);
}

StrayOnScreen stray_on_screen(const StrayRoom& room,
                              const Enclosure& enclosure,
                              const ScreenSpot& spot,
                              const GainModel& gain) {
    StrayOnScreen out{.room = enclosure,
                      .first = first_bounce(room, {spot.place, spot.picture_size})};
    out.bounce_fraction = bounce_fraction(enclosure, out.first);
    for (const room::HouseLight& light : room.light.lights) {
        const double lx = direct_lx(light, spot.place, spot.normal);
        out.house_flux_lm += light.flux_lm;
        out.direct_lx += lx;
        if (!spot.eye || lx <= 0.0) continue;
        const glm::dvec3 from(light.across_m, light.up_m, light.back_m);
        const double toward_eye = gain.gain({.incoming = glm::normalize(spot.place - from),
                                             .toward_eye = glm::normalize(*spot.eye - spot.place),
                                             .normal = spot.normal});
        out.direct_cdm2 += lx * toward_eye / base::kPi;
    }
    out.returned_lx = returned_lx(enclosure, out.house_flux_lm);
    if (spot.eye) out.returned_cdm2 = out.returned_lx * enclosure.picture_reflectance / base::kPi;
    return out;
}

}  // namespace rakeline::light
