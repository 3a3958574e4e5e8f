// SPDX-License-Identifier: MIT
#include "base/assert.hpp"
#include "base/number_text.hpp"
#include "study/figure_values.hpp"

namespace rakeline::study {
namespace {

std::string title(const Study& study, const Figure& figure, int index) {
    const room::Layout& layout = study.layout();
    const FigureDefinition& d = *figure.definition;
    std::string out = d.label;
    const auto add = [&](const std::string& words) { out += ", " + words; };
    if (figure.projector)
        add(layout.projectors.at(static_cast<std::size_t>(*figure.projector)).name);
    if (figure.format) add(layout.formats.at(static_cast<std::size_t>(*figure.format)).name);
    if (figure.loudspeaker) {
        add(layout.loudspeakers.at(static_cast<std::size_t>(*figure.loudspeaker)).name);
    }
    if (figure.band) {
        add(base::quantity_text(sound::kOctaves.at(static_cast<std::size_t>(*figure.band)),
                                base::Unit::hertz));
    }
    switch (d.axis()) {
        case Axis::seat:
            add("seat " + index_name(study, d, index));
            break;
        case Axis::row:
            add("row " + index_name(study, d, index));
            break;
        case Axis::band:
            add(index_name(study, d, index) + " Hz");
            break;
        case Axis::none:
            break;
    }
    return out;
}

std::string limit_line(const room::Limit& limit, base::Unit unit, base::UnitSystem system) {
    std::string out = "limit    ";
    if (limit.least) out += "at least " + base::quantity_text(*limit.least, unit, system) + " ";
    if (limit.most) out += "at most " + base::quantity_text(*limit.most, unit, system) + " ";
    return out + "(" + limit.source + ")";
}

/// Inputs are shown finer than results, so that whoever follows by hand arrives where we did.
constexpr int kExtraDecimals = 2;

}  // namespace

Derivation derive(const Study& study, const Figure& figure, int index) {
    RL_ASSERT(figure.definition != nullptr);
    Working working(true);
    const Cell cell{study,
                    figure.projector.value_or(0),
                    figure.format.value_or(0),
                    figure.loudspeaker.value_or(0),
                    figure.band.value_or(0),
                    index};
    Derivation out;
    out.definition = figure.definition;
    out.result = figure.definition->evaluate(cell, working);
    out.what = title(study, figure, index);
    out.inputs = working.steps();
    out.notes = working.notes();
    for (const int i : figure.limits) {
        if (!applies_at(study, figure, i, index)) continue;
        out.limits.push_back(&study.brief->limits.limits.at(static_cast<std::size_t>(i)));
    }
    return out;
}

std::vector<std::string> derivation_text(const Derivation& derivation, base::UnitSystem system) {
    const FigureDefinition& d = *derivation.definition;
    std::vector<std::string> lines = {derivation.what, d.meaning,
                                      std::string("formula  ") + d.formula};
    for (const WorkingStep& step : derivation.inputs) {
        lines.push_back("         " + step.symbol + " = " +
                        base::quantity_text(step.si, step.unit, system, kExtraDecimals) + "   " +
                        step.meaning);
    }
    for (const std::string& note : derivation.notes)
        lines.push_back("         " + note);
    lines.push_back("result   " + (derivation.result
                                       ? base::quantity_text(*derivation.result, d.unit, system)
                                       : std::string("not defined here")));
    for (const room::Limit* limit : derivation.limits) {
        lines.push_back(limit_line(*limit, d.unit, system));
    }
    lines.push_back(std::string("source   ") + d.source);
    return lines;
}

}  // namespace rakeline::study
