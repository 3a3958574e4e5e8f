// SPDX-License-Identifier: MIT
#include "base/assert.hpp"
#include "base/number_text.hpp"
#include "drawing/blur_bands.hpp"
#include "drawing/line_parts.hpp"
#include "drawing/screen_face.hpp"

#include <algorithm>
#include <cmath>

/// The blur at best focus over the opening: bands that grow stronger, contours with their numbers,
/// the line that is sharp, and the place of the worst.
namespace rakeline::drawing {
namespace {

using geometry::Rectangle;

struct BlurFace {
    Face& face;
    const picture::PictureMap& map;
    const picture::Focus& focus;
    const Rectangle& opening;
    glm::dvec2 worst{0.0};  ///< the place of the worst blur

    double blur_at(glm::dvec2 uv) const {
        const auto blur = picture::blur_at(map, uv, focus.pupil_m, focus.best_m);
        RL_ASSERT(blur);  // a focus is there only where all of the opening lies before the lens
        return *blur;
    }
    /// Distance along the axis at which the blur is `blur_m`, behind the focus or before it.
    double distance_of(double blur_m, FocusSide side) const {
        const double off_m = blur_m * focus.best_m / focus.pupil_m;
        return focus.best_m + (side == FocusSide::behind ? off_m : -off_m);
    }
};

/// The layers lie on each other and together are this strong.
constexpr double kStrongest = 0.42;
constexpr const char* kSharp = "sharp";

double layer_strength(std::size_t layers) {
    return 1.0 - std::pow(1.0 - kStrongest, 1.0 / static_cast<double>(layers));
}

/// Where the worst's number begins (left of the middle) or ends (right of it).
glm::dvec2 worst_label(const BlurFace& b) {
    const double pitch = b.face.pitch_m;
    const glm::dvec2 toward = b.opening.centre() - b.worst;
    return b.worst + glm::dvec2(toward.x > 0.0 ? 0.5 * pitch : -0.5 * pitch,
                                std::copysign(0.45 * pitch, toward.y));
}

/// The worst's label reaches from beside its ring toward the opening's middle.
Rectangle label_box(const BlurFace& b) {
    const double pitch = b.face.pitch_m;
    const glm::dvec2 at = worst_label(b);
    const bool rightward = at.x > b.worst.x;
    return {.left = at.x - (rightward ? 0.1 : 2.1) * pitch,
            .right = at.x + (rightward ? 2.1 : 0.1) * pitch,
            .bottom = at.y - 0.35 * pitch,
            .top = at.y + 0.35 * pitch};
}

void add_contour(BlurFace& b, const std::vector<glm::dvec2>& line, bool dashed) {
    for (const auto& run : outside(line, label_box(b), 0.15 * b.face.pitch_m)) {
        if (run.size() < 2) continue;
        b.face.add(Line{.points = run,
                        .weight = Weight::helper,
                        .ink = Ink::line,
                        .closed = false,
                        .dashed = dashed,
                        .shows = b.face.projector()});
    }
}

/// A contour with its number in a gap at its middle, where it is long enough to be found again.
void add_labelled(BlurFace& b, const std::vector<glm::dvec2>& line, const std::string& text) {
    const bool dashed = text == kSharp;
    const double pitch = b.face.pitch_m, length = length_of(line);
    const auto halves = around_gap(line, 0.5 * length, 0.5 * length);
    const glm::dvec2 middle = halves[1].front();
    // The worst has a number of its own there.
    if (length < 2.5 * pitch || glm::length(middle - b.worst) < 3.0 * pitch)
        return add_contour(b, line, dashed);
    const glm::dvec2 along = glm::normalize(halves[1].at(1) - middle);
    const double wide = dashed ? 0.75 : 0.5;
    const double gap = pitch * (wide * std::abs(along.x) + 0.35 * std::abs(along.y));
    for (const auto& part : around_gap(line, 0.5 * length - gap, 0.5 * length + gap))
        add_contour(b, part, dashed);
    b.face.add(Label{.at = middle,
                     .text = text,
                     .anchor = Anchor::centre,
                     .ink = Ink::line,
                     .vertical = false,
                     .shows = b.face.projector()});
}

/// "0.4", with as many decimals as the step between contours needs.
std::string level_text(double level_shown, double step_shown) {
    const int needed = static_cast<int>(std::ceil(-std::log10(step_shown) - 1e-9));
    return base::fixed_text(level_shown, std::max(needed, 0));
}

void add_level(BlurFace& b, double blur_m, double strength, const std::string& text) {
    for (const FocusSide side : {FocusSide::behind, FocusSide::before}) {
        const BlurBand band = blur_band(b.map, b.opening, b.distance_of(blur_m, side), side);
        for (const auto& polygon : band.polygons)
            b.face.add(Fill{polygon, Ink::line, strength, b.face.projector()});
        for (const auto& line : band.contours)
            add_labelled(b, line, text);
    }
}

void add_sharp_line(BlurFace& b) {
    const BlurBand band = blur_band(b.map, b.opening, b.focus.best_m, FocusSide::behind);
    for (const auto& line : band.contours)
        add_labelled(b, line, kSharp);
}

glm::dvec2 worst_place(const BlurFace& b) {
    constexpr int kSteps = 32;
    glm::dvec2 worst = b.opening.centre();
    for (int i = 0; i <= kSteps; ++i) {
        for (int j = 0; j <= kSteps; ++j) {
            const glm::dvec2 uv(
                std::lerp(b.opening.left, b.opening.right, static_cast<double>(i) / kSteps),
                std::lerp(b.opening.bottom, b.opening.top, static_cast<double>(j) / kSteps));
            // Both ends of the focus blur alike; rounding must not choose between them.
            if (b.blur_at(uv) > b.blur_at(worst) * (1.0 + 1e-9)) worst = uv;
        }
    }
    return worst;
}

void add_worst(BlurFace& b) {
    const glm::dvec2 at = b.worst;
    const double pitch = b.face.pitch_m;
    b.face.add(Line{.points = disc(at, 0.22 * pitch, 24),
                    .weight = Weight::seen,
                    .ink = Ink::line,
                    .closed = true,
                    .shows = b.face.projector()});
    const glm::dvec2 label = worst_label(b);
    b.face.add(Label{.at = label,
                     .text = "worst " + b.face.text("picture.blur"),
                     .anchor = label.x > at.x ? Anchor::left : Anchor::right,
                     .ink = Ink::line,
                     .vertical = false,
                     .shows = b.face.projector()});
}

std::optional<picture::Focus> focus_of(const Face& face) {
    const auto* picture = face.chosen.picture;
    if (!picture || !picture->lens || !face.chosen.opening) return std::nullopt;
    const room::Lens& lens = face.layout().lenses.at(static_cast<std::size_t>(*picture->lens));
    return picture::best_focus(picture->map, *face.chosen.opening, lens.f_number);
}

}  // namespace

bool blur_shows(const Face& face) {
    const auto worst = face.value("picture.blur");
    if (!worst) return false;
    const auto shown = base::shown_scale(base::Unit::millimetre, face.choice.units);
    return *worst * shown.factor >= 0.5 * std::pow(10.0, -shown.decimals);
}

void add_face_blur(Face& face) {
    const auto focus = focus_of(face);
    if (!focus || !blur_shows(face)) return;
    const auto shown = base::shown_scale(base::Unit::millimetre, face.choice.units);
    const double worst_shown = focus->worst_blur_m * shown.factor;
    BlurFace b{face, face.chosen.picture->map, *focus, face.chosen.opening->uv};
    b.worst = worst_place(b);
    const std::vector<double> levels = round_steps(worst_shown);
    for (const double level : levels) {
        add_level(b, level / shown.factor, layer_strength(levels.size()),
                  level_text(level, levels.front()));
    }
    add_sharp_line(b);
    add_worst(b);
}

}  // namespace rakeline::drawing
