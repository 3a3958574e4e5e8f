// SPDX-License-Identifier: MIT
#include "light/hot_spot.hpp"

#include "base/parallel.hpp"
#include "light/gain_by_chord.hpp"
#include "light/lit_point.hpp"
#include "light/nine_values.hpp"

#include <glm/common.hpp>

#include <algorithm>
#include <cmath>
#include <iterator>

namespace rakeline::light {
namespace {

constexpr int kAcross = 33;  ///< of the grid that all seats share
constexpr int kUp = 17;
constexpr int kCoarse = 2;  ///< of its steps that the first look takes at once
constexpr glm::dvec2 kGridStep{2.0 / (kAcross - 1), 2.0 / (kUp - 1)};
constexpr double kBrighter = 1.0 + 1e-9;
constexpr double kFinest = 1e-3;     ///< of half the width
constexpr double kCloseLook = 0.25;  ///< of a grid step
constexpr std::size_t kLeastSeats = 16;

/// A place with all of its light that is the same for every seat.
struct GridPoint {
    glm::dvec2 halves{0.0};
    LitPoint lit;
    glm::dvec3 lobe{0.0};
    double lux = 0.0;  ///< 0 also where the light comes from behind
};

GridPoint grid_point(const LitPicture& picture, glm::dvec2 halves) {
    const LitPoint lit = picture.at(halves);
    const bool lit_in_front = glm::dot(lit.incoming, lit.normal) < 0.0;
    return {halves, lit, picture.model.lobe_direction(lit.incoming, lit.normal),
            lit_in_front ? picture.illuminance.at_lx(lit.uv) : 0.0};
}

/// What the searches of all seats share. Points row by row from the lower left.
struct SharedGrid {
    explicit SharedGrid(const LitPicture& picture) : gains(picture.model) {
        points.reserve(static_cast<std::size_t>(kAcross * kUp));
        for (int up = 0; up < kUp; ++up) {
            for (int across = 0; across < kAcross; ++across) {
                const glm::dvec2 steps(across, up);
                points.push_back(grid_point(picture, glm::dvec2(-1.0) + kGridStep * steps));
            }
        }
    }

    const GridPoint& at(glm::ivec2 to) const {
        return points[static_cast<std::size_t>(to.y * kAcross + to.x)];
    }

    GainByChord gains;
    std::vector<GridPoint> points;
};

/// A place and its illuminance times gain, which the luminance goes with.
struct Bright {
    glm::dvec2 halves{0.0};
    double light = 0.0;
};

void keep_brighter(Bright& best, const Bright& other) {
    if (other.light > kBrighter * best.light) best = other;
}

class Search {
public:
    Search(const LitPicture& picture, const SharedGrid& grid, const glm::dvec3& eye)
        : picture_(picture), grid_(grid), eye_(eye) {}

    std::optional<HotSpot> hot_spot() const {
        const Bright centre = on_grid({kAcross / 2, kUp / 2});
        if (centre.light <= 0.0) return std::nullopt;
        const glm::ivec2 around =
            glm::clamp(brightest_on_grid(), glm::ivec2(1), glm::ivec2(kAcross - 2, kUp - 2));
        Bright best = centre;
        keep_brighter(best, near(around));
        return HotSpot{0.5 * best.halves, best.light / centre.light};
    }

private:
    double light(const GridPoint& point) const {
        return point.lux * picture_.gain(point.lit, eye_);
    }

    Bright on_grid(glm::ivec2 to) const {
        const GridPoint& point = grid_.at(to);
        return {point.halves, light(point)};
    }

    /// light() by the table of gains.
    double roughly(const GridPoint& point) const {
        const glm::dvec3 way = eye_ - point.lit.place;
        if (point.lux <= 0.0 || glm::dot(way, point.lit.normal) <= 0.0) return 0.0;
        const glm::dvec3 toward_eye = way / glm::length(way);
        double gain = grid_.gains.off_lobe(glm::length(toward_eye - point.lobe));
        if (picture_.model.has_retro_part())
            gain += grid_.gains.off_back(glm::length(toward_eye + point.lit.incoming));
        return point.lux * gain;
    }

    /// By a coarse look over the whole opening and the way up from its brightest place.
    glm::ivec2 brightest_on_grid() const {
        glm::ivec2 best(kAcross / 2, kUp / 2);
        double most = roughly(grid_.at(best));
        const auto look = [&](glm::ivec2 to) {
            const double light = roughly(grid_.at(to));
            if (light <= kBrighter * most) return;
            most = light;
            best = to;
        };
        for (int up = 0; up < kUp; up += kCoarse) {
            for (int across = 0; across < kAcross; across += kCoarse)
                look({across, up});
        }
        for (bool moved = true; moved;) {
            const glm::ivec2 from = best;
            for (int i = 0; i < 9; ++i) {
                const glm::ivec2 to = from + glm::ivec2(nine_place(i));
                if (to.x >= 0 && to.x < kAcross && to.y >= 0 && to.y < kUp) look(to);
            }
            moved = best != from;
        }
        return best;
    }

    /// The top near a place of the grid that has neighbours on all sides: of a quadratic form of
    /// the light's logarithm, of which a lobe makes one nearly, then of a second a quarter as wide.
    /// Where part of the neighbourhood is dark, step by step instead.
    Bright near(glm::ivec2 middle) const {
        NineValues lux{};
        NineValues height{};
        Bright brightest;
        for (int i = 0; i < 9; ++i) {
            const GridPoint& point = grid_.at(middle + glm::ivec2(nine_place(i)));
            const Bright here{point.halves, light(point)};
            keep_brighter(brightest, here);
            lux[static_cast<std::size_t>(i)] = point.lux;
            height[static_cast<std::size_t>(i)] = std::log(here.light);
        }
        if (!std::all_of(height.begin(), height.end(), [](double h) { return std::isfinite(h); }))
            return climbed(brightest);
        const glm::dvec2 closer =
            glm::clamp(top_of_nine(height), -1.0 + kCloseLook, 1.0 - kCloseLook);
        const glm::dvec2 halves = grid_.at(middle).halves;
        for (int i = 0; i < 9; ++i) {
            const glm::dvec2 steps = closer + kCloseLook * nine_place(i);
            const LitPoint lit = picture_.at(halves + kGridStep * steps);
            height[static_cast<std::size_t>(i)] =
                std::log(through_nine(lux, steps) * picture_.gain(lit, eye_));
        }
        const glm::dvec2 top = halves + kGridStep * (closer + kCloseLook * top_of_nine(height));
        keep_brighter(brightest, {top, light(grid_point(picture_, top))});
        return brightest;
    }

    Bright climbed(Bright best) const {
        for (glm::dvec2 step = 0.5 * kGridStep; step.x > kFinest; step *= 0.5)
            climb(best, step);
        return best;
    }

    /// Lit edges run askew in the opening: a step along one that ends just beyond it is drawn back
    /// toward the centre until there is light, or by the whole step.
    Bright stepped(glm::dvec2 from, glm::dvec2 step) const {
        constexpr int kBack = 8;
        const glm::dvec2 to = glm::clamp(from + step, -1.0, 1.0);
        const double length = glm::length(step);
        const double share = length / std::max(length, glm::length(to)) / kBack;
        Bright out;
        for (int i = 0; i <= kBack && out.light <= 0.0; ++i) {
            out.halves = (1.0 - i * share) * to;
            out.light = light(grid_point(picture_, out.halves));
        }
        return out;
    }

    /// To the brightest neighbour within the opening, until there is none: the same way in a
    /// mirrored room.
    void climb(Bright& best, glm::dvec2 step) const {
        for (bool moved = true; moved;) {
            Bright next = best;
            for (int i = 0; i < 9; ++i)
                keep_brighter(next, stepped(best.halves, step * nine_place(i)));
            moved = next.halves != best.halves;
            best = next;
        }
    }

    const LitPicture& picture_;
    const SharedGrid& grid_;
    const glm::dvec3& eye_;
};

/// Whether an eye stands before the whole opening: before its corners, then before all of a plane
/// or of a sheet that is concave toward it.
bool sees_front(const LitPicture& picture, const glm::dvec3& eye) {
    static constexpr glm::dvec2 kCorners[] = {{-1, -1}, {1, -1}, {-1, 1}, {1, 1}};
    return std::all_of(std::begin(kCorners), std::end(kCorners), [&](glm::dvec2 corner) {
        return picture.gain(picture.at(corner), eye) > 0.0;
    });
}

}  // namespace

std::vector<std::optional<HotSpot>> hot_spots(const LitPicture& picture,
                                              const std::vector<glm::dvec3>& eyes) {
    std::vector<std::optional<HotSpot>> out(eyes.size());
    const SharedGrid grid(picture);
    // A matte sheet looks the same to all who stand before it: the first of them searches.
    const auto in_front = std::find_if(eyes.begin(), eyes.end(), [&](const glm::dvec3& eye) {
        return picture.model.is_matte() && sees_front(picture, eye);
    });
    std::optional<HotSpot> shared;
    if (in_front != eyes.end()) shared = Search(picture, grid, *in_front).hot_spot();
    base::parallel_chunks(eyes.size(), kLeastSeats, [&](std::size_t begin, std::size_t end) {
        for (std::size_t i = begin; i < end; ++i) {
            const bool same = in_front != eyes.end() && sees_front(picture, eyes[i]);
            out[i] = same ? shared : Search(picture, grid, eyes[i]).hot_spot();
        }
    });
    return out;
}

}  // namespace rakeline::light
