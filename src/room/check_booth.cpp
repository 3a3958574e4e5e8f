// SPDX-License-Identifier: MIT
#include "base/nearest_name.hpp"
#include "base/number_text.hpp"
#include "room/check_internal.hpp"
#include "room/field_fault.hpp"
#include "room/screen_extent.hpp"
#include "room/seat_plan.hpp"

#include <algorithm>
#include <cmath>

namespace rakeline::room {
namespace {

/// Focal lengths that were typed in millimetres and converted may miss each other by a rounding.
constexpr double kRounding = 1e-9;

std::string millimetres(double value_m) {
    return base::plain_text(std::round(value_m * 1e6) / 1e3) + " mm";
}

template <class T>
std::vector<std::string> names_of(const std::vector<T>& items) {
    std::vector<std::string> names;
    for (const T& item : items)
        names.push_back(item.name);
    return names;
}

std::string suggestion(const std::string& name,
                       const std::vector<std::string>& names,
                       const std::string& otherwise) {
    const std::string near = base::nearest_name(name, names);
    return near.empty() ? otherwise : "did you mean " + quoted(near) + "? If not, " + otherwise;
}

void check_zoom_position(const FormatUse& use,
                         const Lens& lens,
                         const std::string& path,
                         Findings& out) {
    if (!use.focal_length_m) return;
    const double set_m = *use.focal_length_m;
    const bool within = set_m >= lens.focal_length_m * (1.0 - kRounding) &&
                        set_m <= lens.focal_length_long_m * (1.0 + kRounding);
    if (within) return;
    const std::string range =
        lens.kind == LensKind::prime
            ? millimetres(lens.focal_length_m)
            : millimetres(lens.focal_length_m) + " to " + millimetres(lens.focal_length_long_m);
    out.add(path + ".focal_length_m",
            millimetres(set_m) + " is outside what the lens " + quoted(lens.name) + " reaches, " +
                range,
            "set it within that, leave it out, or choose another lens");
}

void check_lens_of_use(const Layout& layout,
                       const FormatUse& use,
                       const std::string& path,
                       Findings& out) {
    if (use.lens.empty()) return;
    const auto lens = std::ranges::find(layout.lenses, use.lens, &Lens::name);
    if (lens != layout.lenses.end()) return check_zoom_position(use, *lens, path, out);
    out.add(path + ".lens", "the room has no lens called " + quoted(use.lens),
            suggestion(use.lens, names_of(layout.lenses),
                       "add it to lenses, or leave it empty for the exact focal length"));
}

void check_gate(const Projector& projector,
                const FormatUse& use,
                const std::string& path,
                Findings& out) {
    const auto check = [&](const char* key, double gate_m, double lit_m, const char* lit) {
        if (gate_m <= lit_m * (1.0 + kRounding)) return;
        out.add(path + "." + key,
                millimetres(gate_m) + " is more than the " + millimetres(lit_m) +
                    " of the gate that the lamp lights",
                std::string("make the aperture smaller or ") + lit + " larger");
    };
    check("gate_width_m", use.gate_width_m, projector.lit_width_m, "lit_width_m");
    check("gate_height_m", use.gate_height_m, projector.lit_height_m, "lit_height_m");
}

void check_pixels(const Projector& projector,
                  const FormatUse& use,
                  const std::string& path,
                  Findings& out) {
    const auto check = [&](const char* key, int used, int there) {
        if (used <= there) return;
        out.add(
            path + "." + key,
            std::to_string(used) + " pixels are more than the imager's " + std::to_string(there),
            "use fewer, or give the imager's own number");
    };
    check("pixels_wide", use.pixels_wide, projector.imager.pixels_wide);
    check("pixels_high", use.pixels_high, projector.imager.pixels_high);
}

void check_use(const Layout& layout,
               const Projector& projector,
               std::size_t index,
               const std::string& list,
               Findings& out) {
    const FormatUse& use = projector.formats[index];
    const std::string path = at(list, index);
    if (std::ranges::find(layout.formats, use.format, &Format::name) == layout.formats.end()) {
        out.add(path + ".format", "the room has no format called " + quoted(use.format),
                suggestion(use.format, names_of(layout.formats), "add it to formats"));
    }
    const auto end = projector.formats.begin() + static_cast<std::ptrdiff_t>(index);
    if (std::find_if(projector.formats.begin(), end, [&](const FormatUse& earlier) {
            return earlier.format == use.format;
        }) != end) {
        out.add(path + ".format", "the projector makes " + quoted(use.format) + " twice",
                "keep one of the two");
    }
    check_lens_of_use(layout, use, path, out);
    if (projector.kind == SourceKind::film) check_gate(projector, use, path, out);
    if (projector.kind == SourceKind::digital) check_pixels(projector, use, path, out);
}

void check_place(const Layout& layout, std::size_t index, Findings& out) {
    const Projector& projector = layout.projectors[index];
    const std::string path = at("projectors", index, "back_m");
    const auto screen = screen_extent(layout.screen);
    if (screen && projector.back_m <= screen->foremost_m) {
        out.add(path,
                "the lens at " + metres(projector.back_m) +
                    " is not behind the seats' side of the screen, which reaches to " +
                    metres(screen->foremost_m),
                "move it into the booth, beyond " + metres(layout.hall.length_m));
    } else if (projector.back_m < layout.hall.length_m && projector.port.panes > 0) {
        out.add(path,
                "the lens at " + metres(projector.back_m) +
                    " stands in front of the booth wall at " + metres(layout.hall.length_m) +
                    ", so its light passes no port",
                "move it into the booth, or give its port 0 panes");
    }
}

/// The beam leaves through the booth wall, between its side walls and under its ceiling.
void check_lens_behind_wall(const Layout& layout, std::size_t index, Findings& out) {
    const Projector& projector = layout.projectors[index];
    const double half_width = half_width_at(layout.hall, layout.hall.length_m);
    if (half_width > 0.0 && std::abs(projector.across_m) > half_width) {
        out.add(at("projectors", index, "across_m"),
                "the lens at " + metres(projector.across_m) +
                    " stands beside the booth wall, which ends " + metres(half_width) +
                    " from the centre line",
                "move it between " + metres(-half_width) + " and " + metres(half_width));
    }
    if (projector.up_m > layout.hall.height_m) {
        out.add(at("projectors", index, "up_m"),
                "the lens at " + metres(projector.up_m) + " stands above the hall's ceiling at " +
                    metres(layout.hall.height_m),
                "lower it, or raise the ceiling");
    }
}

void check_projector(const Layout& layout, std::size_t index, Findings& out) {
    const Projector& projector = layout.projectors[index];
    const std::string formats = at("projectors", index, "formats");
    check_place(layout, index, out);
    check_lens_behind_wall(layout, index, out);
    if (projector.formats.empty()) {
        out.add(formats, quoted(projector.name) + " makes no format",
                "list the formats that it makes, or take the projector out");
    }
    for (std::size_t i = 0; i < projector.formats.size(); ++i)
        check_use(layout, projector, i, formats, out);
}

/// A room without projectors is an early design, not a mistake.
void check_unmade_formats(const Layout& layout, Findings& out) {
    if (layout.projectors.empty()) return;
    for (std::size_t i = 0; i < layout.formats.size(); ++i) {
        const std::string& name = layout.formats[i].name;
        const bool made = std::ranges::any_of(layout.projectors, [&](const Projector& projector) {
            return std::ranges::find(projector.formats, name, &FormatUse::format) !=
                   projector.formats.end();
        });
        if (made) continue;
        out.add(at("formats", i, "name"), "no projector makes " + quoted(name),
                "add it to a projector's formats, or take the format out");
    }
}

}  // namespace

void check_lens(const Lens& lens, const std::string& path, Findings& out) {
    const double short_m = lens.focal_length_m;
    const double long_m = lens.focal_length_long_m;
    const std::string key = path + ".focal_length_long_m";
    if (lens.kind == LensKind::zoom && long_m < short_m) {
        out.add(key,
                "the zoom's long end of " + millimetres(long_m) +
                    " is shorter than its short end of " + millimetres(short_m),
                "exchange the two");
    }
    if (lens.kind == LensKind::prime && std::abs(long_m - short_m) > kRounding * short_m) {
        out.add(key,
                millimetres(long_m) + " differs from the focal length of the prime, " +
                    millimetres(short_m),
                "repeat the focal length, or make the lens a zoom");
    }
}

void check_booth(const Layout& layout, Findings& out) {
    check_names("projectors", layout.projectors, out);
    check_names("lenses", layout.lenses, out);
    for (std::size_t i = 0; i < layout.lenses.size(); ++i)
        check_lens(layout.lenses[i], at("lenses", i), out);
    for (std::size_t i = 0; i < layout.projectors.size(); ++i)
        check_projector(layout, i, out);
    check_unmade_formats(layout, out);
}

}  // namespace rakeline::room
