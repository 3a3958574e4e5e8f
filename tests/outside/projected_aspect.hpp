// SPDX-License-Identifier: MIT
#pragma once

#include "picture/picture_study.hpp"
#include "support/check.hpp"

/// The one square-on room in which the sheets of picture sizes are checked.
namespace rakeline::tests {

/// One projector 30 m before a flat upright screen, level with its centre.
inline picture::ProjectedPicture square_on_picture(room::Projector projector,
                                                   const room::FormatUse& use) {
    picture::PictureInput in;
    in.screen.width_m = 20.0;
    in.screen.height_m = 15.0;
    in.screen.sill_m = 1.0;
    in.screen.setback_m = 1.0;
    in.formats = {{.name = use.format, .aspect_ratio = 2.0, .opening_width_m = {}}};
    projector.up_m = 8.5;
    projector.back_m = 31.0;
    projector.formats = {use};
    in.projectors = {projector};
    const auto study = picture::study_picture(in);
    REQUIRE(study.pictures.size() == 1);
    return study.pictures.front();
}

/// Width over height of the picture on the screen.
inline double projected_aspect(const picture::ProjectedPicture& p) {
    const auto& c = p.shape.corners;
    return (c[1].x - c[0].x) / (c[0].y - c[3].y);
}

}  // namespace rakeline::tests
