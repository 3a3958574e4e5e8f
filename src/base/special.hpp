// SPDX-License-Identifier: MIT
#pragma once

#include <complex>

/// Special functions behind one door, since not every standard library of our targets has them.
namespace rakeline::base {

/// Bessel function of the first kind, order 0 and 1, x >= 0.
double bessel_j0(double x);
double bessel_j1(double x);

/// J1(z)/(z J0(z)) for the complex argument of a viscous tube, z = a sqrt(-j), a >= 0.
/// Tends to 1/2 as z tends to 0. Relative error < 1e-10 for |z| <= 60.
std::complex<double> bessel_tube_ratio(double a);

/// The x below which the standard normal distribution has the share `p`, 0 < p < 1.
double normal_quantile(double p);

}  // namespace rakeline::base
