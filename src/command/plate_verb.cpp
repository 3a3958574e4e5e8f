// SPDX-License-Identifier: MIT
#include "command/verbs.hpp"
#include "report/plate_sheet.hpp"
#include "study/gate_plate.hpp"

#include <memory>

namespace rakeline::command {
namespace {

struct PlateWords {
    std::string file, projector, format, view = "lamp", output;
    std::optional<double> allowance_mm;  ///< unset: of the layout's use
    std::optional<double> corner_radius_mm;
    bool tenfold = false;
};

/// The one picture that the plate is for; its indices.
struct Pair {
    int projector = 0;
    int format = 0;
};

base::Result<Pair> choose_pair(const room::Layout& layout, const PlateWords& words) {
    const auto projector = choose_projector(layout, words.projector);
    if (!projector) return projector.problems();
    const auto format = choose_format(layout, words.format);
    if (!format) return format.problems();
    if (*projector && *format) return Pair{**projector, **format};
    return base::Problem{.file = {},
                         .line = 0,
                         .where = {},
                         .what = "a plate is for one projector and one format",
                         .mend = "name both with --projector and --format"};
}

std::optional<double> metres(std::optional<double> mm) {
    return mm ? std::optional(1e-3 * *mm) : std::nullopt;
}

int put_plate(const study::Study& study, const PlateWords& words, picture::PlateView view) {
    const auto pair = choose_pair(study.layout(), words);
    if (!pair) return refuse(pair.problems());
    const auto plate = study::gate_plate(study, pair->projector, pair->format,
                                         {.allowance_m = metres(words.allowance_mm),
                                          .corner_radius_m = metres(words.corner_radius_mm)});
    if (!plate) return refuse(plate.problems());
    const report::PlateSheet sheet{.plate = *plate,
                                   .view = view,
                                   .room = study.layout().name,
                                   .projector = words.projector,
                                   .format = words.format,
                                   .tenfold = words.tenfold};
    const bool svg = words.output.ends_with(".svg");
    return put_output(words.output, svg ? report::plate_svg(sheet) : report::plate_dxf(sheet));
}

int plate(const PlateWords& words) {
    const bool dxf = words.output.ends_with(".dxf");
    if (!dxf && !words.output.ends_with(".svg")) {
        return refuse("'" + words.output + "' is neither a .svg nor a .dxf file",
                      "end the name in .svg to print and look at, .dxf for a drawing program");
    }
    if (dxf && words.tenfold) {
        return refuse("a .dxf file holds the plate at full size alone",
                      "leave --tenfold out, or write a .svg");
    }
    if (words.view != "lamp" && words.view != "lens") {
        return refuse("there is no view '" + words.view + "'", "name lamp or lens");
    }
    const auto study = study_file(words.file);
    if (!study) return refuse(study.problems());
    return put_plate(
        *study, words,
        words.view == "lamp" ? picture::PlateView::from_lamp : picture::PlateView::from_lens);
}

}  // namespace

void add_plate_verb(CLI::App& app, Choice& choice) {
    auto* verb = app.add_subcommand("plate", "Draw the opening to file in a film gate's plate");
    auto words = std::make_shared<PlateWords>();
    verb->footer(
        "Caution: a plate is filed out of the machine, with the lamp off and cold; a wrong or "
        "burred plate can scratch film (common practice, no source).");
    verb->add_option("FILE", words->file, "Layout file")->required();
    verb->add_option("--projector", words->projector, "Film projector by name")->required();
    verb->add_option("--format", words->format, "Format by name")->required();
    verb->add_option("--allowance-mm", words->allowance_mm,
                     "Left standing all round, in the gate, for the last fit by hand; left out: as "
                     "the layout says");
    verb->add_option("--corner-radius-mm", words->corner_radius_mm,
                     "Of the opening's corners, on the screen; left out: as the layout says");
    verb->add_option("--view", words->view, "From which side: lamp or lens")->capture_default_str();
    verb->add_flag("--tenfold", words->tenfold, "Draw it at 10:1 too (.svg)");
    verb->add_option("-o,--output", words->output, "OUT.svg or OUT.dxf, in millimetres")
        ->required();
    verb->callback([&choice, words] { choice.action = [words] { return plate(*words); }; });
}

}  // namespace rakeline::command
