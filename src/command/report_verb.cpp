// SPDX-License-Identifier: MIT
#include "command/sampled.hpp"
#include "command/verbs.hpp"
#include "report/report.hpp"

#include <memory>

namespace rakeline::command {
namespace {

struct ReportWords {
    std::string file, output, date;
    bool imperial = false;
    bool no_crowd = false;
};

int report(const ReportWords& words, const std::string& version) {
    const bool pdf = words.output.ends_with(".pdf");
    if (!pdf && !words.output.ends_with(".csv")) {
        return refuse("'" + words.output + "' is neither a .pdf nor a .csv file",
                      "end the name in .pdf for the report, .csv for the seat table");
    }
    const auto study = sampled_study_file(words.file, words.no_crowd);
    if (!study) return refuse(study.problems());
    if (!pdf) return put_output(words.output, report::seat_csv(*study));
    const auto bytes =
        report::pdf_report(*study, {.units = unit_system(words.imperial),
                                    .layout_path = words.file,
                                    .date = words.date.empty() ? today() : words.date,
                                    .program_version = version});
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
