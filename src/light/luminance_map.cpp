// SPDX-License-Identifier: MIT
#include "light/luminance_map.hpp"

#include "base/units.hpp"
#include "light/lit_point.hpp"

#include <glm/common.hpp>

#include <algorithm>
#include <map>
#include <utility>

namespace rakeline::light {
namespace {

constexpr int kAcross = LuminanceMap::kAcross;
constexpr int kUp = LuminanceMap::kUp;

/// From -1 to +1. A quotient of whole numbers, so that both halves mirror each other to the bit.
double on_grid(int step, int count) {
    const int half = (count - 1) / 2;
    return static_cast<double>(step - half) / half;
}

class Mapper {
public:
    Mapper(const LitPicture& picture, const glm::dvec3& eye) : picture_(picture), eye_(eye) {
        map_.places.reserve(static_cast<std::size_t>(kAcross) * kUp);
        for (int up = 0; up < kUp; ++up)
            for (int across = 0; across < kAcross; ++across)
                map_.places.push_back(place({on_grid(across, kAcross), on_grid(up, kUp)}));
        for (int up = 0; up + 1 < kUp; ++up)
            for (int across = 0; across + 1 < kAcross; ++across)
                add_cell(across, up);
    }

    LuminanceMap take() { return std::move(map_); }

private:
    MapPlace place(glm::dvec2 halves) const {
        // On the edge itself rounding would decide whether a picture of just the opening's size
        // reaches it.
        constexpr double kEdge = 1.0 - 1e-9;
        const LitPoint point = picture_.at(glm::clamp(halves, -kEdge, kEdge));
        const double lux = picture_.illuminance.at_lx(point.uv);
        return {halves, lux > 0.0 ? lux * picture_.gain(point, eye_) / base::kPi : 0.0};
    }

    bool lit(int index) const { return map_.places[static_cast<std::size_t>(index)].cdm2 > 0.0; }

    /// The last lit place on the way from a lit place of the grid to a dark one beside it. Cells
    /// that share the edge share the place.
    int rim(int from, int to) {
        const auto [known, fresh] = rims_.try_emplace({from, to}, 0);
        if (!fresh) return known->second;
        constexpr int kHalvings = 16;
        MapPlace in = map_.places[static_cast<std::size_t>(from)];
        glm::dvec2 out = map_.places[static_cast<std::size_t>(to)].halves;
        for (int i = 0; i < kHalvings; ++i) {
            const MapPlace middle = place(0.5 * (in.halves + out));
            if (middle.cdm2 > 0.0)
                in = middle;
            else
                out = middle.halves;
        }
        known->second = static_cast<int>(map_.places.size());
        map_.places.push_back(in);
        return known->second;
    }

    /// The lit part of the cell, cut into triangles; left and right halves of the map are cut as
    /// each other's mirror images.
    void add_cell(int across, int up) {
        const int low = up * kAcross + across;
        std::array<int, 4> corners = {low, low + 1, low + kAcross + 1, low + kAcross};
        if (2 * across < kAcross - 1) corners = {low + 1, low + kAcross + 1, low + kAcross, low};
        std::vector<int> outline;
        for (std::size_t i = 0; i < corners.size(); ++i) {
            const int here = corners[i], next = corners[(i + 1) % corners.size()];
            if (lit(here)) outline.push_back(here);
            if (lit(here) && !lit(next)) outline.push_back(rim(here, next));
            if (!lit(here) && lit(next)) outline.push_back(rim(next, here));
        }
        for (std::size_t i = 2; i < outline.size(); ++i)
            map_.triangles.push_back({outline[0], outline[i - 1], outline[i]});
    }

    const LitPicture& picture_;
    const glm::dvec3& eye_;
    LuminanceMap map_;
    std::map<std::pair<int, int>, int> rims_;
};

}  // namespace

LuminanceMap luminance_map(const LitPicture& picture, const glm::dvec3& eye) {
    return Mapper(picture, eye).take();
}

MapRange range_of(const LuminanceMap& map) {
    MapRange range;
    for (const MapPlace& place : map.places) {
        if (place.cdm2 <= 0.0) continue;
        const bool first = range.most_cdm2 == 0.0;
        range.least_cdm2 = first ? place.cdm2 : std::min(range.least_cdm2, place.cdm2);
        range.most_cdm2 = std::max(range.most_cdm2, place.cdm2);
    }
    return range;
}

}  // namespace rakeline::light
