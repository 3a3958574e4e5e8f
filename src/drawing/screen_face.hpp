// SPDX-License-Identifier: MIT
#pragma once

#include "drawing/luminance_shading.hpp"
#include "drawing/parts.hpp"

/// Private to drawing/: what the files that make up the flat drawing of the screen share.
namespace rakeline::drawing {

struct Face {
    const study::Study& study;
    const DrawingChoice& choice;
    Chosen chosen;
    geometry::Rectangle frame;  ///< surface coordinates
    geometry::Rectangle outer;  ///< frame and uncorrected picture together
    double pitch_m = 0.0;       ///< from one line of lettering or dimension to the next
    Drawing drawing;
    std::optional<study::SeatLuminance> luminance = {};  ///< where the choice asks for it

    const room::Layout& layout() const { return study.layout(); }
    void add(Item item);
    Shows screen() const { return showing(Shows::Kind::screen); }
    Shows projector() const { return showing(Shows::Kind::projector, chosen.projector); }
    study::Place place() const;

    /// The figure of the chosen pair; null where it has no value.
    const study::Figure* figure(const char* id) const;
    std::optional<double> value(const char* id) const;
    /// "23.5 mm ✓": the figure's value and mark; empty where it has no value.
    std::string text(const char* id) const;
    std::string quantity(double si, base::Unit unit) const;
};

/// The sheet with the chosen pair, nothing drawn yet.
Face face_of(const study::Study& study, const DrawingChoice& choice);

/// Whether the worst blur is more than its figure prints as nought: less would draw rounding.
bool blur_shows(const Face& face);

/// Corners counter-clockwise from bottom left.
std::vector<glm::dvec2> corners(const geometry::Rectangle& rectangle);

/// The parts, in the order of painting.
void add_face_masking(Face& face);    ///< the frame and its masking, dark
void add_face_light(Face& face);      ///< where the uncorrected picture's light falls
void add_face_chart(Face& face);      ///< the framing inside the picture
void add_face_blur(Face& face);       ///< in the framing's place where the choice asks for it
void add_face_luminance(Face& face);  ///< the same; its light and framing stay out
void add_face_outlines(Face& face);   ///< frame, opening, picture
void add_face_shortfall(Face& face);  ///< what the picture leaves dark, over the opening's own line
void add_face_dimensions(Face& face);  ///< masks' stops, edges of the picture, overfill
void add_face_notes(Face& face);       ///< what stands beside the drawing

}  // namespace rakeline::drawing
