// SPDX-License-Identifier: MIT
#include "drawing/loss_plot.hpp"

#include "base/number_text.hpp"
#include "drawing/frequency_axis.hpp"
#include "drawing/parts.hpp"
#include "study/loss_curves.hpp"

#include <algorithm>
#include <cmath>

namespace rakeline::drawing {
namespace {

using base::Unit;
using Points = std::vector<glm::dvec2>;

// In rows of lettering.
constexpr double kLeftWords = 2.6;   ///< "-10 dB"
constexpr double kRightWords = 2.0;  ///< "75°"
constexpr double kBetween = kRightWords + kLeftWords + 1.6;
constexpr int kRowsAbove = 3;
constexpr double kBelow = 1.75;  ///< two rows, the second's middle
constexpr double kMargin = 0.6;  ///< half a row and some air

Points curve_of(const std::vector<double>& hz, const std::vector<double>& db) {
    Points out;
    out.reserve(db.size());
    for (std::size_t i = 0; i < db.size(); ++i)
        out.emplace_back(octaves(hz[i]), db[i]);
    return out;
}

/// Level pieces a third octave wide, joined by uprights.
Points steps_of(const sound::Equalisation& equalisation) {
    constexpr double kHalf = 1.0 / 6.0;
    Points out;
    for (std::size_t i = 0; i < sound::kThirds.size(); ++i) {
        if (!equalisation.boost_db[i]) continue;
        const double at = octaves(sound::kThirds[i]);
        out.emplace_back(at - kHalf, *equalisation.boost_db[i]);
        out.emplace_back(at + kHalf, *equalisation.boost_db[i]);
    }
    return out;
}

/// An axis of decibels in whole steps, with room for its words.
struct Levels {
    Scale scale;
    std::vector<Tick> ticks;
};

Levels levels_over(double least, double most, double pitch) {
    const double range = std::max(most, 3.0) - std::min(least, 0.0);
    double step = 1.0;
    for (const double tried : {1.0, 2.0, 3.0, 5.0, 10.0, 20.0}) {
        step = tried;
        if (tried / (range + tried) > 1.1 * pitch && range / tried <= 7.0) break;
    }
    const double low = step * std::floor(std::min(least, 0.0) / step + 1e-9);
    const double high = step * std::ceil(std::max(most, 3.0) / step - 1e-9);
    Levels out{{low, high}, {}};
    for (int i = 0; low + i * step <= high + 1e-9; ++i)
        out.ticks.push_back({low + i * step, base::fixed_text(low + i * step, 0) + " dB"});
    return out;
}

double most_of(const std::vector<double>& values, double so_far) {
    return values.empty() ? so_far
                          : std::max(so_far, *std::max_element(values.begin(), values.end()));
}
double least_of(const std::vector<double>& values, double so_far) {
    return values.empty() ? so_far
                          : std::min(so_far, *std::min_element(values.begin(), values.end()));
}

/// Where the charts stand, and their axis of frequency.
struct Frame {
    Drawing& drawing;
    PlotShape shape;
    Scale frequency;

    Chart chart(double left, const Levels& levels) const {
        Chart out(drawing, {left, left + shape.wide, 0.0, 1.0}, frequency, levels.scale,
                  shape.pitch);
        out.frame(levels.ticks);
        draw_frequency_axis(out, frequency);
        return out;
    }
};

std::string degrees_text(double rad) {
    return base::fixed_text(base::degrees(rad), 0) + "°";
}

void draw_marks(const study::LossCurves& curves, Chart& chart) {
    constexpr double kHalf = 0.2;  // octaves
    for (const study::LossMark& mark : curves.marks) {
        const double at = octaves(mark.hz);
        chart.limit(at - kHalf, at + kHalf, mark.loss_db,
                    base::exact_text(mark.over_db) + " dB at " +
                        base::exact_text(mark.hz / 1000.0) + " kHz",
                    verdict_ink(mark.verdict));
    }
}

/// Short: in the window's strip a chart is some 36 letters wide.
void name_sheet(const study::LossCurves& curves, Chart& chart) {
    chart.words_above(0.0, "sheet's loss, by angle from square", Ink::screen, 2);
    if (!curves.least_db.empty()) {
        chart.words_above(0.0, "shaded: conventions; dashed: holes apart", Ink::beam, 1);
    } else if (!curves.measured.empty()) {
        chart.words_above(0.0, "squares: measured straight on", Ink::sight, 1);
    }
    if (!curves.marks.empty()) chart.words_above(0.0, "bars: limits over 500 Hz", Ink::line, 0);
}

void draw_sheet(const Frame& frame, const study::LossCurves& curves) {
    double most = most_of(curves.apart_db, 0.0);
    for (const study::AngleCurve& curve : curves.angles)
        most = most_of(curve.loss_db, most);
    for (const study::LossMark& mark : curves.marks)
        most = std::max(most, mark.loss_db);
    Chart chart = frame.chart(0.0, levels_over(0.0, most, frame.shape.pitch));
    chart.shade_between(curve_of(curves.hz, curves.least_db), curve_of(curves.hz, curves.most_db),
                        Ink::beam);
    chart.curve(curve_of(curves.hz, curves.apart_db), Ink::beam, Weight::seen, true);
    std::vector<Tick> names;
    for (const study::AngleCurve& curve : curves.angles) {
        const bool straight = curve.angle_rad == 0.0;
        chart.curve(curve_of(curves.hz, curve.loss_db), straight ? Ink::screen : Ink::line,
                    straight ? Weight::cut : Weight::seen, false);
        names.push_back({curve.loss_db.back(), degrees_text(curve.angle_rad)});
    }
    chart.words_right(std::move(names), Ink::quiet);
    Points measured;
    for (const room::LossPoint& point : curves.measured)
        measured.emplace_back(octaves(point.frequency_hz), point.loss_db);
    chart.points(measured, Ink::sight);
    draw_marks(curves, chart);
    name_sheet(curves, chart);
}

void name_channel(const study::Study& study,
                  const study::ChannelCurves& curves,
                  base::UnitSystem units,
                  Chart& chart) {
    const auto l = static_cast<std::size_t>(curves.loudspeaker);
    const sound::ChannelSheet& channel = *study.sound.sheet.channels[l];
    const auto text = [&](double si, Unit unit) { return base::quantity_text(si, unit, units); };
    const bool flat = study.layout().playback.house_curve == room::HouseCurve::flat;
    chart.words_above(0.0,
                      study.layout().loudspeakers[l].name + ": gap " +
                          text(channel.gap.along_m, Unit::metre) + ", headroom " +
                          text(channel.equalisation.headroom_db, Unit::decibel),
                      Ink::line, 2);
    chart.words_above(0.0, "thin: with the gap, ripple " + text(channel.ripple_db, Unit::decibel),
                      Ink::sound, 1);
    chart.words_above(0.0, std::string("steps: boost to ") + (flat ? "flat" : "the house curve"),
                      Ink::holds, 0);
}

void draw_channel(const Frame& frame,
                  const study::Study& study,
                  const study::ChannelCurves& curves,
                  base::UnitSystem units) {
    const auto l = static_cast<std::size_t>(curves.loudspeaker);
    const Points steps = steps_of(study.sound.sheet.channels[l]->equalisation);
    double least = least_of(curves.with_gap_db, 0.0);
    double most = most_of(curves.with_gap_db, most_of(curves.loss_db, 0.0));
    for (const glm::dvec2 step : steps) {
        least = std::min(least, step.y);
        most = std::max(most, step.y);
    }
    const double left = frame.shape.wide + kBetween * frame.shape.pitch;
    Chart chart = frame.chart(left, levels_over(least, most, frame.shape.pitch));
    chart.curve(curve_of(curves.hz, curves.with_gap_db), Ink::sound, Weight::helper, false);
    chart.curve(curve_of(curves.hz, curves.loss_db), Ink::screen, Weight::seen, false);
    chart.curve(steps, Ink::holds, Weight::cut, false);
    name_channel(study, curves, units, chart);
}

}  // namespace

PlotShape loss_plot_shape(glm::dvec2 field, double pitch) {
    return filling_shape(field, pitch,
                         {.rows = kRowsAbove - 0.4 + kBelow + 2.0 * kMargin,
                          .columns = kLeftWords + kBetween + 2.0 * kMargin,
                          .charts = 2.0});
}

Drawing loss_plot(const study::Study& study,
                  std::optional<int> loudspeaker,
                  base::UnitSystem units,
                  const PlotShape& shape) {
    const study::LossCurves curves = study::loss_curves(study, loudspeaker);
    Drawing drawing;
    drawing.title = "Loss of the screen";
    const Frame frame{drawing, shape, frequency_scale(20.0, 20000.0)};
    draw_sheet(frame, curves);
    if (curves.channel) draw_channel(frame, study, *curves.channel, units);
    set_bounds(drawing, kMargin * shape.pitch);
    drawing.low.x -= kLeftWords * shape.pitch;
    // The words beside the left chart, where no other stands there.
    if (!curves.channel) drawing.high.x += kRightWords * shape.pitch;
    return drawing;
}

}  // namespace rakeline::drawing
