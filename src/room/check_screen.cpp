// SPDX-License-Identifier: MIT
#include "base/number_text.hpp"
#include "room/check_internal.hpp"
#include "room/screen_extent.hpp"
#include "room/seat_plan.hpp"

#include <cmath>

namespace rakeline::room {
namespace {

void refuse_radius(const Screen& screen, Findings& out) {
    // The next tenth of a metre above half the width.
    const double enough_m = (std::floor(5.0 * screen.width_m) + 1.0) / 10.0;
    out.add(
        "screen.radius_m",
        metres(screen.radius_m) + " is less than half the picture width " + metres(screen.width_m),
        "use 0 for a flat screen or at least " + metres(enough_m));
}

void check_across(const Layout& layout, const ScreenExtent& extent, Findings& out) {
    const double hall_m = 2.0 * half_width_at(layout.hall, extent.sides_m);
    if (layout.screen.width_m <= hall_m) return;
    out.add("screen.width_m",
            metres(layout.screen.width_m) + " is wider than the hall, which is " + metres(hall_m) +
                " wide there",
            "make the frame narrower or the hall wider");
}

void check_up(const Layout& layout, const ScreenExtent& extent, Findings& out) {
    const double ceiling_m = layout.hall.height_m;
    if (layout.screen.height_m > ceiling_m) {
        out.add("screen.height_m",
                metres(layout.screen.height_m) + " is taller than the hall of " + metres(ceiling_m),
                "make the frame lower or the hall higher");
    } else if (extent.high_m > ceiling_m) {
        out.add("screen.sill_m",
                "the frame's upper edge stands at " + metres(extent.high_m) +
                    ", above the ceiling at " + metres(ceiling_m),
                "lower the sill by " + metres(extent.high_m - ceiling_m) +
                    " or more, or make the frame lower");
    }
}

void check_back(const Layout& layout, const ScreenExtent& extent, Findings& out) {
    if (extent.hindmost_m < 0.0) {
        out.add(
            "screen.tilt_deg",
            "the tilted frame passes " + metres(-extent.hindmost_m) + " through the screen wall",
            "tilt it less, or set it back by more than " +
                metres(layout.screen.setback_m - extent.hindmost_m));
    }
    if (extent.foremost_m >= layout.hall.length_m) {
        out.add("screen.setback_m",
                "the screen reaches to " + metres(extent.foremost_m) +
                    ", beyond the booth wall at " + metres(layout.hall.length_m),
                "set it nearer to the screen wall");
    }
}

void check_loss_table(const std::vector<LossPoint>& table, Findings& out) {
    if (table.size() == 1)
        out.add("screen.loss_table", "one measured loss says nothing of other frequencies",
                "give two or more, or none and the holes with the sheet's mass");
    check_rising("screen.loss_table", table, out);
}

void check_openings(const Layout& layout, Findings& out) {
    if (layout.screen.masking != MaskingMode::four_way) return;
    for (std::size_t i = 0; i < layout.formats.size(); ++i) {
        const Format& format = layout.formats[i];
        if (!format.opening_width_m) continue;
        const double width_m = *format.opening_width_m;
        const double height_m = width_m / format.aspect_ratio;
        // A width that was worked out from the frame's height may miss it by a rounding.
        constexpr double kRounding = 1.0 + 1e-9;
        if (width_m > layout.screen.width_m * kRounding) {
            out.add(
                at("formats", i, "opening_width_m"),
                metres(width_m) + " is wider than the frame of " + metres(layout.screen.width_m),
                "make the opening narrower, or leave it out for the largest");
        } else if (height_m > layout.screen.height_m * kRounding) {
            out.add(at("formats", i, "opening_width_m"),
                    "an opening of " + metres(width_m) + " would be " + metres(height_m) +
                        " high, more than the frame's " + metres(layout.screen.height_m),
                    "make the opening narrower, or leave it out for the largest");
        }
    }
}

void check_gain_table(const std::vector<GainPoint>& table, const std::string& path, Findings& out) {
    if (table.empty()) return;
    if (table.size() == 1)
        out.add(path, "one measured gain says nothing of other angles",
                "give two or more, or none and the peak with its half-gain angle");
    if (table.front().angle_rad != 0.0)
        out.add(at(path, 0, "angle_deg"), "the first measured gain is not at 0 degrees",
                "begin with the gain in the lobe's middle");
    for (std::size_t i = 1; i < table.size(); ++i) {
        if (table[i].angle_rad > table[i - 1].angle_rad) continue;
        out.add(at(path, i, "angle_deg"), "the angles of measured gains do not rise",
                "order them from 0 degrees outward, each angle once");
    }
}

}  // namespace

void check_perforation(const Perforation& holes, const std::string& path, Findings& out) {
    if (holes.pattern == PerforationPattern::none || holes.hole_diameter_m < holes.pitch_m) return;
    const bool woven = holes.pattern == PerforationPattern::woven;
    out.add(path + ".hole_diameter_m",
            (woven ? "openings of " : "holes of ") + metres(holes.hole_diameter_m) +
                (woven ? " leave no threads at a pitch of " : " overlap at a pitch of ") +
                metres(holes.pitch_m),
            woven ? "make the openings smaller than the pitch"
                  : "make the holes smaller than the pitch");
}

void check_surface(const ScreenSurface& surface, const std::string& path, Findings& out) {
    check_gain_table(surface.gain_table, path + ".gain_table", out);
    if (!surface.gain_table.empty() && surface.lobe == LobeKind::matte)
        out.add(path + ".gain_table", "a matte surface has no lobe to measure angles from",
                "make the lobe mirror or retro, or leave the measured gains out");
    if (!surface.gain_table.empty()) return;
    if (surface.lobe == LobeKind::matte || surface.peak_gain > surface.matte_gain) return;
    out.add(path + ".peak_gain",
            base::plain_text(surface.peak_gain) + " is no more than the matte part " +
                base::plain_text(surface.matte_gain) + ", so there is no lobe",
            "raise the peak, lower matte_gain, or make the lobe matte");
}

void check_screen(const Layout& layout, Findings& out) {
    check_surface(layout.screen.surface, "screen.surface", out);
    check_perforation(layout.screen.perforation, "screen.perforation", out);
    check_loss_table(layout.screen.loss_table, out);
    check_names("formats", layout.formats, out);
    check_openings(layout, out);
    const auto extent = screen_extent(layout.screen);
    if (!extent) return refuse_radius(layout.screen, out);
    check_across(layout, *extent, out);
    check_up(layout, *extent, out);
    check_back(layout, *extent, out);
}

}  // namespace rakeline::room
