// SPDX-License-Identifier: MIT
#include "study/study.hpp"

#include <vector>

/// The figures on how the picture fills its masked opening, and where the masks stand.
namespace rakeline::study {
namespace {

using base::Unit;
using picture::EdgeOverfill;
using picture::MaskStops;

const picture::ProjectedPicture* seen_whole(const Cell& c) {
    const auto* p = picture::find_picture(c.study.picture, c.projector, c.format);
    return p && p->covering ? p : nullptr;
}

std::optional<double> enlargement(const Cell& c, Working& w) {
    const picture::ProjectedPicture* p = seen_whole(c);
    if (!p) return std::nullopt;
    const geometry::Rectangle& r = p->covering->reach;
    w.input("x_left", "opening in the gate, left", r.left, Unit::millimetre);
    w.input("x_right", "opening in the gate, right", r.right, Unit::millimetre);
    w.input("y_bottom", "opening in the gate, bottom", r.bottom, Unit::millimetre);
    w.input("y_top", "opening in the gate, top", r.top, Unit::millimetre);
    w.input("a", "gate or imager width in use", p->gate_size_m.x, Unit::millimetre);
    w.input("h", "gate or imager height in use", p->gate_size_m.y, Unit::millimetre);
    w.note(std::string("the picture's ") + picture::edge_name(p->covering->decides) +
           " edge decides");
    return p->covering->enlargement;
}

std::optional<double> covering_focal_length(const Cell& c, Working& w) {
    const picture::ProjectedPicture* p = seen_whole(c);
    if (!p) return std::nullopt;
    w.input("D", "throw along the lens axis", p->throw_m, Unit::metre);
    w.input("b", "lens to gate as it stands", p->map.pose().image_distance_m, Unit::millimetre);
    w.input("k", "enlargement that fills the opening", p->covering->enlargement, Unit::ratio);
    return picture::covering_focal_length(p->map, p->gate_size_m, *p->covering, p->throw_m);
}

template <double EdgeOverfill::*kSide>
std::optional<double> overfill_of(const Cell& c, Working&) {
    const picture::ProjectedPicture* p = seen_whole(c);
    if (!p || !p->covering->overfill) return std::nullopt;
    return (*p->covering->overfill).*kSide;
}

/// Overfill of an edge over the opening's arc width or its height.
template <double EdgeOverfill::*kSide, double (geometry::Rectangle::*kSize)() const>
std::optional<double> overfill_share(const Cell& c, Working& w) {
    const auto past = overfill_of<kSide>(c, w);
    if (!past) return std::nullopt;
    const auto& opening = c.study.picture.openings.at(static_cast<std::size_t>(c.format));
    w.input("e", "least distance, rim outside edge", *past, Unit::millimetre);
    const double size =
        w.input("s", "the opening's size that way", (opening.uv.*kSize)(), Unit::metre);
    return *past / size;
}

template <double MaskStops::*kSide>
std::optional<double> stop_of(const Cell& c, Working&) {
    const room::Layout& layout = c.study.layout();
    const auto& format = layout.formats.at(static_cast<std::size_t>(c.format));
    return picture::mask_stops(layout.screen, format).*kSide;
}

constexpr Per kPf{.projector = true, .format = true};
constexpr Per kF{.format = true};
constexpr const char* kMap = "derived: exact gate-to-screen map";
constexpr const char* kMasking = "derived: frame, masking and aspect ratio";

std::vector<FigureDefinition> covering_entries() {
    return {
        {"picture.enlargement", Subject::picture, "Enlargement to cover", Unit::ratio, kPf,
         "How much larger the gate's picture has to be to fill the opening; under 1 it fills it "
         "with that much to spare.",
         "k = greatest of |x| / (a / 2), |y| / (h / 2) over the opening's border", kMap,
         "{projector} wants its picture {value} times as large to fill {format}", enlargement},
        {"picture.focal_length_covering", Subject::picture, "Focal length to cover",
         Unit::millimetre, kPf,
         "The longest with which the true picture fills the opening everywhere.",
         "f = b' D / (D + b'), b' = b / k without shift", kMap,
         "{projector} fills {format} with {value} or less", covering_focal_length},
    };
}

std::vector<FigureDefinition> overfill_entries() {
    constexpr const char* kMeaning =
        "Least distance along this edge by which the picture reaches past the opening; negative "
        "where it falls short.";
    constexpr const char* kFormula = "least distance, rim outside edge";
    constexpr const char* kSentence =
        "{projector} reaches {value} past an edge of the opening in {format}";
    const auto entry = [&](const char* id, const char* label, auto evaluate) {
        return FigureDefinition{id,       Subject::picture, label, Unit::millimetre, kPf,
                                kMeaning, kFormula,         kMap,  kSentence,        evaluate};
    };
    return {
        entry("picture.overfill_left", "Past the left edge", overfill_of<&EdgeOverfill::left_m>),
        entry("picture.overfill_right", "Past the right edge", overfill_of<&EdgeOverfill::right_m>),
        entry("picture.overfill_top", "Past the top edge", overfill_of<&EdgeOverfill::top_m>),
        entry("picture.overfill_bottom", "Past the bottom edge",
              overfill_of<&EdgeOverfill::bottom_m>),
    };
}

std::vector<FigureDefinition> share_entries() {
    const auto entry = [](const char* id, const char* label, auto evaluate) {
        return FigureDefinition{
            id,
            Subject::picture,
            label,
            Unit::fraction,
            kPf,
            "Least distance along this edge by which the picture reaches past the opening, over "
            "the opening's width or height along the surface.",
            "e / s",
            kMap,
            "{projector} reaches {value} of the opening past one of its edges in {format}",
            evaluate};
    };
    using geometry::Rectangle;
    return {
        entry("picture.overfill_left_share", "Past the left, of the width",
              overfill_share<&EdgeOverfill::left_m, &Rectangle::width>),
        entry("picture.overfill_right_share", "Past the right, of the width",
              overfill_share<&EdgeOverfill::right_m, &Rectangle::width>),
        entry("picture.overfill_top_share", "Past the top, of the height",
              overfill_share<&EdgeOverfill::top_m, &Rectangle::height>),
        entry("picture.overfill_bottom_share", "Past the bottom, of the height",
              overfill_share<&EdgeOverfill::bottom_m, &Rectangle::height>),
    };
}

std::vector<FigureDefinition> mask_entries() {
    constexpr const char* kAcross =
        "Where this mask's edge stands, from the frame's upright centre line outward along the "
        "surface.";
    constexpr const char* kUp =
        "Where this mask's edge stands, from the frame's level centre line outward along the "
        "surface; negative past it.";
    const auto entry = [](const char* id, const char* label, const char* meaning, auto evaluate) {
        return FigureDefinition{id,
                                Subject::picture,
                                label,
                                Unit::millimetre,
                                kF,
                                meaning,
                                "distance, mask from centre line",
                                kMasking,
                                "A mask stands {value} from the centre line in {format}",
                                evaluate};
    };
    return {
        entry("picture.mask_left", "Left mask stands at", kAcross, stop_of<&MaskStops::left_m>),
        entry("picture.mask_right", "Right mask stands at", kAcross, stop_of<&MaskStops::right_m>),
        entry("picture.mask_top", "Top mask stands at", kUp, stop_of<&MaskStops::top_m>),
        entry("picture.mask_bottom", "Bottom mask stands at", kUp, stop_of<&MaskStops::bottom_m>),
    };
}

}  // namespace

std::span<const FigureDefinition> covering_figures() {
    static const std::vector<FigureDefinition> entries = [] {
        std::vector<FigureDefinition> all;
        for (auto& part :
             {covering_entries(), overfill_entries(), share_entries(), mask_entries()}) {
            all.insert(all.end(), part.begin(), part.end());
        }
        return all;
    }();
    return entries;
}

}  // namespace rakeline::study
