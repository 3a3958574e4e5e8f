// SPDX-License-Identifier: MIT
#include "desk/meter_choice.hpp"
#include "desk/panels/panels.hpp"
#include "desk/widgets/controls.hpp"
#include "desk/widgets/drawing_canvas.hpp"
#include "desk/widgets/floating_window.hpp"
#include "desk/widgets/number_field.hpp"
#include "desk/widgets/text.hpp"
#include "study/meter_words.hpp"

#include <algorithm>
#include <cmath>

namespace rakeline::desk {
namespace {

using base::Unit;

Unit unit_of(const MeterChoice& choice) {
    return choice.on_sheet ? Unit::lux : Unit::cd_per_m2;
}

const light::FittedReading* fitted_at(const MeterCache& cache, int point) {
    if (!cache.check) return nullptr;
    for (std::size_t i = 0; i < cache.check->places.size(); ++i)
        if (cache.check->places[i].row.point == static_cast<light::PicturePoint>(point))
            return &cache.check->fit.readings[i];
    return nullptr;
}

/// "top left".
std::string point_words(int point) {
    std::string out = study::meter_point_name(static_cast<light::PicturePoint>(point));
    std::replace(out.begin(), out.end(), '_', ' ');
    return out;
}

void head_cells(const Theme& t, const std::vector<std::string>& heads) {
    ImGui::TableNextRow();
    for (const std::string& head : heads) {
        ImGui::TableNextColumn();
        text_line(t.font.small, t.colour.quiet, head);
    }
}

void words_cell(const Theme& t, const ImVec4& ink, const std::string& text) {
    ImGui::TableNextColumn();
    ImGui::SetCursorPosY(ImGui::GetCursorPosY() + t.px(5));
    text_line(t.font.small_figures, ink, text);
}

void draw_reading(const PanelInput& in, Workspace& w, const MeterCache& cache, int point) {
    const Theme& t = in.theme;
    ImGui::TableNextRow();
    words_cell(t, t.colour.text, point_words(point));
    ImGui::TableNextColumn();
    constexpr double kMost = 1e5;
    double& value = w.meter.read[static_cast<std::size_t>(point)];
    const NumberSpec spec{.unit = unit_of(w.meter), .least = 0.0, .most = kMost, .whole = false};
    number_field(t, study::meter_point_name(static_cast<light::PicturePoint>(point)), spec,
                 in.units(), t.px(120), w.number, value);
    const light::FittedReading* reading = fitted_at(cache, point);
    if (!reading) {
        words_cell(t, t.colour.quiet, "–");
        words_cell(t, t.colour.quiet, "–");
        return;
    }
    const bool far = std::abs(reading->residual_errors()) > 2.0;
    words_cell(t, t.colour.text,
               base::quantity(reading->fitted, unit_of(w.meter), in.units()).number);
    words_cell(t, far ? t.colour.missed : t.colour.text, study::meter_residual_text(*reading));
}

void draw_readings(const PanelInput& in, Workspace& w, const MeterCache& cache) {
    const Theme& t = in.theme;
    if (!ImGui::BeginTable("##readings", 4, ImGuiTableFlags_BordersInnerH, {t.px(380), 0.0f}))
        return;
    for (const float width : {76.0f, 126.0f, 70.0f, 80.0f})
        ImGui::TableSetupColumn("", ImGuiTableColumnFlags_WidthFixed, t.px(width));
    head_cells(t, {"point", "read; 0: not read", "fitted", "residual"});
    for (int point = 0; point < light::kPointCount; ++point)
        draw_reading(in, w, cache, point);
    ImGui::EndTable();
}

/// What was read, and how: luminance from the seat, or light on the sheet.
void draw_kind(const PanelInput& in, Workspace& w) {
    const Theme& t = in.theme;
    const study::Study& study = *in.study;
    const std::string seat =
        study.reference_seat
            ? study.seats.seats.at(static_cast<std::size_t>(*study.reference_seat)).name
            : "no seat";
    const int kind = segmented(t, "##kind", {"luminance from " + seat, "light on the sheet"},
                               w.meter.on_sheet ? 1 : 0);
    if (kind >= 0 && (kind == 1) != w.meter.on_sheet) {
        w.meter.on_sheet = kind == 1;
        w.meter.read.fill(0.0);  // luminance is no illuminance
    }
    if (w.meter.on_sheet) return;
    ImGui::SameLine(0.0f, t.px(24));
    ImGui::SetCursorPosY(ImGui::GetCursorPosY() + t.px(6));
    text_line(t.font.small, t.colour.quiet, "spot");
    ImGui::SameLine(0.0f, t.px(8));
    ImGui::SetCursorPosY(ImGui::GetCursorPosY() - t.px(6));
    const NumberSpec spec{
        .unit = Unit::radian, .least = 0.0, .most = study::kMeterSpotRange_rad, .whole = false};
    number_field(t, "spot", spec, in.units(), t.px(110), w.number, w.meter.spot_rad);
    hint(t, "The meter's acceptance angle; 0 for a point");
}

void draw_map(const PanelInput& in, const MeterCache& cache, ImVec2 size) {
    if (!cache.map) return;
    const ImVec2 low = ImGui::GetCursorScreenPos();
    const ImVec2 high{low.x + size.x, low.y + size.y};
    ImGui::Dummy(size);
    ImDrawList& list = *ImGui::GetWindowDrawList();
    list.PushClipRect(low, high, true);
    paint_drawing(in.theme, list, *cache.map, fitted_view(*cache.map, low, high, {}),
                  {.hovered = {}, .selected = {}, .units = in.units()});
    list.PopClipRect();
    text_wrapped(in.theme.font.small, in.theme.colour.quiet,
                 "Off the fit: full disc brighter, dashed darker; the larger, the farther.");
}

void draw_parts(const PanelInput& in, const light::MeterFit& fit) {
    const Theme& t = in.theme;
    if (!ImGui::BeginTable("##parts", 4,
                           ImGuiTableFlags_BordersInnerH | ImGuiTableFlags_SizingStretchSame))
        return;
    ImGui::TableSetupColumn("", ImGuiTableColumnFlags_WidthFixed, t.px(150));
    head_cells(t, {"from the lens", "fitted", "standard error", "layout"});
    for (int i = 0; i < light::kLawParts; ++i) {
        const auto which = static_cast<light::LawPart>(i);
        const light::FittedPart& part = fit.part(which);
        const Unit unit = study::meter_part_unit(which);
        const bool held = part.state == light::PartState::held;
        ImGui::TableNextRow();
        words_cell(t, t.colour.text, study::meter_part_name(which));
        words_cell(t, t.colour.text, base::quantity_text(part.value, unit, in.units()));
        words_cell(t, part.error ? t.colour.text : t.colour.quiet,
                   part.error ? base::quantity_text(*part.error, unit, in.units())
                   : held     ? "held"
                              : "at its bound");
        words_cell(t, t.colour.quiet, base::quantity_text(part.layout_value, unit, in.units()));
    }
    ImGui::EndTable();
}

void draw_sentences(const PanelInput& in, const MeterCache& cache) {
    const Theme& t = in.theme;
    for (const std::string& text : cache.advice)
        text_wrapped(t.font.body, t.colour.text, text);
    for (const std::string& text : cache.notes)
        text_wrapped(t.font.small, t.colour.quiet, text);
    for (const std::string& text : cache.cautions)
        text_wrapped(t.font.small, t.colour.lamp, "△ " + text);
    for (const base::Problem& problem : cache.refused)
        text_wrapped(t.font.small, t.colour.missed, sentence(problem.what + "; " + problem.mend));
}

/// At the right end of the row before: where sentences follow, they never push it out of sight.
void draw_buttons(const PanelInput& in, Workspace& w, Requests& out) {
    const Theme& t = in.theme;
    const float width = t.px(110) + t.px(90) + t.px(8);
    ImGui::SameLine(ImGui::GetContentRegionMax().x - width);
    ImGui::BeginGroup();
    if (w.meter_cache.check && in.current) {
        if (lamp_button(t, "Adopt", t.px(110))) {
            out.edit = adopt_meter(in, w.meter_cache);
            if (out.edit) w.notice = "The projector has the fitted light";
        }
        hint(t, "Puts flux, fall-off and hot spot into the projector, as one edit");
        ImGui::SameLine(0.0f, t.px(8));
    }
    if (word_button(t, "Clear", t.px(90))) w.meter.read.fill(0.0);
    hint(t, "Lets go of the readings");
    ImGui::EndGroup();
}

void draw_body(const PanelInput& in, Workspace& w, Requests& out) {
    const Theme& t = in.theme;
    draw_kind(in, w);
    draw_buttons(in, w, out);
    const MeterCache& cache = meter_fit(in, w);
    ImGui::BeginGroup();
    draw_readings(in, w, cache);
    ImGui::EndGroup();
    const float height = ImGui::GetItemRectSize().y;
    ImGui::SameLine(0.0f, t.px(16));
    ImGui::BeginGroup();
    if (cache.check) {
        const float width = ImGui::GetContentRegionAvail().x;
        draw_map(in, cache, {width, std::max(height - t.px(180), t.px(120))});
        draw_parts(in, cache.check->fit);
    } else {
        text_wrapped(t.font.body, t.colour.quiet,
                     "Type in what the meter reads with a white picture on the screen. Four "
                     "readings or more tell flux, fall-off and hot spot; fewer tell less.");
    }
    ImGui::EndGroup();
    draw_sentences(in, cache);
}

std::string title_of(const study::Study& study, const Workspace& w) {
    const room::Layout& layout = study.layout();
    if (layout.projectors.empty() || layout.formats.empty()) return "Meter readings";
    return "Meter readings · " + layout.projectors[static_cast<std::size_t>(w.projector)].name +
           " · " + layout.formats[static_cast<std::size_t>(w.format)].name;
}

}  // namespace

void draw_meter(const PanelInput& in, Workspace& w, Requests& out) {
    if (!w.meter.open || !in.study) return;
    const Theme& t = in.theme;
    const ImVec2 display = ImGui::GetIO().DisplaySize;
    ImGui::SetNextWindowPos({display.x / 2.0f, t.px(64)}, ImGuiCond_Appearing, {0.5f, 0.0f});
    const float width = std::min(t.px(1000), display.x - t.px(32));
    const bool open = begin_floating(t, "##meter", title_of(*in.study, w), width);
    draw_body(in, w, out);
    ImGui::End();
    if (!open) w.meter.open = false;
}

}  // namespace rakeline::desk
