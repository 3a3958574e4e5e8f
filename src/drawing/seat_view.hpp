// SPDX-License-Identifier: MIT
#pragma once

#include "drawing/eye_projection.hpp"
#include "drawing/eye_shapes.hpp"
#include "drawing/luminance_shading.hpp"
#include "drawing/parts.hpp"
#include "study/seat_view.hpp"

/// Private to drawing/: what the files that make up the drawing of a seat's view share.
namespace rakeline::drawing {

struct EyeView {
    const study::Study& study;
    const DrawingChoice& choice;
    int seat = 0;
    int format = 0;
    EyeProjection page;
    study::SeatView seen;
    Occluders occluders;
    bool behind = false;  ///< the eye is behind a flat picture, or on its surface
    std::optional<study::SeatLuminance> luminance;  ///< where the choice asks for it
    Drawing drawing;

    const room::Seat& sitter() const {
        return study.seats.seats.at(static_cast<std::size_t>(seat));
    }
    const geometry::Patch& surface() const { return study.picture.surface; }
    const geometry::Rectangle& opening() const {
        return study.picture.openings.at(static_cast<std::size_t>(format)).uv;
    }
    template <class T>
    void add(T item) {
        drawing.items.emplace_back(std::in_place_type<T>, std::move(item));
    }
    /// Whether a blocker at this place is drawn: one behind a flat picture is not before it.
    bool before_picture(const glm::dvec3& place) const;
};

/// Points on the picture surface, close enough together for a curved one.
std::vector<glm::dvec3> on_surface(const geometry::Patch& surface,
                                   const std::vector<glm::dvec2>& line);
/// Corners of a rectangle with points between them along u, counter-clockwise from bottom left.
std::vector<glm::dvec3> sheet_outline(const geometry::Patch& surface,
                                      const geometry::Rectangle& uv);

/// The parts, in the order of painting.
void add_eye_sheet(EyeView& view);      ///< masking, opening, its middle lines
void add_eye_luminance(EyeView& view);  ///< over the opening
void add_eye_hidden(EyeView& view);  ///< the hidden part, filled and hatched, and the clear height
void add_eye_people(EyeView& view);  ///< backs and heads in front
void add_eye_level(EyeView& view);   ///< level with the eye
void add_eye_names(EyeView& view);   ///< who hides most
void add_eye_notes(EyeView& view);   ///< what stands beside the drawing
void add_eye_scale(EyeView& view);   ///< of luminance, under it

}  // namespace rakeline::drawing
