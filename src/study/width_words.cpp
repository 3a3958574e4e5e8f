// SPDX-License-Identifier: MIT
#include "study/width_words.hpp"

namespace rakeline::study {
namespace {

using base::UnitSystem;

/// To the millimetre: the ends are exact to that.
std::string length(double si, UnitSystem system) {
    return base::quantity_text(si, base::Unit::metre, system, 1);
}

std::string count(int n, const std::string& of) {
    return std::to_string(n) + " " + of + (n == 1 ? "" : "s");
}

/// "A1, A2 and 7 more".
std::string seat_names(const Study& study, const std::vector<int>& seats) {
    constexpr std::size_t kNamed = 3;
    std::string out;
    for (std::size_t i = 0; i < seats.size() && i < kNamed; ++i)
        out += (i ? ", " : "") + study.seats.seats.at(static_cast<std::size_t>(seats[i])).name;
    if (seats.size() > kNamed) out += " and " + std::to_string(seats.size() - kNamed) + " more";
    return out;
}

/// "A1 misses "Off axis, far edge", at most 60.00°".
std::string stop_words(const Study& study, const WidthStop& stop, UnitSystem system) {
    const room::Limit& limit = study.brief->limits.limits.at(static_cast<std::size_t>(stop.limit));
    const FigureDefinition& figure = *find_definition(limit.figure);
    const double bound = stop.least ? *limit.least : *limit.most;
    return seat_names(study, stop.seats) + (stop.seats.size() == 1 ? " misses \"" : " miss \"") +
           figure.label + "\", " + (stop.least ? "at least " : "at most ") +
           base::quantity_text(bound, figure.unit, system);
}

std::string stops_words(const Study& study,
                        const std::vector<WidthStop>& stops,
                        UnitSystem system) {
    std::string out;
    for (const WidthStop& stop : stops)
        out += (out.empty() ? "" : "; ") + stop_words(study, stop, system);
    return out + ".";
}

std::string ranges_words(const WidthAdvice& advice, UnitSystem system) {
    std::string out;
    for (const WidthRange& range : advice.ranges) {
        if (!out.empty()) out += ", or ";
        out += range.below.empty() ? "up to " : length(range.least_m, system) + " to ";
        out += length(range.most_m, system);
    }
    return out;
}

const std::string& name_of(const Study& study, const WidthAdvice& advice) {
    return study.layout().formats.at(static_cast<std::size_t>(advice.format)).name;
}

void add_ends(const Study& study,
              const WidthAdvice& advice,
              UnitSystem system,
              std::vector<std::string>& out) {
    for (const WidthRange& range : advice.ranges) {
        if (!range.above.empty())
            out.push_back("Wider than " + length(range.most_m, system) + ", " +
                          stops_words(study, range.above, system));
        if (!range.below.empty())
            out.push_back("Narrower than " + length(range.least_m, system) + ", " +
                          stops_words(study, range.below, system));
    }
    if (!advice.ranges.empty() && advice.ranges.back().above.empty() && !advice.why_most.empty())
        out.push_back("Wider than " + length(advice.most_m, system) +
                      " does not fit the room: " + advice.why_most + ".");
}

}  // namespace

std::string width_verdict(const Study& study, const WidthAdvice& advice, UnitSystem system) {
    const std::string& name = name_of(study, advice);
    if (advice.limits == 0)
        return "No limit of this set is on a viewing angle, so " + name +
               " may have any width that the room has space for.";
    const std::string share = base::quantity_text(advice.share, base::Unit::fraction);
    if (advice.ranges.empty())
        return name + " has no width at which " + share +
               " of the seats keep their limits on viewing angles, each limit counted over the "
               "seats that it holds.";
    return name + " may be " + ranges_words(advice, system) + " wide: there " + share +
           " of the seats or more keep their limits on viewing angles, each limit counted over the "
           "seats that it holds.";
}

std::vector<std::string> width_reasons(const Study& study,
                                       const WidthAdvice& advice,
                                       UnitSystem system) {
    std::vector<std::string> out;
    out.push_back("Now it is " + length(advice.now_m, system) + " wide, and " +
                  std::to_string(advice.kept_now) + " of " + count(advice.seats, "seat") +
                  (advice.kept_now == 1 ? " keeps" : " keep") + " them all.");
    if (advice.ranges.empty())
        out.push_back("The most that do are " + std::to_string(advice.kept_best) + ", at " +
                      length(advice.best_m, system) + "; there " +
                      stops_words(study, advice.missed_best, system));
    if (advice.limits > 0) add_ends(study, advice, system, out);
    return out;
}

std::string width_scope(const Study& study, UnitSystem system) {
    return "Tried with the whole screen in proportion, all formats with it, its lower edge on the "
           "sill at " +
           length(study.layout().screen.sill_m, system) +
           ", its place, radius and tilt as they are. Sight over heads, light and sound change "
           "with the picture: look at their figures.";
}

}  // namespace rakeline::study
