// SPDX-License-Identifier: MIT
#include "base/files.hpp"
#include "command/meter_text.hpp"
#include "command/verbs.hpp"
#include "drawing/meter_face.hpp"
#include "report/report.hpp"
#include "room/layout_file.hpp"
#include "study/meter_json.hpp"

#include <filesystem>
#include <memory>

namespace rakeline::command {
namespace {

struct MeterWords {
    std::string file, readings, projector, format, seat, adopt, json, draw;
    bool force = false, imperial = false;
};

bool same_file(const std::string& a, const std::string& b) {
    std::error_code none;
    return std::filesystem::equivalent(a, b, none);
}

/// What is read is not written over; nor is a layout that stands already, without --force. A fault
/// leaves all unwritten.
std::optional<base::Problem> in_the_way(const MeterWords& words) {
    std::error_code none;
    const std::pair<const char*, const std::string&> outputs[] = {
        {"--adopt", words.adopt}, {"--json", words.json}, {"--draw", words.draw}};
    for (const auto& [word, output] : outputs) {
        const bool layout = same_file(output, words.file) && word != outputs[0].first;
        if (layout || same_file(output, words.readings))
            return base::Problem{output, 0, word, "the file is one that is read",
                                 "name another file"};
    }
    if (words.adopt.empty() || words.force || !std::filesystem::exists(words.adopt, none))
        return std::nullopt;
    return base::Problem{words.adopt, 0, "--adopt", "the file is there already",
                         "name a new file, or add --force to write over it"};
}

base::Result<study::MeterSubject> subject_of(const study::Study& study, const MeterWords& words) {
    const room::Layout& layout = study.layout();
    const auto projector = choose_projector(layout, words.projector);
    if (!projector) return projector.problems();
    if (layout.projectors.empty())
        return base::Problem{words.file, 0, "projectors", "the room has no projector",
                             "add a projector"};
    const auto format = choose_format(layout, words.format);
    if (!format) return format.problems();
    const auto seat = choose_seat(study, words.seat);
    if (!seat) return seat.problems();
    study::MeterSubject out{.projector = projector->value_or(0), .format = 0, .seat = *seat};
    if (*format) {
        out.format = **format;
        return out;
    }
    const auto first = study::metered_format(study, out.projector);
    if (!first) return first.problems();
    out.format = *first;
    return out;
}

base::Result<study::MeterCheck> checked(const study::Study& study, const MeterWords& words) {
    const auto subject = subject_of(study, words);
    if (!subject) return subject.problems();
    const auto text = base::read_text_file(words.readings);
    if (!text) return text.problems();
    const auto rows = study::read_meter_rows(*text, words.readings);
    if (!rows) return rows.problems();
    return study::check_meter(study, *subject, *rows);
}

/// Writes a new layout, its limits file named as the new place sees it.
int put_layout(const study::Study& study, const study::MeterCheck& check, const MeterWords& words) {
    const auto made = study::metered_layout(study.layout(), check);
    if (!made) return refuse(made.problems());
    room::Layout layout = *made;
    layout.limits_file = base::path_seen_from(words.file, layout.limits_file, words.adopt);
    return put_output(words.adopt, room::write_layout(layout));
}

int put_drawing(const study::Study& study,
                const study::MeterCheck& check,
                const MeterWords& words) {
    drawing::DrawingChoice choice;
    choice.units = unit_system(words.imperial);
    const auto png = report::drawing_png(drawing::meter_face(study, choice, check), 1600, 900,
                                         choice.units, false);
    return png ? put_output(words.draw, *png) : refuse(png.problems());
}

int meter(const MeterWords& words) {
    if (const auto problem = in_the_way(words)) return refuse({*problem});
    const auto study = study_file(words.file);
    if (!study) return refuse(study.problems());
    const auto check = checked(*study, words);
    if (!check) return refuse(check.problems());
    if (!words.adopt.empty()) {
        const int put = put_layout(*study, *check, words);
        if (put != kDone) return put;
    }
    if (!words.draw.empty()) {
        const int put = put_drawing(*study, *check, words);
        if (put != kDone) return put;
    }
    return words.json.empty()
               ? put_output("-", meter_text(*study, *check, unit_system(words.imperial)))
               : put_output(words.json, study::meter_json(*study, *check));
}

}  // namespace

void add_meter_verb(CLI::App& app, Choice& choice) {
    auto* verb = app.add_subcommand("meter", "Fit the lamp's light to readings on the screen");
    auto words = std::make_shared<MeterWords>();
    verb->add_option("FILE", words->file, "Layout file")->required();
    verb->add_option("READINGS", words->readings,
                     "Readings, a table with the columns point or across_m and up_m, value, unit "
                     "(cd/m2, fL, lx, fc), and if wanted spot_deg, accuracy, seat")
        ->required();
    verb->add_option("--projector", words->projector, "Projector by name; else the first");
    verb->add_option("--format", words->format, "Format by name; else the projector's first");
    verb->add_option("--seat", words->seat, "Seat of the meter; else the measuring seat");
    verb->add_option("--adopt", words->adopt, "Layout to write, with the fit in the projector");
    verb->add_flag("--force", words->force, "Write over a file that is there already");
    verb->add_option("--draw", words->draw,
                     "PNG to draw: the readings on the screen and how far "
                     "they are from the fit");
    verb->add_option("--json", words->json, "As JSON: to a file, or - for standard output");
    verb->add_flag("--imperial", words->imperial, "Foot-lamberts and feet (text and drawing)");
    verb->callback([&choice, words] { choice.action = [words] { return meter(*words); }; });
}

}  // namespace rakeline::command
