// SPDX-License-Identifier: MIT
#include "drawing/chart.hpp"

#include "drawing/parts.hpp"

#include <algorithm>

namespace rakeline::drawing {
namespace {

constexpr double kTick = 0.02;

Label words(glm::dvec2 at, const std::string& text, Anchor anchor, Ink ink) {
    return {.at = at, .text = text, .anchor = anchor, .ink = ink, .shows = {}};
}

}  // namespace

glm::dvec2 Chart::place(double x, double y) const {
    return {field_.left + field_.width() * x_.share(x),
            field_.bottom + field_.height() * y_.share(y)};
}

void Chart::frame(const std::vector<Tick>& up) {
    for (const Tick& tick : up) {
        const glm::dvec2 left = place(x_.low, tick.at);
        drawing_.items.emplace_back(
            stroke(left, place(x_.high, tick.at), Weight::helper, Ink::quiet));
        drawing_.items.emplace_back(
            words(left - glm::dvec2(kTick, 0.0), tick.text, Anchor::right, Ink::quiet));
    }
    drawing_.items.emplace_back(Line{.points = {{field_.left, field_.bottom},
                                                {field_.right, field_.bottom},
                                                {field_.right, field_.top},
                                                {field_.left, field_.top}},
                                     .weight = Weight::seen,
                                     .ink = Ink::quiet,
                                     .closed = true});
}

void Chart::ticks_below(const std::vector<Tick>& across, int row) {
    for (const Tick& tick : across) {
        const glm::dvec2 foot = place(tick.at, y_.low);
        if (row == 0)
            drawing_.items.emplace_back(
                stroke(foot, foot - glm::dvec2(0.0, kTick), Weight::seen, Ink::quiet));
        drawing_.items.emplace_back(words(foot - glm::dvec2(0.0, kPitch * (row + 0.75)), tick.text,
                                          Anchor::centre, Ink::quiet));
    }
}

void Chart::title_below(const std::string& text, int row) {
    drawing_.items.emplace_back(words({field_.centre().x, field_.bottom - kPitch * (row + 0.75)},
                                      text, Anchor::centre, Ink::line));
}

void Chart::curve(const std::vector<glm::dvec2>& points, Ink ink, Weight weight, bool dashed) {
    Line line{.points = {}, .weight = weight, .ink = ink, .dashed = dashed};
    for (const glm::dvec2 p : points)
        line.points.push_back(place(p.x, std::clamp(p.y, y_.low, y_.high)));
    if (line.points.size() > 1) drawing_.items.emplace_back(std::move(line));
}

void Chart::mark(double x, const std::string& text, Ink ink, bool dashed, int row) {
    Line line = stroke(place(x, y_.low), place(x, y_.high), Weight::seen, ink);
    line.dashed = dashed;
    drawing_.items.emplace_back(std::move(line));
    if (text.empty()) return;
    // Words near an end of the axis run inward, so that they keep off the next chart.
    const double share = x_.share(x);
    const Anchor anchor =
        share < 0.3 ? Anchor::left : (share > 0.7 ? Anchor::right : Anchor::centre);
    drawing_.items.emplace_back(
        words(place(x, y_.high) + glm::dvec2(0.0, kPitch * (row + 0.6)), text, anchor, ink));
}

void Chart::mark_inside(double x, const std::string& text) {
    Line line = stroke(place(x, y_.low), place(x, y_.high), Weight::helper, Ink::quiet);
    line.dashed = true;
    drawing_.items.emplace_back(std::move(line));
    Label label = words(place(x, y_.low) + glm::dvec2(-0.5 * kPitch, 0.25 * field_.height()), text,
                        Anchor::centre, Ink::quiet);
    label.vertical = true;
    drawing_.items.emplace_back(std::move(label));
}

void Chart::shade(double from, double to, Ink ink) {
    drawing_.items.emplace_back(
        Fill{{place(from, y_.low), place(to, y_.low), place(to, y_.high), place(from, y_.high)},
             ink,
             0.12,
             {}});
}

}  // namespace rakeline::drawing
