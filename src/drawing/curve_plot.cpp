// SPDX-License-Identifier: MIT
#include "drawing/curve_plot.hpp"

#include "base/number_text.hpp"
#include "drawing/chart.hpp"
#include "drawing/parts.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace rakeline::drawing {
namespace {

using base::Unit;
using light::CurvatureTrial;

constexpr double kLower = 0.4;  ///< height of the lower chart over the upper one's
// In lettering rows:
constexpr double kBetween = 3.4;    ///< from one half to the other: the words left of its axis
constexpr double kGap = 1.5;        ///< from upper to lower chart, with a row of words
constexpr int kRowsAbove = 3;       ///< what the curves are, the most even, now
constexpr double kBelow = 1.75;     ///< two rows, the second's middle
constexpr double kMargin = 0.6;     ///< half a row and some air
constexpr double kLeftWords = 2.4;  ///< "100 %"

using Coordinate = double (*)(const CurvatureTrial&);

double sagitta_of(const CurvatureTrial& t) {
    return t.sagitta_fraction;
}
double tilt_of(const CurvatureTrial& t) {
    return t.tilt_rad;
}

std::string percent(double share, int decimals = 0) {
    return base::fixed_text(100.0 * share, decimals) + " %";
}

std::string radius_text(double radius_m, base::UnitSystem units) {
    return radius_m == 0.0 ? "flat" : "R " + base::quantity_text(radius_m, Unit::metre, units);
}

/// One of the two charts: what is tried along its axis, and how it is named.
struct Half {
    const light::CurvatureHelp& help;
    const std::vector<CurvatureTrial>& trials;
    std::optional<int> best;
    Coordinate x;
    Scale scale;
    double left = 0.0;
    base::UnitSystem units;
    PlotShape shape;

    bool curves() const { return x == sagitta_of; }
    std::string name(const CurvatureTrial& t) const {
        return curves() ? radius_text(t.radius_m, units)
                        : base::quantity_text(t.tilt_rad, Unit::radian, units);
    }
};

/// From `low` to `high`, and as far as the trials and the screen as it is reach.
Scale scale_round(double low,
                  double high,
                  const std::vector<CurvatureTrial>& trials,
                  const std::optional<CurvatureTrial>& now,
                  Coordinate x) {
    Scale scale{low, high};
    const auto reach = [&](const CurvatureTrial& t) {
        scale = {std::min(scale.low, x(t)), std::max(scale.high, x(t))};
    };
    std::for_each(trials.begin(), trials.end(), reach);
    if (now) reach(*now);
    return scale;
}

std::vector<glm::dvec2> curve_of(const Half& half, double (*y)(const CurvatureTrial&)) {
    std::vector<glm::dvec2> out;
    for (const CurvatureTrial& t : half.trials)
        out.emplace_back(half.x(t), y(t));
    return out;
}

/// The next of 1, 2, 5, 10 ... percent over what the lower charts show.
double top_of_lower(const light::CurvatureHelp& help) {
    double most = 0.005;
    for (const auto* trials : {&help.curves, &help.tilts}) {
        for (const CurvatureTrial& t : *trials)
            most = std::max({most, t.crop, t.bow_fraction, t.uncovered});
    }
    for (const double top : {0.01, 0.02, 0.05, 0.1, 0.2, 0.5})
        if (most <= top) return top;
    return 1.0;
}

/// Pieces of the axis where the frame would stand in the screen wall.
void shade_wall(const Half& half, Chart& chart) {
    const auto& trials = half.trials;
    for (std::size_t i = 0; i + 1 < trials.size(); ++i) {
        if (trials[i].clear_of_wall && trials[i + 1].clear_of_wall) continue;
        chart.shade(half.x(trials[i]), half.x(trials[i + 1]), Ink::missed);
    }
}

/// Sagitta at which the radius is the throw, where a centred eye at the lens sees the sheet square.
std::optional<double> throw_sagitta(const Half& half) {
    if (!half.curves() || !half.help.now) return std::nullopt;
    const double throw_m = half.help.now->throw_m;
    if (throw_m < half.help.chord_m) return std::nullopt;
    const double at = light::sagitta_fraction(half.help.chord_m, throw_m);
    return at < half.scale.high ? std::optional(at) : std::nullopt;
}

void mark_both(const Half& half, Chart& upper, Chart& lower) {
    if (const auto at = throw_sagitta(half)) upper.mark_inside(*at, "R = throw");
    if (half.best) {
        const CurvatureTrial& t = half.trials[static_cast<std::size_t>(*half.best)];
        upper.mark(half.x(t), "most even: " + half.name(t) + ", " + percent(t.evenness), Ink::holds,
                   true, 1);
        lower.mark(half.x(t), "", Ink::holds, true, 0);
    }
    if (!half.help.now) return;
    const CurvatureTrial& now = *half.help.now;
    upper.mark(half.x(now), "now: " + half.name(now) + ", " + percent(now.evenness), Ink::line,
               false, 0);
    lower.mark(half.x(now), "", Ink::line, false, 0);
}

void name_axis(const Half& half, Chart& lower) {
    std::vector<Tick> ticks;
    if (!half.curves()) {
        for (int degrees = -10; degrees <= 10; degrees += 5) {
            const double rad = base::radians(degrees);
            ticks.push_back({rad, base::quantity_text(rad, Unit::radian, half.units)});
        }
        lower.ticks_below(ticks, 0);
        return lower.title_below("tilt, positive leans back", 1);
    }
    std::vector<Tick> radii;
    for (int i = 0; i <= 2; ++i) {
        const double share = 0.05 * i;
        ticks.push_back(
            {share, i == 1 ? "sagitta " + percent(share) + " of the chord" : percent(share)});
        radii.push_back(
            {share, radius_text(light::radius_of_sagitta(half.help.chord_m, share), half.units)});
    }
    lower.ticks_below(ticks, 0);
    lower.ticks_below(radii, 1);
}

/// Above the charts what the upper curves are, between upper and lower what the lower are.
void name_curves(const Half& half, Chart& upper, Chart& lower) {
    const int top = kRowsAbove - 1;
    if (half.curves())
        upper.words_above(0.0, "thick: darkest over brightest of all seats", Ink::screen, top);
    else
        upper.words_above(0.0, "thin: the worst seat's sides over centre", Ink::near, top);
    lower.words_above(0.0, "crop", Ink::sight, 0);
    lower.words_above(0.25, "bow, dashed", Ink::sound, 0);
    lower.words_above(0.65, "left dark", Ink::missed, 0);
}

void draw_half(Drawing& drawing, const Half& half) {
    const double right = half.left + half.shape.wide;
    const double pitch = half.shape.pitch;
    const double lower_top = -kGap * pitch;
    Chart upper(drawing, {half.left, right, 0.0, 1.0}, half.scale, {0.0, 1.0}, pitch);
    const double top = top_of_lower(half.help);
    Chart lower(drawing, {half.left, right, lower_top - kLower, lower_top}, half.scale, {0.0, top},
                pitch);
    shade_wall(half, upper);
    std::vector<Tick> up;
    const double step = 0.25 > 1.1 * pitch ? 0.25 : 0.5;
    for (double share = 0.0; share <= 1.0; share += step)
        up.push_back({share, percent(share)});
    upper.frame(up);
    lower.frame({{0.0, "0 %"}, {top, percent(top)}});
    upper.curve(curve_of(half, [](const auto& t) { return t.side_ratio; }), Ink::near, Weight::seen,
                false);
    upper.curve(curve_of(half, [](const auto& t) { return t.evenness; }), Ink::screen, Weight::cut,
                false);
    lower.curve(curve_of(half, [](const auto& t) { return t.crop; }), Ink::sight, Weight::seen,
                false);
    lower.curve(curve_of(half, [](const auto& t) { return t.bow_fraction; }), Ink::sound,
                Weight::seen, true);
    lower.curve(curve_of(half, [](const auto& t) { return t.uncovered; }), Ink::missed,
                Weight::seen, false);
    mark_both(half, upper, lower);
    name_axis(half, lower);
    name_curves(half, upper, lower);
}

}  // namespace

PlotShape plot_shape(glm::dvec2 field, double pitch) {
    constexpr double kRows = kRowsAbove - 0.4 + kGap + kBelow + 2.0 * kMargin;
    constexpr double kColumns = kBetween + kLeftWords + 2.0 * kMargin;
    return filling_shape(
        field, pitch, {.rows = kRows, .columns = kColumns, .charts = 2.0, .heights = 1.0 + kLower});
}

Drawing curve_plot(const light::CurvatureHelp& help,
                   base::UnitSystem units,
                   const PlotShape& shape) {
    Drawing drawing;
    drawing.title = "Curve and tilt of the screen";
    const double ten = base::radians(10.0);
    const double second = shape.wide + kBetween * shape.pitch;
    draw_half(drawing,
              {help, help.curves, help.best_curve, sagitta_of,
               scale_round(0.0, 0.1, help.curves, help.now, sagitta_of), 0.0, units, shape});
    draw_half(drawing,
              {help, help.tilts, help.best_tilt, tilt_of,
               scale_round(-ten, ten, help.tilts, help.now, tilt_of), second, units, shape});
    set_bounds(drawing, kMargin * shape.pitch);
    drawing.low.x -= kLeftWords * shape.pitch;
    return drawing;
}

}  // namespace rakeline::drawing
