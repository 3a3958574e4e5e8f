// SPDX-License-Identifier: MIT
#pragma once

#include "picture/any_room.hpp"
#include "study/study.hpp"
#include "support/demo_rooms.hpp"

#include <iterator>

/// Whole rooms for studies: any_room with a second projector and format, lenses, two blocks of
/// seats of which one stands off the centre, and loudspeakers.
namespace rakeline::tests {

inline room::Lens fitted_lens(const char* name, room::LensKind kind, double short_m) {
    return {.name = name,
            .kind = kind,
            .focal_length_m = short_m,
            .focal_length_long_m = kind == room::LensKind::zoom ? 1.6 * short_m : short_m,
            .f_number = 2.0,
            .image_circle_m = 0.05,
            .shift_up_max = 0.5,
            .shift_across_max = 0.2};
}

/// A second machine of the other kind beside the first, both with a lens that can be wrong, and a
/// second format that both make.
inline void add_machines(Dice& dice, room::Layout& layout) {
    layout.formats.push_back(
        {.name = "other", .aspect_ratio = dice.between(1.3, 2.6), .opening_width_m = {}});
    room::Projector& first = layout.projectors[0];
    room::Projector second = any_room(dice).projectors[0];
    second.name = "Second";
    second.across_m = first.across_m + dice.between(-0.5, 0.5);
    second.up_m = first.up_m;
    second.back_m = first.back_m;
    second.aim = {.roll_rad = second.aim.roll_rad};
    const double wanted = only_picture(picture_input(layout)).focal_length_m;
    const double near_wanted = std::clamp(wanted * dice.between(0.6, 1.1), 0.005, 0.6);
    layout.lenses = {fitted_lens("prime", room::LensKind::prime, near_wanted),
                     fitted_lens("zoom", room::LensKind::zoom, near_wanted)};
    layout.projectors.push_back(second);
    for (room::Projector& p : layout.projectors) {
        room::FormatUse other = p.formats[0];
        other.format = "other";
        other.focal_length_m.reset();
        other.lens = dice.one_in(2) ? "prime" : "zoom";
        p.formats.push_back(other);
    }
}

/// Seven seats and more a row, and room for them before the booth.
inline void add_seats(Dice& dice, room::Layout& layout) {
    const double front = room::screen_extent(layout.screen).value().foremost_m + 1.0;
    layout.hall.width_m = std::max(layout.hall.width_m, 14.0);
    layout.hall.height_m += 4.0;
    layout.hall.length_m += 12.0;
    for (room::Projector& p : layout.projectors)
        p.back_m += 12.0;
    room::SeatBlock stalls;
    stalls.rows = 4;
    stalls.seats_per_row = 9;
    stalls.seats_added_per_row = pick(dice, 3) - 1;
    stalls.first_row_back_m = front;
    stalls.riser_m = dice.between(0.0, 0.3);
    stalls.row_radius_m = dice.one_in(2) ? 0.0 : 20.0;
    stalls.aisles = {{.after_seat = 3, .width_m = 1.2}};
    stalls.cross_aisles = {{.after_row = 2, .width_m = 1.5}};
    stalls.wheelchair_places = {{.row = "C", .seat = 2}};
    room::SeatBlock side = stalls;
    side.name = "side";
    side.across_m = dice.between(-2.0, 2.0);
    side.rows = 3;
    side.first_row = "F";
    side.first_row_back_m = front + 7.0;
    side.first_row_up_m = 1.2;
    side.wheelchair_places.clear();
    layout.seating = {stalls, side};
}

inline void add_loudspeakers(Dice& dice, room::Layout& layout) {
    const room::Channel channels[] = {room::Channel::left, room::Channel::centre,
                                      room::Channel::right, room::Channel::surround};
    for (const room::Channel channel : channels) {
        room::Loudspeaker speaker;
        speaker.name = std::to_string(static_cast<int>(channel));
        speaker.channel = channel;
        speaker.behind_screen = false;
        speaker.across_m = dice.between(-3.0, 3.0);
        speaker.back_m = dice.between(0.0, 2.5);
        speaker.yaw_rad = dice.between(-0.5, 0.5);
        layout.loudspeakers.push_back(speaker);
    }
}

inline std::shared_ptr<const room::Brief> brief_of(const room::Layout& layout) {
    static const room::LimitSet limits = demo_brief("converted-hall-96")->limits;
    return std::make_shared<const room::Brief>(room::Brief{layout, limits});
}

/// A whole room in which check_layout finds nothing.
inline room::Layout random_layout(Dice& dice) {
    room::Layout layout = any_room(dice);
    while (picture::study_picture(picture_input(layout)).pictures.empty())
        layout = any_room(dice);
    add_machines(dice, layout);
    add_seats(dice, layout);
    add_loudspeakers(dice, layout);
    return layout;
}

}  // namespace rakeline::tests
