// SPDX-License-Identifier: MIT
#pragma once

#include "study/study.hpp"

#include <optional>
#include <string>
#include <vector>

/// Format changes: what stands where in each format of a machine, what a person does to go from
/// one format to another, and one format on two machines side by side.
///
/// All of it is read off a study: every number is a figure of the register or a member of the
/// layout, and its cell says which.
namespace rakeline::study {

/// One value or name as it is shown, and where it comes from.
struct SheetCell {
    /// Ids of figures ("picture.throw") and paths of layout members
    /// ("projectors[0].formats[2].lens") that it shows; empty: there is no value here.
    std::vector<std::string> sources;
    std::string metric;
    std::string imperial;
    std::optional<double> si;  ///< where it shows one number
    base::Unit unit = base::Unit::ratio;
    int extra_decimals = 0;               ///< shown beyond those usual for the unit
    Verdict verdict = Verdict::no_limit;  ///< the worst over the figures that it shows

    bool empty() const { return sources.empty(); }
    const std::string& text(base::UnitSystem system) const {
        return system == base::UnitSystem::metric ? metric : imperial;
    }
    bool operator==(const SheetCell&) const = default;
};

/// What a row of the sheet is for.
enum class SheetPart {
    set,    ///< what a person puts in, moves or turns
    gives,  ///< what comes of it
};

struct SheetRow {
    SheetPart part = SheetPart::set;
    std::string label;
    std::vector<SheetCell> cells;  ///< parallel to ChangeSheet::formats
};

/// All formats of one projector side by side. Rows that have a value in no format are left out,
/// and so are masks that don't move, shift that no use has, and the aim of a machine that stands.
struct ChangeSheet {
    int projector = 0;
    std::vector<int> formats;   ///< indices in the layout of those that it has a use for
    std::vector<int> not_made;  ///< and of the others
    std::vector<SheetRow> rows;
    std::vector<std::string> notes;  ///< where a use gives no picture: why, and what mends it
};

ChangeSheet change_sheet(const Study& study, int projector);

/// Steps of a format change, in their order.
///
/// Order, and why (common practice, no source; local rules and the maker's instructions of the
/// machine go before it):
///   1. darken        The light goes first: nobody works at a lit gate or lens, and no one sees the
///                    masks and the picture move.
///   2. open_mask     Masks open before the picture changes, so that a picture that grows meets an
///                    opening that is there already, and its border never heats or lights up cloth.
///   3. plate         Film: from the gate outward, so that no hand reaches past a part that is set
///      lens          already: the plate, the lens or turret, then the attachment in front of that
///      attachment    lens.
///   4. pixels        Digital: the part of the imager in use, then the lens and its zoom, then the
///      lens, zoom    shift: zooming moves a shifted picture, so the shift is set last.
///      shift
///   5. aim           The whole machine, where its aim follows the picture.
///   6. close_mask    Masks close when the picture that they frame is the new, smaller one.
///   7. uncover       Light on the screen again, with a test picture.
///   8. focus         Needs light, and the final focal length, shift and aim.
///   9. light         Is read on a focused and framed picture.
///  10. check         Edges, sharpness and the reference reading.
enum class MoveKind {
    darken,
    open_mask,
    plate,
    pixels,
    lens,
    attachment,
    zoom,
    shift,
    aim,
    close_mask,
    uncover,
    focus,
    light,
    check,
};
const char* move_name(MoveKind kind);  ///< "open_mask", ... as in JSON

struct Move {
    MoveKind kind = MoveKind::darken;
    std::string metric;    ///< "Open the left mask from 2408.8 mm to 3251.4 mm, by 842.6 mm."
    std::string imperial;  ///< the same in inches
    SheetCell from;        ///< empty where the step has no value
    SheetCell to;
    std::optional<double> by_si;  ///< to less from, where both are numbers
    std::string caution;          ///< at the first step that it is for; empty elsewhere

    const std::string& text(base::UnitSystem system) const {
        return system == base::UnitSystem::metric ? metric : imperial;
    }
};

/// What a person does to go from one format to another, in order. Only what changes: numbers that
/// read the same or differ by less than half of the last digit shown ask for no hand, and masks
/// none under a millimetre. No moves at all where nothing changes, or where the projector has no
/// use for one of the two.
std::vector<Move> moves(const Study& study, int projector, int from, int to);

/// Goes before every list of moves.
inline constexpr const char* kMovesDefer =
    "Local rules and the maker's instructions of the machine go before this list (common practice, "
    "no source).";

/// One figure or member on both machines.
struct MachineRow {
    std::string label;
    SheetCell from;
    SheetCell to;
    std::string difference_metric;  ///< to less from, with its sign; empty where one is missing
    std::string difference_imperial;
    std::optional<double> difference_si;

    const std::string& difference(base::UnitSystem system) const {
        return system == base::UnitSystem::metric ? difference_metric : difference_imperial;
    }
};

/// One machine of the two.
struct MachineSide {
    int projector = 0;
    /// The use that the figures are of, where the layout has none for this format and one could be
    /// proposed: a copy of the room with it was studied.
    std::optional<room::FormatUse> proposed;
    std::string proposal;     ///< what was proposed and from what, or why nothing can be shown
    std::string lens_metric;  ///< the best of the layout's lenses and why, or what would be needed
    std::string lens_imperial;

    const std::string& lens(base::UnitSystem system) const {
        return system == base::UnitSystem::metric ? lens_metric : lens_imperial;
    }
};

/// Two machines, one room: the same format side by side.
struct MachineChange {
    int format = 0;
    MachineSide from;
    MachineSide to;
    std::vector<MachineRow> rows;
};

/// Where a machine has no use for the format, one is proposed and studied in a copy of the room.
/// Digital: the largest part of its imager that has the format's ratio. Film: the gate of a use of
/// the same ratio that the layout has on a film machine with the same lit area; without one, the
/// side stays empty and says so. Shift, where the aim stands by angles: what centres the picture.
/// Lens: the first of the layout's that covers and fits, else the focal length to cover.
MachineChange machine_change(const Study& study, int format, int from, int to);

}  // namespace rakeline::study
