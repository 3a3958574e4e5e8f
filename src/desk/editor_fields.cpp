// SPDX-License-Identifier: MIT
#include "desk/editor_fields.hpp"

#include <algorithm>
#include <array>
#include <initializer_list>
#include <span>

namespace rakeline::desk {
namespace {

using study::Subject;

constexpr auto kRoom = std::to_array<std::string_view>(
    {"name", "note", "limits_file", "hall", "seating", "audience.reference_seat"});
constexpr auto kPicture = std::to_array<std::string_view>({"screen.width_m",
                                                           "screen.height_m",
                                                           "screen.sill_m",
                                                           "screen.setback_m",
                                                           "screen.radius_m",
                                                           "screen.tilt_deg",
                                                           "screen.masking",
                                                           "screen.moving_edge",
                                                           "formats",
                                                           "projectors.*.name",
                                                           "projectors.*.kind",
                                                           "projectors.*.across_m",
                                                           "projectors.*.up_m",
                                                           "projectors.*.back_m",
                                                           "projectors.*.aim",
                                                           "projectors.*.port.across_m",
                                                           "projectors.*.port.up_m",
                                                           "projectors.*.port.width_m",
                                                           "projectors.*.port.height_m",
                                                           "projectors.*.film_resolution_lp_mm",
                                                           "projectors.*.imager",
                                                           "projectors.*.formats",
                                                           "lenses"});
constexpr auto kLight = std::to_array<std::string_view>(
    {"screen.surface", "projectors.*.flux", "projectors.*.port", "projectors.*.lit_width_m",
     "projectors.*.lit_height_m", "projectors.*.contrast", "projectors.*.supply", "stray_light",
     "programme"});
constexpr auto kSight = std::to_array<std::string_view>({"seating", "audience", "screen.sill_m"});
constexpr auto kSound = std::to_array<std::string_view>(
    {"loudspeakers", "screen.perforation", "screen.sheet_thickness_m", "screen.sheet_mass_kg_m2",
     "screen.loss_table", "peak_level_db", "playback", "acoustics", "hall.temperature_c",
     "hall.humidity_fraction"});

std::span<const std::string_view> paths_of(Subject subject) {
    switch (subject) {
        case Subject::room:
            return kRoom;
        case Subject::picture:
            return kPicture;
        case Subject::light:
            return kLight;
        case Subject::sight:
            return kSight;
        case Subject::sound:
            break;
    }
    return kSound;
}

/// Whether `part` is `whole` or lies inside it.
bool within(std::string_view part, std::string_view whole) {
    return part.starts_with(whole) && (part.size() == whole.size() || part[whole.size()] == '.');
}

/// A field that means something only for some values of a choice beside it.
struct Waits {
    std::string_view field;
    std::string_view choice;
    unsigned values;  ///< bit i: applies when index i is chosen
};

constexpr unsigned kFirst = 1, kSecond = 2, kThird = 4, kAllButFirst = ~kFirst;
constexpr auto kWaits = std::to_array<Waits>({
    {"hall.floor_profile", "hall.floor", kSecond},
    {"screen.moving_edge", "screen.masking", kSecond},
    {"screen.surface.half_gain_angle_deg", "screen.surface.lobe", kSecond | kThird},
    {"screen.surface.matte_gain", "screen.surface.lobe", kSecond | kThird},
    {"screen.perforation.hole_diameter_m", "screen.perforation.pattern", kAllButFirst},
    {"screen.perforation.pitch_m", "screen.perforation.pattern", kAllButFirst},
    {"screen.perforation.angle_deg", "screen.perforation.pattern", kAllButFirst},
    {"lenses.*.focal_length_long_m", "lenses.*.kind", kSecond},
    {"projectors.*.lit_width_m", "projectors.*.kind", kFirst},
    {"projectors.*.lit_height_m", "projectors.*.kind", kFirst},
    {"projectors.*.film_resolution_lp_mm", "projectors.*.kind", kFirst},
    {"projectors.*.imager", "projectors.*.kind", kSecond},
    {"projectors.*.formats.*.plate_allowance_m", "projectors.*.kind", kFirst},
    {"projectors.*.formats.*.plate_corner_radius_m", "projectors.*.kind", kFirst},
    {"projectors.*.formats.*.gate_width_m", "projectors.*.kind", kFirst},
    {"projectors.*.formats.*.gate_height_m", "projectors.*.kind", kFirst},
    {"projectors.*.formats.*.pixels_wide", "projectors.*.kind", kSecond},
    {"projectors.*.formats.*.pixels_high", "projectors.*.kind", kSecond},
    {"projectors.*.aim.yaw_deg", "projectors.*.aim.mode", kSecond},
    {"projectors.*.aim.pitch_deg", "projectors.*.aim.mode", kSecond},
    {"projectors.*.flux.measured_flux_lm", "projectors.*.flux.entry", kFirst},
    {"projectors.*.flux.lamp_current_a", "projectors.*.flux.entry", kSecond},
    {"projectors.*.flux.lamp_voltage_v", "projectors.*.flux.entry", kSecond},
    {"projectors.*.flux.lamp_efficacy_lm_w", "projectors.*.flux.entry", kSecond},
    {"projectors.*.flux.ageing_fraction", "projectors.*.flux.entry", kSecond},
    {"projectors.*.flux.collection_fraction", "projectors.*.flux.entry", kSecond},
    {"projectors.*.flux.shutter_fraction", "projectors.*.flux.entry", kSecond},
    {"projectors.*.flux.gate_fraction", "projectors.*.flux.entry", kSecond},
    {"projectors.*.flux.lens_transmittance", "projectors.*.flux.entry", kSecond},
    {"seating.*.slope_deg", "seating.*.floor", kSecond},
    {"seating.*.riser_m", "seating.*.floor", kThird},
    {"seating.*.wanted_c_m", "seating.*.floor", 8U},
    {"seating.*.flights", "seating.*.floor", 16U},
    {"loudspeakers.*.coverage_across_deg", "loudspeakers.*.directivity", kSecond},
    {"loudspeakers.*.coverage_up_deg", "loudspeakers.*.directivity", kSecond},
    {"loudspeakers.*.coverage_table", "loudspeakers.*.directivity", kSecond},
});

}  // namespace

bool belongs(Subject subject, std::string_view path) {
    const auto paths = paths_of(subject);
    return std::any_of(paths.begin(), paths.end(),
                       [path](std::string_view whole) { return within(path, whole); });
}

bool holds_fields_of(Subject subject, std::string_view path) {
    const auto paths = paths_of(subject);
    return std::any_of(paths.begin(), paths.end(), [path](std::string_view field) {
        return within(field, path) || within(path, field);
    });
}

bool applies(std::string_view path, const std::map<std::string, int>& choices) {
    for (const Waits& wait : kWaits) {
        if (!within(path, wait.field)) continue;
        const auto choice = choices.find(std::string(wait.choice));
        if (choice != choices.end() && ((wait.values >> choice->second) & 1U) == 0) return false;
    }
    return true;
}

}  // namespace rakeline::desk
