// SPDX-License-Identifier: MIT
#include "drawing/loudspeaker_marks.hpp"

#include "drawing/parts.hpp"
#include "sound/cabinets.hpp"
#include "sound/hall_sound.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

namespace rakeline::drawing {
namespace {

using Kind = Shows::Kind;
using Points = std::vector<glm::dvec2>;

/// A direction of looking: how points of the room come onto the page.
using Projection = glm::dvec2 (*)(const glm::dvec3&);

glm::dvec2 from_above(const glm::dvec3& p) {
    return {p.x, p.z};
}

glm::dvec2 from_side(const glm::dvec3& p) {
    return {p.z, p.y};
}

double turn(glm::dvec2 a, glm::dvec2 b, glm::dvec2 c) {
    return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
}

/// Outline of some points: the chain over them one way and back (Andrew's, any text).
Points outline_of(Points points) {
    std::sort(points.begin(), points.end(),
              [](glm::dvec2 a, glm::dvec2 b) { return a.x < b.x || (a.x == b.x && a.y < b.y); });
    Points out;
    for (int side = 0; side < 2; ++side) {
        const std::size_t start = out.size();
        for (const glm::dvec2& p : points) {
            while (out.size() >= start + 2 && turn(out[out.size() - 2], out.back(), p) <= 0.0)
                out.pop_back();
            out.push_back(p);
        }
        out.pop_back();
        std::reverse(points.begin(), points.end());
    }
    return out;
}

Points body_of(const room::Loudspeaker& loudspeaker, Projection on_page) {
    Points corners;
    for (const glm::dvec3& corner : sound::cabinet_of(loudspeaker).corners())
        corners.push_back(on_page(corner));
    return outline_of(std::move(corners));
}

/// How far a ray from inside the hall goes until it meets walls, floor datum or ceiling.
double way_out_m(const room::Hall& hall, const glm::dvec3& from, const glm::dvec3& along) {
    double out = std::numeric_limits<double>::infinity();
    const auto meet = [&](double distance, double nearing) {
        if (nearing > 0.0) out = std::min(out, std::max(0.0, distance / nearing));
    };
    const double splay = std::tan(hall.splay_rad);
    const double half = room::half_width_at(hall, from.z);
    for (const double side : {-1.0, 1.0})
        meet(half - side * from.x, side * along.x - splay * along.z);
    meet(hall.length_m - from.z, along.z);
    meet(from.z, -along.z);
    meet(hall.height_m - from.y, along.y);
    meet(from.y, -along.y);
    return std::isfinite(out) ? out : 0.0;
}

struct Pen {
    const study::Study& study;
    const DrawingChoice& choice;
    Drawing& drawing;
    Projection on_page;
    bool across = false;  ///< the plane drawn is the loudspeaker's across plane, else its upright

    void add(Item item) { drawing.items.push_back(std::move(item)); }

    void body(const room::Loudspeaker& l, Shows what, double strength, Weight weight) {
        const Points points = body_of(l, on_page);
        add(Fill{points, Ink::sound, strength, what});
        add(Line{
            .points = points, .weight = weight, .ink = Ink::sound, .closed = true, .shows = what});
    }

    void ray(const room::Loudspeaker& l,
             const glm::dvec3& along,
             double length_m,
             Shows what,
             bool dashed) {
        const glm::dvec3 from(l.across_m, l.up_m, l.back_m);
        Line line = stroke(on_page(from), on_page(from + length_m * along), Weight::helper,
                           Ink::sound, what);
        line.dashed = dashed;
        add(line);
    }

    /// The axis to where it leaves the hall, and both -6 dB edges of the drawn plane.
    void coverage(const room::Loudspeaker& l, Shows what) {
        const glm::dvec3 from(l.across_m, l.up_m, l.back_m);
        const room::Hall& hall = study.layout().hall;
        const sound::LoudspeakerAxes axes = sound::axes_of(l);
        ray(l, axes.forward, way_out_m(hall, from, axes.forward), what, false);
        const double hz = sound::kOctaves.at(static_cast<std::size_t>(choice.coverage_band));
        const auto coverage = sound::coverage_at(l, hz, study::air_of(study));
        if (!coverage) return;
        const double half = 0.5 * (across ? coverage->across_rad : coverage->up_rad);
        if (half >= 0.5 * base::kPi) return;
        const glm::dvec3 beside = across ? axes.across : axes.up;
        for (const double side : {-1.0, 1.0}) {
            const glm::dvec3 edge = std::cos(half) * axes.forward + side * std::sin(half) * beside;
            ray(l, edge, way_out_m(hall, from, edge), what, true);
        }
    }
};

/// Whose coverage is drawn: of the loudspeaker looked at, else of all screen channels.
bool wants_coverage(const study::Study& study, const DrawingChoice& choice, std::size_t which) {
    if (!choice.coverage) return false;
    if (choice.loudspeaker) return static_cast<std::size_t>(*choice.loudspeaker) == which;
    return sound::is_screen_channel(study.layout().loudspeakers.at(which).channel);
}

/// Axes reach a few metres: far enough to see where they point, short enough to keep calm.
constexpr double kAxisShown_m = 2.5;

}  // namespace

void add_plan_loudspeakers(const study::Study& study,
                           const DrawingChoice& choice,
                           Drawing& drawing) {
    Pen pen{study, choice, drawing, from_above, true};
    const auto& all = study.layout().loudspeakers;
    for (std::size_t i = 0; i < all.size(); ++i) {
        const Shows what = showing(Kind::loudspeaker, static_cast<int>(i));
        pen.body(all[i], what, 0.35, Weight::seen);
        if (wants_coverage(study, choice, i))
            pen.coverage(all[i], what);
        else if (all[i].channel != room::Channel::sub_bass)
            pen.ray(all[i], sound::axes_of(all[i]).forward, kAxisShown_m, what, true);
    }
}

void add_section_loudspeakers(const study::Study& study,
                              const DrawingChoice& choice,
                              Drawing& drawing) {
    Pen pen{study, choice, drawing, from_side, false};
    const auto& all = study.layout().loudspeakers;
    for (std::size_t i = 0; i < all.size(); ++i) {
        const Shows what = showing(Kind::loudspeaker, static_cast<int>(i));
        const bool behind = all[i].behind_screen;
        pen.body(all[i], what, behind ? 0.35 : 0.15, behind ? Weight::seen : Weight::helper);
        if (wants_coverage(study, choice, i))
            pen.coverage(all[i], what);
        else if (behind && all[i].channel != room::Channel::sub_bass)
            pen.ray(all[i], sound::axes_of(all[i]).forward, kAxisShown_m, what, true);
    }
}

}  // namespace rakeline::drawing
