// SPDX-License-Identifier: MIT
#include "drawing/chart.hpp"

#include "drawing/parts.hpp"

#include <algorithm>

namespace rakeline::drawing {
namespace {

constexpr double kTick = 0.02;
constexpr double kInset = 0.3;  ///< of a pitch: keeps words at an end off those beside the axis

Label words(glm::dvec2 at, const std::string& text, Anchor anchor, Ink ink) {
    return {.at = at, .text = text, .anchor = anchor, .ink = ink, .shows = {}};
}

/// Words within `end` of an end of the axis run inward, so that they keep off what is beside it.
Anchor anchor_at(double share, double end) {
    if (share < end) return Anchor::left;
    return share > 1.0 - end ? Anchor::right : Anchor::centre;
}

}  // namespace

double Chart::inset(Anchor anchor) const {
    if (anchor == Anchor::centre) return 0.0;
    return (anchor == Anchor::left ? kInset : -kInset) * pitch_;
}

void Chart::words_above(double share, const std::string& text, Ink ink, int row) {
    const glm::dvec2 at{field_.left + share * field_.width() + inset(Anchor::left),
                        field_.top + pitch_ * (row + 0.6)};
    drawing_.items.emplace_back(words(at, text, Anchor::left, ink));
}

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

void Chart::uprights(const std::vector<Tick>& across) {
    for (const Tick& tick : across)
        drawing_.items.emplace_back(
            stroke(place(tick.at, y_.low), place(tick.at, y_.high), Weight::helper, Ink::quiet));
}

void Chart::ticks_below(const std::vector<Tick>& across, int row) {
    for (const Tick& tick : across) {
        const glm::dvec2 foot = place(tick.at, y_.low);
        if (row == 0)
            drawing_.items.emplace_back(
                stroke(foot, foot - glm::dvec2(0.0, std::min(kTick, 0.25 * pitch_)), Weight::seen,
                       Ink::quiet));
        if (tick.text.empty()) continue;
        const double share = x_.share(tick.at);
        const Anchor anchor = anchor_at(share, 0.03);
        const double in = inset(anchor);
        drawing_.items.emplace_back(
            words(foot - glm::dvec2(-in, pitch_ * (row + 0.75)), tick.text, anchor, Ink::quiet));
    }
}

void Chart::title_below(const std::string& text, int row) {
    drawing_.items.emplace_back(words({field_.centre().x, field_.bottom - pitch_ * (row + 0.75)},
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
    const Anchor anchor = anchor_at(x_.share(x), 0.35);
    drawing_.items.emplace_back(words(
        place(x, y_.high) + glm::dvec2(inset(anchor), pitch_ * (row + 0.6)), text, anchor, ink));
}

void Chart::mark_inside(double x, const std::string& text) {
    Line line = stroke(place(x, y_.low), place(x, y_.high), Weight::helper, Ink::quiet);
    line.dashed = true;
    drawing_.items.emplace_back(std::move(line));
    Label label = words(place(x, y_.low) + glm::dvec2(-0.5 * pitch_, 0.3 * field_.height()), text,
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

void Chart::shade_between(const std::vector<glm::dvec2>& low,
                          const std::vector<glm::dvec2>& high,
                          Ink ink) {
    // Strip by strip: a fill is a simple polygon, and two curves may touch.
    for (std::size_t i = 0; i + 1 < std::min(low.size(), high.size()); ++i) {
        Fill fill{{}, ink, 0.5, {}};
        for (const glm::dvec2 p : {low[i], low[i + 1], high[i + 1], high[i]})
            fill.points.push_back(place(p.x, std::clamp(p.y, y_.low, y_.high)));
        if (low[i].y < high[i].y || low[i + 1].y < high[i + 1].y)
            drawing_.items.emplace_back(std::move(fill));
    }
}

void Chart::points(const std::vector<glm::dvec2>& at, Ink ink) {
    constexpr double kHalf = 0.018;
    for (const glm::dvec2 p : at) {
        if (p.y < y_.low || p.y > y_.high || p.x < x_.low || p.x > x_.high) continue;
        drawing_.items.emplace_back(
            Fill{box(place(p.x, p.y), {1.0, 0.0}, kHalf, kHalf), ink, 1.0, {}});
    }
}

void Chart::limit(double from, double to, double y, const std::string& text, Ink ink) {
    if (y < y_.low || y > y_.high) return;
    drawing_.items.emplace_back(stroke(place(from, y), place(to, y), Weight::cut, ink));
    drawing_.items.emplace_back(
        words(place(from, y) + glm::dvec2(0.0, 0.4 * pitch_), text, Anchor::right, ink));
}

void Chart::words_right(std::vector<Tick> at, Ink ink) {
    std::stable_sort(at.begin(), at.end(),
                     [](const Tick& a, const Tick& b) { return a.at < b.at; });
    std::vector<double> heights;
    for (const Tick& tick : at) {
        const double here = place(x_.high, std::clamp(tick.at, y_.low, y_.high)).y;
        heights.push_back(heights.empty() ? here : std::max(here, heights.back() + pitch_));
    }
    // Upward from the lowest they keep apart; what that drives out of the field comes down again.
    double highest = field_.top;
    for (std::size_t i = at.size(); i-- > 0;) {
        heights[i] = std::min(heights[i], highest);
        highest = heights[i] - pitch_;
        drawing_.items.emplace_back(
            words({field_.right + kTick, heights[i]}, at[i].text, Anchor::left, ink));
    }
}

}  // namespace rakeline::drawing
