// SPDX-License-Identifier: MIT
#pragma once

/// Thin-lens throw, W = A (D - f) / f and its inverses. D from the principal plane to the picture,
/// A the gate or imager width in use times the anamorphic factor, W the picture width; all metres.
/// Source: thin-lens equation (Clerc, Photography: Theory and Practice, section on projection).
namespace rakeline::picture {

double picture_width(double gate_width_m, double throw_m, double focal_length_m);
double focal_length(double gate_width_m, double throw_m, double picture_width_m);

/// The field approximation f = A D / W, too long by f A / W.
double focal_length_field(double gate_width_m, double throw_m, double picture_width_m);

/// b = f D / (D - f): where the gate stands behind the lens for a picture at throw D > f.
double image_distance(double focal_length_m, double throw_m);

}  // namespace rakeline::picture
