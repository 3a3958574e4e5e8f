// SPDX-License-Identifier: MIT
#include "light/meter_sample.hpp"

#include "base/assert.hpp"
#include "light/screen_gain.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

namespace rakeline::light {
namespace {

constexpr int kRings = 8;
constexpr int kRound = 64;

/// Nodes and weights of Gauss and Legendre's five-point rule on 0 ... 1.
/// Source: closed form, nodes sqrt(5 -+ 2 sqrt(10/7)) / 3 on -1 ... +1.
std::array<glm::dvec2, 5> ring_nodes() {
    const double inner = std::sqrt(5.0 - 2.0 * std::sqrt(10.0 / 7.0)) / 3.0;
    const double outer = std::sqrt(5.0 + 2.0 * std::sqrt(10.0 / 7.0)) / 3.0;
    const double inner_weight = (322.0 + 13.0 * std::sqrt(70.0)) / 1800.0;
    const double outer_weight = (322.0 - 13.0 * std::sqrt(70.0)) / 1800.0;
    return {{{0.5 - 0.5 * outer, outer_weight},
             {0.5 - 0.5 * inner, inner_weight},
             {0.5, 64.0 / 225.0},
             {0.5 + 0.5 * inner, inner_weight},
             {0.5 + 0.5 * outer, outer_weight}}};
}

/// Unit, square to the axis, and level unless the axis is upright: mirrored rooms are sampled
/// alike.
glm::dvec3 level_side(const glm::dvec3& axis) {
    const bool upright = std::abs(axis.y) > 0.999;
    return glm::normalize(glm::cross(axis, upright ? glm::dvec3(0, 0, 1) : glm::dvec3(0, 1, 0)));
}

class Sampler {
public:
    Sampler(const MeterScene& scene, const MeterReading& reading)
        : scene_(scene),
          reading_(reading),
          gain_(scene.surface, scene.open_area),
          peak_lm_m2_(scene.lens_flux_lm * scene.passed_fraction /
                      lit_integral_m2(scene.gate, scene.gate.lit_size_m)) {
        const glm::dvec2 size = scene.gate.lit_size_m;
        sample_.axes = 4.0 * size * size / glm::dot(size, size);
    }

    MeterSample point() && {
        add(reading_.uv, 1.0);
        return std::move(sample_);
    }

    /// Even in solid angle: rings of even steps in 1 - cos, directions evenly round.
    MeterSample spot() && {
        const glm::dvec3 axis =
            glm::normalize(geometry::point_at(scene_.map.surface(), reading_.uv) - reading_.eye);
        const glm::dvec3 side = level_side(axis);
        const glm::dvec3 rise = glm::cross(axis, side);
        const double versine = 2.0 * std::pow(std::sin(0.25 * reading_.spot_rad), 2);
        for (int ring = 0; ring < kRings; ++ring) {
            for (const glm::dvec2& node : ring_nodes()) {
                const double cos_off = 1.0 - versine * (ring + node.x) / kRings;
                const double sin_off = std::sqrt(1.0 - cos_off * cos_off);
                for (int step = 0; step < kRound; ++step) {
                    const double turn = 2.0 * base::kPi * (step + 0.5) / kRound;
                    look(cos_off * axis + sin_off * (std::cos(turn) * side + std::sin(turn) * rise),
                         node.y / (kRings * kRound));
                }
            }
        }
        return std::move(sample_);
    }

private:
    void look(const glm::dvec3& direction, double share) {
        const auto hit = geometry::front_hit(scene_.map.surface(), {reading_.eye, direction});
        if (hit)
            add(hit->uv, share);
        else
            sample_.dark_share += share;
    }

    /// The gate point that lights a surface point, if the part in use holds it.
    std::optional<glm::dvec2> gate_of(glm::dvec2 uv) const {
        const geometry::Rectangle& o = scene_.opening;
        if (uv.x < o.left || uv.x > o.right || uv.y < o.bottom || uv.y > o.top) return std::nullopt;
        const auto gate = scene_.map.gate_from_screen(uv);
        const glm::dvec2 half = 0.5 * glm::min(scene_.part_size_m, scene_.gate.lit_size_m);
        if (!gate || std::abs(gate->x) > half.x || std::abs(gate->y) > half.y) return std::nullopt;
        return gate;
    }

    void add(glm::dvec2 uv, double share) {
        const auto gate = gate_of(uv);
        const auto spread = gate ? scene_.map.area_ratio(*gate) : std::nullopt;
        if (!spread) {
            sample_.dark_share += share;
            return;
        }
        const double back = reading_.incident ? 1.0 : luminance_per_lux(uv);
        sample_.nodes.push_back(
            {*gate / scene_.gate.lit_size_m, share * peak_lm_m2_ * back / *spread});
    }

    double luminance_per_lux(glm::dvec2 uv) const {
        const geometry::Patch& surface = scene_.map.surface();
        const glm::dvec3 place = geometry::point_at(surface, uv);
        const Directions at{.incoming = glm::normalize(place - scene_.map.pose().lens),
                            .toward_eye = glm::normalize(reading_.eye - place),
                            .normal = geometry::normal_at(surface, uv)};
        return gain_.gain(at) / base::kPi;
    }

    const MeterScene& scene_;
    const MeterReading& reading_;
    GainModel gain_;
    double peak_lm_m2_ = 0.0;
    MeterSample sample_;
};

/// a (n - h)^2 by parts: (a_x (n_x - h_x)^2, ...).
glm::dvec2 off_squared(const MeterSample& sample, const SpotNode& node, const GateLaw& law) {
    const glm::dvec2 off = node.gate - glm::dvec2(law[kAcross], law[kUp]);
    return sample.axes * off * off;
}

}  // namespace

MeterSample meter_sample(const MeterScene& scene, const MeterReading& reading) {
    RL_ASSERT(scene.lens_flux_lm > 0.0 && scene.passed_fraction > 0.0);
    Sampler sampler(scene, reading);
    const bool is_point = reading.incident || reading.spot_rad <= 0.0;
    return is_point ? std::move(sampler).point() : std::move(sampler).spot();
}

double modelled(const MeterSample& sample, const GateLaw& law) {
    double sum = 0.0;
    for (const SpotNode& node : sample.nodes) {
        const glm::dvec2 off = off_squared(sample, node, law);
        sum += node.weight * std::max(0.0, 1.0 - (1.0 - law[kCorner]) * (off.x + off.y));
    }
    return law[kPeak] * sum;
}

GateLaw modelled_slope(const MeterSample& sample, const GateLaw& law) {
    GateLaw slope{};
    for (const SpotNode& node : sample.nodes) {
        const glm::dvec2 off = off_squared(sample, node, law);
        const double rel = 1.0 - (1.0 - law[kCorner]) * (off.x + off.y);
        if (rel <= 0.0) continue;
        const glm::dvec2 from = node.gate - glm::dvec2(law[kAcross], law[kUp]);
        const glm::dvec2 pull =
            2.0 * law[kPeak] * (1.0 - law[kCorner]) * node.weight * sample.axes * from;
        slope[kPeak] += node.weight * rel;
        slope[kCorner] += law[kPeak] * node.weight * (off.x + off.y);
        slope[kAcross] += pull.x;
        slope[kUp] += pull.y;
    }
    return slope;
}

std::array<double, kLawParts> moments(const MeterSample& sample) {
    std::array<double, kLawParts> out{};
    for (const SpotNode& node : sample.nodes) {
        out[kPeak] += node.weight;
        out[kCorner] -= node.weight * glm::dot(sample.axes, node.gate * node.gate);
        out[kAcross] += node.weight * node.gate.x;
        out[kUp] += node.weight * node.gate.y;
    }
    return out;
}

}  // namespace rakeline::light
