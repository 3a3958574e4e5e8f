// SPDX-License-Identifier: MIT
#include "study/slices.hpp"

#include "room/hall_surfaces.hpp"

namespace rakeline::study {
namespace {

std::vector<glm::dvec3> eyes(const room::SeatPlan& plan) {
    std::vector<glm::dvec3> out;
    out.reserve(plan.seats.size());
    for (const room::Seat& seat : plan.seats)
        out.push_back(seat.eye);
    return out;
}

std::vector<glm::dvec3> floors_of(const room::SeatPlan& plan) {
    std::vector<glm::dvec3> out;
    out.reserve(plan.seats.size());
    for (const room::Seat& seat : plan.seats)
        out.push_back(seat.floor);
    return out;
}

/// The floors that the beam is held over. Where the front floor runs up to the screen the beam has
/// to come down to the picture, and the top of a balcony's front is no floor.
std::vector<room::Platform> floors_under_beams(const room::SeatPlan& seats) {
    std::vector<room::Platform> out;
    for (const room::Platform& platform : seats.platforms) {
        if (platform.kind != room::PlatformKind::front &&
            platform.kind != room::PlatformKind::balcony_front) {
            out.push_back(platform);
        }
    }
    return out;
}

std::vector<picture::Balcony> balconies(const room::Layout& layout, const room::SeatPlan& seats) {
    std::vector<picture::Balcony> out;
    for (std::size_t b = 0; b < layout.seating.size(); ++b) {
        if (!layout.seating[b].raised) continue;
        picture::Balcony balcony;
        balcony.front_wall_m = layout.seating[b].front_wall_m;
        for (const room::Platform& platform : seats.platforms) {
            if (platform.block != static_cast<int>(b)) continue;
            const bool front = platform.kind == room::PlatformKind::balcony_front;
            (front ? balcony.fronts : balcony.floors).push_back(platform);
        }
        if (!balcony.floors.empty()) out.push_back(std::move(balcony));
    }
    return out;
}

light::StrayRoom stray_room(const room::Layout& layout, const room::SeatPlan& seats) {
    return {.width_m = layout.hall.width_m,
            .length_m = layout.hall.length_m,
            .height_m = layout.hall.height_m,
            .splay_rad = layout.hall.splay_rad,
            .seated_floor_m2 = room::seated_m2(layout.seating, seats, false),
            .seated_balcony_m2 = room::seated_m2(layout.seating, seats, true),
            .light = layout.stray_light};
}

sound::HallInput hall_of(const room::Layout& layout, const room::SeatPlan& seats) {
    return {.width_m = layout.hall.width_m,
            .length_m = layout.hall.length_m,
            .height_m = layout.hall.height_m,
            .splay_rad = layout.hall.splay_rad,
            .level_floor = room::largest_level_floor(seats, layout.seating),
            .surfaces = room::hall_surfaces(layout.hall, seats, layout.seating),
            .acoustics = layout.acoustics};
}

}  // namespace

room::SeatPlanInput seat_plan_slice(const room::Layout& layout) {
    return {.hall = layout.hall,
            .screen = layout.screen,
            .seating = layout.seating,
            .audience = layout.audience};
}

picture::PictureInput picture_slice(const room::Layout& layout, const room::SeatPlan& seats) {
    return {.screen = layout.screen,
            .formats = layout.formats,
            .projectors = layout.projectors,
            .lenses = layout.lenses,
            .platforms = floors_under_beams(seats),
            .balconies = balconies(layout, seats),
            .shell = picture::HallShell{.width_m = layout.hall.width_m,
                                        .height_m = layout.hall.height_m,
                                        .splay_rad = layout.hall.splay_rad},
            .booth_wall_back_m = layout.hall.length_m};
}

std::vector<room::CrossAisleLine> cross_aisles(const Study& study) {
    const room::Layout& layout = study.layout();
    return room::cross_aisle_lines(seat_plan_slice(layout), sight::standing_pitch(layout.audience));
}

LightSlice light_slice(const Study& study) {
    const room::Layout& layout = study.layout();
    return {.input = {.screen = layout.screen,
                      .projectors = layout.projectors,
                      .eyes = eyes(study.seats),
                      .reference_seat = study.reference_seat,
                      .stray = stray_room(layout, study.seats)},
            .pictures = picture_slice(layout, study.seats)};
}

SightSlice sight_slice(const Study& study) {
    const room::Layout& layout = study.layout();
    return {.seats = study.seats,
            .blocks = layout.seating,
            .audience = layout.audience,
            .cross_aisles = cross_aisles(study),
            .screen = layout.screen,
            .formats = layout.formats};
}

sight::SightInput sight_input(const Study& study) {
    return {.surface = study.picture.surface,
            .openings = study.picture.openings,
            .seats = study.seats,
            .blocks = study.layout().seating,
            .audience = study.layout().audience,
            .cross_aisles = cross_aisles(study)};
}

SoundSlice sound_slice(const Study& study) {
    const room::Layout& layout = study.layout();
    return {.screen = layout.screen,
            .temperature_c = layout.hall.temperature_c,
            .humidity_fraction = layout.hall.humidity_fraction,
            .loudspeakers = layout.loudspeakers,
            .ears = eyes(study.seats),
            .reference_seat = study.reference_seat,
            .peak_level_db = layout.peak_level_db,
            .hall = hall_of(layout, study.seats),
            .playback = layout.playback,
            .seat_floors = floors_of(study.seats),
            .standing_height_m = layout.audience.standing_height_m};
}

sound::SoundInput sound_input(const Study& study) {
    const SoundSlice slice = sound_slice(study);
    return {
        .surface = study.picture.surface,
        .sheet = sound::sheet_of(slice.screen),
        .air = {.temperature_c = slice.temperature_c, .humidity_fraction = slice.humidity_fraction},
        .loudspeakers = slice.loudspeakers,
        .ears = slice.ears,
        .reference_seat = slice.reference_seat,
        .peak_level_db = slice.peak_level_db,
        .acoustics = slice.hall.acoustics,
        .playback = slice.playback,
        .hall = slice.hall,
        .screen_height_m = slice.screen.height_m,
        .seat_floors = slice.seat_floors,
        .standing_height_m = slice.standing_height_m};
}

HoleSlice hole_slice(const Study& study) {
    HoleSlice out{.screen = study.layout().screen,
                  .pictures = picture_slice(study.layout(), study.seats),
                  .luminance_cdm2 = {},
                  .eyes = eyes(study.seats)};
    for (const light::PictureLight& light : study.light.lights)
        out.luminance_cdm2.push_back(light.reference_cdm2.value_or(0.0));
    return out;
}

sound::HoleInput hole_input(const Study& study) {
    const room::Layout& layout = study.layout();
    sound::HoleInput out{.surface = study.picture.surface,
                         .width_m = layout.screen.width_m,
                         .height_m = layout.screen.height_m,
                         .perforation = layout.screen.perforation,
                         .eyes = eyes(study.seats),
                         .pictures = {}};
    for (std::size_t i = 0; i < study.picture.pictures.size(); ++i) {
        const picture::ProjectedPicture& p = study.picture.pictures[i];
        const auto& machine = layout.projectors.at(static_cast<std::size_t>(p.projector));
        const double luminance = study.light.lights[i].reference_cdm2.value_or(0.0);
        if (machine.kind != room::SourceKind::digital || !(luminance > 0.0)) continue;
        out.pictures.push_back({p.projector, p.format, p.map, machine.imager.pixel_pitch_m,
                                study.picture.openings.at(static_cast<std::size_t>(p.format)).uv,
                                luminance});
    }
    return out;
}

}  // namespace rakeline::study
