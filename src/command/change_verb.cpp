// SPDX-License-Identifier: MIT
#include "command/change_text.hpp"
#include "command/verbs.hpp"
#include "report/change_page.hpp"

#include <algorithm>
#include <memory>

namespace rakeline::command {
namespace {

using study::ChangeBook;
using study::Study;

struct ChangeWords {
    std::string file, projector, from, to, machine, format, json, output, date;
    bool imperial = false;
};

/// The names that the words choose, as indices.
struct ChangeChoice {
    std::optional<int> projector, from, to, machine, format;
};

base::Result<ChangeChoice> chosen(const room::Layout& layout, const ChangeWords& words) {
    ChangeChoice choice;
    base::Problems problems;
    const auto take = [&](const base::Result<std::optional<int>>& one, std::optional<int>& into) {
        if (one) {
            into = *one;
        } else {
            problems.insert(problems.end(), one.problems().begin(), one.problems().end());
        }
    };
    take(choose_projector(layout, words.projector), choice.projector);
    take(choose_projector(layout, words.machine), choice.machine);
    take(choose_format(layout, words.from), choice.from);
    take(choose_format(layout, words.to), choice.to);
    take(choose_format(layout, words.format), choice.format);
    if (!problems.empty()) return problems;
    return choice;
}

base::Problem problem(const std::string& what, const std::string& mend) {
    return {.file = {}, .line = 0, .where = {}, .what = what, .mend = mend};
}

/// Two machines alone; the sheets are another question.
base::Result<ChangeBook> machine_book(const Study& study, const ChangeChoice& choice) {
    if (!choice.machine || !choice.format) {
        return problem("two machines are compared in one format",
                       "name both --machine and --format");
    }
    ChangeBook book;
    book.machines =
        study::machine_change(study, *choice.format, choice.projector.value_or(0), *choice.machine);
    return book;
}

base::Result<ChangeBook> sheet_book(const Study& study, const ChangeChoice& choice) {
    ChangeBook book = study::change_book(
        study, {.projector = choice.projector, .from = choice.from, .to = choice.to});
    if ((choice.from || choice.to) && book.lists.empty()) {
        return problem("no projector chosen makes the formats chosen",
                       "name a projector that has a use for both");
    }
    return book;
}

/// Where the book goes by the end of the file's name.
int put_book(const Study& study,
             const ChangeBook& book,
             const ChangeWords& words,
             const std::string& version) {
    const base::UnitSystem units = unit_system(words.imperial);
    if (!words.json.empty()) {
        const int status = put_output(words.json, study::change_json(study, book));
        if (status != kDone || words.output.empty()) return status;
    }
    if (!words.output.ends_with(".pdf")) {
        return put_output(words.output.empty() ? "-" : words.output,
                          change_text(study, book, units));
    }
    const auto bytes = report::change_pdf(study, book,
                                          {.units = units,
                                           .layout_path = words.file,
                                           .date = words.date.empty() ? today() : words.date,
                                           .program_version = version});
    return bytes ? put_output(words.output, *bytes) : refuse(bytes.problems());
}

int change(const ChangeWords& words, const std::string& version) {
    const bool known =
        words.output.empty() || words.output.ends_with(".pdf") || words.output.ends_with(".txt");
    if (!known) {
        return refuse("'" + words.output + "' is neither a .pdf nor a .txt file",
                      "end the name in .pdf for the print form, .txt for text");
    }
    const auto study = study_file(words.file);
    if (!study) return refuse(study.problems());
    const auto choice = chosen(study->layout(), words);
    if (!choice) return refuse(choice.problems());
    if (study->layout().projectors.empty())
        return refuse("the room has no projector", "add one with the formats that it makes");
    const bool machines = choice->machine || choice->format;
    const auto book = machines ? machine_book(*study, *choice) : sheet_book(*study, *choice);
    if (!book) return refuse(book.problems());
    return put_book(*study, *book, words, version);
}

}  // namespace

void add_change_verb(CLI::App& app, Choice& choice) {
    auto* verb = app.add_subcommand("change", "Format change sheets, and two machines in one room");
    auto words = std::make_shared<ChangeWords>();
    verb->add_option("FILE", words->file, "Layout file")->required();
    verb->add_option("--projector", words->projector, "Projector by name; else all");
    verb->add_option("--from", words->from, "Format that the moves begin in; else each");
    verb->add_option("--to", words->to, "Format that they end in; else each");
    verb->add_option("--machine", words->machine,
                     "Compare the projector (else the first) with this one, in --format");
    verb->add_option("--format", words->format, "Format that two machines are compared in");
    verb->add_option("--json", words->json, "As JSON: to a file, or - for standard output");
    verb->add_option("-o,--output", words->output, "OUT.pdf for the wall, or OUT.txt");
    verb->add_option("--date", words->date, "Date at the foot of the pages; else today");
    verb->add_flag("--imperial", words->imperial, "Feet, inches, foot-lamberts, Letter paper");
    verb->callback([&choice, words] {
        choice.action = [words, version = choice.version] { return change(*words, version); };
    });
}

}  // namespace rakeline::command
