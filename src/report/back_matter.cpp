// SPDX-License-Identifier: MIT
#include "report/chapters.hpp"
#include "report/figure_words.hpp"

#include <algorithm>

namespace rakeline::report {
namespace {

double height_of(const Pages& pages, const std::string& text, TextStyle style, double indent) {
    style.wrap_pt = pages.content().width - indent;
    return pages.lettering().measured(text, style).height;
}

/// A name with its text under it, kept together on a page.
void draw_entry(Pages& pages, const std::string& name, const std::string& text, double indent) {
    TextStyle head = pages.body();
    head.strength = Strength::medium;
    pages.make_room(height_of(pages, name, head, indent) +
                    height_of(pages, text, pages.body(), indent) + 6.0);
    pages.paragraph(name, head, indent);
    pages.paragraph(text, pages.body(), indent);
    pages.gap(6.0);
}

/// Definitions of the figures that this study has.
std::vector<const study::FigureDefinition*> shown_definitions(const study::Study& study) {
    std::vector<const study::FigureDefinition*> shown;
    for (const study::Figure& figure : study.figures)
        if (figure.definition->listed &&
            std::find(shown.begin(), shown.end(), figure.definition) == shown.end())
            shown.push_back(figure.definition);
    return shown;
}

void draw_definition(Pages& pages, const study::FigureDefinition& definition) {
    TextStyle head = pages.body();
    head.strength = Strength::medium;
    head.size_pt = type::kTable + 0.3;
    TextStyle text = pages.body();
    text.size_pt = type::kTable;
    const TextStyle quiet = pages.quiet(type::kTable);
    const std::string formula =
        std::string(definition.formula) + "   ·   " + std::string(definition.source);
    pages.make_room(height_of(pages, definition.label, head, 0.0) +
                    height_of(pages, definition.meaning, text, 0.0) +
                    height_of(pages, formula, quiet, 0.0) + 5.0);
    TextStyle id = pages.quiet(type::kSmall);
    id.anchor = drawing::Anchor::right;
    pages.lettering().draw(pages.to(), pages.content().right(), pages.y(), definition.id, id);
    pages.paragraph(definition.label, head);
    pages.paragraph(definition.meaning, text);
    pages.paragraph(formula, quiet);
    pages.gap(5.0);
}

void add_unique(std::vector<std::string>& list, const std::string& text) {
    if (!text.empty() && std::find(list.begin(), list.end(), text) == list.end())
        list.push_back(text);
}

std::vector<std::string> limit_sources(const study::Study& study) {
    std::vector<std::string> list;
    for (const study::Figure& figure : study.figures)
        for (const int limit : figure.limits)
            add_unique(list, study.brief->limits.limits.at(static_cast<std::size_t>(limit)).source);
    return list;
}

std::vector<std::string> figure_sources(const study::Study& study) {
    std::vector<std::string> list;
    for (const study::FigureDefinition* definition : shown_definitions(study))
        add_unique(list, definition->source);
    return list;
}

void draw_source_list(Pages& pages,
                      const std::string& title,
                      const std::vector<std::string>& sources) {
    if (sources.empty()) return;
    pages.heading(title);
    int number = 0;
    for (const std::string& source : sources) {
        pages.make_room(height_of(pages, source, pages.body(), 24.0) + 3.0);
        TextStyle style = pages.quiet();
        style.anchor = drawing::Anchor::right;
        pages.lettering().draw(pages.to(), pages.content().x + 16.0, pages.y(),
                               std::to_string(++number), style);
        pages.paragraph(source, pages.body(), 24.0);
        pages.gap(3.0);
    }
}

void draw_sources(Pages& pages, const ReportInput& in) {
    pages.chapter("Sources");
    const room::LimitSet& limits = in.study.brief->limits;
    pages.paragraph("Limits: " + limits.name + (limits.note.empty() ? "" : ". " + limits.note),
                    pages.quiet());
    draw_source_list(pages, "Of the limits in use", limit_sources(in.study));
    draw_source_list(pages, "Of the figures shown", figure_sources(in.study));
}

}  // namespace

void draw_cautions(Pages& pages) {
    pages.chapter("Cautions");
    for (const Caution& caution : cautions())
        draw_entry(pages, caution.title, caution.text, 0.0);
}

void draw_definitions(Pages& pages, const ReportInput& in) {
    pages.chapter("Definitions");
    std::optional<study::Subject> subject;
    for (const study::FigureDefinition* definition : shown_definitions(in.study)) {
        if (subject != definition->subject)
            pages.heading(study::subject_title(definition->subject));
        subject = definition->subject;
        draw_definition(pages, *definition);
    }
    draw_sources(pages, in);
}

}  // namespace rakeline::report
