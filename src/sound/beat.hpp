// SPDX-License-Identifier: MIT
#pragma once

#include "sound/lattice.hpp"

#include <vector>

/// Bands that the pixels of a picture make with the holes of the sheet: what is coarser than both.
///
/// The light on the sheet is that of an even white picture with dark gaps round its pixels, and the
/// sheet sends back all of it but what falls into holes. The product of the two patterns holds
/// every sum of a frequency of the one and a frequency of the other:
///
///     k = p + h,   p of the pixels' reciprocal lattice, h of the holes', both up to order 3
///
/// A lens that draws the gaps less sharp makes the bands fainter; what a picture shows in single
/// pixels can make them stronger. Source: spectra of superposed gratings (Amidror, The theory of
/// the moire phenomenon, from memory).
namespace rakeline::sound {

/// Orders looked at in each of the two directions: a lens leaves nothing of finer ones.
inline constexpr int kHighestOrder = 3;

/// Lit part of a pixel's area. Common practice, no source: imagers of digital machines have 0.85 to
/// 0.95.
inline constexpr double kPixelFill = 0.9;

/// A frequency of a pattern and how much of the pattern is in it.
struct Order {
    int i = 0, j = 0;
    glm::dvec2 frequency{0.0};  ///< cycles/m
    double amplitude = 0.0;     ///< over the pattern's mean, >= 0; both of the pair +k and -k
};

/// One half of the orders of the holes (the other is the same with both signs turned): up to
/// kHighestOrder along each of the two, of staggered holes the three directions of their rows.
///
///     2 s / (1 - s) |2 J1(pi d k) / (pi d k)|                    round holes
///     2 s / (1 - s) |sinc(i d/b) sinc(j d/b)|                    woven, sinc x = sin(pi x)/(pi x)
///       s open area, d diameter or side, b pitch, k = |frequency|
///
/// Source: Fourier coefficients of a disc and of a square on a lattice.
std::vector<Order> hole_orders(const room::Perforation& perforation);

/// |sinc(i f) sinc(j f)| with f the square root of kPixelFill; 1 at (0, 0). Not doubled.
double pixel_amplitude(int i, int j);

struct Beat {
    glm::dvec2 frequency{0.0};  ///< k on the sheet, cycles/m; the bands lie across it
    int pixel_i = 0, pixel_j = 0;
    int hole_i = 0, hole_j = 0;
    double contrast = 0.0;  ///< (Lmax - Lmin) / (Lmax + Lmin) of these bands alone

    double period_m() const { return 1.0 / glm::length(frequency); }
    bool operator==(const Beat&) const = default;
};

/// The beats of pixels with holes that are coarser than the widest rows of either and no coarser
/// than `longest_m`: what does not repeat within the picture is no band but a slow change. Two
/// patterns alike, whose period is without end, have none of that order.
std::vector<Beat> beats(const std::vector<Order>& holes, const Lattice& pixels, double longest_m);

}  // namespace rakeline::sound
