// SPDX-License-Identifier: MIT
#pragma once

#include <cmath>
#include <cstddef>
#include <functional>
#include <numbers>
#include <vector>

/// Gauss and Legendre's rule of any order, to hold the closed forms of light against.
namespace rakeline::tests {

struct GaussNode {
    double x = 0.0;  ///< on -1 ... +1
    double weight = 0.0;
};

/// Roots of the Legendre polynomial by Newton from Chebyshev's guess.
inline std::vector<GaussNode> gauss_legendre(int order) {
    std::vector<GaussNode> nodes;
    for (int i = 0; i < order; ++i) {
        double x = std::cos(std::numbers::pi * (i + 0.75) / (order + 0.5));
        double slope = 1.0;
        for (int step = 0; step < 100; ++step) {
            double before = 1.0;
            double value = x;
            for (int k = 2; k <= order; ++k) {
                const double next = ((2.0 * k - 1.0) * x * value - (k - 1.0) * before) / k;
                before = value;
                value = next;
            }
            slope = order * (x * value - before) / (x * x - 1.0);
            const double change = value / slope;
            x -= change;
            if (std::abs(change) < 1e-16) break;
        }
        nodes.push_back({x, 2.0 / ((1.0 - x * x) * slope * slope)});
    }
    return nodes;
}

/// Integral over [-1, 1] x [-1, 1] in `panels` by `panels` cells of eight by eight nodes.
inline double square_integral(int panels, const std::function<double(double, double)>& f) {
    const std::vector<GaussNode> nodes = gauss_legendre(8);
    const double half = 1.0 / panels;
    double sum = 0.0;
    for (int i = 0; i < panels; ++i) {
        for (int j = 0; j < panels; ++j) {
            for (const GaussNode& s : nodes) {
                for (const GaussNode& t : nodes) {
                    const double x = -1.0 + half * (2.0 * i + 1.0 + s.x);
                    const double y = -1.0 + half * (2.0 * j + 1.0 + t.x);
                    sum += s.weight * t.weight * f(x, y);
                }
            }
        }
    }
    return sum * half * half;
}

}  // namespace rakeline::tests
