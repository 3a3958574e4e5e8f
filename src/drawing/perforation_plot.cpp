// SPDX-License-Identifier: MIT
#include "drawing/perforation_plot.hpp"

#include "base/number_text.hpp"
#include "drawing/chart.hpp"
#include "drawing/parts.hpp"
#include "study/perforation_words.hpp"

#include <algorithm>
#include <cmath>

namespace rakeline::drawing {
namespace {

using base::Unit;
using study::SheetSight;
using study::SheetTrial;

// In lettering rows:
constexpr double kNames = 19.0;     ///< for the list at the right
constexpr double kLeftWords = 2.6;  ///< "100 %"
constexpr double kBelow = 2.0;
constexpr double kAbove = 2.0;
constexpr double kMargin = 0.6;

bool has_holes(const SheetTrial& trial) {
    return trial.sheet.perforation.pattern != room::PerforationPattern::none;
}

/// The next round number not below what is there.
double round_top(double most) {
    const double power = std::pow(10.0, std::floor(std::log10(most)));
    for (const double step : {1.0, 1.5, 2.0, 2.5, 5.0, 7.5})
        if (most <= step * power * (1.0 + 1e-9)) return step * power;
    return 10.0 * power;
}

Scale scale_to(const std::vector<SheetTrial>& trials, double SheetTrial::*value, double least) {
    double most = least;
    for (const SheetTrial& trial : trials)
        if (has_holes(trial)) most = std::max(most, 1.08 * trial.*value);
    return {0.0, round_top(most)};
}

/// Five steps, each with its unit; `factor` from the scale to what is shown.
std::vector<Tick> ticks(const Scale& scale, double factor, const char* unit) {
    std::vector<Tick> out;
    const double step = factor * scale.high / 5.0;
    const int decimals = std::abs(step - std::round(step)) < 1e-9 ? 0 : 1;
    for (int i = 0; i <= 5; ++i)
        out.push_back({scale.high * i / 5.0, base::fixed_text(step * i, decimals) + unit});
    return out;
}

Ink ink_of(SheetSight sight) {
    switch (sight) {
        case SheetSight::beat_seen:
            return Ink::missed;
        case SheetSight::holes_seen:
            return Ink::near;
        case SheetSight::unseen:
            break;
    }
    return Ink::holds;
}

/// Larger the larger a hole looks; never so small that it can't be found.
double radius_of(const SheetTrial& trial, double pitch) {
    return pitch * (0.16 + 0.14 * std::min(trial.hole_minutes.value_or(0.0), 2.0));
}

void draw_disc(Drawing& drawing, glm::dvec2 at, const SheetTrial& trial, double radius) {
    const SheetSight sight = study::sight_of(trial);
    const Ink ink = ink_of(sight);
    if (sight == SheetSight::beat_seen)
        drawing.items.emplace_back(Fill{disc(at, radius, 24), ink, 0.9, {}});
    if (sight == SheetSight::holes_seen) {
        auto half = disc(at, radius, 24);
        half.erase(std::remove_if(half.begin(), half.end(),
                                  [&](glm::dvec2 p) { return p.y > at.y + 1e-9; }),
                   half.end());
        drawing.items.emplace_back(Fill{std::move(half), ink, 0.9, {}});
    }
    drawing.items.emplace_back(
        Line{.points = disc(at, radius, 24), .weight = Weight::cut, .ink = ink, .closed = true});
}

Label words(glm::dvec2 at, std::string text, Anchor anchor, Ink ink) {
    return {.at = at, .text = std::move(text), .anchor = anchor, .ink = ink, .shows = {}};
}

std::string number_of(std::size_t i) {
    return i == 0 ? "now" : std::to_string(i);
}

/// Numbers beside the discs, each where no earlier one stands.
void draw_numbers(Drawing& drawing,
                  const std::vector<glm::dvec2>& at,
                  const std::vector<SheetTrial>& trials,
                  double pitch) {
    std::vector<glm::dvec2> taken;
    const auto free = [&](glm::dvec2 here) {
        return std::none_of(taken.begin(), taken.end(), [&](glm::dvec2 there) {
            return std::abs(here.x - there.x) < 1.1 * pitch &&
                   std::abs(here.y - there.y) < 0.8 * pitch;
        });
    };
    for (std::size_t i = 0; i < at.size(); ++i) {
        if (!has_holes(trials[i])) continue;
        const double aside = radius_of(trials[i], pitch) + (i == 0 ? 1.0 : 0.55) * pitch;
        glm::dvec2 here = at[i] + glm::dvec2(aside, 0.0);
        for (int tried = 0; tried < 16 && !free(here); ++tried) {
            const double angle = base::kPi / 4.0 * tried;
            here = at[i] +
                   aside * (1.0 + 0.5 * (tried / 8)) * glm::dvec2(std::cos(angle), std::sin(angle));
        }
        taken.push_back(here);
        drawing.items.emplace_back(
            words(here, number_of(i), Anchor::centre, i == 0 ? Ink::line : Ink::quiet));
    }
}

/// Its name, and its loss where it stands off the chart.
std::string name_of(const SheetTrial& trial) {
    if (has_holes(trial)) return trial.sheet.name;
    return trial.sheet.name + ": " + base::quantity_text(trial.loss_10k_db, Unit::decibel);
}

/// The sheets by number, with what is seen of them.
void draw_names(Drawing& drawing,
                const std::vector<SheetTrial>& trials,
                double left,
                double pitch) {
    double y = 1.0 - 0.3 * pitch;
    const double step = std::min(pitch, 0.95 / static_cast<double>(trials.size()));
    for (std::size_t i = 0; i < trials.size(); ++i, y -= step) {
        const SheetSight sight = study::sight_of(trials[i]);
        drawing.items.emplace_back(
            words({left + 1.6 * pitch, y}, number_of(i), Anchor::right, ink_of(sight)));
        drawing.items.emplace_back(words({left + 2.0 * pitch, y}, name_of(trials[i]), Anchor::left,
                                         i == 0 ? Ink::line : Ink::quiet));
    }
}

double right_of(SheetNames names) {
    return names == SheetNames::listed ? kNames : 0.0;
}

}  // namespace

PlotShape perforation_plot_shape(glm::dvec2 field, double pitch, SheetNames names) {
    const double height =
        std::max(field.y - (kAbove + kBelow + 2.0 * kMargin) * pitch, 3.0 * pitch);
    const double width = field.x - (right_of(names) + kLeftWords + 2.0 * kMargin) * pitch;
    return {std::clamp(width / height, 1.2, 8.0), pitch / height};
}

Drawing perforation_plot(const study::SheetTrials& trials,
                         const PlotShape& shape,
                         SheetNames names) {
    Drawing drawing;
    drawing.title = "Sheets: sound, light and sight";
    const auto& all = trials.trials;
    const Scale x = scale_to(all, &SheetTrial::loss_10k_db, 2.0);
    const Scale y = scale_to(all, &SheetTrial::open_area, 0.02);
    Chart chart(drawing, {0.0, shape.wide, 0.0, 1.0}, x, y, shape.pitch);
    chart.frame(ticks(y, 100.0, " %"));
    chart.uprights(ticks(x, 1.0, " dB"));
    chart.ticks_below(ticks(x, 1.0, " dB"), 0);
    chart.title_below("sound lost at 10 kHz, straight through", 1);
    chart.words_above(0.0, "up: light lost to the holes", Ink::line, 1);
    chart.words_above(0.0, "ring: unseen", Ink::holds, 0);
    chart.words_above(0.33, "half: holes seen", Ink::near, 0);
    chart.words_above(0.68, "full: beat seen", Ink::missed, 0);
    std::vector<glm::dvec2> at;
    for (const SheetTrial& trial : all) {
        at.push_back(chart.place(trial.loss_10k_db, trial.open_area));
        if (has_holes(trial)) draw_disc(drawing, at.back(), trial, radius_of(trial, shape.pitch));
    }
    draw_numbers(drawing, at, all, shape.pitch);
    if (names == SheetNames::listed) draw_names(drawing, all, shape.wide, shape.pitch);
    set_bounds(drawing, kMargin * shape.pitch);
    drawing.low.x -= kLeftWords * shape.pitch;
    drawing.high.x = std::max(drawing.high.x, shape.wide + right_of(names) * shape.pitch);
    return drawing;
}

}  // namespace rakeline::drawing
