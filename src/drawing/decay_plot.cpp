// SPDX-License-Identifier: MIT
#include "drawing/decay_plot.hpp"

#include "base/assert.hpp"
#include "base/number_text.hpp"
#include "drawing/frequency_axis.hpp"
#include "drawing/parts.hpp"

#include <algorithm>
#include <cmath>

namespace rakeline::drawing {
namespace {

// In lettering rows:
constexpr double kRowsAbove = 2.0;   ///< what the curves are, the recommended range
constexpr double kRowsBelow = 1.75;  ///< octaves and their unit, the second's middle
constexpr double kMargin = 0.6;      ///< half a row and some air
constexpr double kLeftWords = 2.6;   ///< "0.25 s"

constexpr double kFirst_hz = 125.0;
constexpr double kLast_hz = 4000.0;

using Curve = std::vector<glm::dvec2>;  ///< (place along the axis, seconds)

Curve curve_of(const study::Study& study, const char* id) {
    Curve out;
    const study::Figure* figure = study::find_figure(study, id);
    RL_ASSERT(figure);
    for (const study::Value& value : figure->values)
        out.emplace_back(octaves(sound::kOctaves.at(static_cast<std::size_t>(value.index))),
                         value.si);
    return out;
}

std::optional<double> single(const study::Study& study, const char* id) {
    const study::Figure* figure = study::find_figure(study, id);
    return figure ? study::value_at(*figure) : std::nullopt;
}

/// What the chart shows, and how far up it has to reach.
struct Decay {
    Curve sabine, eyring;
    std::optional<double> least_s, most_s;

    double highest_s() const {
        double out = std::max(least_s.value_or(0.0), most_s.value_or(0.0));
        for (const Curve* curve : {&sabine, &eyring})
            for (const glm::dvec2 p : *curve)
                out = std::max(out, p.y);
        return out;
    }
};

/// The least of 1, 2 and 5 times a power of ten of which four reach `highest`.
double step_for(double highest) {
    const double power = std::pow(10.0, std::floor(std::log10(highest / 4.0)));
    for (const double times : {1.0, 2.0, 5.0})
        if (4.0 * times * power >= highest) return times * power;
    return 10.0 * power;
}

std::vector<Tick> seconds(double step, double top) {
    std::vector<Tick> out;
    const int decimals = std::max(0, static_cast<int>(std::ceil(-std::log10(step) - 1e-9)));
    for (int i = 0; i * step <= top * (1.0 + 1e-9); ++i)
        out.push_back({i * step, base::fixed_text(i * step, decimals) + " s"});
    return out;
}

void add_range(Chart& chart, const Scale& across, const Decay& decay) {
    if (!decay.least_s || !decay.most_s) return;
    const auto level = [&](double s) { return Curve{{across.low, s}, {across.high, s}}; };
    const double low = std::min(*decay.least_s, *decay.most_s);
    const double high = std::max(*decay.least_s, *decay.most_s);
    chart.shade_between(level(low), level(high), Ink::holds);
    for (const double s : {low, high})
        chart.curve(level(s), Ink::holds, Weight::seen, false);
}

void name_curves(Chart& chart, const Decay& decay) {
    const auto s = [](double x) { return base::fixed_text(x, 2) + " s"; };
    chart.words_above(0.0, "thick: Eyring, for halls that absorb much", Ink::sound, 1);
    chart.words_above(0.66, "dashed: Sabine", Ink::line, 1);
    if (!decay.least_s || !decay.most_s) return;
    chart.words_above(0.0,
                      "recommended: " + s(*decay.least_s) + " for close listening to " +
                          s(*decay.most_s) + " for speech",
                      Ink::holds, 0);
}

}  // namespace

PlotShape decay_plot_shape(glm::dvec2 field, double pitch) {
    return filling_shape(
        field, pitch,
        {.rows = kRowsAbove + kRowsBelow + 2.0 * kMargin, .columns = kLeftWords + 2.0 * kMargin});
}

Drawing decay_plot(const study::Study& study, const PlotShape& shape) {
    const Decay decay{curve_of(study, "sound.decay_sabine"), curve_of(study, "sound.decay_eyring"),
                      single(study, "sound.decay_least"), single(study, "sound.decay_most")};
    Drawing drawing;
    drawing.title = "Decay of sound in the hall";
    // Wide enough that the outer octaves' words stay under their ticks.
    const double beyond = std::exp2(0.7);
    const Scale across = frequency_scale(kFirst_hz / beyond, kLast_hz * beyond);
    const double step = step_for(1.02 * decay.highest_s());
    const double top = step * std::ceil(1.02 * decay.highest_s() / step);
    Chart chart(drawing, {0.0, shape.wide, 0.0, 1.0}, across, {0.0, top}, shape.pitch);
    add_range(chart, across, decay);
    chart.frame(seconds(step, top));
    draw_frequency_axis(chart, across);
    chart.curve(decay.sabine, Ink::line, Weight::seen, true);
    chart.curve(decay.eyring, Ink::sound, Weight::cut, false);
    chart.points(decay.eyring, Ink::sound);
    name_curves(chart, decay);
    set_bounds(drawing, kMargin * shape.pitch);
    drawing.low.x -= kLeftWords * shape.pitch;  // the words left of the axis
    return drawing;
}

}  // namespace rakeline::drawing
