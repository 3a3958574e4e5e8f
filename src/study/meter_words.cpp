// SPDX-License-Identifier: MIT
#include "study/meter_words.hpp"

#include "base/number_text.hpp"

#include <algorithm>
#include <cmath>

namespace rakeline::study {
namespace {

using base::Unit;
using light::LawPart;
using light::MeterSign;
using light::PartState;

std::string percent(double fraction) {
    return base::quantity_text(fraction, Unit::fraction);
}

std::string place_of(const MeterRow& row, base::UnitSystem system) {
    if (!row.point) {
        return base::quantity_text(row.place_m.x, Unit::metre, system) + " across, " +
               base::quantity_text(row.place_m.y, Unit::metre, system) + " up";
    }
    std::string name = meter_point_name(*row.point);
    std::replace(name.begin(), name.end(), '_', ' ');
    return name;
}

/// "12.0 % of the gate's width to the right"; empty where the part lies within its error of 0.
std::string offset_text(const light::FittedPart& part,
                        const char* of,
                        const char* plus,
                        const char* minus) {
    if (part.state == PartState::held ||
        std::abs(part.value) <= std::max(0.01, 2.0 * part.error.value_or(0.0)))
        return {};
    return percent(std::abs(part.value)) + " of the gate's " + of + " " +
           (part.value > 0.0 ? plus : minus);
}

std::string both(const std::string& a, const std::string& b) {
    return a.empty() || b.empty() ? a + b : a + " and " + b;
}

/// Which way the hot spot has to go, as seen facing the screen: "left and up".
std::string way_back(const light::MeterFit& fit) {
    const auto part = [&](LawPart which, const char* back, const char* forth) -> std::string {
        const light::FittedPart& p = fit.part(which);
        if (offset_text(p, "", "", "").empty()) return {};
        return p.value > 0.0 ? back : forth;
    };
    return both(part(light::kAcross, "left", "right"), part(light::kUp, "down", "up"));
}

/// The mirror or condenser throws the lamp's image into the gate upside down, and the lens turns it
/// over again: the spot on the screen goes the way that the lamp goes. (Derived: two inversions.)
std::string off_centre_text(const light::MeterFit& fit, bool laser) {
    const std::string where =
        both(offset_text(fit.part(light::kAcross), "width", "to the right", "to the left"),
             offset_text(fit.part(light::kUp), "height", "up", "down"));
    const std::string found =
        "The hot spot lies off the picture's middle, seen facing the screen: " + where + ". ";
    if (laser)
        return found + "A laser source has no lamp to centre: its maker's service sees to it.";
    return found +
           "Lamp off centre: where one mirror or condenser throws the lamp's image into "
           "the gate, the spot follows the lamp, so move the lamp " +
           way_back(fit) +
           ", seen facing the screen. A folding mirror or an integrator may turn this about: go by "
           "small steps, and back where the spot moves further off.";
}

std::string steep_text(const light::MeterFit& fit, bool laser) {
    const light::FittedPart& corner = fit.part(light::kCorner);
    const std::string found = "The fall-off is too steep: the gate's corners have " +
                              percent(corner.value) + " of the peak where the layout has " +
                              percent(corner.layout_value) + ". ";
    if (laser) return found + "Have the source's optics seen to by its maker's service.";
    return found +
           "The lamp may stand off the focal point of its mirror or collector: move it "
           "along the axis in small steps until centre and sides read as they should.";
}

std::string hollow_text(const MeterCheck& check) {
    return "The middle is weaker than the light round it (" + base::fixed_text(*check.fit.dip, 1) +
           " standard errors): a hole in the middle. The lamp may stand off the focal point the "
           "other way, so that the shadow of its electrode or the hole of the mirror shows: move "
           "it along the axis until the hole closes.";
}

std::string flux_text(const light::MeterFit& fit) {
    return percent(fit.flux_ratio()) + " of the flux that the layout gives";
}

/// So far off, a lamp is less likely than a slip: a foot-lambert is 3.4 candelas per square metre,
/// a foot-candle 10.8 lux. Twice: common practice, no source.
std::string unit_text(const light::MeterFit& fit) {
    constexpr double kFarOff = 2.0;
    const double ratio = fit.flux_ratio();
    if (ratio < kFarOff && ratio > 1.0 / kFarOff) return {};
    return " So far off, see first that every reading has its own unit, that the projector shows "
           "white in this format, and what flux the layout gives.";
}

std::string dim_text(const MeterCheck& check) {
    const std::string clean =
        "clean the port's glass on both sides, the mirror or collector and the lens, then look at "
        "the lamp's age and current.";
    if (check.signs.size() == 1)
        return "The flux is low, " + flux_text(check.fit) +
               ", and the pattern is as it should be: " + clean + unit_text(check.fit);
    return "The flux is low, " + flux_text(check.fit) +
           ". Mend the pattern first, which may bring some of it back, and read again; then " +
           clean + unit_text(check.fit);
}

std::string uneven_text(const MeterCheck& check, base::UnitSystem system) {
    const std::size_t worst = light::furthest_reading(check.fit);
    const light::FittedReading& reading = check.fit.readings[worst];
    const double off = reading.residual() / std::max(reading.fitted, 1e-9);
    return "The light is uneven beyond a smooth fall-off about one hot spot: furthest off is " +
           meter_place_name(check, worst, system) + ", " + percent(std::abs(off)) +
           (off > 0.0 ? " brighter" : " darker") +
           " than fitted. Read there again; then look for stray light, dirt or a crack on port, "
           "mirror or imager, a soiled or damaged patch of the sheet. The standard errors take in "
           "the meter's accuracy alone, so they are too small here.";
}

std::string sign_text(const Study& study,
                      const MeterCheck& check,
                      MeterSign sign,
                      base::UnitSystem system) {
    const room::FluxChain& chain =
        study.layout().projectors.at(static_cast<std::size_t>(check.subject.projector)).flux;
    const bool laser = chain.lamp == room::LampKind::laser;
    switch (sign) {
        case MeterSign::uneven:
            return uneven_text(check, system);
        case MeterSign::off_centre:
            return off_centre_text(check.fit, laser);
        case MeterSign::too_steep:
            return steep_text(check.fit, laser);
        case MeterSign::hollow:
            return hollow_text(check);
        case MeterSign::too_flat:
            return "The picture is more even than the layout has it, with " + flux_text(check.fit) +
                   ": the light is spread beyond the gate. The lamp may stand off its focal point: "
                   "move it along the axis until centre and sides read as they should.";
        case MeterSign::dim:
            return dim_text(check);
        case MeterSign::bright:
            break;
    }
    return "The flux is high, " + flux_text(check.fit) +
           ": the layout's chain gives too little, or the lamp runs over the current it states." +
           unit_text(check.fit);
}

/// Places that all read the same to the last digit: no picture falls off so little, and three may
/// do so by chance. Nothing where readings differ.
std::string alike_text(const MeterCheck& check, base::UnitSystem system) {
    constexpr std::size_t kTooManyAlike = 4;
    const std::vector<MeterPlace>& all = check.places;
    const auto differs = [&](const MeterPlace& place) {
        return place.row.value != all.front().row.value || place.row.unit != all.front().row.unit;
    };
    if (all.size() < kTooManyAlike || std::any_of(all.begin(), all.end(), differs)) return {};
    return "All " + std::to_string(all.size()) + " places read the same, " +
           base::quantity_text(all.front().row.value, all.front().row.unit, system) +
           ": no picture is so even. See that the meter does not hold its reading and is in range, "
           "aim it at each place in turn, and read again before anything is moved.";
}

std::string held_text(const light::MeterFit& fit, LawPart part) {
    const light::FittedPart& p = fit.parts[static_cast<std::size_t>(part)];
    const std::string name = meter_part_name(part);
    if (p.state == PartState::at_bound) {
        return name + ": the readings ask for more than its bound of " +
               base::quantity_text(p.value, meter_part_unit(part)) +
               "; no standard error can be given.";
    }
    const bool even = fit.part(light::kCorner).value >= 1.0 - 1e-9;
    const bool spot = part == light::kAcross || part == light::kUp;
    return name + ": held at the layout's value, since " +
           (spot && even ? "an even picture has no hot spot."
                         : "the readings do not tell it; read at more places.");
}

std::string scatter_text(const light::MeterFit& fit) {
    if (fit.freedom <= 0)
        return "There are no more readings than fitted parts, so that nothing can be said of how "
               "well they agree.";
    return "Chi-square per degree of freedom " + base::fixed_text(fit.chi_square / fit.freedom, 2) +
           " with " + std::to_string(fit.freedom) + " of freedom: as much or more by chance in " +
           percent(*fit.chance) + " of cases.";
}

void add_spot_notes(const MeterCheck& check,
                    base::UnitSystem system,
                    std::vector<std::string>& out) {
    bool wide = false;
    for (std::size_t i = 0; i < check.places.size(); ++i) {
        wide = wide || check.places[i].row.spot_rad > light::kMeterSpotMost_rad * (1.0 + 1e-9);
        const double dark = check.fit.readings[i].dark_share;
        if (dark < 0.01) continue;
        out.push_back(percent(dark) + " of the meter's spot at " +
                      meter_place_name(check, i, system) +
                      " falls outside the picture, which is taken as black.");
    }
    if (wide)
        out.push_back(
            "A meter whose spot is wider than 2 degrees is not one for readings to "
            "ISO 26431-1 (as reported).");
}

}  // namespace

std::string meter_place_name(const MeterCheck& check,
                             std::size_t reading,
                             base::UnitSystem system) {
    const MeterRow& row = check.places.at(reading).row;
    return place_of(row, system) + (row.seat.empty() ? "" : " from " + row.seat);
}

std::string meter_residual_text(const light::FittedReading& reading) {
    if (reading.fitted <= 0.0) return "-";
    const std::string text = percent(reading.residual() / reading.fitted);
    const bool nought = text.find_first_of("123456789") == std::string::npos;
    return nought || text.starts_with('-') ? text : "+" + text;
}

const char* meter_part_name(LawPart part) {
    switch (part) {
        case light::kPeak:
            return "Flux out of the lens";
        case light::kCorner:
            return "Corner to peak";
        case light::kAcross:
            return "Hot spot across";
        case light::kUp:
            return "Hot spot up";
        case light::kLawParts:
            break;
    }
    return "";
}

Unit meter_part_unit(LawPart part) {
    if (part == light::kPeak) return Unit::lumen;
    return part == light::kCorner ? Unit::fraction : Unit::ratio;
}

const char* meter_state_name(PartState state) {
    switch (state) {
        case PartState::fitted:
            return "fitted";
        case PartState::held:
            return "held";
        case PartState::at_bound:
            break;
    }
    return "at_bound";
}

const char* meter_sign_name(MeterSign sign) {
    switch (sign) {
        case MeterSign::uneven:
            return "uneven";
        case MeterSign::off_centre:
            return "off_centre";
        case MeterSign::too_steep:
            return "too_steep";
        case MeterSign::hollow:
            return "hollow";
        case MeterSign::too_flat:
            return "too_flat";
        case MeterSign::dim:
            return "dim";
        case MeterSign::bright:
            break;
    }
    return "bright";
}

std::vector<std::string> meter_notes(const MeterCheck& check, base::UnitSystem system) {
    std::vector<std::string> out{scatter_text(check.fit)};
    for (int part = 0; part < light::kLawParts; ++part) {
        const auto which = static_cast<LawPart>(part);
        if (check.fit.part(which).state != PartState::fitted)
            out.push_back(held_text(check.fit, which));
    }
    add_spot_notes(check, system, out);
    return out;
}

std::vector<std::string> meter_advice(const Study& study,
                                      const MeterCheck& check,
                                      base::UnitSystem system) {
    std::vector<std::string> out;
    const std::string alike = alike_text(check, system);
    if (!alike.empty()) out.push_back(alike);
    for (const MeterSign sign : check.signs)
        out.push_back(sign_text(study, check, sign, system));
    if (out.empty())
        out.push_back("The readings agree with the layout's light: there is nothing to mend.");
    return out;
}

std::vector<std::string> meter_cautions(const Study& study, const MeterCheck& check) {
    if (check.signs.empty()) return {};
    const room::FluxChain& chain =
        study.layout().projectors.at(static_cast<std::size_t>(check.subject.projector)).flux;
    if (chain.lamp == room::LampKind::laser) {
        return {
            "A laser source is opened by its maker's trained service alone: never defeat an "
            "interlock, and never look into lens, port or beam.",
            "Cleaning is done with the source off, isolated and cooled, by the maker's "
            "procedure; local codes and licensed practice go before anything here."};
    }
    return {
        "A xenon lamp is under pressure hot and cold and can burst: only trained people open "
        "the lamphouse, with face shield, neck and hand protection on.",
        "Before anything is opened or touched: supply off and isolated, lamp cooled for the "
        "time that its maker gives. Lamp currents and ignition voltages kill.",
        "Never look at the arc or into lens or port: ultraviolet and bright light harm eyes "
        "and skin. Lamps can make ozone: keep the exhaust running. Adjust a lit lamp from "
        "outside alone, by the controls meant for it.",
        "Follow the maker's procedure for each adjustment; local codes and licensed practice go "
        "before anything here."};
}

}  // namespace rakeline::study
