// SPDX-License-Identifier: MIT
#pragma once

#include "base/result.hpp"

#include <string>
#include <string_view>

/// The one formatter and parser pair for quantities: window, command line, reports and errors all
/// print and read through it, so that they can't disagree. Values are SI on this side of it.
namespace rakeline::base {

enum class UnitSystem { metric, imperial };

/// What a value is, and with that how it is shown. The stored value is always SI (radians for
/// angles, metres for both kinds of length, ratios as they are).
enum class Unit {
    metre,           ///< m           | ft
    millimetre,      ///< stored in m, shown as mm | in
    micrometre,      ///< stored in m, shown as µm in both systems
    square_metre,    ///< m²          | ft²
    cubic_metre,     ///< m³          | ft³
    radian,          ///< °           | °
    per_radian,      ///< stored in 1/rad, shown as 1/°: things that a degree holds
    second,          ///< stored in s, shown as ms
    long_second,     ///< stored in s, shown as s: times that sound takes to die away
    lumen,           ///< lm
    lux,             ///< lx          | fc
    cd_per_m2,       ///< cd/m²       | fL
    lumen_per_watt,  ///< lm/W
    decibel,         ///< dB
    watt,            ///< W
    ampere,          ///< A
    volt,            ///< V
    hertz,           ///< Hz, kHz from 1000
    kg_per_m2,       ///< kg/m²       | lb/ft²
    celsius,         ///< °C          | °F  (stored in °C: the one temperature scale layouts use)
    pascal,          ///< stored in Pa, shown as kPa
    ratio,           ///< no unit, three decimals
    fraction,        ///< stored 0 to 1, shown as %
    count,           ///< whole number
    hour,            ///< stored in s, shown as h
    kelvin,          ///< a difference of temperatures: K | °F
    air_flow,        ///< stored in m³/s, shown as m³/h | ft³/min
    money,           ///< in whatever money the layout counts in; no unit
    kilogram,        ///< kg          | lb
};

struct QuantityText {
    std::string number;
    std::string unit;  ///< empty for ratio and count
};

/// Value and unit apart, so that columns can align on the number. `extra_decimals` more than are
/// usual for the unit: workings show them, so that a result can be followed by hand.
QuantityText quantity(double value_si, Unit unit, UnitSystem system, int extra_decimals = 0);

/// "12.35 m", "40.5 ft", "3.2 %": the two joined by a space (but "31.20°").
std::string quantity_text(double value_si,
                          Unit unit,
                          UnitSystem system = UnitSystem::metric,
                          int extra_decimals = 0);

/// Factor and offset from SI to what is shown: shown = value_si * factor + offset.
struct ShownScale {
    double factor = 1.0;
    double offset = 0.0;
    int decimals = 2;
    const char* unit = "";
};
ShownScale shown_scale(Unit unit, UnitSystem system);

/// Reads "40 ft 6 in", "5 ft 2 3/8 in", "12.3 m", "350mm", "14 fL", "3 %", or a bare number in the
/// system's own unit, to SI. A unit of the other system is understood; one of another kind is a
/// Problem.
Result<double> parse_quantity(std::string_view text, Unit unit, UnitSystem system);

/// Unit as JSON output and CSV heads print it: SI in ASCII, angles as "deg", "1" for ratios.
const char* json_unit(Unit unit);

/// Value as JSON output prints it: SI, angles in degrees.
double json_value(double value_si, Unit unit);

}  // namespace rakeline::base
