// SPDX-License-Identifier: MIT
#include "base/files.hpp"
#include "desk/session.hpp"
#include "drawing/drawing.hpp"
#include "report/report.hpp"

#include <array>
#include <ctime>
#include <filesystem>

namespace rakeline::desk {
namespace {

std::string today() {
    const std::time_t now = std::time(nullptr);
    std::tm local{};
    localtime_r(&now, &local);
    std::array<char, 16> text{};
    std::strftime(text.data(), text.size(), "%Y-%m-%d", &local);
    return text.data();
}

constexpr std::chrono::seconds kPatience{5};

/// In place of one of the same name.
void add_sheet(std::vector<room::SheetChoice>& sheets, const room::SheetChoice& sheet) {
    std::erase_if(sheets, [&](const room::SheetChoice& has) { return has.name == sheet.name; });
    sheets.push_back(sheet);
}

std::string file_name(const std::string& path) {
    return std::filesystem::path(path).filename().string();
}

}  // namespace

void Session::drop_file(const std::string& path) {
    leave_document({Pending::Kind::open, path});
}

void Session::ask_to_quit() {
    leave_document({Pending::Kind::quit, {}});
}

void Session::leave_document(Pending pending) {
    if (document_.edited())
        asking_ = std::move(pending);
    else
        go_on(pending);
}

void Session::go_on(const Pending& pending) {
    switch (pending.kind) {
        case Pending::Kind::open:
            open(pending.path);
            break;
        case Pending::Kind::new_room:
            take_document(Document());
            break;
        case Pending::Kind::quit:
            quit_ = true;
            break;
    }
}

void Session::open(const std::string& path) {
    auto opened = open_document(path);
    if (!opened) return show_problems(file_name(path) + " can't be opened", opened.problems());
    std::error_code failed;
    const std::string whole = std::filesystem::absolute(path, failed).lexically_normal().string();
    add_recent(workspace_.settings, whole);
    workspace_.settings.folder = std::filesystem::path(whole).parent_path().string();
    take_document(std::move(*opened));
}

void Session::open_series(const std::string& path) {
    const std::string name = file_name(path);
    const auto text = base::read_text_file(path);
    if (!text) return show_problems(name + " can't be read", text.problems());
    auto series = room::read_series(*text, path);
    if (!series) return show_problems(name + " is no series", series.problems());
    if (series->lenses.empty() && series->loudspeakers.empty() && series->sheets.empty()) {
        return show_problems(name + " has nothing to take",
                             {{.file = path,
                               .line = 0,
                               .where = {},
                               .what = "the series holds no lenses, loudspeakers or screen sheets",
                               .mend = "open a series that does"}});
    }
    for (const room::SheetChoice& sheet : series->sheets)
        add_sheet(workspace_.sheets, sheet);
    workspace_.notice = "Read " + path;
    if (series->lenses.empty() && series->loudspeakers.empty()) return;
    auto& kept = workspace_.series;
    std::erase_if(kept, [&](const room::Series& has) { return has.name == series->name; });
    kept.push_back(std::move(*series));
    ++workspace_.series_serial;
}

void Session::take_document(Document document) {
    document_ = std::move(document);
    Workspace fresh;
    fresh.settings = workspace_.settings;
    fresh.subject = workspace_.subject;
    fresh.document = workspace_.document + 1;
    fresh.strip = workspace_.strip;
    fresh.blur = workspace_.blur;
    fresh.contours = workspace_.contours;
    fresh.coverage = workspace_.coverage;
    fresh.from_lens = workspace_.from_lens;
    fresh.series = workspace_.series;
    fresh.series_serial = workspace_.series_serial;
    fresh.hall_share = workspace_.hall_share;
    fresh.figures_share = workspace_.figures_share;
    fresh.sheets = workspace_.sheets.empty() ? generic_sheets() : workspace_.sheets;
    workspace_ = std::move(fresh);
    finished_ = {};
    worker_.forget();
    rake_.forget();
    curves_.forget();
    sheets_.forget();
    if (options_.keep_files) drop_recovery();
    post();
}

void Session::save() {
    if (document_.path().empty())
        open_file_dialog(files_, Action::save_as, folder(), suggested_name(".json"));
    else
        save_to(document_.path());
}

void Session::save_to(const std::string& path) {
    const auto problems = document_.save(path);
    if (!problems.empty()) {
        after_saving_.reset();
        return show_problems(file_name(path) + " is not saved", problems);
    }
    workspace_.notice = "Saved " + path;
    std::error_code failed;
    add_recent(workspace_.settings, std::filesystem::absolute(path, failed).string());
    if (options_.keep_files) drop_recovery();
    post();
    if (after_saving_) go_on(*std::exchange(after_saving_, std::nullopt));
}

void Session::export_to(Action what, const std::string& path) {
    // The crowd too where it comes soon; the report says where it did not.
    worker_.wait_until_sampled(kPatience);
    wait_for_study();
    if (!finished_.study) return;
    const study::Study& study = *finished_.study;
    const base::UnitSystem units = workspace_.settings.units;
    drawing::DrawingChoice choice;
    choice.projector = workspace_.projector;
    choice.format = workspace_.format;
    choice.units = units;
    const auto bytes = [&]() -> base::Result<std::string> {
        if (what == Action::report_pdf)
            return report::pdf_report(study, {units, document_.path(), today(),
                                              options_.program_version, workspace_.sheets});
        if (what == Action::seat_csv) return report::seat_csv(study);
        const bool section = what == Action::section_png;
        return report::drawing_png(
            section ? drawing::long_section(study, choice) : drawing::plan(study, choice), 2400,
            section ? 1200 : 2400, units, true);
    }();
    const auto problems = bytes ? base::write_file(path, *bytes) : bytes.problems();
    if (!problems.empty()) return show_problems(file_name(path) + " can't be written", problems);
    workspace_.notice = "Wrote " + path;
}

void Session::show_problems(std::string title, base::Problems problems) {
    problems_title_ = std::move(title);
    shown_problems_ = std::move(problems);
}

void Session::draw_dialogs(const Theme& theme) {
    if (!shown_problems_.empty()) {
        if (!draw_problem_list(theme, problems_title_, shown_problems_)) shown_problems_.clear();
        return;
    }
    if (recovery_) return draw_recovery_question(theme);
    if (asking_) return draw_unsaved_question(theme);
    const bool was_open = files_.open;
    const auto chosen = draw_file_dialog(theme, workspace_.settings, files_);
    if (was_open && !files_.open && !chosen) after_saving_.reset();
    if (!chosen) return;
    if (files_.purpose == Action::open)
        leave_document({Pending::Kind::open, *chosen});
    else if (files_.purpose == Action::open_series)
        open_series(*chosen);
    else if (files_.purpose == Action::save_as)
        save_to(*chosen);
    else
        export_to(files_.purpose, *chosen);
}

void Session::draw_unsaved_question(const Theme& theme) {
    const std::string name = document_.current()->layout.name;
    const Answer answer =
        draw_question(theme, {"Save the edits first?",
                              name + " has edits that are not saved. Going on without "
                                     "saving loses them.",
                              "Save", "Discard", "Stay"});
    if (answer == Answer::none) return;
    const Pending pending = *std::exchange(asking_, std::nullopt);
    if (answer == Answer::other) return go_on(pending);
    if (answer == Answer::stay) return;
    after_saving_ = pending;
    save();
}

void Session::draw_recovery_question(const Theme& theme) {
    const std::string name =
        recovery_->original.empty() ? "a room that was never saved" : recovery_->original;
    const Answer answer =
        draw_question(theme, {"Take up unsaved edits?",
                              "The last run ended without saving. There are edits of " + name + ".",
                              "Take them up", "Discard them", "Later"});
    if (answer == Answer::none) return;
    const RecoveryCopy copy = *std::exchange(recovery_, std::nullopt);
    if (answer == Answer::other) drop_recovery(copy);
    if (answer != Answer::yes) return;
    auto recovered = recover_document(copy.copy, copy.original);
    if (!recovered) return show_problems("The edits can't be taken up", recovered.problems());
    files_.open = false;
    take_document(std::move(*recovered));
    drop_recovery(copy);
}

void Session::keep_recovery() {
    constexpr double kSettled_s = 3.0;
    if (!options_.keep_files) return;
    const double now = ImGui::GetTime();
    const BriefPtr& current = document_.current();
    if (!document_.edited() || current == recovered_brief_) {
        recovery_due_s_ = now + kSettled_s;
        return;
    }
    if (now < recovery_due_s_ || !document_.problems().empty()) return;
    write_recovery(current->layout, document_.path());
    recovered_brief_ = current;
}

std::string Session::suggested_name(const std::string& ending) const {
    const std::string& path = document_.path();
    std::string stem = path.empty() ? document_.current()->layout.name
                                    : std::filesystem::path(path).stem().string();
    for (char& c : stem)
        if (c == '/') c = '-';
    return stem + ending;
}

/// Beside the room, else what comes with the program.
/// Those of the generic series, where it lies beside the layout or the program; else none.
std::vector<room::SheetChoice> Session::generic_sheets() const {
    const std::string path =
        (std::filesystem::path(series_folder()) / "perforations.json").string();
    const auto text = base::read_text_file(path);
    if (!text) return {};
    const auto series = room::read_series(*text, path);
    return series ? series->sheets : std::vector<room::SheetChoice>{};
}

std::string Session::series_folder() const {
    std::error_code failed;
    for (const std::string& base : {folder(), layouts_folder()}) {
        const std::filesystem::path series = std::filesystem::path(base) / "series";
        if (!base.empty() && std::filesystem::is_directory(series, failed)) return series.string();
    }
    return folder();
}

std::string Session::folder() const {
    const std::string& path = document_.path();
    return path.empty() ? workspace_.settings.folder
                        : std::filesystem::path(path).parent_path().string();
}

}  // namespace rakeline::desk
