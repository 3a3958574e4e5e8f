// SPDX-License-Identifier: MIT
#pragma once

#include "picture/plate.hpp"
#include "study/study.hpp"

#include <array>
#include <optional>
#include <string>
#include <variant>
#include <vector>

/// Drawings as plain data: lines, fills, labels, each with what it shows. One drawing serves the
/// window, picking, report pages and exports. Coordinates in metres of the thing drawn: plan
/// (x across, z back downward on the page: the screen at the top), section (z back to the right, y
/// up).
namespace rakeline::drawing {

/// How heavy a line is: cut through, seen, or only helping.
enum class Weight { cut, seen, helper };

/// What a mark means; each output has its own colours for these.
enum class Ink {
    line,    ///< walls, floors, seats
    quiet,   ///< dimensions, grid, axes
    beam,    ///< light of the projectors
    screen,  ///< the picture surface
    sight,   ///< sight lines
    sound,   ///< loudspeakers and their axes
    holds,
    near,
    missed,
    over_dark,    ///< lines and letters on the palette's dark half, the same on every ground
    over_bright,  ///< on its bright half
};

/// What is shown, so that a click selects it.
struct Shows {
    enum class Kind {
        nothing,
        seat,
        row,
        projector,
        loudspeaker,
        screen,
        hall
    } kind = Kind::nothing;
    int index = 0;
    bool operator==(const Shows&) const = default;
};

struct Line {
    std::vector<glm::dvec2> points;
    Weight weight = Weight::seen;
    Ink ink = Ink::line;
    bool closed = false;
    bool dashed = false;
    Shows shows{};
};

struct Fill {
    std::vector<glm::dvec2> points;  ///< simple polygon
    Ink ink = Ink::line;
    double strength = 0.15;  ///< 0 to 1 of the ink
    Shows shows{};
};

/// Triangles in the palette's colours, which run evenly between their corners; opaque.
struct Shading {
    std::vector<glm::dvec2> points;
    std::vector<double> places;  ///< parallel: in the palette (palette.hpp), 0 to 1
    std::vector<std::array<int, 3>> triangles;
    Shows shows{};
};

enum class Anchor { left, centre, right };

struct Label {
    glm::dvec2 at{0.0};
    std::string text;
    Anchor anchor = Anchor::centre;
    Ink ink = Ink::quiet;
    bool vertical = false;   ///< reads upward
    double size = 1.0;       ///< times the output's normal lettering
    bool on_ground = false;  ///< on a patch of the ground: what lies under it may have any colour
    Shows shows{};
};

/// A measured distance with ticks at its ends; outputs print its length in their unit system.
struct Dimension {
    glm::dvec2 from{0.0};
    glm::dvec2 to{0.0};
    /// The dimension line stands off by this along (-dy, dx) of from->to: to its left where the
    /// second coordinate runs up the page, to its right in a plan.
    double offset_m = 0.0;
    base::Unit unit = base::Unit::metre;
    std::string prefix;              ///< "throw ", "R "
    std::optional<double> length_m;  ///< the true length where the drawing foreshortens it
    Shows shows{};
    int extra_decimals = 0;  ///< more than are usual for the unit: a gate is read to 0.01 mm
};

using Item = std::variant<Line, Fill, Shading, Label, Dimension>;

struct Drawing {
    std::string title;
    std::vector<Item> items;  ///< painted in order
    glm::dvec2 low{0.0};      ///< bounds of everything
    glm::dvec2 high{0.0};
    bool y_down = false;  ///< plan: second coordinate runs down the page
};

/// Whose sight lines the long section shows.
enum class SightLines {
    all,       ///< of every row
    selected,  ///< of the selected seat's row; without a seat of none
};

/// What to draw and what stands out.
struct DrawingChoice {
    std::optional<int> projector;
    std::optional<int> format;
    std::optional<int> seat;  ///< selected
    SightLines sight_lines = SightLines::all;
    const study::Figure* seat_figure = nullptr;  ///< colours seats by verdict
    bool contours = false;  ///< plan: lines of equal value of seat_figure over the seats
    bool coverage = false;  ///< plan, section: axes and -6 dB edges of loudspeakers, to the walls
    std::optional<int> loudspeaker;  ///< whose; unset: of all screen channels
    int coverage_band = 6;           ///< at, index in sound::kOctaves: 4 kHz
    bool dimensions = true;
    bool blur = false;  ///< screen face: the blur at best focus over the picture
    /// Screen face and seat's view: the luminance that the seat (unset: the reference seat) sees
    /// over the picture, with its scale.
    bool luminance = false;
    std::optional<bool> raised;  ///< plan: only balconies, or only what stands on the floor
    base::UnitSystem units = base::UnitSystem::metric;  ///< of quantities inside labels
};

/// From above: hall, screen with the format's opening, seats, booth, beam, loudspeakers.
Drawing plan(const study::Study& study, const DrawingChoice& choice);

/// Along the centre line: floor, screen, ceiling, booth, beam, eyes and sight lines to the
/// picture's lower edge, people who stand in cross aisles. Blocks that the centre line does not cut
/// are drawn as seen behind it, on their own centre line.
Drawing long_section(const study::Study& study, const DrawingChoice& choice);

/// The screen unrolled flat, seen from the seats, in surface coordinates (u right, v up): the
/// frame, the masked opening of the format, the uncorrected picture with what falls into the
/// masking and what stays dark, keystone widths and heights, bows, overfill of each edge.
Drawing screen_face(const study::Study& study, const DrawingChoice& choice);

/// The booth wall round the chosen projector's port, seen from the hall, so that the page's right
/// is the house's left (first coordinate: metres across, negated; second: up): the port, the light
/// of each format in the wall, the smallest opening that passes it all, and the margins. Empty
/// where the layout has no projector.
Drawing port_face(const study::Study& study, const DrawingChoice& choice);

/// What the chosen seat's eye has of the format's picture, in perspective about the picture's
/// centre, in metres at its distance: opening and masking, heads and seat backs in front as the
/// hidden part is computed with, that part marked, the height from which all is clear, eye level,
/// who hides most, and the figures in words. Refused where no seat is chosen or the room has no
/// format. Which way the seat faces does not count.
base::Result<Drawing> seat_view(const study::Study& study, const DrawingChoice& choice);

/// The gate plate's opening with the aperture behind it, in metres of the gate, as seen from one
/// side; the allowance and corner radius are those of the layout's use. Refused where there is no
/// plate to file: no film machine, no picture, an opening that reaches outside the aperture.
base::Result<Drawing> plate_face(const study::Study& study,
                                 const DrawingChoice& choice,
                                 picture::PlateView view);

/// What stands at a dimension: "throw 15.99 m".
std::string dimension_text(const Dimension& dimension, base::UnitSystem units);

/// The length that a dimension states, m: its own, or the distance between its ends.
double length_m(const Dimension& dimension);

/// Where the dimension line itself runs, offset taken in.
struct Segment {
    glm::dvec2 from{0.0};
    glm::dvec2 to{0.0};
};
Segment dimension_line(const Dimension& dimension);

/// What a click at `point` within `reach_m` means: the topmost line, fill or label there that shows
/// something; small things (a seat, an eye) win over fills that cover them.
Shows shown_at(const Drawing& drawing, glm::dvec2 point, double reach_m);

}  // namespace rakeline::drawing
