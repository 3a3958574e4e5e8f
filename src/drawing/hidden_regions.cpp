// SPDX-License-Identifier: MIT
#include "drawing/hidden_regions.hpp"

#include "base/assert.hpp"

#include <algorithm>
#include <cmath>

namespace rakeline::drawing {
namespace {

using sight::ClearInterval;

std::vector<ClearInterval> hidden_in(const std::vector<ClearInterval>& clear,
                                     const geometry::Rectangle& opening) {
    std::vector<ClearInterval> out;
    double from = opening.bottom;
    for (const ClearInterval& c : clear) {
        if (c.bottom_m > from) out.push_back({from, c.bottom_m});
        from = c.top_m;
    }
    if (opening.top > from) out.push_back({from, opening.top});
    return out;
}

bool meet(const ClearInterval& a, const ClearInterval& b) {
    return a.bottom_m < b.top_m && b.bottom_m < a.top_m;
}

/// The one interval of `others` that meets `one`, and that meets no other of `ones`.
std::optional<std::size_t> only_partner(const ClearInterval& one,
                                        const std::vector<ClearInterval>& ones,
                                        const std::vector<ClearInterval>& others) {
    const auto meets = [](const ClearInterval& a) {
        return [&a](const ClearInterval& b) { return meet(a, b); };
    };
    if (std::ranges::count_if(others, meets(one)) != 1) return std::nullopt;
    const auto partner = std::ranges::find_if(others, meets(one));
    if (std::ranges::count_if(ones, meets(*partner)) != 1) return std::nullopt;
    return static_cast<std::size_t>(partner - others.begin());
}

void put(HiddenRegion& region, double u, const ClearInterval& v) {
    region.low.emplace_back(u, v.bottom_m);
    region.high.emplace_back(u, v.top_m);
}

/// The pieces that reach into the column at hand, one for each of its intervals.
class Joiner {
public:
    explicit Joiner(double column_m) : column_m_(column_m) {}

    void column(double left_m, const std::vector<ClearInterval>& next) {
        std::vector<HiddenRegion> open(next.size());
        std::vector<bool> carried(open_.size(), false);
        for (std::size_t i = 0; i < next.size(); ++i) {
            const auto before = only_partner(next[i], next, last_);
            if (before) {
                open[i] = std::move(open_[*before]);
                carried[*before] = true;
            } else {
                put(open[i], left_m, next[i]);
            }
            put(open[i], left_m + 0.5 * column_m_, next[i]);
        }
        close(left_m, carried);
        open_ = std::move(open);
        last_ = next;
    }

    std::vector<HiddenRegion> finished(double right_m) {
        close(right_m, std::vector<bool>(open_.size(), false));
        return std::move(done_);
    }

private:
    void close(double at_m, const std::vector<bool>& carried) {
        for (std::size_t i = 0; i < open_.size(); ++i) {
            if (carried[i]) continue;
            put(open_[i], at_m, last_[i]);
            done_.push_back(std::move(open_[i]));
        }
    }

    double column_m_;
    std::vector<HiddenRegion> open_, done_;
    std::vector<ClearInterval> last_;
};

/// Runs of one line v = u - offset through one region.
void add_runs(const HiddenRegion& region,
              double offset,
              std::vector<std::vector<glm::dvec2>>& out) {
    std::vector<glm::dvec2> run;
    const auto end_run = [&] {
        if (run.size() > 1) out.push_back(run);
        run.clear();
    };
    for (std::size_t i = 0; i < region.low.size(); ++i) {
        const double u = region.low[i].x;
        const double v = u - offset;
        if (v < region.low[i].y || v > region.high[i].y)
            end_run();
        else
            run.emplace_back(u, v);
    }
    end_run();
}

}  // namespace

std::vector<HiddenRegion> hidden_regions(const sight::ClearOutline& clear,
                                         const geometry::Rectangle& opening) {
    Joiner joiner(clear.column_width_m);
    double left = clear.left_m;
    for (const std::vector<ClearInterval>& column : clear.columns) {
        joiner.column(left, hidden_in(column, opening));
        left += clear.column_width_m;
    }
    return joiner.finished(left);
}

std::vector<glm::dvec2> outline_of(const HiddenRegion& region) {
    std::vector<glm::dvec2> out = region.low;
    out.insert(out.end(), region.high.rbegin(), region.high.rend());
    return out;
}

std::vector<std::vector<glm::dvec2>> hatching(const std::vector<HiddenRegion>& regions,
                                              double pitch_m) {
    RL_ASSERT(pitch_m > 0.0);
    std::vector<std::vector<glm::dvec2>> out;
    for (const HiddenRegion& region : regions) {
        double least = region.low.front().x - region.high.front().y;
        double most = least;
        for (std::size_t i = 0; i < region.low.size(); ++i) {
            least = std::min(least, region.low[i].x - region.high[i].y);
            most = std::max(most, region.low[i].x - region.low[i].y);
        }
        for (double k = std::ceil(least / pitch_m); k * pitch_m <= most; k += 1.0)
            add_runs(region, k * pitch_m, out);
    }
    return out;
}

}  // namespace rakeline::drawing
