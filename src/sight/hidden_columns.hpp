// SPDX-License-Identifier: MIT
#pragma once

#include "sight/hidden.hpp"
#include "sight/hidden_shadow.hpp"

#include <vector>

/// The picture cut into columns of equal width along its arc, in the patch's own frame (x across,
/// y along the generator, z along the normal, from the patch's centre). Private to sight/hidden.
namespace rakeline::sight::hidden {

struct PlanPoint {
    double x = 0.0, z = 0.0;
};

struct PictureColumns {
    std::vector<PlanPoint> places;  ///< middle of each column
    double bottom_m = 0.0;          ///< v of the lower edge
    double height_m = 0.0;
    double left_m = 0.0;  ///< u of the left edge
    double width_m = 0.0;
    bool flat = true;
    double radius_m = 0.0;
    Tilt tilt;
};

PictureColumns picture_columns(const geometry::Patch& surface,
                               const picture::Opening& opening,
                               int columns);

glm::dvec3 in_patch_frame(const geometry::Patch& surface, const glm::dvec3& room_point);

/// Whether the surface turns its back to the eye (in the patch's frame) at any of the columns.
bool sees_back(const PictureColumns& columns, const glm::dvec3& eye);

}  // namespace rakeline::sight::hidden
