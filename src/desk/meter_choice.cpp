// SPDX-License-Identifier: MIT
#include "desk/meter_choice.hpp"

#include "drawing/meter_face.hpp"
#include "study/meter_words.hpp"

namespace rakeline::desk {
namespace {

std::vector<study::MeterRow> rows_of(const MeterChoice& choice) {
    std::vector<study::MeterRow> out;
    for (int i = 0; i < light::kPointCount; ++i) {
        const double value = choice.read[static_cast<std::size_t>(i)];
        if (value <= 0.0) continue;
        study::MeterRow row;
        row.point = static_cast<light::PicturePoint>(i);
        row.value = value;
        row.unit = choice.on_sheet ? base::Unit::lux : base::Unit::cd_per_m2;
        row.spot_rad = choice.on_sheet ? 0.0 : choice.spot_rad;
        out.push_back(row);
    }
    return out;
}

void fill(MeterCache& cache, const PanelInput& in, const std::vector<study::MeterRow>& rows) {
    const study::MeterSubject subject{cache.key.projector, cache.key.format, std::nullopt};
    auto check = study::check_meter(*in.study, subject, rows);
    if (!check) {
        cache.refused = check.problems();
        return;
    }
    cache.check = std::move(*check);
    cache.notes = study::meter_notes(*cache.check, in.units());
    cache.advice = study::meter_advice(*in.study, *cache.check, in.units());
    cache.cautions = study::meter_cautions(*in.study, *cache.check);
    drawing::DrawingChoice choice;
    choice.units = in.units();
    choice.dimensions = false;  // the table beside it has what was read
    cache.map = std::make_shared<const drawing::Drawing>(
        drawing::meter_face(*in.study, choice, *cache.check));
}

}  // namespace

const MeterCache& meter_fit(const PanelInput& in, Workspace& w) {
    if (w.meter.document != w.document) {
        w.meter.read.fill(0.0);
        w.meter.document = w.document;
    }
    const MeterCache::Key key{in.study_serial, w.projector,      w.format,  w.meter.on_sheet,
                              w.meter.read,    w.meter.spot_rad, in.units()};
    MeterCache& cache = w.meter_cache;
    if (cache.key == key) return cache;
    cache = {};
    cache.key = key;
    const room::Layout& layout = in.study->layout();
    const auto rows = rows_of(w.meter);
    if (!rows.empty() && !layout.projectors.empty() && !layout.formats.empty())
        fill(cache, in, rows);
    return cache;
}

std::optional<Edit> adopt_meter(const PanelInput& in, MeterCache& cache) {
    if (!cache.check || !in.current) return std::nullopt;
    const auto layout = study::metered_layout(in.brief.layout, *cache.check);
    if (layout) return Edit{"Adopt meter readings", *layout, {}};
    cache.refused = layout.problems();
    return std::nullopt;
}

}  // namespace rakeline::desk
