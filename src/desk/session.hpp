// SPDX-License-Identifier: MIT
#pragma once

#include "desk/dialogs.hpp"
#include "desk/document.hpp"
#include "desk/panel_input.hpp"
#include "desk/rake_worker.hpp"
#include "desk/recovery.hpp"
#include "desk/sheet_worker.hpp"
#include "desk/study_worker.hpp"
#include "desk/workspace.hpp"

#include <functional>
#include <optional>
#include <string>

/// The document, its study and what the window shows of them, between one frame and the next.
/// Knows no window: tests drive it with a bare ImGui context.
namespace rakeline::desk {

struct SessionOptions {
    std::string layout_path;  ///< empty: a new room under the file chooser
    std::string program_version;
    Settings settings;
    std::function<void()> wake;  ///< called from the worker when a study is finished
    bool keep_files = true;      ///< settings and recovery copies (tests: false)
};

class Session {
public:
    explicit Session(SessionOptions options);
    ~Session();

    /// One frame: keys, panels, dialogs, then what they asked for.
    void frame(const Theme& theme, RoomPictures* pictures, float raster_scale);

    void drop_file(const std::string& path);  ///< dragged onto the window
    void press_key(const KeyPress& key) { keys_.push_back(key); }
    void ask_to_quit();
    void edit(const Edit& edit);  ///< what a panel can ask for, from outside
    void act(Action action);
    bool wants_to_quit() const { return quit_; }

    Workspace& workspace() { return workspace_; }
    const Document& document() const { return document_; }
    std::shared_ptr<const study::Study> study() const { return finished_.study; }
    const FinishedStudy& finished() const { return finished_; }
    std::shared_ptr<const RakeAnswer> rake() const { return raked_.answer; }
    std::shared_ptr<const CurveAnswer> curves() const { return curved_.answer; }
    std::string window_title() const;
    void wait_for_study();  ///< until the newest brief is studied
    void wait_for_rake() { rake_.wait_until_idle(); }
    void wait_for_curves() { curves_.wait_until_idle(); }
    std::shared_ptr<const SheetAnswer> sheets() const { return sheeted_.answer; }
    void wait_for_sheets() { sheets_.wait_until_idle(); }
    /// Takes in a finished study; call before drawing. One that is about to be finished is waited
    /// for, a part of a frame long, so that its numbers don't come a frame late.
    void take_study();

private:
    /// What waits until the user has said what becomes of unsaved edits.
    struct Pending {
        enum class Kind { open, new_room, quit } kind = Kind::open;
        std::string path;
    };

    PanelInput panel_input(const Theme& theme, RoomPictures* pictures, float raster_scale) const;
    void draw_dialogs(const Theme& theme);
    void draw_unsaved_question(const Theme& theme);
    void draw_recovery_question(const Theme& theme);
    void take(Requests& requests);
    void post();
    void ask_behind(const Requests& requests);
    std::optional<RoomLook> look() const;
    void leave_document(Pending pending);
    void go_on(const Pending& pending);
    void open(const std::string& path);
    void take_document(Document document);
    void open_series(const std::string& path);
    std::vector<room::SheetChoice> generic_sheets() const;
    void save();
    void save_to(const std::string& path);
    void export_to(Action what, const std::string& path);
    void show_problems(std::string title, base::Problems problems);
    void keep_recovery();
    std::string suggested_name(const std::string& ending) const;
    std::string folder() const;
    std::string series_folder() const;

    SessionOptions options_;
    Document document_;
    Workspace workspace_;
    StudyWorker worker_;
    FinishedStudy finished_;
    RakeWorker rake_;
    RakeWorker::Finished raked_;
    CurveWorker curves_;
    CurveWorker::Finished curved_;
    SheetWorker sheets_;
    SheetWorker::Finished sheeted_;
    Theme following_;        ///< PanelInput::following
    bool pictured_ = false;  ///< someone draws the room: its triangles are wanted
    FileDialog files_;
    std::optional<Pending> asking_;        ///< the question of unsaved edits is open
    std::optional<Pending> after_saving_;  ///< goes on once the chosen file is written
    std::optional<RecoveryCopy> recovery_;
    std::string problems_title_;
    base::Problems shown_problems_;
    BriefPtr recovered_brief_;  ///< the brief that the recovery copy holds
    double recovery_due_s_ = 0.0;
    std::vector<KeyPress> keys_;  ///< since the last frame
    bool quit_ = false;
};

}  // namespace rakeline::desk
