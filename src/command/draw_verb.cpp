// SPDX-License-Identifier: MIT
#include "base/number_text.hpp"
#include "command/contour_figure.hpp"
#include "command/verbs.hpp"
#include "drawing/curve_plot.hpp"
#include "drawing/decay_plot.hpp"
#include "drawing/hole_patch.hpp"
#include "drawing/loss_plot.hpp"
#include "drawing/luminance_shading.hpp"
#include "drawing/reflections_plan.hpp"
#include "drawing/room_mesh.hpp"
#include "report/report.hpp"
#include "study/curve_trials.hpp"
#include "view/scene.hpp"

#include <algorithm>
#include <iostream>
#include <memory>

namespace rakeline::command {
namespace {

struct DrawWords {
    std::string file, view = "orbit", size = "1600x900", output, format, projector, seat, contours;
    std::string loudspeaker, band;
    std::string sight_lines = "all";
    bool paper = false;
    bool blur = false;
    bool coverage = false;
    bool plain = false;
    bool luminance = false;
    bool imperial = false;
};

struct Size {
    int width = 0;
    int height = 0;
};

std::optional<Size> size_of(const std::string& text) {
    const auto cross = text.find('x');
    if (cross == std::string::npos) return std::nullopt;
    const auto width = base::parse_number(text.substr(0, cross));
    const auto height = base::parse_number(text.substr(cross + 1));
    const auto fits = [](const std::optional<double>& n) {
        return n && *n >= 16 && *n <= 8192 && *n == static_cast<int>(*n);
    };
    if (!fits(width) || !fits(height)) return std::nullopt;
    return Size{static_cast<int>(*width), static_cast<int>(*height)};
}

int put_png(const base::Result<std::string>& png, const std::string& output) {
    return png ? put_output(output, *png) : refuse(png.problems());
}

/// "C14" of seat:C14 and eye:C14.
std::optional<std::string> seat_name(const std::string& view) {
    if (view.starts_with("seat:")) return view.substr(5);
    if (view.starts_with("eye:")) return view.substr(4);
    return std::nullopt;
}

constexpr double kScaleWidth_lines = 24.0;

int draw_scene(const study::Study& study,
               const drawing::DrawingChoice& choice,
               const DrawWords& words,
               const Size& size) {
    const drawing::RoomMesh mesh = drawing::room_mesh(study, choice);
    view::SceneOptions options;
    view::Camera camera = view::overview(study);
    drawing::Part hidden;
    if (choice.seat && seat_name(words.view)) {
        options = view::seat_options(*choice.seat);
        options.hidden_mark = !words.plain;
        const int format = choice.format.value_or(0);
        camera = view::seat_camera(study, *choice.seat, format);
        if (options.hidden_mark) hidden = drawing::hidden_part(study, format, *choice.seat);
    }
    const auto seen = drawing::chosen_luminance(study, choice);
    drawing::ScreenLuminance luminance;
    if (seen) luminance = drawing::screen_luminance(study, *seen, choice.units);
    options.luminance = seen.has_value();
    const auto picture =
        view::offscreen_picture(mesh, camera, options, size.width, size.height, hidden, luminance);
    if (!picture) {
        refuse(picture.problems());
        return kMachineCannot;
    }
    if (!seen)
        return put_png(report::image_png(picture->width, picture->height, picture->rgba),
                       words.output);
    const drawing::Drawing scale =
        drawing::luminance_scale_drawing(seen->scale, kScaleWidth_lines, choice.units);
    return put_png(report::image_png(picture->width, picture->height, picture->rgba, scale),
                   words.output);
}

/// Why the luminance that the choice asks for can't be drawn.
base::Problems luminance_problems(const study::Study& study,
                                  const drawing::DrawingChoice& choice,
                                  const std::string& view) {
    const auto refused = [](const char* what, const char* mend) {
        return base::Problems{
            {.file = {}, .line = 0, .where = "--luminance", .what = what, .mend = mend}};
    };
    if (!choice.luminance) return {};
    if (view != "screen" && view != "orbit" && !seat_name(view))
        return refused("luminance is drawn over the picture, which this view does not show",
                       "add --view screen, orbit, or seat: or eye: with a seat");
    if (study.seats.seats.empty())
        return refused("the room has no seat to see the picture from", "add a seating block");
    if (!drawing::chosen_luminance(study, choice))
        return refused("this projector shows no picture in this format",
                       "name others with --projector and --format");
    return {};
}

int draw_port(const study::Study& study, const drawing::DrawingChoice& choice, const auto& png) {
    if (study.layout().projectors.empty())
        return refuse("the room has no projector, so it has no port", "add a projector");
    return png(drawing::port_face(study, choice));
}

/// The rows whose sight lines the section has; the selected seat is marked in plan and section.
base::Result<drawing::SightLines> sight_lines_of(const DrawWords& words) {
    if (words.sight_lines == "all") return drawing::SightLines::all;
    if (words.sight_lines != "selected")
        return base::Problem{.file = {},
                             .line = 0,
                             .where = {},
                             .what = "there are no sight lines '" + words.sight_lines + "'",
                             .mend = "write all, or selected with --seat"};
    if (words.seat.empty())
        return base::Problem{.file = {},
                             .line = 0,
                             .where = {},
                             .what = "no seat is selected whose sight line could be drawn",
                             .mend = "add --seat with a seat, like --seat C14"};
    return drawing::SightLines::selected;
}

/// Index in sound::kOctaves of a band by its middle in Hz; `otherwise` where none is named.
base::Result<int> band_of(const std::string& text, int otherwise) {
    if (text.empty()) return otherwise;
    const auto hz = base::parse_number(text);
    const auto* found = std::find(sound::kOctaves.begin(), sound::kOctaves.end(), hz.value_or(0.0));
    if (found != sound::kOctaves.end()) return static_cast<int>(found - sound::kOctaves.begin());
    return base::Problem{.file = {},
                         .line = 0,
                         .where = "--band",
                         .what = "'" + text + "' is no octave band",
                         .mend = "write 63, 125, 250, 500, 1000, 2000, 4000, 8000 or 16000"};
}

/// The loudspeaker and band that --loudspeaker and --band name, into the choice.
base::Problems choose_sound(const study::Study& study,
                            const DrawWords& words,
                            drawing::DrawingChoice& choice) {
    const auto loudspeaker = choose_loudspeaker(study.layout(), words.loudspeaker);
    if (!loudspeaker) return loudspeaker.problems();
    const auto band = band_of(words.band, choice.coverage_band);
    if (!band) return band.problems();
    choice.loudspeaker = *loudspeaker;
    choice.coverage_band = *band;
    choice.coverage = words.coverage;
    return {};
}

int draw_curve(const study::Study& study, const drawing::DrawingChoice& choice, const auto& png) {
    const auto help =
        study::curve_trials(study, choice.projector.value_or(0), choice.format.value_or(0));
    if (!help)
        return refuse("there is nothing to try a curve on",
                      "name a projector with a format that it shows, in a room with seats");
    return png(drawing::curve_plot(*help, choice.units));
}

int draw_reflections(const study::Study& study,
                     const drawing::DrawingChoice& choice,
                     const auto& png) {
    const auto drawn = drawing::reflections_plan(study, choice);
    return drawn ? png(*drawn) : refuse(drawn.problems());
}

int draw_loss(const study::Study& study,
              const DrawWords& words,
              const Size& size,
              const auto& png) {
    const auto loudspeaker = choose_loudspeaker(study.layout(), words.loudspeaker);
    if (!loudspeaker) return refuse(loudspeaker.problems());
    constexpr double kPitch = 20.0;  ///< pixels between lines of the drawings' lettering
    const drawing::PlotShape shape = drawing::loss_plot_shape(
        {static_cast<double>(size.width), static_cast<double>(size.height)}, kPitch);
    return png(drawing::loss_plot(study, *loudspeaker, unit_system(words.imperial), shape));
}

int draw_holes(const study::Study& study, const drawing::DrawingChoice& choice, const auto& png) {
    const auto patch = drawing::hole_patch(study, choice);
    return patch ? png(*patch) : refuse(patch.problems());
}

int draw(const DrawWords& words) {
    const auto size = size_of(words.size);
    if (!size)
        return refuse("'" + words.size + "' is no size", "write WxH, 16 to 8192, like 1600x900");
    const auto study = study_file(words.file);
    if (!study) return refuse(study.problems());
    const auto format = choose_format(study->layout(), words.format);
    if (!format) return refuse(format.problems());
    const auto projector = choose_projector(study->layout(), words.projector);
    if (!projector) return refuse(projector.problems());
    drawing::DrawingChoice choice;
    choice.format = *format;
    choice.projector = *projector;
    choice.blur = words.blur;
    choice.luminance = words.luminance;
    const auto sight_lines = sight_lines_of(words);
    if (!sight_lines) return refuse(sight_lines.problems());
    choice.sight_lines = *sight_lines;
    const auto selected = choose_seat(*study, words.seat);
    if (!selected) return refuse(selected.problems());
    choice.seat = *selected;
    choice.units = unit_system(words.imperial);
    if (const auto problems = choose_sound(*study, words, choice); !problems.empty())
        return refuse(problems);
    const auto contours = contour_figure(*study, words.contours, words.view, choice);
    if (!contours) return refuse(contours.problems());
    choice.seat_figure = *contours;
    choice.contours = *contours != nullptr;
    if (const auto problems = luminance_problems(*study, choice, words.view); !problems.empty())
        return refuse(problems);
    const auto png = [&](const drawing::Drawing& drawing) {
        return put_png(report::drawing_png(drawing, size->width, size->height,
                                           unit_system(words.imperial), words.paper),
                       words.output);
    };
    if (words.view == "plan") return png(drawing::plan(*study, choice));
    if (words.view == "section") return png(drawing::long_section(*study, choice));
    if (words.view == "screen") return png(drawing::screen_face(*study, choice));
    if (words.view == "port") return draw_port(*study, choice, png);
    if (words.view == "curve") return draw_curve(*study, choice, png);
    if (words.view == "decay") return png(drawing::decay_plot(*study));
    if (words.view == "reflections") return draw_reflections(*study, choice, png);
    if (words.view == "loss") return draw_loss(*study, words, *size, png);
    if (words.view == "holes") return draw_holes(*study, choice, png);
    if (words.view == "orbit") return draw_scene(*study, choice, words, *size);
    if (const auto name = seat_name(words.view)) {
        const auto seat = choose_seat(*study, *name);
        if (!seat) return refuse(seat.problems());
        choice.seat = *seat;
        const bool has_picture = *seat && !study->layout().formats.empty();
        if (words.view.starts_with("seat:") && has_picture)
            return draw_scene(*study, choice, words, *size);
        const auto drawn = drawing::seat_view(*study, choice);
        return drawn ? png(*drawn) : refuse(drawn.problems());
    }
    return refuse("there is no view '" + words.view + "'",
                  "name orbit, plan, section, screen, port, curve, decay, reflections, loss, "
                  "holes, or seat: or eye: with a seat, like seat:C14");
}

}  // namespace

void add_draw_verb(CLI::App& app, Choice& choice) {
    auto* verb = app.add_subcommand("draw", "Draw the room to a PNG, without a display");
    auto words = std::make_shared<DrawWords>();
    verb->add_option("FILE", words->file, "Layout file")->required();
    verb->add_option("--view", words->view,
                     "orbit, plan, section, screen, port, curve, decay, reflections (with --seat), "
                     "loss, holes, seat:ID (in 3D) or eye:ID (drawn)")
        ->capture_default_str();
    verb->add_option("--size", words->size, "Width and height in pixels")->capture_default_str();
    verb->add_option("-o,--output", words->output, "PNG file, or - for standard output")
        ->required();
    verb->add_option("--format", words->format, "Format by name; else the first");
    verb->add_option("--projector", words->projector, "Projector by name; else the first");
    verb->add_option("--loudspeaker", words->loudspeaker,
                     "Whose coverage, contours or loss of the screen; else all of the screen, or "
                     "the first");
    verb->add_option("--seat", words->seat, "Selected seat, marked in plan and section");
    verb->add_option("--sight-lines", words->sight_lines,
                     "In the section: all, or selected for the row of --seat alone")
        ->capture_default_str();
    verb->add_flag("--paper", words->paper, "All but the 3D views on paper ground");
    verb->add_flag("--blur", words->blur, "Screen with the blur at best focus over it");
    verb->add_flag("--luminance", words->luminance,
                   "screen, seat:, eye: and orbit with the luminance that the seat sees over the "
                   "picture (screen and orbit: that of --seat, else the reference seat)");
    verb->add_flag("--plain", words->plain, "seat:ID without the mark of what is hidden");
    verb->add_option("--contours", words->contours,
                     "Plan with lines of equal value of a figure over the seats, by its id");
    verb->add_flag("--coverage", words->coverage,
                   "Plan and section with the axes and -6 dB edges of the screen loudspeakers");
    verb->add_option("--band", words->band, "At which octave, in Hz; else 4000");
    verb->add_flag("--imperial", words->imperial, "Dimensions in feet");
    verb->callback([&choice, words] { choice.action = [words] { return draw(*words); }; });
}

}  // namespace rakeline::command
