// SPDX-License-Identifier: MIT
#include "drawing/screen_face.hpp"

#include <algorithm>

/// What stands beside the flat drawing of the screen: whose picture it is, and the figures that no
/// length in the drawing shows.
namespace rakeline::drawing {
namespace {

struct Note {
    std::string text;
    Ink ink = Ink::quiet;
};
using Notes = std::vector<Note>;

/// Quiet while it holds.
Ink note_ink(const study::Figure& figure) {
    const bool calm = figure.worst < study::Verdict::near;
    return calm ? Ink::quiet : verdict_ink(figure.worst);
}

void note(const Face& face, Notes& notes, const std::string& words, const char* id) {
    const study::Figure* figure = face.figure(id);
    if (figure) notes.push_back({words + " " + face.text(id), note_ink(*figure)});
}

std::string pair_text(const Face& face) {
    std::string text;
    if (face.chosen.projector >= 0)
        text = face.layout().projectors.at(static_cast<std::size_t>(face.chosen.projector)).name;
    if (face.chosen.format < 0) return text;
    const auto& format =
        face.layout().formats.at(static_cast<std::size_t>(face.chosen.format)).name;
    return text.empty() ? format : text + " · " + format;
}

void note_opening(const Face& face, Notes& notes) {
    const auto width = face.value("picture.width"), height = face.value("picture.height");
    if (!width || !height) return;
    notes.push_back({"opening " + face.quantity(*width, base::Unit::metre) + " × " +
                     face.quantity(*height, base::Unit::metre)});
}

/// Only a curved screen bows anything.
void note_bows(const Face& face, Notes& notes) {
    if (face.study.picture.surface.flat()) return;
    note(face, notes, "top edge bows", "picture.bow_top");
    note(face, notes, "bottom edge bows", "picture.bow_bottom");
}

void note_blur(const Face& face, Notes& notes) {
    if (!face.choice.blur) return;
    if (!face.figure("picture.blur")) {
        notes.push_back({"blur: no lens is fitted, so no f-number"});
        return;
    }
    const bool metric = face.choice.units == base::UnitSystem::metric;
    notes.push_back({!blur_shows(face) ? "sharp all over the opening"
                     : metric          ? "contours: blur in mm"
                                       : "contours: blur in inches"});
    note(face, notes, "best focus", "picture.focus_distance");
    note(face, notes, "worst blur", "picture.blur");
    note(face, notes, "one pixel", "picture.pixel_size");
    note(face, notes, "finest detail on film", "picture.film_detail");
    note(face, notes, "worst blur over that", "picture.blur_ratio");
}

void note_of_seat(const Face& face, Notes& notes, const std::string& words, const char* id) {
    const study::Figure* found = study::find_figure(face.study, id, face.place());
    const auto value = found ? study::value_at(*found, face.luminance->seat) : std::nullopt;
    if (value)
        notes.push_back({words + " " + face.quantity(*value, found->definition->unit), Ink::quiet});
}

void note_luminance(const Face& face, Notes& notes) {
    if (!face.choice.luminance) return;
    if (!face.luminance) {
        notes.push_back({"luminance: no seat to see it from"});
        return;
    }
    const auto seat = static_cast<std::size_t>(face.luminance->seat);
    notes.push_back({"luminance as seat " + face.study.seats.seats.at(seat).name + " sees it"});
    note_of_seat(face, notes, "centre", "light.luminance");
    note_of_seat(face, notes, "even to, sides", "light.side_evenness");
    note_of_seat(face, notes, "even to, corners", "light.corner_evenness");
    note_of_seat(face, notes, "hot spot over centre", "light.hot_spot_ratio");
}

/// Why the chosen pair gives no picture.
void note_missing(const Face& face, Notes& notes) {
    for (const picture::NoPicture& none : face.study.picture.none) {
        if (none.projector != face.chosen.projector || none.format != face.chosen.format) continue;
        notes.push_back({"no picture: " + none.why, Ink::missed});
        return;
    }
    if (face.chosen.projector >= 0 && face.chosen.format >= 0)
        notes.push_back({"this projector does not show it"});
}

Notes notes_of(const Face& face) {
    Notes notes;
    const std::string pair = pair_text(face);
    if (!pair.empty()) notes.push_back({pair, Ink::line});
    note_opening(face, notes);
    if (!face.chosen.picture) {
        note_missing(face, notes);
        return notes;
    }
    note(face, notes, "keystone", "picture.keystone_vertical");
    note(face, notes, "keystone sideways", "picture.keystone_horizontal");
    note_bows(face, notes);
    note(face, notes, "overfill", "picture.overfill");
    note(face, notes, "crop", "picture.crop");
    note(face, notes, "left dark", "picture.uncovered");
    if (!face.luminance) note_blur(face, notes);
    note_luminance(face, notes);
    return notes;
}

/// Lettering in a low strip wants more than a line of the drawing, but a long list has to end with
/// the drawing.
double note_pitch(std::size_t count) {
    constexpr double kWanted = 1.3, kRoom = 14.0;
    return std::min(kWanted, kRoom / std::max(1.0, static_cast<double>(count) - 1.0));
}

}  // namespace

void add_face_notes(Face& face) {
    double right = face.outer.right;
    for (const Item& item : face.drawing.items) {
        if (const auto* d = std::get_if<Dimension>(&item)) {
            const Segment line = dimension_line(*d);
            right = std::max({right, line.from.x, line.to.x});
        }
    }
    const double x = right + face.pitch_m;
    const Notes notes = notes_of(face);
    const double pitch_m = face.pitch_m * note_pitch(notes.size());
    double y = face.frame.top;
    for (const Note& n : notes) {
        face.add(Label{.at = {x, y},
                       .text = n.text,
                       .anchor = Anchor::left,
                       .ink = n.ink,
                       .vertical = false,
                       .shows = face.projector()});
        y -= pitch_m;
    }
}

}  // namespace rakeline::drawing
