// SPDX-License-Identifier: MIT
#pragma once

#include "picture/random_room.hpp"
#include "room/layout_file.hpp"
#include "room/screen_extent.hpp"

#include <algorithm>

/// Rooms with one projector and one format in all the ways that the checks of a layout pass: flat
/// and curved, leaning, film and imager, aimed at the picture or by angles, rolled, shifted,
/// squeezed, zoomed, the projector off the centre.
namespace rakeline::tests {

inline int pick(Dice& dice, int n) {
    return std::min(n - 1, static_cast<int>(dice.between(0.0, n)));
}

inline room::Screen any_screen(Dice& dice) {
    room::Screen s;
    s.width_m = dice.between(3.0, 25.0);
    s.height_m = s.width_m / dice.between(1.3, 2.8);
    s.tilt_rad = base::radians(dice.between(-15.0, 15.0));
    s.sill_m = dice.between(0.3, 2.5);
    // The leaning edge stays before the screen wall.
    s.setback_m = 0.5 * s.height_m * std::sin(std::abs(s.tilt_rad)) + dice.between(0.1, 2.0);
    if (!dice.one_in(3)) {
        // Close to half a cylinder as often as nearly flat.
        const double share = std::exp(dice.between(std::log(0.55), std::log(20.0)));
        s.radius_m = s.width_m * share;
    }
    s.masking = static_cast<room::MaskingMode>(pick(dice, 4));
    s.moving_edge = static_cast<room::MovingEdge>(pick(dice, 3));
    return s;
}

inline room::Format any_format(Dice& dice, const room::Screen& screen) {
    room::Format f{.name = "only", .aspect_ratio = dice.between(1.2, 2.8), .opening_width_m = {}};
    const double largest = std::min(screen.width_m, f.aspect_ratio * screen.height_m);
    if (dice.one_in(2)) f.opening_width_m = largest * dice.between(0.5, 1.0);
    return f;
}

inline void any_aim(Dice& dice, const room::Screen& screen, room::Projector& p) {
    p.aim.roll_rad = base::radians(dice.between(-45.0, 45.0));
    if (dice.one_in(2)) return;
    p.aim.mode = room::AimMode::angles;
    const double across = screen.width_m * dice.between(-0.3, 0.3);
    const double up = screen.sill_m + screen.height_m * dice.between(0.2, 0.8);
    const double away = p.back_m - screen.setback_m;
    p.aim.yaw_rad = std::atan2(across - p.across_m, away);
    p.aim.pitch_rad = std::atan2(p.up_m - up, std::hypot(across - p.across_m, away));
}

/// Film in about the ratio of the format, or pixels of an imager.
inline void any_gate(Dice& dice, double aspect, room::Projector& p, room::FormatUse& use) {
    const double ratio = aspect * dice.between(0.8, 1.25) / use.squeeze;
    if (dice.one_in(2)) {
        p.kind = room::SourceKind::film;
        use.gate_width_m = dice.between(0.006, 0.035);
        use.gate_height_m = std::clamp(use.gate_width_m / ratio, 0.002, 0.1);
        p.lit_width_m = use.gate_width_m;
        p.lit_height_m = use.gate_height_m;
        return;
    }
    p.imager.pixel_pitch_m = dice.between(5e-6, 15e-6);
    use.pixels_wide = 1000 + pick(dice, 3097);
    use.pixels_high = static_cast<int>(use.pixels_wide / ratio);
    p.imager.pixels_wide = use.pixels_wide;
    p.imager.pixels_high = use.pixels_high;
}

inline room::FormatUse any_use(Dice& dice, const room::Layout& layout, room::Projector& p) {
    room::FormatUse use;
    use.format = layout.formats[0].name;
    if (dice.one_in(2)) use.squeeze = dice.one_in(2) ? 2.0 : dice.between(0.5, 2.5);
    any_gate(dice, layout.formats[0].aspect_ratio, p, use);
    use.shift_up = dice.between(-0.4, 0.4);
    use.shift_across = dice.between(-0.4, 0.4);
    if (!dice.one_in(2)) return use;
    const double gate_m = p.kind == room::SourceKind::film
                              ? use.gate_width_m
                              : use.pixels_wide * p.imager.pixel_pitch_m;
    const double field_rule = gate_m * use.squeeze * p.back_m / layout.screen.width_m;
    use.focal_length_m = std::clamp(field_rule * dice.between(0.7, 1.2), 0.005, 1.0);
    return use;
}

inline room::Layout any_room(Dice& dice) {
    room::Layout layout;
    layout.screen = any_screen(dice);
    layout.formats = {any_format(dice, layout.screen)};
    const room::ScreenExtent extent = room::screen_extent(layout.screen).value();
    const double width = layout.screen.width_m;
    layout.hall.length_m = std::max(3.0, extent.foremost_m + width * dice.between(0.7, 2.5));
    room::Projector p;
    p.across_m = width * dice.between(-0.4, 0.4);
    p.up_m = layout.screen.sill_m + layout.screen.height_m * dice.between(-0.2, 2.0);
    p.back_m = layout.hall.length_m + dice.between(0.1, 1.0);
    layout.hall.height_m = std::max({2.0, extent.high_m + 0.5, p.up_m + 0.5});
    layout.hall.width_m = width + 1.0;
    any_aim(dice, layout.screen, p);
    p.formats = {any_use(dice, layout, p)};
    layout.projectors = {p};
    return layout;
}

/// What the study of the picture reads of a room without seats.
inline picture::PictureInput picture_input(const room::Layout& layout) {
    return {.screen = layout.screen,
            .formats = layout.formats,
            .projectors = layout.projectors,
            .lenses = layout.lenses,
            .platforms = {},
            .booth_wall_back_m = layout.hall.length_m};
}

/// `check(layout)` for so many valid rooms.
template <class Check>
void for_layouts(unsigned seed, int count, Check check) {
    Dice dice(seed);
    for (int i = 0; i < count; ++i) {
        INFO("seed ", seed, ", case ", i);
        const room::Layout layout = any_room(dice);
        const base::Problems problems = room::check_layout(layout);
        INFO(base::text(problems));
        REQUIRE(problems.empty());
        check(layout);
    }
}

/// `check(layout, picture)` for so many valid rooms that make a picture. What is drawn and makes
/// none (a picture that runs off a strongly curved screen) is not counted, and stays rare.
template <class Check>
void for_rooms(unsigned seed, int count, Check check) {
    int made = 0;
    for_layouts(seed, count + count / 5, [&](const room::Layout& layout) {
        if (made == count) return;
        const picture::PictureStudy study = picture::study_picture(picture_input(layout));
        REQUIRE(study.pictures.size() + study.none.size() == 1);
        if (study.pictures.empty()) return;
        ++made;
        check(layout, study.pictures.front());
    });
    CHECK(made == count);
}

}  // namespace rakeline::tests
