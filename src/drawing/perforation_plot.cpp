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
constexpr double kNames = 17.0;     ///< for the list at the right
constexpr double kLeftWords = 2.6;  ///< "100 %"
constexpr double kBelow = 2.0;
constexpr double kAbove = 2.0;
constexpr double kMargin = 0.6;

/// The next of 1, 2, 5, 10 ... not below what is there.
double round_top(double most) {
    const double power = std::pow(10.0, std::floor(std::log10(most)));
    for (const double step : {1.0, 2.0, 5.0})
        if (most <= step * power * (1.0 + 1e-9)) return step * power;
    return 10.0 * power;
}

Scale scale_to(const std::vector<SheetTrial>& trials, double SheetTrial::*value, double least) {
    double most = least;
    for (const SheetTrial& trial : trials)
        most = std::max(most, 1.05 * trial.*value);
    return {0.0, round_top(most)};
}

std::vector<Tick> ticks(const Scale& scale, bool percent) {
    std::vector<Tick> out;
    for (int i = 0; i <= 5; ++i) {
        const double at = scale.high * i / 5.0;
        const double shown = percent ? 100.0 * at : at;
        const int decimals = scale.high * (percent ? 100.0 : 1.0) < 5.0 ? 1 : 0;
        out.push_back({at, base::fixed_text(shown, decimals) + (percent ? " %" : " dB")});
    }
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
    return pitch * (0.22 + 0.16 * std::min(trial.hole_minutes.value_or(0.0), 2.0));
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
        const double aside = radius_of(trials[i], pitch) + 0.55 * pitch;
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
        drawing.items.emplace_back(words({left + 2.0 * pitch, y}, trials[i].sheet.name,
                                         Anchor::left, i == 0 ? Ink::line : Ink::quiet));
    }
}

}  // namespace

PlotShape perforation_plot_shape(glm::dvec2 field, double pitch) {
    const double height =
        std::max(field.y - (kAbove + kBelow + 2.0 * kMargin) * pitch, 3.0 * pitch);
    const double width = field.x - (kNames + kLeftWords + 2.0 * kMargin) * pitch;
    return {std::clamp(width / height, 1.2, 4.5), pitch / height};
}

Drawing perforation_plot(const study::SheetTrials& trials,
                         base::UnitSystem,
                         const PlotShape& shape) {
    Drawing drawing;
    drawing.title = "Sheets: sound, light and sight";
    const auto& all = trials.trials;
    const Scale x = scale_to(all, &SheetTrial::loss_10k_db, 2.0);
    const Scale y = scale_to(all, &SheetTrial::open_area, 0.02);
    Chart chart(drawing, {0.0, shape.wide, 0.0, 1.0}, x, y, shape.pitch);
    chart.frame(ticks(y, true));
    chart.uprights(ticks(x, false));
    chart.ticks_below(ticks(x, false), 0);
    chart.title_below("sound lost at 10 kHz, straight through", 1);
    chart.words_above(0.0, "up: light lost to the holes", Ink::line, 1);
    chart.words_above(0.0, "ring: unseen", Ink::holds, 0);
    chart.words_above(0.3, "half: holes seen", Ink::near, 0);
    chart.words_above(0.65, "full: beat seen", Ink::missed, 0);
    std::vector<glm::dvec2> at;
    for (const SheetTrial& trial : all) {
        at.push_back(chart.place(trial.loss_10k_db, trial.open_area));
        draw_disc(drawing, at.back(), trial, radius_of(trial, shape.pitch));
    }
    draw_numbers(drawing, at, all, shape.pitch);
    draw_names(drawing, all, shape.wide, shape.pitch);
    set_bounds(drawing, kMargin * shape.pitch);
    drawing.low.x -= kLeftWords * shape.pitch;
    drawing.high.x = std::max(drawing.high.x, shape.wide + kNames * shape.pitch);
    return drawing;
}

}  // namespace rakeline::drawing
