// SPDX-License-Identifier: MIT
#include "drawing/section_sight.hpp"

#include "drawing/section_standing.hpp"

#include <algorithm>

namespace rakeline::drawing {
namespace {

using Kind = Shows::Kind;
using study::Verdict;

glm::dvec2 on_section(const glm::dvec3& p) {
    return {p.z, p.y};
}

struct Sight {
    const study::Study& study;
    const DrawingChoice& choice;
    const study::Figure* c_value = nullptr;  ///< of the chosen format
    std::vector<Verdict> verdicts;           ///< per row
    Drawing& drawing;

    const room::Row& row(std::size_t i) const { return study.seats.rows[i]; }
    bool selected(std::size_t i) const {
        return choice.seat && study.seats.seats.at(static_cast<std::size_t>(*choice.seat)).row ==
                                  static_cast<int>(i);
    }
    bool shows_line(std::size_t i) const {
        return choice.sight_lines == SightLines::all || selected(i);
    }
    std::optional<double> c_of(std::size_t i) const {
        return c_value ? study::value_at(*c_value, static_cast<int>(i)) : std::nullopt;
    }
};

void add_sight_line(Sight& sight, std::size_t i, const glm::dvec3& focus) {
    const bool missed = sight.verdicts[i] == Verdict::missed;
    sight.drawing.items.push_back(stroke(on_section(sight.row(i).centre_eye), on_section(focus),
                                         missed ? Weight::seen : Weight::helper,
                                         missed ? Ink::missed : Ink::sight,
                                         showing(Kind::row, static_cast<int>(i))));
}

void add_eye(Sight& sight, std::size_t i) {
    const bool missed = sight.verdicts[i] == Verdict::missed;
    const bool near = sight.verdicts[i] == Verdict::near;
    const Ink ink = missed ? Ink::missed : near ? Ink::near : Ink::line;
    const Shows what = showing(Kind::row, static_cast<int>(i));
    const glm::dvec2 eye = on_section(sight.row(i).centre_eye);
    const bool selected = sight.selected(i);
    sight.drawing.items.push_back(Fill{disc(eye, 0.07), selected ? Ink::near : ink, 1.0, what});
    if (selected)
        sight.drawing.items.push_back(
            Line{.points = disc(eye, 0.16), .ink = Ink::near, .closed = true, .shows = what});
    const glm::dvec2 floor = on_section(sight.row(i).centre_floor);
    sight.drawing.items.push_back(Label{.at = floor + glm::dvec2(0.0, -0.30),
                                        .text = sight.row(i).letter,
                                        .anchor = Anchor::centre,
                                        .ink = missed ? Ink::missed : Ink::quiet,
                                        .shows = what});
}

/// "F 64 mm wants 120": the number alone where the unit has just been said.
std::string shortfall_text(const Sight& sight, std::size_t i, double c_m) {
    std::string text = sight.row(i).letter + " " +
                       base::quantity_text(c_m, base::Unit::millimetre, sight.choice.units);
    const auto& limits = sight.study.brief->limits.limits;
    for (const int index : sight.c_value->limits) {
        const room::Limit& limit = limits.at(static_cast<std::size_t>(index));
        if (!limit.least || c_m >= *limit.least) continue;
        const auto wanted =
            base::quantity(*limit.least, base::Unit::millimetre, sight.choice.units);
        return text + " wants " + wanted.number;
    }
    return text;
}

/// Of rows that miss side by side in one block, the one that misses most.
std::vector<std::size_t> worst_of_runs(const Sight& sight) {
    std::vector<std::size_t> worst;
    std::optional<std::size_t> previous;
    for (std::size_t i = 0; i < sight.verdicts.size(); ++i) {
        const auto c = sight.c_of(i);
        if (sight.verdicts[i] != Verdict::missed || !c) continue;
        const bool run =
            previous && *previous + 1 == i && sight.row(*previous).block == sight.row(i).block;
        if (!run) {
            worst.push_back(i);
        } else if (*c < *sight.c_of(worst.back())) {
            worst.back() = i;
        }
        previous = i;
    }
    return worst;
}

void add_shortfall(Sight& sight, std::size_t i) {
    const Shows what = showing(Kind::row, static_cast<int>(i));
    const glm::dvec2 eye = on_section(sight.row(i).centre_eye);
    const glm::dvec2 at = eye + glm::dvec2(0.0, 0.75);
    sight.drawing.items.push_back(stroke(eye, at, Weight::helper, Ink::missed, what));
    sight.drawing.items.push_back(Label{.at = at + glm::dvec2(0.0, 0.16),
                                        .text = shortfall_text(sight, i, *sight.c_of(i)),
                                        .anchor = Anchor::centre,
                                        .ink = Ink::missed,
                                        .shows = what});
}

}  // namespace

void add_section_sight(const study::Study& study,
                       const DrawingChoice& choice,
                       const Chosen& chosen,
                       Drawing& drawing) {
    if (chosen.format < 0) return;
    study::Place place;
    place.format = chosen.format;
    const study::Figure* figure = study::find_figure(study, "sight.c_value", place);
    const std::size_t count = study.seats.rows.size();
    Sight sight{study, choice, figure, verdicts_by_index(figure, count), drawing};
    const auto& rows = study.sight.formats.at(static_cast<std::size_t>(chosen.format)).rows;
    // Calm lines first, so that the rows in question lie on top.
    for (const bool missed : {false, true}) {
        for (std::size_t i = 0; i < count; ++i)
            if ((sight.verdicts[i] == Verdict::missed) == missed && sight.shows_line(i))
                add_sight_line(sight, i, rows.at(i).focus);
    }
    add_section_standing(study, drawing);
    for (std::size_t i = 0; i < count; ++i)
        add_eye(sight, i);
    for (const std::size_t i : worst_of_runs(sight))
        add_shortfall(sight, i);
}

}  // namespace rakeline::drawing
