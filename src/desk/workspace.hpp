// SPDX-License-Identifier: MIT
#pragma once

#include "desk/floor_handles.hpp"
#include "desk/history.hpp"
#include "desk/settings.hpp"
#include "drawing/curve_plot.hpp"
#include "drawing/drawing.hpp"
#include "drawing/room_mesh.hpp"
#include "sight/rake.hpp"
#include "study/aim_advice.hpp"
#include "study/format_change.hpp"
#include "study/lens_catalogue.hpp"
#include "study/meter_check.hpp"
#include "study/study.hpp"
#include "study/width_advice.hpp"
#include "view/scene.hpp"

#include <imgui.h>

#include <array>
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <vector>

/// What the window remembers of its own: what is open, chosen, selected. None of it is in the
/// document or its history.
namespace rakeline::desk {

/// In the place of a figure's id: seats without colours.
inline constexpr const char* kPlainSeats = "plain";

/// A number that is being typed. One at a time in the whole window.
struct NumberEdit {
    unsigned widget = 0;  ///< 0: none
    std::string text;
    std::string error;  ///< why the text can't be read
    bool take_focus = false;
    bool take_next = false;  ///< Tab: the next number drawn opens
    double drag_start = 0.0;
    bool dragged = false;
};

/// A text that is being typed; it reaches the layout when the field is left.
struct TextEdit {
    unsigned widget = 0;  ///< 0: none
    std::string text;
    bool take_focus = false;
};

/// A figure whose derivation is pinned open.
struct PinnedFigure {
    std::string id;
    study::Place place;
    int index = 0;
    bool just_opened = true;
};

/// Drawings of the strip below the room; the plate only where the projector shows film, decay,
/// reflections, the screen's loss and its holes while sound is looked at.
enum class StripDrawing {
    section,
    plan,
    seat,
    screen,
    port,
    curve,
    decay,
    reflections,
    loss,
    holes,
    plate,
};

/// How a drawing is looked at: 1 and 0 fit it to its field.
struct DrawingLook {
    double zoom = 1.0;
    glm::dvec2 offset{0.0};  ///< pixels
};

/// Pixels of the window from drawing coordinates.
struct DrawingView {
    glm::dvec2 origin{0.0};  ///< pixel of the drawing's (0, 0)
    double scale = 1.0;      ///< pixels a metre
    bool y_down = false;
    bool turned = false;  ///< a plan lying on its side: the screen at the left, as in the section

    ImVec2 to_pixel(glm::dvec2 at) const;
    glm::dvec2 to_drawing(ImVec2 pixel) const;
};

/// The drawing of the strip, kept while nothing that it shows has changed.
struct DrawingCache {
    struct Key {
        unsigned long study = 0;  ///< serial number
        const study::Figure* figure = nullptr;
        int projector = 0;
        int format = 0;
        std::optional<int> seat;
        StripDrawing strip = StripDrawing::section;
        bool blur = false;
        bool contours = false;
        bool from_lens = false;
        drawing::SightLines sight_lines = drawing::SightLines::all;
        bool luminance = false;
        base::UnitSystem units = base::UnitSystem::metric;
        unsigned long curves = 0;  ///< serial number of the trials
        drawing::PlotShape plot;
        int loudspeaker = 0;  ///< of the loss of the screen, or whose coverage; -1: of all
        bool coverage = false;
        int band = -1;  ///< of the coverage
        bool operator==(const Key&) const = default;
    };
    Key key;
    std::shared_ptr<const drawing::Drawing> drawing;  ///< null: none yet, or refused
    base::Problems refused;                           ///< why there is none to show
};

/// The screen's luminance as one seat sees it, kept while nothing it hangs on has changed.
struct LuminanceCache {
    struct Key {
        unsigned long study = 0;  ///< serial number; 0: nothing kept
        int projector = 0;
        int format = 0;
        int seat = -1;  ///< -1: there is none
        base::UnitSystem units = base::UnitSystem::metric;
        bool operator==(const Key&) const = default;
    };
    Key key;
    std::shared_ptr<const drawing::ScreenLuminance> screen;  ///< null: no seat or no picture
    drawing::Drawing scale;
};

/// The lenses ranked for the chosen projector and format, kept while nothing they hang on has
/// changed.
struct LensPickCache {
    struct Key {
        unsigned long study = 0;  ///< serial number; 0: nothing kept
        int projector = 0;
        int format = 0;
        unsigned long series = 0;  ///< serial number
        base::UnitSystem units = base::UnitSystem::metric;
        bool operator==(const Key&) const = default;
    };
    Key key;
    std::vector<study::ListedLens> catalogue;
    std::optional<picture::LensPick> pick;  ///< nothing: the projector has no use for the format
    std::string reason, needed;
    std::vector<std::string> faults;  ///< parallel to the pick's choices
};

/// A better aim for the chosen loudspeaker, kept while nothing it hangs on has changed.
struct AimCache {
    unsigned long study = 0;  ///< serial number; 0: nothing kept
    int loudspeaker = -1;
    std::optional<sound::AimProposal> proposal;
};

/// Picture widths for the chosen format, kept while nothing they hang on has changed.
struct WidthCache {
    struct Key {
        unsigned long study = 0;  ///< serial number; 0: nothing kept
        int format = 0;
        double share = 0.0;
        base::UnitSystem units = base::UnitSystem::metric;
        bool operator==(const Key&) const = default;
    };
    Key key;
    std::optional<study::WidthAdvice> advice;
    base::Problems refused;          ///< why there is none
    std::vector<std::string> words;  ///< the advice in sentences
};

/// The plot of screen sheets, kept while nothing it hangs on has changed.
struct SheetPlotCache {
    struct Key {
        unsigned long trials = 0;  ///< serial number; 0: nothing kept
        drawing::PlotShape shape;
        bool operator==(const Key&) const = default;
    };
    Key key;
    std::shared_ptr<const drawing::Drawing> plot;
};

/// What is asked of format changes.
struct ChangeChoice {
    bool open = false;
    bool machines = false;  ///< one format on another machine, else two formats of this one
    int from = 0;           ///< indices of formats in the layout
    int to = 0;
    int machine = 0;        ///< the other projector
    float height = 400.0f;  ///< pixels that the last frame's words took
};

/// Format changes of what is chosen, kept while nothing they hang on has changed.
struct ChangeCache {
    struct Key {
        unsigned long study = 0;  ///< serial number; 0: nothing kept
        int projector = 0, format = 0, machine = 0, from = 0, to = 0;
        bool machines = false;
        bool operator==(const Key&) const = default;
    };
    Key key;
    study::ChangeSheet sheet;
    std::vector<study::Move> moves;
    std::optional<study::MachineChange> machine;  ///< where it is asked for
};

/// Where an arrow key leads from the selected seat; here: to one, where none is selected.
enum class SeatStep { here, left, right, front, behind };

/// Readings typed in at the standard points; 0: none was taken there.
struct MeterChoice {
    bool open = false;
    int document = 0;       ///< the room that they were taken in
    bool on_sheet = false;  ///< light on the sheet, lx; else luminance from the measuring seat
    std::array<double, light::kPointCount> read{};
    double spot_rad = 0.0;
};

/// What the readings come from, kept while nothing it hangs on has changed.
struct MeterCache {
    struct Key {
        unsigned long study = 0;  ///< serial number; 0: nothing kept
        int projector = 0, format = 0;
        bool on_sheet = false;
        std::array<double, light::kPointCount> read{};
        double spot_rad = 0.0;
        base::UnitSystem units = base::UnitSystem::metric;
        bool operator==(const Key&) const = default;
    };
    Key key;
    std::optional<study::MeterCheck> check;  ///< nothing: no readings, or refused
    base::Problems refused;
    std::vector<std::string> notes, advice, cautions;
    std::shared_ptr<const drawing::Drawing> map;
};

/// A floor handle under the hand, from the press to the release.
struct FloorDrag {
    FloorHandle handle;    ///< as it stood when it was taken hold of
    BriefPtr start;        ///< then
    DrawingView view;      ///< then; kept, so that the ground does not move under the hand
    glm::dvec2 grab{0.0};  ///< from the pointer to the handle, m
    ImVec2 pressed;        ///< pointer
    std::optional<HandleAxis> along;  ///< of a handle that moves both ways: the way it began
    bool moved = false;
    std::string gesture;
    std::optional<base::Problem> stopped;  ///< why it stays behind the pointer
};

/// The handles of the long section.
struct FloorGrip {
    int block = 0;  ///< whose handles are shown
    std::optional<FloorHandle> hovered;
    std::optional<FloorDrag> drag;
    bool cancelled = false;            ///< Escape was pressed; the button may still be down
    int drags = 0;                     ///< counts them: each is a gesture of its own
    std::optional<FloorHandle> typed;  ///< whose numbers are open to be typed
    ImVec2 typed_at;
    std::string refusal;  ///< why the number typed last does not hold
};

/// What is asked of the rake solver.
struct RakeChoice {
    bool open = false;
    int block = -1;    ///< whose options these are; -1: none yet
    int document = 0;  ///< Workspace::document, then
    sight::RakeOptions options;
    std::string refusal;   ///< why what was proposed last can't be put into the layout
    BriefPtr refused_for;  ///< then; another layout, or other options, may take it
    sight::RakeOptions refused_with;
};

struct CameraState {
    view::Camera camera;
    bool fitted = false;  ///< false: fit to the hall at the next chance
};

struct Workspace {
    Settings settings;
    int document = 0;  ///< counts the rooms opened: a new one's lists begin at their top
    study::Subject subject = study::Subject::room;
    int projector = 0;
    int format = 0;
    int loudspeaker = 0;
    int band = 4;  ///< index in sound::kOctaves: 1 kHz
    drawing::Shows selected;
    drawing::Shows hovered;   ///< under the mouse in view or drawing, this frame
    std::string seat_figure;  ///< id that colours the seats, or kPlainSeats; empty: as suggested
    bool show_beams = true;
    StripDrawing strip = StripDrawing::section;
    bool film = false;       ///< the projector looked at shows film: it has plates
    bool blur = false;       ///< on the screen's drawing
    bool luminance = false;  ///< over the picture, in the room and in its drawings
    bool contours = false;   ///< on the plan: of the figure that colours the seats
    bool coverage = false;   ///< on plan and section: how wide loudspeakers send
    bool from_lens = false;  ///< the plate, else seen from the lamp
    drawing::SightLines sight_lines = drawing::SightLines::all;  ///< on the long section
    DrawingLook look;
    DrawingCache drawing_cache;
    LuminanceCache luminance_cache;
    FloorGrip floor;
    RakeChoice rake;
    CameraState hall_camera;
    bool from_seat = false;        ///< the hall's place shows what the selected seat sees
    bool seat_heads = true;        ///< in what a seat sees: somebody in every other one
    std::optional<SeatStep> step;  ///< asked for by a key, taken in the frame
    NumberEdit number;
    TextEdit text;
    std::map<std::string, bool> open_sections;  ///< of the editor, by field path
    std::optional<PinnedFigure> pinned;
    float hall_share = 0.60f;          ///< of the middle, above the drawing
    float figures_share = 0.56f;       ///< of the subject panel, above its editor
    std::vector<room::Series> series;  ///< read beside the layout's own lenses and loudspeakers
    unsigned long series_serial = 0;   ///< counts their changes
    LensPickCache lens_pick;
    AimCache aim;
    bool lenses_open = false;
    bool widths_open = false;
    double width_share = 0.9;  ///< of the seats that are to keep their limits
    WidthCache widths;
    std::vector<room::SheetChoice> sheets;  ///< of series, set against the screen's own
    bool sheets_open = false;
    SheetPlotCache sheet_plot;
    ChangeChoice change;
    ChangeCache change_cache;
    MeterChoice meter;
    MeterCache meter_cache;
    bool keys_open = false;
    bool cautions_open = false;
    std::string notice;  ///< what was just done, for the status bar
    std::string reveal;  ///< field path that the editor scrolls to, once

    /// Floating over the middle of the window: one at a time.
    bool middle_open() const {
        return lenses_open || widths_open || sheets_open || change.open || meter.open || rake.open;
    }
    void close_middle() {
        lenses_open = widths_open = sheets_open = change.open = meter.open = rake.open = false;
    }
    /// Opens or shuts one of them, and shuts the others.
    void toggle_middle(bool& which) {
        const bool opens = !which;
        close_middle();
        which = opens;
    }
};

}  // namespace rakeline::desk
