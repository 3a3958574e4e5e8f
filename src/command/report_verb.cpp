// SPDX-License-Identifier: MIT
#include "base/files.hpp"
#include "command/sampled.hpp"
#include "command/verbs.hpp"
#include "report/report.hpp"

#include <filesystem>
#include <memory>

namespace rakeline::command {
namespace {

struct ReportWords {
    std::string file, output, date;
    bool imperial = false;
    bool no_crowd = false;
};

/// Of the series beside the layout, where there is one.
base::Result<std::vector<room::SheetChoice>> sheets_beside(const std::string& layout_path) {
    const std::string path = sheet_series(layout_path);
    if (!std::filesystem::exists(path)) return std::vector<room::SheetChoice>{};
    const auto text = base::read_text_file(path);
    if (!text) return text.problems();
    const auto series = room::read_series(*text, path);
    if (!series) return series.problems();
    return series->sheets;
}

int report(const ReportWords& words, const std::string& version) {
    const bool pdf = words.output.ends_with(".pdf");
    if (!pdf && !words.output.ends_with(".csv")) {
        return refuse("'" + words.output + "' is neither a .pdf nor a .csv file",
                      "end the name in .pdf for the report, .csv for the seat table");
    }
    const auto study = sampled_study_file(words.file, words.no_crowd);
    if (!study) return refuse(study.problems());
    if (!pdf) return put_output(words.output, report::seat_csv(*study));
    const auto sheets = sheets_beside(words.file);
    if (!sheets) return refuse(sheets.problems());
    const auto bytes =
        report::pdf_report(*study, {.units = unit_system(words.imperial),
                                    .layout_path = words.file,
                                    .date = words.date.empty() ? today() : words.date,
                                    .program_version = version,
                                    .sheets = *sheets});
    return bytes ? put_output(words.output, *bytes) : refuse(bytes.problems());
}

}  // namespace

void add_report_verb(CLI::App& app, Choice& choice) {
    auto* verb = app.add_subcommand("report", "Write the report (.pdf) or the seat table (.csv)");
    auto words = std::make_shared<ReportWords>();
    verb->add_option("FILE", words->file, "Layout file")->required();
    verb->add_option("-o,--output", words->output, "OUT.pdf or OUT.csv")->required();
    verb->add_option("--date", words->date, "Date on the title block; else today");
    verb->add_flag("--imperial", words->imperial, "Feet, foot-lamberts, Letter paper");
    add_no_crowd(*verb, words->no_crowd);
    verb->callback([&choice, words] {
        choice.action = [words, version = choice.version] { return report(*words, version); };
    });
}

}  // namespace rakeline::command
