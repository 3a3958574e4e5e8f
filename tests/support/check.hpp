// SPDX-License-Identifier: MIT
#pragma once

#include <doctest/doctest.h>

#include <cmath>
#include <string>

/// Comparing numbers with a tolerance that has a reason. (doctest's own is absolute near zero.)
namespace rakeline::tests {

struct Tolerance {
    double absolute = 0.0;
    double relative = 0.0;
    std::string reason;
};

/// Half a unit in the last digit that the source prints, `decimals` digits after the point.
inline Tolerance printed_digits(int decimals) {
    // The tiny widening lets a value that sits exactly on the half pass.
    return {0.5 * std::pow(10.0, -decimals) * (1.0 + 1e-9), 0.0,
            "half a unit of the last printed digit"};
}
inline Tolerance absolute(double x, std::string reason) {
    return {x, 0.0, std::move(reason)};
}
inline Tolerance relative(double x, std::string reason) {
    return {0.0, x, std::move(reason)};
}

inline bool is_close(double actual, double expected, const Tolerance& tolerance) {
    return std::abs(actual - expected) <=
           tolerance.absolute + tolerance.relative * std::abs(expected);
}

inline void check_close(double actual, double expected, const Tolerance& tolerance) {
    INFO("actual ", actual, ", expected ", expected, ", off by ", actual - expected, "; tolerance ",
         tolerance.absolute, " + ", tolerance.relative, " x expected: ", tolerance.reason);
    CHECK(is_close(actual, expected, tolerance));
}

}  // namespace rakeline::tests
