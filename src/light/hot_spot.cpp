// SPDX-License-Identifier: MIT
#include "light/hot_spot.hpp"

#include "base/parallel.hpp"
#include "light/lit_point.hpp"

#include <glm/common.hpp>

#include <algorithm>
#include <iterator>

namespace rakeline::light {
namespace {

constexpr int kAcross = 65;  ///< of the grid that all seats share
constexpr int kUp = 33;
constexpr int kCoarse = 4;  ///< of its steps that the first look takes at once
constexpr glm::dvec2 kGridStep{2.0 / (kAcross - 1), 2.0 / (kUp - 1)};
constexpr double kBrighter = 1.0 + 1e-9;
constexpr double kFinest = 1e-3;  ///< of half the width
constexpr std::size_t kLeastSeats = 16;

/// A place with all of its light that is the same for every seat.
struct GridPoint {
    glm::dvec2 halves{0.0};
    LitPoint lit;
    double lux = 0.0;
};

GridPoint grid_point(const LitPicture& picture, glm::dvec2 halves) {
    const LitPoint lit = picture.at(halves);
    return {halves, lit, picture.illuminance.at_lx(lit.uv)};
}

/// Row by row from the lower left.
std::vector<GridPoint> grid_of(const LitPicture& picture) {
    std::vector<GridPoint> grid;
    for (int up = 0; up < kUp; ++up) {
        for (int across = 0; across < kAcross; ++across) {
            const glm::dvec2 steps(across, up);
            grid.push_back(grid_point(picture, glm::dvec2(-1.0) + kGridStep * steps));
        }
    }
    return grid;
}

/// A place and its illuminance times gain, which the luminance goes with.
struct Bright {
    glm::dvec2 halves{0.0};
    double light = 0.0;
};

class Search {
public:
    Search(const LitPicture& picture, const std::vector<GridPoint>& grid, const glm::dvec3& eye)
        : picture_(picture), grid_(grid), eye_(eye) {}

    std::optional<HotSpot> hot_spot() const {
        const double centre = light(grid_point(picture_, {0.0, 0.0}));
        if (centre <= 0.0) return std::nullopt;
        Bright best{{0.0, 0.0}, centre};
        for (int up = 0; up < kUp; up += kCoarse) {
            for (int across = 0; across < kAcross; across += kCoarse)
                keep_brighter(best, on_grid(across, up));
        }
        for (int step = kCoarse / 2; step > 0; step /= 2)
            climb_grid(best, step);
        for (glm::dvec2 step = 0.5 * kGridStep; step.x > kFinest; step *= 0.5)
            climb(best, step);
        return HotSpot{0.5 * best.halves, best.light / centre};
    }

private:
    double light(const GridPoint& point) const {
        return point.lux * picture_.gain(point.lit, eye_);
    }

    Bright on_grid(int across, int up) const {
        const GridPoint& point = grid_[static_cast<std::size_t>(up * kAcross + across)];
        return {point.halves, light(point)};
    }

    static void keep_brighter(Bright& best, const Bright& other) {
        if (other.light > kBrighter * best.light) best = other;
    }

    /// To the brightest of the places `step` away on the grid, until there is none.
    void climb_grid(Bright& best, int step) const {
        for (bool moved = true; moved;) {
            const glm::ivec2 at = glm::ivec2(glm::round((best.halves + 1.0) / kGridStep));
            Bright next = best;
            for (int up = -step; up <= step; up += step) {
                for (int across = -step; across <= step; across += step) {
                    const glm::ivec2 to = at + glm::ivec2(across, up);
                    if (to.x < 0 || to.x >= kAcross || to.y < 0 || to.y >= kUp) continue;
                    keep_brighter(next, on_grid(to.x, to.y));
                }
            }
            moved = next.halves != best.halves;
            best = next;
        }
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
        static constexpr glm::dvec2 kWays[] = {{-1, 0},  {1, 0},  {0, -1}, {0, 1},
                                               {-1, -1}, {1, -1}, {-1, 1}, {1, 1}};
        for (bool moved = true; moved;) {
            Bright next = best;
            for (const glm::dvec2 way : kWays)
                keep_brighter(next, stepped(best.halves, step * way));
            moved = next.halves != best.halves;
            best = next;
        }
    }

    const LitPicture& picture_;
    const std::vector<GridPoint>& grid_;
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
    const std::vector<GridPoint> grid = grid_of(picture);
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
