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

constexpr double kWide = 2.6;
constexpr double kBetween = 0.7;
constexpr double kLowerTop = -0.3;
constexpr double kLowerBottom = -0.7;

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

    bool curves() const { return x == sagitta_of; }
    std::string name(const CurvatureTrial& t) const {
        return curves() ? radius_text(t.radius_m, units)
                        : base::quantity_text(t.tilt_rad, Unit::radian, units);
    }
};

Scale scale_round(double low, double high, const std::optional<CurvatureTrial>& now, Coordinate x) {
    if (!now) return {low, high};
    return {std::min(low, x(*now)), std::max(high, x(*now))};
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
        ticks.push_back({share, percent(share)});
        radii.push_back(
            {share, radius_text(light::radius_of_sagitta(half.help.chord_m, share), half.units)});
    }
    lower.ticks_below(ticks, 0);
    lower.ticks_below(radii, 1);
    lower.title_below("sagitta over chord, and radius", 2);
}

void draw_half(Drawing& drawing, const Half& half) {
    const double right = half.left + kWide;
    Chart upper(drawing, {half.left, right, 0.0, 1.0}, half.scale, {0.0, 1.0});
    const double top = top_of_lower(half.help);
    Chart lower(drawing, {half.left, right, kLowerBottom, kLowerTop}, half.scale, {0.0, top});
    shade_wall(half, upper);
    std::vector<Tick> up;
    for (int i = 0; i <= 4; ++i)
        up.push_back({0.25 * i, percent(0.25 * i)});
    upper.frame(up);
    lower.frame({{0.0, "0 %"}, {top, percent(top)}});
    upper.curve(curve_of(half, [](const auto& t) { return t.side_ratio; }), Ink::beam, Weight::seen,
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
}

void add_words(Drawing& drawing, glm::dvec2 at, const char* text, Ink ink) {
    drawing.items.emplace_back(
        Label{.at = at, .text = text, .anchor = Anchor::left, .ink = ink, .shows = {}});
}

/// Above the charts what their upper curves are, between upper and lower what the lower are.
void add_legend(Drawing& drawing) {
    const double above = 1.0 + 2.8 * Chart::kPitch;
    add_words(drawing, {0.0, above}, "thick: darkest over brightest, all seats and nine points",
              Ink::screen);
    add_words(drawing, {kWide + kBetween, above}, "worst seat: sides over centre", Ink::beam);
    for (const double left : {0.0, kWide + kBetween}) {
        const double between = 0.5 * kLowerTop;
        add_words(drawing, {left, between}, "crop", Ink::sight);
        add_words(drawing, {left + 0.6, between}, "bow, dashed", Ink::sound);
        add_words(drawing, {left + 1.7, between}, "left dark", Ink::missed);
    }
}

}  // namespace

Drawing curve_plot(const light::CurvatureHelp& help, base::UnitSystem units) {
    Drawing drawing;
    drawing.title = "Curve and tilt of the screen";
    const double ten = base::radians(10.0);
    draw_half(drawing, {help, help.curves, help.best_curve, sagitta_of,
                        scale_round(0.0, 0.1, help.now, sagitta_of), 0.0, units});
    draw_half(drawing, {help, help.tilts, help.best_tilt, tilt_of,
                        scale_round(-ten, ten, help.now, tilt_of), kWide + kBetween, units});
    add_legend(drawing);
    set_bounds(drawing, Chart::kPitch);
    drawing.low.x -= 2.5 * Chart::kPitch;  // the words left of the axis
    return drawing;
}

}  // namespace rakeline::drawing
