// SPDX-License-Identifier: MIT
#include "picture/plate.hpp"

#include "base/quantity_text.hpp"
#include "base/units.hpp"
#include "geometry/inset.hpp"
#include "picture/picture_study.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>

namespace rakeline::picture {
namespace {

using base::Unit;
using Outline = std::vector<glm::dvec2>;

/// Rounding of the map and back again is far below this; a file's stroke is far above.
constexpr double kApertureRounding_m = 1e-8;
constexpr int kMaxSplits = 20;
constexpr int kChecksPerChord = 8;

/// The opening with its corners rounded.
struct Border {
    geometry::Rectangle uv;
    double radius_m = 0.0;
};

/// Distance of a surface point from the border, positive outside.
double distance_outside(const Border& border, glm::dvec2 uv) {
    const glm::dvec2 half(0.5 * border.uv.width(), 0.5 * border.uv.height());
    const glm::dvec2 q = glm::abs(uv - border.uv.centre()) - half + border.radius_m;
    const double beyond = glm::length(glm::max(q, glm::dvec2(0.0)));
    return beyond + std::min(std::max(q.x, q.y), 0.0) - border.radius_m;
}

/// A straight edge, or the quarter circle of a corner, walked from 0 to 1.
struct Piece {
    glm::dvec2 start{0.0};  ///< of an arc: its centre
    glm::dvec2 end{0.0};
    double radius_m = 0.0;  ///< 0: straight
    double from_rad = 0.0;

    glm::dvec2 at(double t) const {
        if (radius_m == 0.0) return start + t * (end - start);
        const double angle = from_rad + 0.5 * base::kPi * t;
        return start + radius_m * glm::dvec2(std::cos(angle), std::sin(angle));
    }
};

/// Counter-clockwise from the bottom left.
std::array<glm::dvec2, 4> corners_of(const geometry::Rectangle& o) {
    return {glm::dvec2(o.left, o.bottom), {o.right, o.bottom}, {o.right, o.top}, {o.left, o.top}};
}

/// The border, counter-clockwise from the left end of the bottom edge.
std::vector<Piece> pieces_of(const Border& border) {
    const double r = border.radius_m;
    const std::array<glm::dvec2, 4> corners = corners_of(border.uv);
    std::vector<Piece> pieces;
    for (std::size_t i = 0; i < 4; ++i) {
        const glm::dvec2 from = corners[i];
        const glm::dvec2 to = corners[(i + 1) % 4];
        const double length = glm::length(to - from);
        const glm::dvec2 along = (to - from) / length;
        const glm::dvec2 inward(-along.y, along.x);
        if (length > 2.0 * r) pieces.push_back({from + r * along, to - r * along, 0.0, 0.0});
        if (r == 0.0) continue;
        const double turn = 0.5 * base::kPi * (static_cast<double>(i) - 1.0);
        pieces.push_back({to - r * along + r * inward, {}, r, turn});
    }
    return pieces;
}

/// Puts points into a piece until the chords between them keep to the border.
class Sampler {
public:
    Sampler(const PictureMap& map, const Border& border) : map_(map), border_(border) {}

    /// Nothing where the lens can't send light to some of the border.
    std::optional<Outline> outline() {
        for (const Piece& piece : pieces_of(border_)) {
            const auto start = map_.gate_from_screen(piece.at(0.0));
            const auto end = map_.gate_from_screen(piece.at(1.0));
            if (!start || !end) return std::nullopt;
            if (!walk(piece, {0.0, *start}, {1.0, *end}, kMaxSplits)) return std::nullopt;
        }
        return points_;
    }

private:
    struct Knot {
        double t = 0.0;
        glm::dvec2 gate{0.0};
    };

    bool chord_holds(glm::dvec2 from, glm::dvec2 to) const {
        for (int k = 1; k < kChecksPerChord; ++k) {
            const double t = static_cast<double>(k) / kChecksPerChord;
            const auto uv = map_.screen_from_gate(from + t * (to - from));
            if (!uv || std::abs(distance_outside(border_, *uv)) > kPlateTolerance_m) return false;
        }
        return true;
    }

    /// Adds the first knot and those between, not the last: the next piece begins with it.
    bool walk(const Piece& piece, const Knot& from, const Knot& to, int splits_left) {
        if (chord_holds(from.gate, to.gate)) {
            points_.push_back(from.gate);
            return true;
        }
        if (splits_left == 0) return false;
        const double t = 0.5 * (from.t + to.t);
        const auto gate = map_.gate_from_screen(piece.at(t));
        if (!gate) return false;
        return walk(piece, from, {t, *gate}, splits_left - 1) &&
               walk(piece, {t, *gate}, to, splits_left - 1);
    }

    const PictureMap& map_;
    const Border& border_;
    Outline points_;
};

base::Problem refusal(std::string what, std::string mend) {
    return {.file = {}, .line = 0, .where = {}, .what = std::move(what), .mend = std::move(mend)};
}

std::optional<base::Problem> bad_request(const PlateInput& in) {
    if (in.kind != room::SourceKind::film) {
        return refusal("a digital projector has no gate plate to file",
                       "choose a film projector; on a digital one set the imager's part in use");
    }
    if (!(in.allowance_m >= 0.0)) {
        return refusal("the filing allowance is negative", "give 0 mm or more");
    }
    const double most = 0.5 * std::min(in.opening.uv.width(), in.opening.uv.height());
    if (!(in.corner_radius_m >= 0.0) || in.corner_radius_m > most) {
        return refusal(
            "the corner radius of " + base::quantity_text(in.corner_radius_m, Unit::millimetre) +
                " does not fit the opening",
            "give 0 mm up to " + base::quantity_text(most, Unit::millimetre) + " on the screen");
    }
    return std::nullopt;
}

/// Refuses where the opening reaches outside the aperture, and names the edge that is worst.
std::optional<base::Problem> outside_aperture(const Outline& outline, glm::dvec2 aperture_m) {
    const glm::dvec2 half = 0.5 * aperture_m;
    double worst = 0.0;
    const char* edge = "";
    const auto meet = [&](double past, const char* name) {
        if (past <= worst) return;
        worst = past;
        edge = name;
    };
    for (const glm::dvec2 p : outline) {
        meet(-p.x - half.x, "left");
        meet(p.x - half.x, "right");
        meet(-p.y - half.y, "bottom");
        meet(p.y - half.y, "top");
    }
    if (worst <= kApertureRounding_m) return std::nullopt;
    return refusal("at the picture's " + std::string(edge) + " the opening reaches " +
                       base::quantity_text(worst, Unit::millimetre, base::UnitSystem::metric, 2) +
                       " outside the aperture in the gate, where no light comes to fill it",
                   "choose a shorter focal length, aim at the opening, or give a larger aperture");
}

/// The ends of the sides that the same opening would have without round corners, each moved inward
/// like the rest: of the sharp outline's points the nearest to where the corner was.
std::optional<std::array<glm::dvec2, 4>> sharp_corners(const PlateInput& in) {
    const auto sharp = Sampler(in.picture.map, {in.opening.uv, 0.0}).outline();
    if (!sharp) return std::nullopt;
    const Outline inward = geometry::inset(*sharp, in.allowance_m);
    if (inward.empty()) return std::nullopt;
    std::array<glm::dvec2, 4> out = corners_of(in.opening.uv);
    for (glm::dvec2& corner : out) {
        const auto gate = in.picture.map.gate_from_screen(corner);
        if (!gate) return std::nullopt;
        corner = *std::min_element(inward.begin(), inward.end(), [&](glm::dvec2 a, glm::dvec2 b) {
            return glm::length(a - *gate) < glm::length(b - *gate);
        });
    }
    return out;
}

/// From where to where the outline runs along the line on which the coordinate `across` is nought.
std::optional<glm::dvec2> run_along(const Outline& outline, int across) {
    const int along = 1 - across;
    std::optional<glm::dvec2> run;
    for (std::size_t i = 0; i < outline.size(); ++i) {
        const glm::dvec2 a = outline[i];
        const glm::dvec2 b = outline[(i + 1) % outline.size()];
        if ((a[across] > 0.0) == (b[across] > 0.0)) continue;
        const double at = a[along] + (b[along] - a[along]) * a[across] / (a[across] - b[across]);
        run = run ? glm::dvec2(std::min(run->x, at), std::max(run->y, at)) : glm::dvec2(at);
    }
    return run;
}

}  // namespace

base::Result<Plate> plate_outline(const PlateInput& in) {
    if (auto bad = bad_request(in)) return *bad;
    const Border border{in.opening.uv, in.corner_radius_m};
    const auto outline = Sampler(in.picture.map, border).outline();
    if (!outline) {
        return refusal("the lens can't send light to the whole border of the opening",
                       "aim the projector at the screen, or give the screen a larger radius");
    }
    if (auto outside = outside_aperture(*outline, in.picture.gate_size_m)) return *outside;
    Plate plate{.outline_m = geometry::inset(*outline, in.allowance_m),
                .aperture_m = in.picture.gate_size_m,
                .corner_radius_m = in.corner_radius_m,
                .allowance_m = in.allowance_m};
    const auto corners = sharp_corners(in);
    if (corners) plate.corners_m = *corners;
    if (plate.outline_m.empty() || !corners) {
        return refusal("the filing allowance of " +
                           base::quantity_text(in.allowance_m, Unit::millimetre) +
                           " leaves no opening in the plate",
                       "give a smaller allowance");
    }
    return plate;
}

PlateExtent plate_extent(const Plate& plate) {
    glm::dvec2 least = plate.outline_m.at(0);
    glm::dvec2 most = least;
    for (const glm::dvec2 p : plate.outline_m) {
        least = glm::min(least, p);
        most = glm::max(most, p);
    }
    PlateExtent out;
    out.width_m = most.x - least.x;
    out.height_m = most.y - least.y;
    if (const auto run = run_along(plate.outline_m, 1)) {
        out.left_m = -run->x;
        out.right_m = run->y;
    }
    if (const auto run = run_along(plate.outline_m, 0)) {
        out.bottom_m = -run->x;
        out.top_m = run->y;
    }
    return out;
}

glm::dvec2 seen(glm::dvec2 gate_m, PlateView view) {
    // Light crosses over in the lens: what lands at the picture's right and top has passed the gate
    // at its left and bottom. So the picture's point (x, y) stands in the gate, at the distance b
    // behind the lens L, at
    //     P = L - b axis - x right - y up.
    // From the lamp one looks along `axis`, up being up; one's right is then axis x up = right, and
    // P is seen at (-x, -y): turned by half a turn, not mirrored. From the lens one looks along
    // -axis; one's right is -axis x up = -right, and P is seen at (x, -y): upside down and
    // mirrored.
    return view == PlateView::from_lamp ? -gate_m : glm::dvec2(gate_m.x, -gate_m.y);
}

std::vector<glm::dvec2> outline_seen(const Plate& plate, PlateView view) {
    Outline out;
    out.reserve(plate.outline_m.size());
    for (const glm::dvec2 p : plate.outline_m)
        out.push_back(seen(p, view));
    if (view == PlateView::from_lens) std::reverse(out.begin(), out.end());
    return out;
}

}  // namespace rakeline::picture
