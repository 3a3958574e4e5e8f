// SPDX-License-Identifier: MIT
#pragma once

#include "base/quantity_text.hpp"
#include "desk/theme.hpp"
#include "desk/workspace.hpp"

#include <string>

/// One editable number: dragged sideways to change it, clicked to type it. Typed text goes through
/// base::parse_quantity, so "40 ft 6 in" is as good as a bare number.
namespace rakeline::desk {

struct NumberSpec {
    base::Unit unit = base::Unit::ratio;
    double least = 0.0;  ///< SI, inclusive
    double most = 1.0;
    bool whole = false;  ///< integers only
};

struct NumberOutcome {
    bool changed = false;   ///< the value differs from what was given
    bool finished = false;  ///< the gesture is over (typed, or the drag let go)
};

/// Draws the field over `width` and puts the new value, within the range, into `value_si`.
NumberOutcome number_field(const Theme& theme,
                           const char* id,
                           const NumberSpec& spec,
                           base::UnitSystem units,
                           float width,
                           NumberEdit& edit,
                           double& value_si);

/// What one pixel of dragging changes, in shown units: a power of ten that crosses the range in
/// some thousands of pixels, and no finer than the decimals shown.
double drag_step(const NumberSpec& spec, base::UnitSystem units);

/// `value_si` moved by `pixels` of dragging, on a round number of steps, within the range.
double dragged_value(const NumberSpec& spec,
                     base::UnitSystem units,
                     double value_si,
                     double pixels);

}  // namespace rakeline::desk
