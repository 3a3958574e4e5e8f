// SPDX-License-Identifier: MIT
#include "study/width_advice.hpp"

#include "base/assert.hpp"
#include "study/figure_values.hpp"
#include "study/slices.hpp"

#include <algorithm>
#include <cmath>
#include <map>

namespace rakeline::study {
namespace {

constexpr int kPerMetre = 1000;  ///< widths are counted in whole millimetres
constexpr int kStep_mm = 250;    ///< of the scan
constexpr int kWidest_mm = 200 * kPerMetre;

double metres(int mm) {
    return static_cast<double>(mm) / kPerMetre;
}

double opening_width(const room::Layout& layout, int format) {
    return picture::masked_opening(layout.screen,
                                   layout.formats.at(static_cast<std::size_t>(format)))
        .width_m;
}

/// The whole screen in proportion, its sill kept; not checked.
room::Layout scaled(const room::Layout& layout, int format, double width_m) {
    const double by = width_m / opening_width(layout, format);
    room::Layout out = layout;
    out.screen.width_m *= by;
    out.screen.height_m *= by;
    for (room::Format& each : out.formats)
        if (each.opening_width_m) *each.opening_width_m *= by;
    return out;
}

/// One side of one limit on a figure of viewing angles, and the seats that it holds.
struct Bound {
    const FigureDefinition* figure = nullptr;
    int limit = 0;
    bool least = false;
    room::Limit side;         ///< the limit with this bound alone
    std::vector<char> holds;  ///< per seat: whether it applies there
};

std::vector<char> seats_held(const Study& study, const Figure& figure, int limit) {
    std::vector<char> out;
    for (int seat = 0; seat < static_cast<int>(study.seats.seats.size()); ++seat)
        out.push_back(applies_at(study, figure, limit, seat));
    return out;
}

std::vector<Bound> bounds_of(const Study& study, int format) {
    std::vector<Bound> out;
    for (const FigureDefinition& definition : angle_figures()) {
        Figure figure;
        figure.definition = &definition;
        figure.format = format;
        for (const int limit : limits_on(study, figure)) {
            const room::Limit& whole =
                study.brief->limits.limits.at(static_cast<std::size_t>(limit));
            const auto held = seats_held(study, figure, limit);
            room::Limit low = whole, high = whole;
            low.most.reset();
            high.least.reset();
            if (whole.least) out.push_back({&definition, limit, true, low, held});
            if (whole.most) out.push_back({&definition, limit, false, high, held});
        }
    }
    return out;
}

/// As much of a study as the figures of viewing angles read, for another layout of the room.
Study trial_study(const Study& study, room::Layout layout, int format) {
    Study trial;
    trial.brief =
        std::make_shared<const room::Brief>(room::Brief{std::move(layout), study.brief->limits});
    const room::Layout& room = trial.layout();
    trial.seats = room::place_seats(seat_plan_slice(room));
    trial.picture.surface = picture::screen_patch(room.screen);
    for (const room::Format& each : room.formats)
        trial.picture.openings.push_back(picture::masked_opening(room.screen, each));
    trial.sight.formats.resize(room.formats.size());
    const auto at = static_cast<std::size_t>(format);
    for (const room::Seat& seat : trial.seats.seats)
        trial.sight.formats[at].seats.push_back(
            sight::viewing_angles(trial.picture.surface, trial.picture.openings[at], seat.eye));
    return trial;
}

/// Which bounds are kept at one width: by seat, then bound.
struct Kept {
    std::vector<char> each;
};

/// How many seats keep all bounds, and how many of those that it holds keep each bound.
struct Counts {
    int all = 0;
    std::vector<int> each;

    bool reach(const Counts& wanted) const {
        return all >= wanted.all &&
               std::ranges::equal(each, wanted.each, std::ranges::greater_equal{});
    }
};

int share_of(double share, long seats) {
    // 0.9 of 10 seats is 9, whatever the last bit of 0.9 says.
    return static_cast<int>(std::ceil(share * static_cast<double>(seats) - 1e-9));
}

class Search {
public:
    Search(const Study& study, int format)
        : study_(study),
          format_(format),
          bounds_(bounds_of(study, format)),
          seats_(static_cast<int>(study.seats.seats.size())) {}

    const std::vector<Bound>& bounds() const { return bounds_; }
    int seats() const { return seats_; }

    Kept kept_by(room::Layout layout) const {
        const Study trial = trial_study(study_, std::move(layout), format_);
        Kept kept;
        Working silent(false);
        for (int seat = 0; seat < seats_; ++seat) {
            const Cell cell{trial, 0, format_, 0, 0, seat};
            for (const Bound& bound : bounds_) {
                const auto value = bound.holds[static_cast<std::size_t>(seat)]
                                       ? bound.figure->evaluate(cell, silent)
                                       : std::nullopt;
                kept.each.push_back(!value || verdict_of(*value, bound.side) != Verdict::missed);
            }
        }
        return kept;
    }

    Counts counts(const Kept& kept) const {
        return counts_where([&](int seat, std::size_t bound) { return keeps(kept, seat, bound); });
    }

    /// What a share of the seats asks for.
    Counts wanted(double share) const {
        Counts out{share_of(share, seats_), {}};
        for (const Bound& bound : bounds_)
            out.each.push_back(share_of(share, std::ranges::count(bound.holds, 1)));
        return out;
    }
    /// So many seats that keep all, whichever bounds the others miss.
    Counts at_least(int seats) const { return {seats, std::vector<int>(bounds_.size(), 0)}; }

    const Kept& at(int mm) {
        const auto known = known_.find(mm);
        if (known != known_.end()) return known->second;
        return known_.emplace(mm, kept_by(scaled(study_.layout(), format_, metres(mm))))
            .first->second;
    }

    bool keeps(const Kept& kept, int seat, std::size_t bound) const {
        return kept.each[static_cast<std::size_t>(seat) * bounds_.size() + bound];
    }

    /// Spans of widths in [low, high] at which the counts reach `wanted`.
    struct Span {
        int low = 0, high = 0;
    };
    std::vector<Span> spans(int low, int high, const Counts& wanted) {
        std::vector<Span> out;
        if (low == high && counts(at(low)).reach(wanted)) out.push_back({low, high});
        for (int a = low; a < high; a = std::min(a + kStep_mm, high))
            find(a, std::min(a + kStep_mm, high), wanted, out);
        return out;
    }

private:
    static void add(std::vector<Span>& out, int low, int high) {
        if (!out.empty() && low <= out.back().high + 1)
            out.back().high = std::max(out.back().high, high);
        else
            out.push_back({low, high});
    }

    Counts counts_where(const auto& kept) const {
        Counts out{0, std::vector<int>(bounds_.size(), 0)};
        for (int seat = 0; seat < seats_; ++seat) {
            bool all = true;
            for (std::size_t i = 0; i < bounds_.size(); ++i) {
                const bool keeps = kept(seat, i);
                all = all && keeps;
                out.each[i] += keeps && bounds_[i].holds[static_cast<std::size_t>(seat)];
            }
            out.all += all;
        }
        return out;
    }

    /// Each bound of a seat is crossed once at most between `low` and `high`: it is kept throughout
    /// if it is at both ends, and may be somewhere between if it is at one.
    void find(int low, int high, const Counts& wanted, std::vector<Span>& out) {
        const Kept& a = at(low);
        const Kept& b = at(high);  // a map's elements stay where they are
        const auto either = [&](int seat, std::size_t i) {
            return keeps(a, seat, i) || keeps(b, seat, i);
        };
        const auto both = [&](int seat, std::size_t i) {
            return keeps(a, seat, i) && keeps(b, seat, i);
        };
        if (!counts_where(either).reach(wanted)) return;
        if (counts_where(both).reach(wanted)) return add(out, low, high);
        if (high - low == 1) {
            if (counts(a).reach(wanted)) add(out, low, low);
            if (counts(b).reach(wanted)) add(out, high, high);
            return;
        }
        const int middle = low + (high - low) / 2;
        find(low, middle, wanted, out);
        find(middle, high, wanted, out);
    }

    const Study& study_;
    int format_;
    std::vector<Bound> bounds_;
    int seats_;
    std::map<int, Kept> known_;
};

/// Bounds that a seat misses at one width, and where `kept` is given keeps there.
std::vector<WidthStop> missed(const Search& search, const Kept& at, const Kept* kept) {
    std::vector<WidthStop> out;
    for (std::size_t i = 0; i < search.bounds().size(); ++i) {
        const Bound& bound = search.bounds()[i];
        WidthStop stop{bound.limit, bound.least, {}};
        for (int seat = 0; seat < search.seats(); ++seat)
            if (!search.keeps(at, seat, i) && (!kept || search.keeps(*kept, seat, i)))
                stop.seats.push_back(seat);
        if (!stop.seats.empty()) out.push_back(std::move(stop));
    }
    return out;
}

std::vector<WidthStop> stops(Search& search, int inside, int beyond) {
    return missed(search, search.at(beyond), &search.at(inside));
}

base::Problems faults_at(const Study& study, int format, int mm) {
    return room::check_layout(scaled(study.layout(), format, metres(mm)));
}

/// The last width from `good` on, toward `bad`, at which the layout stands.
int last_good(const Study& study, int format, int good, int bad) {
    while (std::abs(bad - good) > 1) {
        const int middle = (good + bad) / 2;
        (faults_at(study, format, middle).empty() ? good : bad) = middle;
    }
    return good;
}

/// The widths that the room lets stand.
struct Searched {
    int low = 0, high = 0;
    std::string why_high;
};

Searched searched(const Study& study, int format, double now_m) {
    int now = static_cast<int>(std::floor(now_m * kPerMetre));
    if (!faults_at(study, format, now).empty()) ++now;  // as small as a frame may be
    Searched out;
    out.high = last_good(study, format, now, kWidest_mm);
    out.low = last_good(study, format, now, 0);
    if (const auto faults = faults_at(study, format, out.high + 1); !faults.empty())
        out.why_high = faults.front().what;
    return out;
}

std::vector<WidthRange> ranges_of(Search& search, const Searched& room, const Counts& wanted) {
    std::vector<WidthRange> out;
    for (const Search::Span& span : search.spans(room.low, room.high, wanted)) {
        WidthRange range{metres(span.low), metres(span.high), {}, {}};
        if (span.low > room.low) range.below = stops(search, span.low, span.low - 1);
        if (span.high < room.high) range.above = stops(search, span.high, span.high + 1);
        out.push_back(std::move(range));
    }
    return out;
}

/// The greatest count of seats for which there is a width, and the widest such width.
void find_best(Search& search, const Searched& room, WidthAdvice& out) {
    const auto spans = [&](int seats) {
        return search.spans(room.low, room.high, search.at_least(seats));
    };
    int few = 0, many = search.seats() + 1;
    while (many - few > 1) {
        const int middle = (few + many) / 2;
        (spans(middle).empty() ? many : few) = middle;
    }
    const int best = spans(few).back().high;
    out.kept_best = few;
    out.best_m = metres(best);
    out.missed_best = missed(search, search.at(best), nullptr);
}

base::Problem problem(const char* where, const std::string& what, const std::string& mend) {
    return {.file = {}, .line = 0, .where = where, .what = what, .mend = mend};
}

}  // namespace

base::Result<WidthAdvice> width_advice(const Study& study, int format, double share) {
    if (!(share > 0.0 && share <= 1.0))
        return problem("share", "is not between 0 and 1", "give a share of the seats, like 0.9");
    if (study.seats.seats.empty())
        return problem("seating", "has no seats, so nobody looks at the picture", "add a block");
    RL_ASSERT(room::check_layout(study.layout()).empty());
    Search search(study, format);
    WidthAdvice out;
    out.format = format;
    out.share = share;
    out.seats = search.seats();
    const Counts wanted = search.wanted(share);
    out.wanted = wanted.all;
    std::vector<int> limits;
    for (const Bound& bound : search.bounds())
        if (limits.empty() || limits.back() != bound.limit) limits.push_back(bound.limit);
    out.limits = static_cast<int>(limits.size());
    out.now_m = opening_width(study.layout(), format);
    out.kept_now = search.counts(search.kept_by(study.layout())).all;
    const Searched room = searched(study, format, out.now_m);
    out.least_m = metres(room.low);
    out.most_m = metres(room.high);
    out.why_most = room.why_high;
    out.ranges = ranges_of(search, room, wanted);
    find_best(search, room, out);
    return out;
}

base::Result<room::Layout> with_picture_width(const room::Layout& layout,
                                              int format,
                                              double width_m) {
    room::Layout out = scaled(layout, format, width_m);
    if (auto problems = room::check_layout(out); !problems.empty()) return problems;
    return out;
}

}  // namespace rakeline::study
