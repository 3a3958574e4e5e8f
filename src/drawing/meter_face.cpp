// SPDX-License-Identifier: MIT
#include "drawing/meter_face.hpp"

#include "base/number_text.hpp"
#include "drawing/screen_face.hpp"
#include "study/meter_words.hpp"

#include <algorithm>
#include <cmath>

namespace rakeline::drawing {
namespace {

constexpr double kDotRadius = 0.12;  ///< of a reading that fits, in lines of lettering
constexpr int kCorners = 32;

struct MeterFace {
    Face& face;
    const study::MeterCheck& check;

    double share(std::size_t i) const {
        const light::FittedReading& reading = check.fit.readings[i];
        return reading.fitted > 0.0 ? reading.residual() / reading.fitted : 0.0;
    }
    Ink ink(std::size_t i) const {
        constexpr double kFar = 2.0;  // standard uncertainties
        return std::abs(check.fit.readings[i].residual_errors()) > kFar ? Ink::missed : Ink::holds;
    }
};

/// Letters toward the picture's middle, so that those at the edges stay inside it.
Anchor anchor_of(const MeterFace& m, glm::dvec2 at) {
    const geometry::Rectangle& o = m.check.scene.opening;
    const double side = (at.x - o.centre().x) / o.width();
    constexpr double kEdge = 0.3;
    if (side < -kEdge) return Anchor::left;
    return side > kEdge ? Anchor::right : Anchor::centre;
}

void add_label(MeterFace& m, glm::dvec2 at, const std::string& text, Ink ink) {
    const Anchor anchor = anchor_of(m, at);
    const double aside = m.face.pitch_m * 0.3;
    if (anchor == Anchor::left) at.x -= aside;
    if (anchor == Anchor::right) at.x += aside;
    m.face.add(Label{.at = at,
                     .text = text,
                     .anchor = anchor,
                     .ink = ink,
                     .vertical = false,
                     .shows = m.face.projector()});
}

/// What was read and how far off it is, above and below a disc; near the upper edge both stand
/// below it, near the lower one above, so that they stay inside.
void add_labels(MeterFace& m, std::size_t i, double off_m) {
    const glm::dvec2 at = m.check.places[i].uv;
    const geometry::Rectangle& o = m.check.scene.opening;
    const double pitch = m.face.pitch_m, need = off_m + 0.4 * pitch, step = 0.75 * pitch;
    const bool under_top = o.top - at.y < need, over_bottom = at.y - o.bottom < need;
    const auto place = [&](double from) { return at + glm::dvec2(0.0, from); };
    const std::string off = study::meter_residual_text(m.check.fit.readings[i]);
    const double near_m = over_bottom ? off_m : -off_m;
    if (!m.face.choice.dimensions) return add_label(m, place(near_m), off, m.ink(i));
    const std::string read =
        m.face.quantity(m.check.fit.readings[i].read, m.check.places[i].row.unit);
    const double first = under_top ? -off_m : over_bottom ? off_m + step : off_m;
    add_label(m, place(first), read, Ink::line);
    add_label(m, place(under_top ? -off_m - step : near_m), off, m.ink(i));
}

void add_reading(MeterFace& m, std::size_t i) {
    const glm::dvec2 at = m.check.places[i].uv;
    const double share = m.share(i), pitch = m.face.pitch_m;
    const double grown = std::min(1.0, std::abs(share) / kFullResidual);
    const double radius = pitch * std::lerp(kDotRadius, 1.0, grown);
    const auto rim = disc(at, radius, kCorners);
    const Shows shows = m.face.projector();
    m.face.add(Fill{rim, m.ink(i), share < 0.0 ? 0.12 : 0.45, shows});
    m.face.add(Line{.points = rim,
                    .weight = Weight::seen,
                    .ink = m.ink(i),
                    .closed = true,
                    .dashed = share < 0.0,
                    .shows = shows});
    add_labels(m, i, radius + 0.4 * pitch);
}

void add_hot_spot(MeterFace& m) {
    const light::GateLight gate = light::fitted_gate(m.check.scene, m.check.fit);
    if (gate.corner_fraction >= 1.0) return;
    const auto at = m.check.scene.map.screen_from_gate(gate.hot_spot_m);
    const geometry::Rectangle& o = m.check.scene.opening;
    if (!at || at->x < o.left || at->x > o.right || at->y < o.bottom || at->y > o.top) return;
    const double arm = 0.35 * m.face.pitch_m;
    const Shows shows = m.face.projector();
    m.face.add(stroke(*at - glm::dvec2(arm, arm), *at + glm::dvec2(arm, arm), Weight::cut,
                      Ink::beam, shows));
    m.face.add(stroke(*at - glm::dvec2(arm, -arm), *at + glm::dvec2(arm, -arm), Weight::cut,
                      Ink::beam, shows));
    m.face.add(Label{.at = *at + glm::dvec2(1.3 * arm, 1.6 * arm),
                     .text = "hot spot",
                     .anchor = Anchor::left,
                     .ink = Ink::beam,
                     .vertical = false,
                     .shows = shows});
}

void add_legend(MeterFace& m) {
    const geometry::Rectangle& f = m.face.frame;
    m.face.add(
        Label{.at = {f.centre().x, std::min(f.bottom, m.face.outer.bottom) - 0.9 * m.face.pitch_m},
              .text = "Read, and how far from the fit; full disc brighter, dashed darker, " +
                      base::fixed_text(100.0 * kFullResidual, 0) + " % at its largest",
              .anchor = Anchor::centre,
              .ink = Ink::quiet,
              .vertical = false,
              .shows = {}});
}

}  // namespace

Drawing meter_face(const study::Study& study,
                   const DrawingChoice& choice,
                   const study::MeterCheck& check) {
    DrawingChoice own = choice;
    own.projector = check.subject.projector;
    own.format = check.subject.format;
    Face face = face_of(study, own);
    face.drawing.title = "Readings and fit";
    add_face_masking(face);
    add_face_outlines(face);
    MeterFace m{face, check};
    add_hot_spot(m);
    for (std::size_t i = 0; i < check.places.size(); ++i)
        add_reading(m, i);
    if (choice.dimensions) add_legend(m);
    set_bounds(face.drawing, 0.5 * face.pitch_m);
    return face.drawing;
}

}  // namespace rakeline::drawing
