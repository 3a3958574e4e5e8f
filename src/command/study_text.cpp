// SPDX-License-Identifier: MIT
#include "command/study_text.hpp"

#include "command/text_table.hpp"
#include "study/crowd_words.hpp"

#include <algorithm>

namespace rakeline::command {
namespace {

using study::Figure;
using study::FigureDefinition;

constexpr std::size_t kLabelWidth = 28;
constexpr std::size_t kCellWidth = 22;

std::string padded(std::string text, std::size_t width) {
    const std::size_t has = columns(text);
    return text + std::string(width > has ? width - has : 1, ' ');
}

/// The mark behind a space; nothing where no limit applies.
std::string mark(study::Verdict verdict) {
    const std::string sign = study::verdict_mark(verdict);
    return sign.empty() ? "" : " " + sign;
}

/// "12.0 m ✓", or "31.2 to 58.0 ° ✗" over an axis.
std::string cell(const Figure& figure, base::UnitSystem system) {
    const auto [least, most] = std::minmax_element(
        figure.values.begin(), figure.values.end(),
        [](const study::Value& a, const study::Value& b) { return a.si < b.si; });
    const base::Unit unit = figure.definition->unit;
    const std::string low = base::quantity(least->si, unit, system).number;
    const bool range = low != base::quantity(most->si, unit, system).number;
    return (range ? low + " to " : "") + base::quantity_text(most->si, unit, system) +
           mark(figure.worst);
}

template <class List>
std::string name_at(const List& list, std::optional<int> index) {
    return index ? list.at(static_cast<std::size_t>(*index)).name : std::string();
}

class StudyWriter {
public:
    StudyWriter(const study::Study& study, std::optional<int> format, base::UnitSystem system)
        : study_(study), format_(format), system_(system) {}

    std::string write() {
        const room::Layout& layout = study_.layout();
        out_ = layout.name + "\n";
        if (!layout.note.empty()) out_ += layout.note + "\n";
        out_ += "Limits: " + study_.brief->limits.name + "\n";
        for (const study::Subject subject : study::kSubjects) {
            out_ += std::string("\n") + study::subject_title(subject) +
                    mark(study::subject_verdict(study_, subject, {.format = format_})) + "\n";
            write_subject(subject);
        }
        write_findings();
        return out_;
    }

private:
    std::vector<int> shown_formats() const {
        if (format_) return {*format_};
        std::vector<int> all;
        for (std::size_t i = 0; i < study_.layout().formats.size(); ++i) {
            all.push_back(static_cast<int>(i));
        }
        return all;
    }

    void write_subject(study::Subject subject) {
        bool formats_headed = false;
        for (const FigureDefinition& d : study::figure_register()) {
            if (d.subject != subject || !d.listed) continue;
            if (d.per.loudspeaker || d.axis() == study::Axis::band) {
                write_bands(d);
            } else if (d.per.format) {
                if (!formats_headed) head_formats();
                formats_headed = true;
                write_formats(d);
            } else if (d.per.projector) {
                write_projectors(d);
            } else if (const Figure* figure = study::find_figure(study_, d.id)) {
                line(d.label, {cell(*figure, system_)});
            }
        }
        if (subject == study::Subject::sight) write_crowd();
    }

    void write_crowd() {
        if (study_.seats.seats.empty()) return;
        if (!study_.crowd) {
            line("Clear chance", {study::kNotSampled});
            return;
        }
        for (const int f : shown_formats())
            out_ += "  " + study::crowd_sentence(study_, f) + "\n";
    }

    void head_formats() {
        std::vector<std::string> names;
        for (const int f : shown_formats())
            names.push_back(name_at(study_.layout().formats, f));
        line("", names);
    }

    void write_formats(const FigureDefinition& d) {
        bool labelled = false;
        const int count = d.per.projector ? static_cast<int>(study_.layout().projectors.size()) : 1;
        for (int p = 0; p < count; ++p) {
            std::vector<std::string> cells;
            bool any = false;
            for (const int f : shown_formats()) {
                const Figure* figure =
                    study::find_figure(study_, d.id, {.projector = p, .format = f});
                cells.push_back(figure ? cell(*figure, system_) : "-");
                any = any || figure;
            }
            if (!any) continue;
            if (d.per.projector && !labelled) out_ += std::string("  ") + d.label + "\n";
            labelled = true;
            line(d.per.projector ? "  " + name_at(study_.layout().projectors, p) : d.label, cells);
        }
    }

    void write_projectors(const FigureDefinition& d) {
        bool labelled = false;
        for (std::size_t p = 0; p < study_.layout().projectors.size(); ++p) {
            const Figure* figure =
                study::find_figure(study_, d.id, {.projector = static_cast<int>(p)});
            if (!figure) continue;
            if (!labelled) out_ += std::string("  ") + d.label + "\n";
            labelled = true;
            line("  " + study_.layout().projectors[p].name, {cell(*figure, system_)});
        }
    }

    /// Bands run down the page, loudspeaker by loudspeaker.
    void write_bands(const FigureDefinition& d) {
        out_ += std::string("  ") + d.label + "\n";
        for (const Figure& figure : study_.figures) {
            if (figure.definition != &d) continue;
            const std::string who = name_at(study_.layout().loudspeakers, figure.loudspeaker);
            if (d.axis() != study::Axis::band) {
                const std::string band =
                    figure.band
                        ? ", " + base::quantity_text(
                                     sound::kOctaves.at(static_cast<std::size_t>(*figure.band)),
                                     base::Unit::hertz)
                        : "";
                line("  " + who + band, {cell(figure, system_)});
                continue;
            }
            for (std::size_t i = 0; i < figure.values.size(); ++i) {
                const study::Value& value = figure.values[i];
                line("  " + (who.empty() ? "" : who + ", ") +
                         study::index_name(study_, d, value.index) + " Hz",
                     {base::quantity_text(value.si, d.unit, system_) + mark(figure.verdicts[i])});
            }
        }
    }

    void write_findings() {
        out_ += "\nFindings\n";
        bool any = false;
        for (const study::Finding& finding : study_.findings) {
            if (format_ && finding.place.format && *finding.place.format != *format_) continue;
            any = true;
            out_ += " " + mark(finding.verdict) + " " + finding.what_in(system_) + "\n      " +
                    finding.against_in(system_) + "\n";
            if (!finding.mend.empty()) out_ += "      " + finding.mend + "\n";
        }
        if (!any) out_ += "  none: every limit holds\n";
    }

    void line(const std::string& label, const std::vector<std::string>& cells) {
        std::string text = "  " + padded(label, kLabelWidth);
        for (const std::string& one : cells)
            text += padded(one, kCellWidth);
        while (!text.empty() && text.back() == ' ')
            text.pop_back();
        out_ += text + "\n";
    }

    const study::Study& study_;
    std::optional<int> format_;
    base::UnitSystem system_;
    std::string out_;
};

}  // namespace

std::string study_text(const study::Study& study,
                       std::optional<int> format,
                       base::UnitSystem system) {
    return StudyWriter(study, format, system).write();
}

}  // namespace rakeline::command
