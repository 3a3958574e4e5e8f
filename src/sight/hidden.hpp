// SPDX-License-Identifier: MIT
#pragma once

#include "geometry/patch.hpp"
#include "picture/opening.hpp"

#include <span>
#include <vector>

/// How much of the picture the people and seats in front hide from each seat.
///
/// What is measured is area on the picture surface: a point of the picture is hidden from an eye
/// where the straight line between them meets a head or a wall. What two heads hide together counts
/// once. Choices of ours (common practice, no source):
///
///  - A head is an upright spheroid about the eyes: as broad as the head all round, with its crown
///    as far above the eyes as the chin is below.
///  - Shoulders and the seat's back are a wall across the seat that hides all below its upper edge.
///  - "Below" and "above" a wall's edge run along the picture's generator: straight down and up
///    before an upright screen.
///  - No one's own head or seat hides anything from them. An eye inside another's head sees
///  nothing.
///  - Which way a seat faces does not count: an eye sees all round.
///  - A head or wall whose centre lies behind the surface hides nothing; one that reaches into the
///    surface hides its whole outline. From an eye behind a flat picture nothing hides it.
///
/// Room frame, metres. Source of the formulas: derived in hidden_shadow.hpp.
namespace rakeline::sight {

struct Head {
    glm::dvec3 centre{0.0};
    double radius_m = 0.0775;      ///< half the breadth, > 0
    double half_height_m = 0.114;  ///< eye to crown, > 0
    int eye = -1;                  ///< index of the eye in it; -1: nobody's of those who look
    bool operator==(const Head&) const = default;
};

enum class WallHides {
    below,  ///< a seat's back, a balcony's front: all below the edge, from eyes above `base_m`
    above,  ///< a balcony seen from beneath: all above the edge, from eyes below it
};

struct Wall {
    glm::dvec3 from{0.0};  ///< ends of the straight edge
    glm::dvec3 to{0.0};
    WallHides hides = WallHides::below;
    double base_m = -1e3;  ///< height of the floor that it stands on (y); unused if it hides above
    int eye = -1;          ///< index of the eye from which it hides nothing; -1: none
    bool operator==(const Wall&) const = default;
};

/// One picture, those who look at it, and what stands in the room. `surface.across` is level.
struct HiddenInput {
    geometry::Patch surface;
    picture::Opening opening;
    std::span<const glm::dvec3> eyes;
    std::span<const Head> heads;
    std::span<const Wall> walls;
};

struct HiddenSetting {
    int columns = 128;     ///< across the picture, >= 8; the error falls with its 3/2 power
    unsigned threads = 0;  ///< 0: as many as the machine has; the result is the same bits
};

struct SeatHidden {
    double hidden_fraction = 0.0;  ///< of the opening's area, 0 to 1
    double clear_above_m = 0.0;    ///< over the lower edge: from here up nothing is hidden anywhere
    bool sees_back = false;  ///< part of the surface turns its back to this eye, heads or no heads
    bool operator==(const SeatHidden&) const = default;
};

/// For every eye, in order. The default columns hold the fraction within 0.0004 RMS and 0.002 at
/// the worst seat of a full room (tests/outside/embree_hidden_test.cpp).
std::vector<SeatHidden> hidden_picture(const HiddenInput& in, const HiddenSetting& setting = {});

/// The fractions alone, for many audiences one after the other: `out` has a place for each eye.
void hidden_fractions(const HiddenInput& in, const HiddenSetting& setting, std::span<double> out);

struct ClearInterval {
    double bottom_m = 0.0, top_m = 0.0;  ///< v on the surface
    bool operator==(const ClearInterval&) const = default;
};

/// What one eye sees: in columns of equal width along the arc, from the left, the clear intervals
/// on the middle line of each, from below.
struct ClearOutline {
    double left_m = 0.0;  ///< u of the picture's left edge
    double column_width_m = 0.0;
    std::vector<std::vector<ClearInterval>> columns;
};

ClearOutline clear_outline(const HiddenInput& in, int eye, int columns = 256);

/// What one head or wall hides. A point that several hide is theirs who is nearest to the eye, so
/// that the shares add up to the hidden fraction.
struct HidingShare {
    bool wall = false;  ///< `index` is in HiddenInput::walls, else in heads
    int index = 0;
    double fraction = 0.0;  ///< of the opening's area
    bool operator==(const HidingShare&) const = default;
};

/// All that hide something from one eye, the largest share first.
std::vector<HidingShare> hiding_shares(const HiddenInput& in, int eye, int columns = 256);

}  // namespace rakeline::sight
