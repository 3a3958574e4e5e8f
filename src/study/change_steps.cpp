// SPDX-License-Identifier: MIT
#include "study/change_steps.hpp"

#include <algorithm>
#include <cmath>
#include <functional>

namespace rakeline::study {
namespace {

using base::UnitSystem;
using Words = std::function<std::string(UnitSystem)>;

/// Nobody sets a mask finer than this; less is what rounding a ratio to the frame leaves.
constexpr double kMaskStep_m = 1e-3;

Move step(MoveKind kind, const Words& words, SheetCell from = {}, SheetCell to = {}) {
    Move move{.kind = kind,
              .metric = words(UnitSystem::metric),
              .imperial = words(UnitSystem::imperial),
              .from = std::move(from),
              .to = std::move(to),
              .by_si = {},
              .caution = {}};
    if (move.from.si && move.to.si) move.by_si = *move.to.si - *move.from.si;
    return move;
}

Move plain_step(MoveKind kind, const std::string& words) {
    return step(kind, [&](UnitSystem) { return words; });
}

/// " from 2408.8 mm to 3251.4 mm"
std::string from_to(const SheetCell& from, const SheetCell& to, UnitSystem system) {
    return " from " + from.text(system) + " to " + to.text(system);
}

/// "842.6 mm": how far two numbers are apart.
std::string apart(const SheetCell& from, const SheetCell& to, UnitSystem system) {
    return base::quantity_text(std::abs(*to.si - *from.si), to.unit, system, to.extra_decimals);
}

const std::string& format_name(const SheetPlace& place) {
    return place.study.layout().formats.at(static_cast<std::size_t>(place.format)).name;
}

/// Both ends of one figure, where a person who reads them sees a difference.
struct Pair {
    SheetCell from;
    SheetCell to;
    explicit operator bool() const { return !from.empty() && !to.empty() && !read_alike(from, to); }
};

Pair figure_pair(const ChangeEnds& ends, const char* id) {
    return {figure_cell(ends.from, id), figure_cell(ends.to, id)};
}

/// A step that sets one number: "Set the zoom from 66.2 mm to 52.5 mm, 13.6 mm shorter."
struct Setting {
    MoveKind kind;
    const char* what;  ///< "Set the zoom"
    const char* more;  ///< how the change is called where the number rises
    const char* less;
    const char* of = "";  ///< what the numbers are shares of
};

void add_setting(const Pair& pair, const Setting& setting, Moves& out) {
    if (!pair) return;
    const char* which = *pair.to.si > *pair.from.si ? setting.more : setting.less;
    const auto words = [&](UnitSystem system) {
        return setting.what + from_to(pair.from, pair.to, system) + setting.of + ", " +
               apart(pair.from, pair.to, system) + " " + which + ".";
    };
    out.push_back(step(setting.kind, words, pair.from, pair.to));
}

/// The lens that stands on the machine, if the layout names one.
const room::Lens* fitted_lens(const SheetPlace& place) {
    for (const room::Lens& lens : place.study.layout().lenses)
        if (lens.name == place.fields.at("lens").text) return &lens;
    return nullptr;
}

bool lens_changes(const ChangeEnds& ends) {
    return ends.from.fields.at("lens").text != ends.to.fields.at("lens").text;
}

std::string lens_words(const SheetCell& lens) {
    return lens.metric == "none chosen" ? "a lens that is yet to be chosen"
                                        : "'" + lens.metric + "'";
}

}  // namespace

void add_masks(const ChangeEnds& ends, MoveKind kind, Moves& out) {
    struct Mask {
        const char* id;
        const char* name;
    };
    constexpr Mask kMasks[] = {{"picture.mask_left", "left mask"},
                               {"picture.mask_right", "right mask"},
                               {"picture.mask_top", "top mask"},
                               {"picture.mask_bottom", "bottom mask"}};
    for (const Mask& mask : kMasks) {
        const Pair pair = figure_pair(ends, mask.id);
        if (!pair || std::abs(*pair.to.si - *pair.from.si) < kMaskStep_m) continue;
        const bool opens = *pair.to.si > *pair.from.si;
        if (opens != (kind == MoveKind::open_mask)) continue;
        const auto words = [&](UnitSystem system) {
            return (opens ? "Open the " : "Close the ") + std::string(mask.name) +
                   from_to(pair.from, pair.to, system) + " off the centre line, by " +
                   apart(pair.from, pair.to, system) + ".";
        };
        out.push_back(step(kind, words, pair.from, pair.to));
    }
}

void add_plate(const ChangeEnds& ends, Moves& out) {
    const Pair gate{aperture_cell(ends.from), aperture_cell(ends.to)};
    const Pair filed{filed_cell(ends.from), filed_cell(ends.to)};
    if (!gate && !filed) return;
    const bool both_filed = !filed.from.empty() && !filed.to.empty();
    const Pair& plate = both_filed ? filed : gate;
    const auto words = [&](UnitSystem system) {
        return "Change the gate plate: that of " + format_name(ends.from) + " out (" +
               plate.from.text(system) + "), that of " + format_name(ends.to) + " in (" +
               plate.to.text(system) + ").";
    };
    out.push_back(step(MoveKind::plate, words, plate.from, plate.to));
}

void add_pixels(const ChangeEnds& ends, Moves& out) {
    const Pair pixels{pixels_cell(ends.from), pixels_cell(ends.to)};
    if (!pixels) return;
    const auto words = [&](UnitSystem system) {
        return "Call up the preset of " + format_name(ends.to) + ": " + pixels.to.text(system) +
               " pixels in use instead of " + pixels.from.text(system) + ".";
    };
    out.push_back(step(MoveKind::pixels, words, pixels.from, pixels.to));
}

void add_lens(const ChangeEnds& ends, Moves& out) {
    if (!lens_changes(ends)) return;
    const Pair focal = figure_pair(ends, "picture.focal_length_used");
    const Pair lens{lens_cell(ends.from), lens_cell(ends.to)};
    const auto words = [&](UnitSystem system) {
        std::string text =
            "Change the lens: " + lens_words(lens.from) + " out, " + lens_words(lens.to) + " in";
        if (focal) {
            text += "; the focal length goes" + from_to(focal.from, focal.to, system) + ", " +
                    apart(focal.from, focal.to, system) +
                    (*focal.to.si > *focal.from.si ? " longer" : " shorter");
        }
        return text + ".";
    };
    Move move = step(MoveKind::lens, words, lens.from, lens.to);
    if (focal) move.by_si = *focal.to.si - *focal.from.si;
    out.push_back(std::move(move));
}

void add_attachment(const ChangeEnds& ends, Moves& out) {
    const Pair squeeze{attachment_cell(ends.from), attachment_cell(ends.to)};
    if (!squeeze) return;
    const auto words = [&](UnitSystem system) -> std::string {
        if (*squeeze.to.si == 1.0) return "Take the anamorphic attachment out.";
        const std::string factor = squeeze.to.text(system).substr(4);  // behind "in, "
        if (*squeeze.from.si == 1.0) return "Bring the anamorphic attachment in, " + factor + ".";
        return "Change the anamorphic attachment to " + factor + ".";
    };
    out.push_back(step(MoveKind::attachment, words, squeeze.from, squeeze.to));
}

void add_zoom(const ChangeEnds& ends, Moves& out) {
    const room::Lens* lens = fitted_lens(ends.to);
    if (lens && lens->kind == room::LensKind::prime) return;
    if (!lens_changes(ends)) {
        add_setting(
            figure_pair(ends, "picture.focal_length_used"),
            {MoveKind::zoom, lens ? "Set the zoom" : "Bring the focal length", "longer", "shorter"},
            out);
        return;
    }
    SheetCell position = figure_cell(ends.to, "picture.focal_length_used");
    if (!lens || position.empty()) return;
    const auto words = [&](UnitSystem system) {
        return "Set the zoom to " + position.text(system) + ".";
    };
    out.push_back(step(MoveKind::zoom, words, {}, position));
}

void add_shift(const ChangeEnds& ends, Moves& out) {
    add_setting(figure_pair(ends, "picture.shift_across"),
                {MoveKind::shift, "Set the lens shift across",
                 "to the right as seen from the seats", "to the left as seen from the seats"},
                out);
    add_setting(figure_pair(ends, "picture.shift_up"),
                {MoveKind::shift, "Set the lens shift up and down", "up", "down"}, out);
}

void add_aim(const ChangeEnds& ends, Moves& out) {
    if (ends.to.machine().aim.mode != room::AimMode::picture_centre) return;
    add_setting(figure_pair(ends, "picture.aim_down"),
                {MoveKind::aim, "Tilt the machine", "further down", "back up"}, out);
    add_setting(figure_pair(ends, "picture.aim_across"),
                {MoveKind::aim, "Turn the machine", "to the right", "to the left"}, out);
}

void add_focus(const ChangeEnds& ends, Moves& out) {
    const SheetCell best = figure_cell(ends.to, "picture.focus_distance");
    const auto words = [&](UnitSystem system) {
        if (best.empty()) return std::string("Focus: centre and corners equally sharp.");
        return "Focus: sharpest at " + best.text(system) +
               " from the lens, so that near and far parts of the picture are equally sharp.";
    };
    out.push_back(
        step(MoveKind::focus, words, figure_cell(ends.from, "picture.focus_distance"), best));
}

void add_light(const ChangeEnds& ends, Moves& out) {
    add_setting(figure_pair(ends, "light.setting"),
                {MoveKind::light, "Set lens and iris", "of their light more", "of their light less",
                 " of the most light that they pass"},
                out);
    const Pair current = figure_pair(ends, "light.lamp_current_wanted");
    if (!current.from.empty() && !current.to.empty()) {
        add_setting(current,
                    {MoveKind::light, "Set the lamp current", "more, and finish by the meter",
                     "less, and finish by the meter"},
                    out);
        return;
    }
    add_setting(figure_pair(ends, "light.output_wanted"),
                {MoveKind::light, "Bring the light", "of it more, and finish by the meter",
                 "of it less, and finish by the meter", " of the flux that the layout gives"},
                out);
}

Move darken() {
    return plain_step(MoveKind::darken, "Close the dowser: no light on gate, lens and screen.");
}

Move uncover() {
    return plain_step(MoveKind::uncover, "Put up the test picture and open the dowser.");
}

Move check(const SheetPlace& to) {
    const SheetCell target = figure_cell(to, "light.luminance_target");
    const auto seat = to.study.reference_seat;
    const auto words = [&](UnitSystem system) {
        std::string text = "Check: the picture fills the opening at every edge";
        const SheetCell spare = least_overfill_cell(to);
        if (!spare.empty()) text += " (least past it: " + spare.text(system) + ")";
        text += ", centre and corners are sharp";
        if (!target.empty() && seat) {
            text += ", and the meter reads " + target.text(system) + " at seat " +
                    to.study.seats.seats.at(static_cast<std::size_t>(*seat)).name;
        }
        return text + ".";
    };
    return step(MoveKind::check, words, {}, target);
}

}  // namespace rakeline::study
