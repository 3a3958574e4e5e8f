// SPDX-License-Identifier: MIT
#include "light/hot_spot.hpp"

#include "base/parallel.hpp"
#include "light/lit_point.hpp"

#include <glm/common.hpp>

#include <algorithm>

namespace rakeline::light {
namespace {

constexpr int kAcross = 17;
constexpr int kUp = 9;
constexpr glm::dvec2 kGridStep{2.0 / (kAcross - 1), 2.0 / (kUp - 1)};
constexpr double kBrighter = 1.0 + 1e-9;
constexpr double kFinest = 2e-4;  ///< of half the width
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
        for (const GridPoint& point : grid_)
            keep_brighter(best, {point.halves, light(point)});
        for (glm::dvec2 step = 0.5 * kGridStep; step.x > kFinest; step *= 0.5)
            climb(best, step);
        return HotSpot{0.5 * best.halves, best.light / centre};
    }

private:
    double light(const GridPoint& point) const {
        return point.lux * picture_.gain(point.lit, eye_);
    }

    static bool keep_brighter(Bright& best, const Bright& other) {
        if (!(other.light > kBrighter * best.light)) return false;
        best = other;
        return true;
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

    /// To brighter neighbours within the opening, until there is none.
    void climb(Bright& best, glm::dvec2 step) const {
        static constexpr glm::dvec2 kWays[] = {{-1, 0},  {1, 0},  {0, -1}, {0, 1},
                                               {-1, -1}, {1, -1}, {-1, 1}, {1, 1}};
        for (bool moved = true; moved;) {
            moved = false;
            for (const glm::dvec2 way : kWays)
                moved |= keep_brighter(best, stepped(best.halves, step * way));
        }
    }

    const LitPicture& picture_;
    const std::vector<GridPoint>& grid_;
    const glm::dvec3& eye_;
};

}  // namespace

std::vector<std::optional<HotSpot>> hot_spots(const LitPicture& picture,
                                              const std::vector<glm::dvec3>& eyes) {
    std::vector<std::optional<HotSpot>> out(eyes.size());
    const std::vector<GridPoint> grid = grid_of(picture);
    base::parallel_chunks(eyes.size(), kLeastSeats, [&](std::size_t begin, std::size_t end) {
        for (std::size_t i = begin; i < end; ++i)
            out[i] = Search(picture, grid, eyes[i]).hot_spot();
    });
    return out;
}

}  // namespace rakeline::light
