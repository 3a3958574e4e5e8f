// SPDX-License-Identifier: MIT
#pragma once

#include "picture/covering.hpp"
#include "picture/lens_reach.hpp"

#include <optional>
#include <span>
#include <string>
#include <vector>

/// Which lens of a catalogue to put on one projector for one format.
namespace rakeline::picture {

/// What projector, screen and format ask of a lens, whichever it is.
struct LensWish {
    LensDemand demand;
    double focal_length_m = 0.0;                    ///< exact for the opening's width
    std::optional<double> covering_focal_length_m;  ///< the longest that fills the opening
};

/// The picture that one lens gives.
struct LensPicture {
    bool covers = false;       ///< fills the opening everywhere, by the exact map
    double enlargement = 1.0;  ///< see Covering
    PictureEdge decides = PictureEdge::left;
    std::optional<EdgeOverfill> overfill;
    /// Share of the source image that falls on the masking: with a gate lit evenly, the share of
    /// the light too.
    double crop = 0.0;
    double uncovered = 0.0;  ///< part of the opening left dark
    /// Least distance from the light to the rim of the port in the booth wall; negative: the wall
    /// cuts into it (port.hpp). Nothing if the lens stands in the hall.
    std::optional<double> port_margin_m;
};

struct LensChoice {
    int lens = 0;  ///< index in the catalogue
    /// A prime's own; a zoom's is the covering focal length, or what comes nearest to it.
    double focal_length_m = 0.0;
    std::optional<double> picture_width_m;  ///< thin lens, along the axis; nothing if f >= throw
    LensReach reach;
    std::optional<LensPicture> picture;
    std::string no_picture;  ///< why there is none

    bool covers() const { return picture && picture->covers; }
    /// Reaches shift and image circle, and its light passes the port.
    bool fits() const;
};

struct LensPick {
    int projector = 0;
    int format = 0;
    double gate_width_m = 0.0;
    double gate_height_m = 0.0;
    std::optional<LensWish> wish;     ///< nothing: no picture can be made with any lens
    std::string why_none, mend_none;  ///< then why, and what helps
    std::vector<LensChoice> choices;  ///< best first

    /// The first if it covers and fits.
    const LensChoice* best() const;
};

/// Every lens of the catalogue tried on this projector and format, ranked: those that cover before
/// those that don't, among each those that fit first; then the least of the opening left dark, then
/// the least crop, then the catalogue's order. Each lens is judged alone, so one more in the
/// catalogue never makes the first worse. The lens that the layout fits is not looked at.
///
/// Nothing if the projector has no use for the format. Reads layouts and lenses that room's checks
/// pass.
std::optional<LensPick> pick_lens(const PictureInput& in,
                                  int projector,
                                  int format,
                                  std::span<const room::Lens> catalogue);

}  // namespace rakeline::picture
