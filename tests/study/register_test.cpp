// SPDX-License-Identifier: MIT
#include "study/register.hpp"

#include <doctest/doctest.h>

#include <set>
#include <string>

using namespace rakeline::study;

namespace {

/// Ids that window, command line, reports and outside checks have agreed on.
struct Agreed {
    const char* id;
    Per per;
};

constexpr Per kPf{.projector = true, .format = true};
constexpr Per kF{.format = true};
constexpr Per kPfs{.projector = true, .format = true, .seat = true};
constexpr Per kFs{.format = true, .seat = true};

const Agreed kAgreed[] = {
    {"picture.throw", kPf},
    {"picture.throw_ratio", kPf},
    {"picture.focal_length", kPf},
    {"picture.focal_length_field", kPf},
    {"picture.width", kF},
    {"picture.height", kF},
    {"picture.area", kF},
    {"picture.angle_down", kPf},
    {"picture.angle_across", kPf},
    {"picture.width_top", kPf},
    {"picture.width_bottom", kPf},
    {"picture.height_left", kPf},
    {"picture.height_right", kPf},
    {"picture.keystone_vertical", kPf},
    {"picture.keystone_horizontal", kPf},
    {"picture.side_slope", kPf},
    {"picture.bow_top", kPf},
    {"picture.bow_bottom", kPf},
    {"picture.overfill", kPf},
    {"picture.crop", kPf},
    {"picture.beam_clearance", kPf},
    {"picture.shift_short", kPf},
    {"picture.field_lost", kPf},
    {"picture.image_circle_spare", kPf},
    {"picture.throw_ratio_short", kPf},
    {"picture.throw_ratio_long", kPf},
    {"picture.focus_distance", kPf},
    {"picture.head_clearance", kPf},
    {"picture.balcony_clearance", kPf},
    {"picture.ceiling_clearance", kPf},
    {"picture.wall_clearance", kPf},
    {"picture.port_width_needed", {.projector = true}},
    {"picture.port_height_needed", {.projector = true}},
    {"picture.port_centre_across", {.projector = true}},
    {"picture.port_centre_up", {.projector = true}},
    {"picture.port_margin", kPf},
    {"picture.blur", kPf},
    {"picture.blur_gate", kPf},
    {"picture.film_detail", kPf},
    {"picture.blur_ratio", kPf},
    {"picture.plate_width", kPf},
    {"picture.plate_height", kPf},
    {"picture.plate_left", kPf},
    {"picture.plate_right", kPf},
    {"picture.plate_top", kPf},
    {"picture.plate_bottom", kPf},
    {"picture.enlargement", kPf},
    {"picture.focal_length_covering", kPf},
    {"picture.overfill_left", kPf},
    {"picture.overfill_right", kPf},
    {"picture.overfill_top", kPf},
    {"picture.overfill_bottom", kPf},
    {"picture.overfill_left_share", kPf},
    {"picture.overfill_right_share", kPf},
    {"picture.overfill_top_share", kPf},
    {"picture.overfill_bottom_share", kPf},
    {"picture.mask_left", kF},
    {"picture.mask_right", kF},
    {"picture.mask_top", kF},
    {"picture.mask_bottom", kF},
    {"light.flux", kPf},
    {"light.port_transmittance", kPf},
    {"light.illuminance", kPf},
    {"light.luminance", kPfs},
    {"light.luminance_reference", kPf},
    {"light.side_ratio", kPfs},
    {"light.corner_ratio", kPfs},
    {"light.flux_needed", kPf},
    {"light.lamp_power", kPf},
    {"light.setting", kPf},
    {"light.reading_uncertainty", kPf},
    {"light.reading_low", kPf},
    {"light.reading_high", kPf},
    {"light.lamp_size", kPf},
    {"light.end_margin", kPf},
    {"light.exhaust_rise", {.projector = true}},
    {"light.cost_show", {.projector = true}},
    {"light.stereo_low", kPf},
    {"light.stereo_high", kPf},
    {"light.stray_illuminance", kF},
    {"light.bounce_fraction", kF},
    {"light.black_level", kPf},
    {"light.sequential_contrast", kPf},
    {"light.in_picture_contrast", kPf},
    {"sight.subtended_width", kFs},
    {"sight.subtended_height", kFs},
    {"sight.elevation_top", kFs},
    {"sight.elevation_bottom", kFs},
    {"sight.head_turn", kFs},
    {"sight.apparent_keystone", kFs},
    {"sight.pixels_per_degree", kPfs},
    {"sight.line_pairs_per_degree", kPfs},
    {"sight.detail_acuity", kPfs},
    {"sight.off_axis", kFs},
    {"sight.off_axis_far", kFs},
    {"sight.distance_widths", kFs},
    {"sight.distance_heights", kFs},
    {"sight.c_value", {.format = true, .row = true}},
    {"sight.clear_chance", kFs},
    {"sight.clear_chance_low", kFs},
    {"sight.clear_chance_high", kFs},
    {"sight.room_clear_chance", kF},
    {"sight.room_clear_chance_low", kF},
    {"sight.room_clear_chance_high", kF},
    {"sight.seats_clear", kF},
    {"sight.crowds_drawn", kF},
    {"sound.screen_loss", {.band = true}},
    {"sound.screen_loss_least", {.band = true}},
    {"sound.screen_loss_most", {.band = true}},
    {"sound.screen_loss_10k", {}},
    {"sound.gap", {.loudspeaker = true}},
    {"sound.gap_spacing", {.loudspeaker = true}},
    {"sound.gap_ripple", {.loudspeaker = true}},
    {"sound.equalisation", {.loudspeaker = true, .band = true}},
    {"sound.equalisation_headroom", {.loudspeaker = true}},
    {"sound.direct_level", {.loudspeaker = true, .band = true, .seat = true}},
    {"sound.level_spread", {.loudspeaker = true, .band = true}},
    {"sound.arrival_spread", {.seat = true}},
    {"sound.outer_lead", {.seat = true}},
    {"sound.screen_lead", {.seat = true}},
    {"sound.delay_suggested", {.loudspeaker = true}},
    {"sound.image_across", kFs},
    {"sound.image_up", kFs},
    {"sound.decay_sabine", {.band = true}},
    {"sound.decay_eyring", {.band = true}},
    {"sound.noise_allowed", {.band = true}},
    {"sound.reflection_first_delay", {.loudspeaker = true, .seat = true}},
    {"sound.reflection_strongest", {.loudspeaker = true, .seat = true}},
    {"sound.echo", {.loudspeaker = true, .seat = true}},
    {"sound.amplifier_power", {.loudspeaker = true}},
    {"sound.hole_visible_from", {}},
};

}  // namespace

TEST_SUITE("study/register") {
    TEST_CASE("the agreed figures are there, per what was agreed") {
        for (const Agreed& agreed : kAgreed) {
            INFO(agreed.id);
            const FigureDefinition* d = find_definition(agreed.id);
            REQUIRE(d != nullptr);
            CHECK(d->per == agreed.per);
        }
    }

    TEST_CASE("every id is unique and begins with its subject") {
        std::set<std::string> seen;
        for (const FigureDefinition& d : figure_register()) {
            INFO(d.id);
            CHECK(seen.insert(d.id).second);
            CHECK(std::string(d.id).starts_with(std::string(subject_name(d.subject)) + "."));
        }
        CHECK(seen.size() >= std::size(kAgreed));
    }

    TEST_CASE("every entry has words, a formula, a source and a function") {
        for (const FigureDefinition& d : figure_register()) {
            INFO(d.id);
            CHECK_FALSE(std::string(d.label).empty());
            CHECK(std::string(d.meaning).ends_with("."));
            CHECK_FALSE(std::string(d.formula).empty());
            CHECK_FALSE(std::string(d.source).empty());
            CHECK(std::string(d.sentence).find("{value}") != std::string::npos);
            CHECK((d.evaluate != nullptr));
        }
    }

    TEST_CASE("subjects stand in their order") {
        Subject last = Subject::room;
        for (const FigureDefinition& d : figure_register()) {
            CHECK(d.subject >= last);
            last = d.subject;
        }
    }
}
