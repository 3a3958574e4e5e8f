// SPDX-License-Identifier: MIT
#include "sound/beat.hpp"

#include "base/special.hpp"
#include "room/perforation.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdlib>

namespace rakeline::sound {
namespace {

constexpr std::size_t kOrders = kHighestOrder + 1;

double sinc(double x) {
    return x == 0.0 ? 1.0 : std::sin(base::kPi * x) / (base::kPi * x);
}

double disc_share(double diameter_m, double frequency) {
    const double x = base::kPi * diameter_m * frequency;
    return 2.0 * base::bessel_j1(x) / x;
}

double hole_share(const room::Perforation& holes, int i, int j, double frequency) {
    if (holes.pattern != room::PerforationPattern::woven)
        return disc_share(holes.hole_diameter_m, frequency);
    const double side = holes.hole_diameter_m / holes.pitch_m;
    return sinc(i * side) * sinc(j * side);
}

/// sinc(i f) for the orders that are looked at.
std::array<double, kOrders> pixel_shares() {
    std::array<double, kOrders> out{};
    for (std::size_t i = 0; i < kOrders; ++i)
        out[i] = std::abs(sinc(static_cast<double>(i) * std::sqrt(kPixelFill)));
    return out;
}

/// Pixel orders next to the one that would cancel a hole order, and so the only ones that can leave
/// less than the pixels' own lowest frequency.
struct Near {
    int i = 0, j = 0;
};
Near cancelling(const Order& hole, const Lattice& pixels) {
    return {static_cast<int>(std::lround(-glm::dot(hole.frequency, pixels.a))),
            static_cast<int>(std::lround(-glm::dot(hole.frequency, pixels.b)))};
}

/// The orders of a pattern that repeats by 60 degrees go as far along all three of its rows.
bool beyond_rows(const room::Perforation& holes, int i, int j) {
    return holes.pattern == room::PerforationPattern::staggered && std::abs(i - j) > kHighestOrder;
}

bool looked_at(int i, int j) {
    return std::abs(i) <= kHighestOrder && std::abs(j) <= kHighestOrder && (i != 0 || j != 0);
}

}  // namespace

std::vector<Order> hole_orders(const room::Perforation& perforation) {
    const Reciprocal lattice = reciprocal(hole_lattice(perforation));
    const double open = room::open_area(perforation);
    std::vector<Order> out;
    for (int i = 0; i <= kHighestOrder; ++i) {
        for (int j = i == 0 ? 1 : -kHighestOrder; j <= kHighestOrder; ++j) {
            if (beyond_rows(perforation, i, j)) continue;
            const glm::dvec2 at = lattice.at(i, j);
            const double share = hole_share(perforation, i, j, glm::length(at));
            out.push_back({i, j, at, 2.0 * open / (1.0 - open) * std::abs(share)});
        }
    }
    return out;
}

double pixel_amplitude(int i, int j) {
    static const std::array<double, kOrders> shares = pixel_shares();
    return shares.at(static_cast<std::size_t>(std::abs(i))) *
           shares.at(static_cast<std::size_t>(std::abs(j)));
}

std::vector<Beat> beats(const std::vector<Order>& holes, const Lattice& pixels, double longest_m) {
    const Reciprocal lattice = reciprocal(pixels);
    // What is as coarse as the patterns themselves, but for rounding, is no beat.
    double highest = lowest_frequency(lattice) * (1.0 - 1e-9);
    for (const Order& hole : holes)
        highest = std::min(highest, glm::length(hole.frequency));
    std::vector<Beat> out;
    for (const Order& hole : holes) {
        const Near near = cancelling(hole, pixels);
        for (int i = near.i - 1; i <= near.i + 1; ++i) {
            for (int j = near.j - 1; j <= near.j + 1; ++j) {
                if (!looked_at(i, j)) continue;
                const glm::dvec2 k = hole.frequency + lattice.at(i, j);
                const double size = glm::length(k);
                if (!(size < highest) || size * longest_m < 1.0) continue;
                out.push_back({k, i, j, hole.i, hole.j, hole.amplitude * pixel_amplitude(i, j)});
            }
        }
    }
    return out;
}

}  // namespace rakeline::sound
