// SPDX-License-Identifier: MIT
#include "desk/floor_drag.hpp"

#include "base/units.hpp"

#include <algorithm>
#include <cmath>

namespace rakeline::desk {
namespace {

constexpr double kMetricStep_m = 0.01;
constexpr double kImperialStep_m = 0.5 * base::kMetresPerInch;
constexpr double kAngleStep_rad = base::radians(0.1);
/// Where steps are off, a refused way is still tried in steps as fine as this.
constexpr double kFinest = 1e-4;

/// One number on its way from where it stands to where it is wanted.
struct Way {
    const room::Layout& start;
    const FloorHandle& handle;
    HandleAxis axis;
    RowsMoved rows;
    double from = 0.0, wanted = 0.0, step = kFinest;

    base::Result<room::Layout> at(double si) const {
        return with_number(start, handle, axis, rows, si);
    }
    /// Step `k` of those from where it stands toward what is wanted: on the whole steps between.
    double at_step(long k) const {
        const double first = wanted > from ? std::floor(from / step) : std::ceil(from / step);
        return (first + static_cast<double>(wanted > from ? k : -k)) * step;
    }
    /// Of the first step that is not short of what is wanted; 1 or more.
    long steps() const {
        const double first = wanted > from ? std::floor(from / step) : std::ceil(from / step);
        return std::max(1L, std::lround(std::ceil(std::abs(wanted / step - first) - 1e-9)));
    }
};

/// Halves the way until one step lies between what holds and what does not.
Dragged farthest(const Way& way) {
    Dragged out{way.start, way.at(way.wanted).problems().front()};
    long holds = 0, fails = way.steps();
    while (fails - holds > 1) {
        const long middle = holds + (fails - holds) / 2;
        auto tried = way.at(way.at_step(middle));
        if (tried) {
            holds = middle;
            out.layout = std::move(*tried);
        } else {
            fails = middle;
            out.stopped = tried.problems().front();
        }
    }
    return out;
}

Dragged along(const room::Layout& start,
              const FloorHandle& handle,
              HandleAxis axis,
              double to_m,
              const DragWish& wish) {
    const HandleNumber now = handle_number(start, handle, axis, wish.rows);
    Way way{start, handle, axis, wish.rows};
    way.from = now.si;
    way.wanted = number_at(start, handle, axis, wish.rows, to_m);
    const double step = snap_step(now.unit, wish.units);
    if (wish.snap) way.wanted = std::round(way.wanted / step) * step;
    if (wish.snap) way.step = step;
    auto made = way.at(way.wanted);
    if (made) return {std::move(*made), {}};
    return farthest(way);
}

}  // namespace

double snap_step(base::Unit unit, base::UnitSystem units) {
    if (unit == base::Unit::radian) return kAngleStep_rad;
    return units == base::UnitSystem::metric ? kMetricStep_m : kImperialStep_m;
}

Dragged dragged(const room::Layout& start,
                const FloorHandle& handle,
                glm::dvec2 to,
                const DragWish& wish) {
    Dragged out{start, {}};
    if (wish.back && handle.moves_back)
        out = along(out.layout, handle, HandleAxis::back, to.x, wish);
    if (!wish.up || !handle.moves_up) return out;
    Dragged up = along(out.layout, handle, HandleAxis::up, to.y, wish);
    if (!up.stopped) up.stopped = out.stopped;
    return up;
}

}  // namespace rakeline::desk
