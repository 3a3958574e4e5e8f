// SPDX-License-Identifier: MIT
#pragma once

#include "desk/curve_worker.hpp"
#include "desk/history.hpp"
#include "desk/rake_worker.hpp"
#include "desk/sheet_worker.hpp"
#include "desk/theme.hpp"
#include "desk/workspace.hpp"

#include <imgui.h>

#include <optional>
#include <string>
#include <vector>

/// What a panel is given and what it may hand back. Panels compute nothing about rooms: they show
/// figures and propose an edited copy of the layout.
namespace rakeline::desk {

/// Pictures of the room, by whoever owns the graphics. Absent in tests.
class RoomPictures {
public:
    virtual ~RoomPictures() = default;
    /// A texture of the room, size in pixels of the display; valid for this frame.
    /// `luminance`: shown on the screen in the chart's place; null: none.
    using Luminance = std::shared_ptr<const drawing::ScreenLuminance>;
    virtual ImTextureID hall(const view::Camera& camera,
                             int width,
                             int height,
                             const Luminance& luminance) = 0;
    struct SeatLook {
        int seat = 0, format = 0;
        bool heads = true;          ///< somebody in every other seat
        int width = 0, height = 0;  ///< pixels
        Luminance luminance = {};
    };
    /// What a seat sees, with what a full house hides of the picture marked on it.
    virtual ImTextureID from_seat(const SeatLook& look) = 0;
    /// What lies under a point of the last hall picture, pixels from its upper left corner.
    virtual drawing::Shows pick(glm::dvec2 at) = 0;
};

struct PanelInput {
    const room::Brief& brief;        ///< as edited
    const study::Study* study;       ///< newest finished; null before the first
    unsigned long study_serial = 0;  ///< counts the studies of this run
    bool current = false;            ///< `study` is of `brief`
    const base::Problems& problems;  ///< why `brief` can't be studied
    const History& history;
    const Theme& theme;
    /// For numbers that are behind the brief: all in quiet ink. Null: nobody looks.
    const Theme* following = nullptr;
    std::string title;  ///< file name, or "unsaved"
    bool edited = false;
    bool studying = false;
    /// How far the crowd of `study` is; nothing where it is there or not being drawn.
    std::optional<sight::CrowdProgress> sampling = {};
    double studied_s = 0.0;             ///< what the newest study took
    const RakeAnswer* rake = nullptr;   ///< the newest of the rake solver; null before the first
    CurveWorker::Finished curves = {};  ///< the newest trials of curve and tilt
    SheetWorker::Finished sheets = {};  ///< the newest trials of screen sheets
    RoomPictures* pictures = nullptr;
    float raster_scale = 1.0f;  ///< display pixels per unit of the window

    base::UnitSystem units() const { return units_; }
    base::UnitSystem units_ = base::UnitSystem::metric;
};

/// What draws numbers that belong to an older brief than the one that is open, or to another
/// choice: in the theme that says so.
inline PanelInput behind(const PanelInput& in) {
    if (!in.following) return in;
    return {.brief = in.brief,
            .study = in.study,
            .study_serial = in.study_serial,
            .current = in.current,
            .problems = in.problems,
            .history = in.history,
            .theme = *in.following,
            .following = in.following,
            .title = in.title,
            .edited = in.edited,
            .studying = in.studying,
            .sampling = in.sampling,
            .studied_s = in.studied_s,
            .rake = in.rake,
            .curves = in.curves,
            .sheets = in.sheets,
            .pictures = in.pictures,
            .raster_scale = in.raster_scale,
            .units_ = in.units_};
}

/// What draws numbers of the study.
inline PanelInput of_study(const PanelInput& in) {
    return in.current || !in.study ? in : behind(in);
}

/// Beside numbers that belong to an older brief; empty where they don't.
inline const char* following_word(const PanelInput& in) {
    if (in.current || !in.study) return "";
    return in.problems.empty() ? "following" : "last valid layout";
}

/// A key that went down, with what was held. Kept apart from the toolkit's own key state, which
/// misses a key that goes down and up between two frames.
struct KeyPress {
    int key = 0;  ///< GLFW's number
    bool command = false;
    bool shift = false;
};

struct Edit {
    std::string label;  ///< "Change hall width"
    room::Layout layout;
    std::string gesture;  ///< edits that follow with the same one are one step; empty: by itself
};

enum class Action {
    new_room,
    open,
    save,
    save_as,
    undo,
    redo,
    report_pdf,
    seat_csv,
    section_png,
    plan_png,
    fit_view,
    open_series,  ///< a file of lenses or loudspeakers to take from
    quit
};

/// A floor that the rake solver is asked for, in the room as it is studied.
struct RakeWish {
    int block = 0;
    sight::RakeOptions options;
};

/// What the panels ask for in one frame.
struct Requests {
    std::optional<RakeWish> rake;
    bool curves = false;  ///< trials of curve and tilt for what is chosen
    bool sheets = false;  ///< trials of the screen sheets that are known
    std::optional<Edit> edit;
    bool end_gesture = false;
    std::vector<Action> actions;
};

}  // namespace rakeline::desk
