// SPDX-License-Identifier: MIT
#include "picture/lens_words.hpp"

#include <algorithm>
#include <cmath>

namespace rakeline::picture {
namespace {

using base::quantity_text;
using base::Unit;

/// A share of gate widths or heights as a percentage.
std::string percent(double share) {
    return quantity_text(share, Unit::fraction);
}

void join(std::string& list, const std::string& item) {
    list += (list.empty() ? "" : ", ") + item;
}

const std::string& name_of(const LensChoice& c, std::span<const room::Lens> catalogue) {
    return catalogue[static_cast<std::size_t>(c.lens)].name;
}

std::string covering_fault(const LensPicture& p, base::UnitSystem system) {
    const std::string edge = std::string("its ") + edge_name(p.decides) + " edge";
    if (!p.overfill || p.overfill->least_m() >= 0.0) {
        return edge + " leaves " + percent(p.uncovered) + " of the opening dark";
    }
    return "it falls short by up to " +
           quantity_text(-p.overfill->least_m(), Unit::millimetre, system) + ", " + edge +
           " most of all in proportion";
}

std::string spare_words(const LensPicture& p, base::UnitSystem system) {
    if (!p.overfill) return "";
    const double spare = std::max(0.0, p.overfill->least_m());
    return " with " + quantity_text(spare, Unit::millimetre, system) +
           " to spare where it is least";
}

long count_of(const LensPick& pick, bool (*kind)(const LensChoice&)) {
    return std::count_if(pick.choices.begin(), pick.choices.end(), kind);
}

std::string rivals(long others) {
    if (others == 0) return "; no other lens does both";
    const std::string n = std::to_string(others);
    return others == 1 ? ", no more than the 1 other that covers and fits"
                       : ", no more than any of the " + n + " others that cover and fit";
}

}  // namespace

std::string lens_faults(const LensChoice& c, base::UnitSystem system) {
    std::string out;
    if (!c.picture) return c.no_picture;
    if (!c.covers()) join(out, covering_fault(*c.picture, system));
    if (c.reach.shift_up_short > 0.0) {
        join(out, "its shift up or down is " + percent(c.reach.shift_up_short) +
                      " of the gate's height short");
    }
    if (c.reach.shift_across_short > 0.0) {
        join(out, "its shift across is " + percent(c.reach.shift_across_short) +
                      " of the gate's width short");
    }
    if (c.reach.image_circle_spare_m < 0.0) {
        join(out, "its image circle is " +
                      quantity_text(-c.reach.image_circle_spare_m, Unit::millimetre, system) +
                      " short");
    }
    if (c.picture->port_margin_m.value_or(0.0) < 0.0) {
        join(out, "the port cuts " +
                      quantity_text(-*c.picture->port_margin_m, Unit::millimetre, system) +
                      " into its beam");
    }
    return out;
}

std::string lens_reason(const LensPick& pick,
                        std::span<const room::Lens> catalogue,
                        base::UnitSystem system) {
    if (!pick.wish) return "No lens makes this picture: " + pick.why_none + ".";
    if (pick.choices.empty()) return "There is no lens to choose from.";
    const LensChoice& first = pick.choices.front();
    const std::string& name = name_of(first, catalogue);
    const std::string focal = quantity_text(first.focal_length_m, Unit::millimetre, system);
    if (!pick.best()) {
        return "No lens of " + std::to_string(pick.choices.size()) + " both covers and fits. '" +
               name + "' at " + focal + " comes nearest: " + lens_faults(first, system) + ".";
    }
    const long good = count_of(pick, [](const LensChoice& c) { return c.covers() && c.fits(); });
    return "'" + name + "' is first: at " + focal + " it fills the opening" +
           spare_words(*first.picture, system) + ", fits, and loses " +
           percent(first.picture->crop) + " of the light into the masking" + rivals(good - 1) + ".";
}

std::string lens_needed(const LensPick& pick, base::UnitSystem system) {
    if (!pick.wish) return "What would help: " + pick.mend_none + ".";
    const LensWish& w = *pick.wish;
    if (!w.covering_focal_length_m) {
        return "No focal length fills the opening with this aim and shift: aim nearer to the "
               "opening's centre, or shift less.";
    }
    std::string out = "Needed: a focal length of " +
                      quantity_text(*w.covering_focal_length_m, Unit::millimetre, system, 1) +
                      " or just below, an image circle of at least " +
                      quantity_text(w.demand.image_circle_m, Unit::millimetre, system);
    if (w.demand.shift_up != 0.0) {
        out += ", a shift " + std::string(w.demand.shift_up > 0.0 ? "up" : "down") + " of " +
               percent(std::abs(w.demand.shift_up)) + " of the gate's height";
    }
    if (w.demand.shift_across != 0.0) {
        out += ", a shift to the " + std::string(w.demand.shift_across > 0.0 ? "right" : "left") +
               " of " + percent(std::abs(w.demand.shift_across)) + " of the gate's width";
    }
    return out + ".";
}

}  // namespace rakeline::picture
