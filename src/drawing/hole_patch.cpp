// SPDX-License-Identifier: MIT
#include "drawing/hole_patch.hpp"

#include "base/number_text.hpp"
#include "drawing/parts.hpp"
#include "study/perforation_words.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace rakeline::drawing {
namespace {

using base::Unit;
using room::PerforationPattern;
using sound::Lattice;

constexpr int kPixelsWide = 20;
constexpr int kPixelsHigh = 12;
constexpr double kRow = 0.08;  ///< between lines of lettering, of the patch's height

base::Problem refusal(const std::string& what, const std::string& mend) {
    return {.file = {}, .line = 0, .where = {}, .what = what, .mend = mend};
}

/// What is drawn, about the middle of the patch.
struct PatchScene {
    Lattice pixels;
    room::Perforation holes;
    glm::dvec2 half{0.0};  ///< of the patch
    const sound::PictureBeat* beat = nullptr;
    base::UnitSystem units = base::UnitSystem::metric;

    double row() const { return 2.0 * kRow * half.y; }
};

std::vector<glm::dvec2> cell(glm::dvec2 at, const Lattice& lattice, double share) {
    const glm::dvec2 a = 0.5 * share * lattice.a;
    const glm::dvec2 b = 0.5 * share * lattice.b;
    return {at - a - b, at + a - b, at + a + b, at - a + b};
}

/// The lit part of each pixel.
void draw_pixels(const PatchScene& scene, Drawing& drawing) {
    for (int i = 0; i < kPixelsWide; ++i) {
        for (int j = 0; j < kPixelsHigh; ++j) {
            const glm::dvec2 at = (i - 0.5 * (kPixelsWide - 1)) * scene.pixels.a +
                                  (j - 0.5 * (kPixelsHigh - 1)) * scene.pixels.b;
            drawing.items.emplace_back(
                Fill{cell(at, scene.pixels, std::sqrt(sound::kPixelFill)), Ink::screen, 0.35, {}});
        }
    }
}

bool inside(const PatchScene& scene, glm::dvec2 at) {
    const double out = 0.5 * scene.holes.hole_diameter_m;
    return std::abs(at.x) + out < scene.half.x && std::abs(at.y) + out < scene.half.y;
}

std::vector<glm::dvec2> hole_outline(const PatchScene& scene,
                                     const Lattice& lattice,
                                     glm::dvec2 at) {
    const double d = scene.holes.hole_diameter_m;
    if (scene.holes.pattern == PerforationPattern::woven)
        return cell(at, lattice, d / scene.holes.pitch_m);
    return disc(at, 0.5 * d, 12);
}

/// Holes wholly on the patch.
void draw_holes(const PatchScene& scene, Drawing& drawing) {
    const Lattice lattice = sound::hole_lattice(scene.holes);
    const int reach =
        static_cast<int>(std::ceil(2.0 * glm::length(scene.half) / scene.holes.pitch_m));
    for (int i = -reach; i <= reach; ++i) {
        for (int j = -reach; j <= reach; ++j) {
            const glm::dvec2 at =
                static_cast<double>(i) * lattice.a + static_cast<double>(j) * lattice.b;
            if (inside(scene, at))
                drawing.items.emplace_back(
                    Fill{hole_outline(scene, lattice, at), Ink::line, 0.9, {}});
        }
    }
}

Ink beat_ink(const PatchScene& scene) {
    const bool seen = scene.beat && scene.beat->seats_that_see > 0.0;
    return seen ? Ink::missed : Ink::quiet;
}

void draw_crest(const PatchScene& scene, Drawing& drawing, glm::dvec2 at, glm::dvec2 along) {
    Line crest = stroke(at - along, at + along, Weight::cut, beat_ink(scene));
    crest.dashed = true;
    drawing.items.emplace_back(std::move(crest));
}

/// Half of one period, across the bands.
glm::dvec2 half_period(const sound::PictureBeat& beat) {
    const glm::dvec2 k = beat.beat.frequency;
    return 0.5 * k / glm::dot(k, k);
}

bool period_fits(const PatchScene& scene) {
    const glm::dvec2 reach = half_period(*scene.beat);
    return std::abs(reach.x) < scene.half.x && std::abs(reach.y) < scene.half.y;
}

/// One period from crest to crest of the bands; where it is longer than the patch, one crest.
void draw_period(const PatchScene& scene, Drawing& drawing) {
    if (!scene.beat) return;
    const glm::dvec2 reach = half_period(*scene.beat);
    const double period = 2.0 * glm::length(reach);
    const glm::dvec2 along =
        0.6 * std::min(scene.half.y, period) * glm::dvec2(-reach.y, reach.x) / glm::length(reach);
    if (!period_fits(scene)) return draw_crest(scene, drawing, {0.0, 0.0}, along);
    draw_crest(scene, drawing, reach, along);
    draw_crest(scene, drawing, -reach, along);
    drawing.items.emplace_back(stroke(-reach, reach, Weight::cut, beat_ink(scene)));
}

/// A length of 1, 2 or 5 times a power of ten of millimetres, about a fifth of the patch.
double scale_length(double patch_m) {
    const double wanted = patch_m / 5.0;
    const double power = std::pow(10.0, std::floor(std::log10(wanted)));
    for (const double step : {5.0, 2.0}) {
        if (step * power <= wanted) return step * power;
    }
    return power;
}

/// The scale, in millimetres, or in inches of the same length.
void draw_scale(const PatchScene& scene, Drawing& drawing) {
    const double length = scale_length(2.0 * scene.half.x);
    const double y = -scene.half.y - 0.8 * scene.row();
    const glm::dvec2 from{scene.half.x - length, y};
    const glm::dvec2 to{scene.half.x, y};
    const glm::dvec2 tick{0.0, 0.25 * scene.row()};
    drawing.items.emplace_back(stroke(from, to, Weight::cut, Ink::line));
    drawing.items.emplace_back(stroke(from - tick, from + tick, Weight::cut, Ink::line));
    drawing.items.emplace_back(stroke(to - tick, to + tick, Weight::cut, Ink::line));
    drawing.items.emplace_back(
        Label{.at = from - glm::dvec2(0.4 * scene.row(), 0.0),
              .text = base::quantity_text(length, Unit::millimetre, scene.units),
              .anchor = Anchor::right,
              .ink = Ink::line,
              .shows = {}});
}

void write(const PatchScene& scene, Drawing& drawing, int row, const std::string& text, Ink ink) {
    drawing.items.emplace_back(
        Label{.at = {-scene.half.x, scene.half.y + scene.row() * (row + 0.6)},
              .text = text,
              .anchor = Anchor::left,
              .ink = ink,
              .shows = {}});
}

std::string pixel_words(const PatchScene& scene) {
    const auto mm = [&](glm::dvec2 side) {
        return base::quantity_text(glm::length(side), Unit::millimetre, scene.units, 1);
    };
    return "pixels " + mm(scene.pixels.a) + " × " + mm(scene.pixels.b) + " · " +
           study::sheet_words(scene.holes, scene.units);
}

std::string beat_line(const PatchScene& scene) {
    if (!scene.beat) return "no beat of orders up to 3 is coarser than pixels and holes";
    const sound::PictureBeat& b = *scene.beat;
    const double most = b.seen.at(static_cast<std::size_t>(b.worst_seat)).visibility;
    return "beat every " + base::quantity_text(b.beat.period_m(), Unit::millimetre, scene.units) +
           (period_fits(scene) ? "" : ", more than this piece") + " · " +
           base::fixed_text(most, most < 0.095 ? 2 : 1) + " times the eye's threshold · seen by " +
           base::quantity_text(b.seats_that_see, Unit::fraction, scene.units) + " of the seats";
}

std::string place_words(const PatchScene& scene, const picture::Opening& opening) {
    if (!scene.beat) return "at the picture's centre";
    const glm::dvec2 from = scene.beat->uv - opening.uv.centre();
    if (glm::length(from) < 1e-9) return "at the picture's centre, where it is seen most";
    return std::string("at the ") + (from.y > 0.0 ? "upper " : "lower ") +
           (from.x > 0.0 ? "right" : "left") + " corner, where it is seen most";
}

void draw_border(const PatchScene& scene, Drawing& drawing) {
    const glm::dvec2 h = scene.half;
    drawing.items.emplace_back(Line{.points = {{-h.x, -h.y}, {h.x, -h.y}, {h.x, h.y}, {-h.x, h.y}},
                                    .weight = Weight::seen,
                                    .ink = Ink::quiet,
                                    .closed = true});
}

/// Half the size of the upright rectangle round the patch's pixels.
glm::dvec2 half_of(const Lattice& pixels) {
    const glm::dvec2 a = 0.5 * kPixelsWide * pixels.a;
    const glm::dvec2 b = 0.5 * kPixelsHigh * pixels.b;
    return {std::abs(a.x) + std::abs(b.x), std::abs(a.y) + std::abs(b.y)};
}

std::optional<base::Problem> why_not(const study::Study& study, const Chosen& now) {
    if (study.layout().screen.perforation.pattern == PerforationPattern::none)
        return refusal("the sheet has no holes", "give the screen a perforation");
    if (!now.picture)
        return refusal("there is no picture on the sheet",
                       "choose a projector with a format that it shows");
    const auto& machine = study.layout().projectors.at(static_cast<std::size_t>(now.projector));
    if (machine.kind == room::SourceKind::film)
        return refusal("film has no pixels that could beat with the holes",
                       "choose a digital projector");
    return std::nullopt;
}

}  // namespace

base::Result<Drawing> hole_patch(const study::Study& study, const DrawingChoice& choice) {
    const Chosen now = chosen(study, choice);
    if (const auto problem = why_not(study, now)) return *problem;
    const auto& machine = study.layout().projectors.at(static_cast<std::size_t>(now.projector));
    const auto* beat = sound::find_beat(study.holes, now.projector, now.format);
    const auto pixels = sound::pixel_lattice(now.picture->map, machine.imager.pixel_pitch_m,
                                             beat ? beat->uv : now.opening->uv.centre());
    if (!pixels)
        return refusal("the lens does not reach the picture's centre", "aim it at the picture");
    const PatchScene scene{*pixels, study.layout().screen.perforation, half_of(*pixels), beat,
                           choice.units};
    Drawing drawing;
    drawing.title = "Pixels and holes";
    draw_pixels(scene, drawing);
    draw_holes(scene, drawing);
    draw_border(scene, drawing);
    draw_period(scene, drawing);
    draw_scale(scene, drawing);
    write(scene, drawing, 1, pixel_words(scene), Ink::line);
    write(scene, drawing, 0, beat_line(scene), beat_ink(scene));
    drawing.items.emplace_back(Label{.at = {-scene.half.x, -scene.half.y - 0.8 * scene.row()},
                                     .text = place_words(scene, *now.opening),
                                     .anchor = Anchor::left,
                                     .ink = Ink::quiet,
                                     .shows = {}});
    set_bounds(drawing, 0.6 * scene.row());
    return drawing;
}

}  // namespace rakeline::drawing
