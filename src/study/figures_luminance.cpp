// SPDX-License-Identifier: MIT
#include "study/figure_values.hpp"
#include "study/light_cells.hpp"

#include <algorithm>
#include <string_view>
#include <vector>

/// What the seats see of the light: how even, where it is brightest, and how far apart they are.
namespace rakeline::study {
namespace {

using base::Unit;
using light::PictureLight;

std::optional<double> side_evenness(const Cell& c, Working& w) {
    const PictureLight* l = light_of(c);
    if (!l) return std::nullopt;
    record_points(*l, c.index,
                  {light::kCentre, light::kLeft, light::kRight, light::kTop, light::kBottom}, w);
    return light::side_evenness(*l, c.index);
}

std::optional<double> corner_evenness(const Cell& c, Working& w) {
    const PictureLight* l = light_of(c);
    if (!l) return std::nullopt;
    record_points(*l, c.index,
                  {light::kCentre, light::kTopLeft, light::kTopRight, light::kBottomRight,
                   light::kBottomLeft},
                  w);
    return light::corner_evenness(*l, c.index);
}

const light::HotSpot* hot_spot_of(const Cell& c) {
    const PictureLight* l = light_of(c);
    if (!l) return nullptr;
    const auto& spot = l->hot_spots.at(static_cast<std::size_t>(c.index));
    return spot ? &*spot : nullptr;
}

std::optional<double> hot_spot_across(const Cell& c, Working&) {
    const light::HotSpot* spot = hot_spot_of(c);
    return spot ? std::optional(spot->place.x) : std::nullopt;
}

std::optional<double> hot_spot_up(const Cell& c, Working&) {
    const light::HotSpot* spot = hot_spot_of(c);
    return spot ? std::optional(spot->place.y) : std::nullopt;
}

std::optional<double> hot_spot_ratio(const Cell& c, Working& w) {
    const light::HotSpot* spot = hot_spot_of(c);
    if (!spot) return std::nullopt;
    w.input("x", "hot spot from the centre, across, in picture widths", spot->place.x,
            Unit::fraction);
    w.input("y", "hot spot from the centre, up, in picture heights", spot->place.y, Unit::fraction);
    record_points(*light_of(c), c.index, {light::kCentre}, w);
    return spot->ratio;
}

const std::string& seat_name(const Cell& c, int seat) {
    return c.study.seats.seats.at(static_cast<std::size_t>(seat)).name;
}

std::optional<light::SeatRange> range_of(const Cell& c, Working& w) {
    const PictureLight* l = light_of(c);
    const auto range = l ? light::seat_range(*l) : std::nullopt;
    if (!range) return std::nullopt;
    w.note("least from seat " + seat_name(c, range->lowest_seat) + ", most from seat " +
           seat_name(c, range->highest_seat));
    return range;
}

std::optional<double> luminance_lowest(const Cell& c, Working& w) {
    const auto range = range_of(c, w);
    return range ? std::optional(range->lowest_cdm2) : std::nullopt;
}

std::optional<double> luminance_highest(const Cell& c, Working& w) {
    const auto range = range_of(c, w);
    return range ? std::optional(range->highest_cdm2) : std::nullopt;
}

std::optional<double> seat_evenness(const Cell& c, Working& w) {
    const auto range = range_of(c, w);
    if (!range) return std::nullopt;
    return w.input("L_low", "centre toward the seat that sees least", range->lowest_cdm2,
                   Unit::cd_per_m2) /
           w.input("L_high", "centre toward the seat that sees most", range->highest_cdm2,
                   Unit::cd_per_m2);
}

void record_window(const std::vector<const room::Limit*>& windows, Working& w) {
    for (const room::Limit* limit : windows) {
        if (limit->least) w.input("L_least", "of the window", *limit->least, Unit::cd_per_m2);
        if (limit->most) w.input("L_most", "of the window", *limit->most, Unit::cd_per_m2);
        w.note("window: " + limit->source);
    }
}

std::optional<double> seats_within(const Cell& c, Working& w) {
    const PictureLight* l = light_of(c);
    const auto windows = reference_windows(c.study, c.projector);
    if (!l || l->gain.empty() || windows.empty()) return std::nullopt;
    int within = 0;
    for (int seat = 0; static_cast<std::size_t>(seat) < l->gain.size(); ++seat) {
        const double here = light::luminance_cdm2(*l, seat, light::kCentre);
        within += std::all_of(windows.begin(), windows.end(), [&](const room::Limit* limit) {
            return verdict_of(here, *limit) != Verdict::missed;
        });
    }
    record_window(windows, w);
    const auto seats = static_cast<double>(l->gain.size());
    return w.input("n", "seats whose reading of the centre lies in the window", within,
                   Unit::count) /
           w.input("N", "seats", seats, Unit::count);
}

constexpr Per kPf{.projector = true, .format = true};
constexpr Per kPfs{.projector = true, .format = true, .seat = true};
constexpr const char* kSearched = "derived: searched over the opening (light/hot_spot.hpp)";

std::vector<FigureDefinition> evenness_entries() {
    return {
        {"light.side_evenness", Subject::light, "Evenness, centre and sides", Unit::fraction, kPfs,
         "Darkest over brightest of the five points at which theatres are measured: the centre and "
         "the middles of the four sides, toward the seat.",
         "min(L_centre, L_left, L_right, L_top, L_bottom) / max(the same)",
         "measuring points of theatres: ISO 26431-1:2008, as reported; 5 % inside the edges: "
         "common "
         "practice, no source",
         "Centre and sides are even to {value} from seat {seat}, {projector} in {format}",
         side_evenness},
        {"light.corner_evenness", Subject::light, "Evenness, centre and corners", Unit::fraction,
         kPfs,
         "Darkest over brightest of the five points at which review rooms are measured: the centre "
         "and the four corners, toward the seat.",
         "min(L_centre, L_corner) / max(the same)",
         "measuring points of review rooms: ISO 26431-1:2008, as reported; 5 % inside the edges: "
         "common practice, no source",
         "Centre and corners are even to {value} from seat {seat}, {projector} in {format}",
         corner_evenness},
        {"light.hot_spot_across", Subject::light, "Hot spot, across", Unit::fraction, kPfs,
         "Where the picture looks brightest from the seat, right of its centre, over its width.",
         "place of the greatest E G", kSearched,
         "Seat {seat} sees the hot spot {value} of the width to the right, {projector} in {format}",
         hot_spot_across},
        {"light.hot_spot_up", Subject::light, "Hot spot, up", Unit::fraction, kPfs,
         "Where the picture looks brightest from the seat, above its centre, over its height.",
         "place of the greatest E G", kSearched,
         "Seat {seat} sees the hot spot {value} of the height up, {projector} in {format}",
         hot_spot_up},
        {"light.hot_spot_ratio", Subject::light, "Hot spot over centre", Unit::fraction, kPfs,
         "Luminance of the brightest place of the picture over that of its centre, toward the "
         "seat.",
         "max(E G) / (E G at the centre)", kSearched,
         "The hot spot is at {value} of the centre from seat {seat}, {projector} in {format}",
         hot_spot_ratio},
    };
}

std::vector<FigureDefinition> range_entries() {
    return {
        {"light.luminance_lowest", Subject::light, "Luminance, lowest seat", Unit::cd_per_m2, kPf,
         "At the picture's centre toward the seat that sees least of it.", "min over seats of L",
         "derived: over all seats", "The darkest seat sees {value} from {projector} in {format}",
         luminance_lowest},
        {"light.luminance_highest", Subject::light, "Luminance, highest seat", Unit::cd_per_m2, kPf,
         "At the picture's centre toward the seat that sees most of it.", "max over seats of L",
         "derived: over all seats", "The brightest seat sees {value} from {projector} in {format}",
         luminance_highest},
        {"light.seat_evenness", Subject::light, "Lowest over highest seat", Unit::fraction, kPf,
         "Luminance of the centre toward the seat that sees least over that toward the one that "
         "sees most.",
         "L_low / L_high", "derived: over all seats",
         "The darkest seat sees {value} of the brightest from {projector} in {format}",
         seat_evenness},
        {"light.seats_within", Subject::light, "Seats within the window", Unit::fraction, kPf,
         "Share of the seats that see the centre as bright as the limits in force ask of the "
         "reference seat.",
         "n / N", "the window of the limits on the reference reading",
         "{value} of the seats see {projector} within the window in {format}", seats_within},
    };
}

}  // namespace

std::vector<const room::Limit*> reference_windows(const Study& study, int projector) {
    const auto kind = study.layout().projectors.at(static_cast<std::size_t>(projector)).kind;
    std::vector<const room::Limit*> out;
    for (const room::Limit& limit : study.brief->limits.limits) {
        if (std::string_view(limit.figure) != "light.luminance_reference") continue;
        if (limit.source_kind.value_or(kind) == kind) out.push_back(&limit);
    }
    return out;
}

std::span<const FigureDefinition> luminance_figures() {
    static const std::vector<FigureDefinition> entries = [] {
        std::vector<FigureDefinition> all = evenness_entries();
        const auto more = range_entries();
        all.insert(all.end(), more.begin(), more.end());
        return all;
    }();
    return entries;
}

}  // namespace rakeline::study
