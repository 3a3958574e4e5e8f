// SPDX-License-Identifier: MIT
#include "desk/strip.hpp"

#include "base/assert.hpp"
#include "desk/figure_view.hpp"
#include "desk/widgets/drawing_canvas.hpp"
#include "drawing/curve_plot.hpp"
#include "drawing/decay_plot.hpp"
#include "drawing/hole_patch.hpp"
#include "drawing/loss_plot.hpp"
#include "drawing/reflections_plan.hpp"

namespace rakeline::desk {
namespace {

base::Result<drawing::Drawing> draw_curves(const CurveAnswer& answer,
                                           base::UnitSystem units,
                                           const drawing::PlotShape& shape) {
    if (answer.help) return drawing::curve_plot(*answer.help, units, shape);
    return base::Problem{.file = {},
                         .line = 0,
                         .where = {},
                         .what = "there is nothing to try a curve on",
                         .mend =
                             "choose a projector with a format that it shows, in a room with "
                             "seats"};
}

base::Result<drawing::Drawing> draw_strip(const PanelInput& in,
                                          const Workspace& w,
                                          const drawing::DrawingChoice& choice,
                                          const drawing::PlotShape& shape) {
    const study::Study& study = *in.study;
    switch (w.strip) {
        case StripDrawing::section:
            break;
        case StripDrawing::plan:
            return drawing::plan(study, choice);
        case StripDrawing::seat:
            return drawing::seat_view(study, choice);
        case StripDrawing::screen:
            return drawing::screen_face(study, choice);
        case StripDrawing::port:
            return drawing::port_face(study, choice);
        case StripDrawing::curve:
            return draw_curves(*in.curves.answer, choice.units, shape);
        case StripDrawing::decay:
            return drawing::decay_plot(study, shape);
        case StripDrawing::reflections:
            return drawing::reflections_plan(study, choice, drawing::ReflectionWords::none);
        case StripDrawing::loss:
            return drawing::loss_plot(study, w.loudspeaker, choice.units, shape);
        case StripDrawing::holes:
            return drawing::hole_patch(study, choice);
        case StripDrawing::plate:
            return drawing::plate_face(
                study, choice,
                w.from_lens ? picture::PlateView::from_lens : picture::PlateView::from_lamp);
    }
    return drawing::long_section(study, choice);
}

}  // namespace

std::vector<StripDrawing> offered_strips(const Workspace& w) {
    // Sound has charts of its own in the place of those of picture and light.
    if (w.subject == study::Subject::sound)
        return {StripDrawing::section, StripDrawing::plan,  StripDrawing::seat,
                StripDrawing::screen,  StripDrawing::decay, StripDrawing::reflections,
                StripDrawing::loss,    StripDrawing::holes};
    std::vector<StripDrawing> strips{StripDrawing::section, StripDrawing::plan,
                                     StripDrawing::seat,    StripDrawing::screen,
                                     StripDrawing::port,    StripDrawing::curve};
    if (w.film) strips.push_back(StripDrawing::plate);
    return strips;
}

const char* strip_name(StripDrawing strip) {
    switch (strip) {
        case StripDrawing::section:
            return "Long section";
        case StripDrawing::plan:
            return "Plan";
        case StripDrawing::seat:
            return "From the seat";
        case StripDrawing::screen:
            return "Screen";
        case StripDrawing::port:
            return "Port";
        case StripDrawing::curve:
            return "Curve";
        case StripDrawing::decay:
            return "Decay";
        case StripDrawing::reflections:
            return "Reflections";
        case StripDrawing::loss:
            return "Loss";
        case StripDrawing::holes:
            return "Holes";
        case StripDrawing::plate:
            return "Plate";
    }
    RL_ASSERT(false);
    return "";
}

namespace {

/// Whose coverage is drawn: the loudspeaker's that is selected; else of all of the screen.
std::optional<int> coverage_of(const study::Study& study, const Workspace& w) {
    const bool there = w.selected.index >= 0 && static_cast<std::size_t>(w.selected.index) <
                                                    study.layout().loudspeakers.size();
    if (w.selected.kind != drawing::Shows::Kind::loudspeaker || !there) return std::nullopt;
    return w.selected.index;
}

}  // namespace

drawing::PlotShape curve_plot_shape(const Theme& t, ImVec2 field) {
    return drawing::plot_shape({static_cast<double>(field.x), static_cast<double>(field.y)},
                               static_cast<double>(label_pitch(t)));
}

drawing::PlotShape decay_plot_shape(const Theme& t, ImVec2 field) {
    return drawing::decay_plot_shape({static_cast<double>(field.x), static_cast<double>(field.y)},
                                     static_cast<double>(label_pitch(t)));
}

drawing::PlotShape loss_plot_shape(const Theme& t, ImVec2 field) {
    return drawing::loss_plot_shape({static_cast<double>(field.x), static_cast<double>(field.y)},
                                    static_cast<double>(label_pitch(t)));
}

const DrawingCache& strip_drawing(const PanelInput& in, Workspace& w, ImVec2 field) {
    DrawingCache& cache = w.drawing_cache;
    const study::Figure* figure = colouring_figure(*in.study, w);
    const std::optional<int> seat = w.selected.kind == drawing::Shows::Kind::seat
                                        ? std::optional(w.selected.index)
                                        : std::nullopt;
    DrawingCache::Key key{in.study_serial, figure,    w.projector, w.format,    seat,
                          w.strip,         w.blur,    w.contours,  w.from_lens, w.sight_lines,
                          w.luminance,     in.units()};
    key.coverage = w.coverage;
    if (w.coverage) {
        key.loudspeaker = coverage_of(*in.study, w).value_or(-1);
        key.band = w.band;
    }
    if (w.strip == StripDrawing::decay) key.plot = decay_plot_shape(in.theme, field);
    if (w.strip == StripDrawing::curve) {
        key.curves = in.curves.serial;
        key.plot = curve_plot_shape(in.theme, field);
        if (!in.curves.answer) return cache = {};
    }
    if (w.strip == StripDrawing::loss) {
        key.plot = loss_plot_shape(in.theme, field);
        key.loudspeaker = w.loudspeaker;
    }
    if (cache.key == key && (cache.drawing || !cache.refused.empty())) return cache;
    drawing::DrawingChoice choice;
    choice.projector = w.projector;
    choice.format = w.format;
    choice.seat = seat;
    choice.seat_figure = figure;
    choice.blur = w.blur;
    choice.luminance = w.luminance;
    choice.sight_lines = w.sight_lines;
    choice.contours = w.contours;
    choice.coverage = w.coverage;
    if (w.coverage) {
        choice.loudspeaker = coverage_of(*in.study, w);
        choice.coverage_band = w.band;
    }
    choice.units = in.units();
    const auto drawn = draw_strip(in, w, choice, key.plot);
    cache = {.key = key, .drawing = nullptr, .refused = {}};
    if (drawn)
        cache.drawing = std::make_shared<const drawing::Drawing>(*drawn);
    else
        cache.refused = drawn.problems();
    return cache;
}

}  // namespace rakeline::desk
