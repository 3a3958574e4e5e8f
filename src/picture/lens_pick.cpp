// SPDX-License-Identifier: MIT
#include "picture/lens_pick.hpp"

#include "picture/throw.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <tuple>

namespace rakeline::picture {
namespace {

using room::FormatUse;
using room::Lens;
using room::Projector;

const FormatUse* use_for(const Projector& projector, const std::string& format) {
    const auto found = std::find_if(projector.formats.begin(), projector.formats.end(),
                                    [&](const FormatUse& use) { return use.format == format; });
    return found == projector.formats.end() ? nullptr : &*found;
}

/// The room with this projector and format alone, and the floors left out.
PictureInput only(const PictureInput& in, const Projector& projector, const FormatUse& use, int f) {
    PictureInput out;
    out.screen = in.screen;
    out.formats = {in.formats[static_cast<std::size_t>(f)]};
    out.projectors = {projector};
    out.projectors.front().formats = {use};
    out.booth_wall_back_m = in.booth_wall_back_m;
    return out;
}

/// The same with the lens set to a focal length, or (nothing) to the one that the width wants.
PictureStudy with_focal_length(PictureInput in, std::optional<double> focal_length_m) {
    FormatUse& use = in.projectors.front().formats.front();
    use.lens.clear();
    use.focal_length_m = focal_length_m;
    return study_picture(in);
}

LensWish wish_of(const ProjectedPicture& p, const FormatUse& use) {
    LensWish wish{.demand = lens_demand(p, use),
                  .focal_length_m = p.focal_length_m,
                  .covering_focal_length_m = {}};
    if (p.covering) {
        wish.covering_focal_length_m =
            covering_focal_length(p.map, p.gate_size_m, *p.covering, p.throw_m);
    }
    return wish;
}

double set_focal_length(const Lens& lens, const LensWish& wish) {
    if (lens.kind == room::LensKind::prime) return lens.focal_length_m;
    const double wanted = wish.covering_focal_length_m.value_or(wish.focal_length_m);
    return std::clamp(wanted, lens.focal_length_m, lens.focal_length_long_m);
}

/// One catalogue lens on the one projector and format of `trial`.
class Trial {
public:
    Trial(PictureInput trial, const LensWish& wish) : in_(std::move(trial)), wish_(wish) {}

    LensChoice choice(int index, const Lens& lens) const {
        LensChoice out;
        out.lens = index;
        out.focal_length_m = set_focal_length(lens, wish_);
        out.picture_width_m = width_at(out.focal_length_m);
        out.reach = lens_reach(lens, wish_.demand);
        make_picture(lens, out);
        return out;
    }

private:
    std::optional<double> width_at(double focal_length_m) const {
        const LensDemand& d = wish_.demand;
        if (focal_length_m >= d.throw_m) return std::nullopt;
        return picture_width(d.wide_gate_m, d.throw_m, focal_length_m);
    }

    void make_picture(const Lens& lens, LensChoice& out) const {
        const PictureStudy study = with_focal_length(in_, out.focal_length_m);
        if (study.pictures.empty()) {
            out.no_picture = study.none.front().why;
            return;
        }
        const ProjectedPicture& p = study.pictures.front();
        if (!p.covering) {
            out.no_picture = "part of the opening lies where the projector can't light it";
            return;
        }
        out.picture = LensPicture{
            .covers = p.covering->covers(),
            .enlargement = p.covering->enlargement,
            .decides = p.covering->decides,
            .overfill = p.covering->overfill,
            .crop = p.crop,
            .uncovered = p.uncovered,
            .port_margin_m = margin_in_port(p, 0.5 * out.focal_length_m / lens.f_number)};
    }

    std::optional<double> margin_in_port(const ProjectedPicture& p, double pupil_radius_m) const {
        const auto light = port_light({.map = p.map,
                                       .shape = p.shape,
                                       .pupil_radius_m = pupil_radius_m,
                                       .booth_wall_back_m = in_.booth_wall_back_m});
        if (!light) return std::nullopt;
        return port_margin(in_.projectors.front().port, *light);
    }

    PictureInput in_;
    LensWish wish_;
};

/// Less is better; compared member by member.
auto rank_key(const LensChoice& c) {
    const double none = 2.0;  // worse than any share
    // What covers leaves nothing dark, but for the last bits of its area.
    const double dark = c.covers() ? 0.0 : c.picture ? c.picture->uncovered : none;
    return std::tuple(!c.covers(), !c.fits(), dark, c.picture ? c.picture->crop : none, c.lens);
}

}  // namespace

bool LensChoice::fits() const {
    const bool passes = picture && picture->port_margin_m.value_or(0.0) >= 0.0;
    return passes && reach.enough();
}

const LensChoice* LensPick::best() const {
    if (choices.empty()) return nullptr;
    const LensChoice& first = choices.front();
    return first.covers() && first.fits() ? &first : nullptr;
}

std::optional<LensPick> pick_lens(const PictureInput& in,
                                  int projector,
                                  int format,
                                  std::span<const Lens> catalogue) {
    const Projector& machine = in.projectors[static_cast<std::size_t>(projector)];
    const FormatUse* use = use_for(machine, in.formats[static_cast<std::size_t>(format)].name);
    if (!use) return std::nullopt;
    LensPick pick;
    pick.projector = projector;
    pick.format = format;
    const PictureInput trial = only(in, machine, *use, format);
    const PictureStudy exact = with_focal_length(trial, std::nullopt);
    if (exact.pictures.empty()) {
        pick.why_none = exact.none.front().why;
        pick.mend_none = exact.none.front().mend;
        return pick;
    }
    const ProjectedPicture& p = exact.pictures.front();
    pick.gate_width_m = p.gate_size_m.x;
    pick.gate_height_m = p.gate_size_m.y;
    pick.wish = wish_of(p, *use);
    const Trial one(trial, *pick.wish);
    for (std::size_t i = 0; i < catalogue.size(); ++i)
        pick.choices.push_back(one.choice(static_cast<int>(i), catalogue[i]));
    std::sort(pick.choices.begin(), pick.choices.end(),
              [](const LensChoice& a, const LensChoice& b) { return rank_key(a) < rank_key(b); });
    return pick;
}

}  // namespace rakeline::picture
