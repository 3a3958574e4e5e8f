// SPDX-License-Identifier: MIT
#include "drawing/section_floor.hpp"

#include "drawing/parts.hpp"

#include <algorithm>
#include <cmath>

namespace rakeline::drawing {
namespace {

using Kind = Shows::Kind;

/// The piece of a platform over x = `across_m`, if it reaches there.
std::optional<FloorPiece> cut_at(const room::Platform& platform, double across_m) {
    std::vector<glm::dvec2> crossings;
    for (std::size_t i = 0; i < platform.corners.size(); ++i) {
        const glm::dvec3& a = platform.corners[i];
        const glm::dvec3& b = platform.corners[(i + 1) % platform.corners.size()];
        // Half-open, so that a corner on the line counts once.
        if ((a.x <= across_m) == (b.x <= across_m)) continue;
        const glm::dvec3 p = a + (b - a) * ((across_m - a.x) / (b.x - a.x));
        crossings.emplace_back(p.z, p.y);
    }
    if (crossings.size() != 2) return std::nullopt;
    if (crossings[0].x > crossings[1].x) std::swap(crossings[0], crossings[1]);
    return FloorPiece{crossings[0], crossings[1], true, platform.kind, platform.row};
}

double middle_across(const room::Platform& platform) {
    double sum = 0.0;
    for (const glm::dvec3& corner : platform.corners)
        sum += corner.x;
    return sum / static_cast<double>(platform.corners.size());
}

/// How far the middle of a row's tread lies from the middle of its row.
double from_row_middle(const room::SeatPlan& plan, const room::Platform& platform) {
    const room::Row& row = plan.rows.at(static_cast<std::size_t>(*platform.row));
    return std::abs(middle_across(platform) - row.centre_floor.x);
}

/// For each row that the centre line leaves out, the one of its treads that stands for it: an arc
/// has many.
std::vector<const room::Platform*> treads_beside(const room::SeatPlan& plan,
                                                 const std::vector<bool>& row_is_cut) {
    std::vector<const room::Platform*> best(plan.rows.size(), nullptr);
    for (const room::Platform& platform : plan.platforms) {
        if (!platform.row) continue;
        const auto row = static_cast<std::size_t>(*platform.row);
        if (row_is_cut[row]) continue;
        if (!best[row] || from_row_middle(plan, platform) < from_row_middle(plan, *best[row]))
            best[row] = &platform;
    }
    std::erase(best, nullptr);
    return best;
}

bool same_place(const FloorPiece& a, const FloorPiece& b) {
    constexpr double kSame_m = 1e-3;
    return glm::length(a.from - b.from) < kSame_m && glm::length(a.to - b.to) < kSame_m;
}

/// A step is no higher than this; a balcony over the stalls is no step.
constexpr double kHighestStep_m = 1.5;

/// The piece that goes on where `piece` ends, if a step joins them.
const FloorPiece* next_of(const std::vector<FloorPiece>& pieces, const FloorPiece& piece) {
    const FloorPiece* next = nullptr;
    const auto step = [&](const FloorPiece& p) { return std::abs(p.from.y - piece.to.y); };
    for (const FloorPiece& other : pieces) {
        if (std::abs(other.from.x - piece.to.x) > 0.01 || step(other) > kHighestStep_m) continue;
        if (other.on_centre_line != piece.on_centre_line) continue;
        if (other.kind == room::PlatformKind::balcony_front) continue;
        if (!next || step(other) < step(*next)) next = &other;
    }
    return next;
}

Shows showing_of(const FloorPiece& piece) {
    return piece.row ? showing(Kind::row, *piece.row) : showing(Kind::hall);
}

Weight weight_of(const FloorPiece& piece) {
    return piece.on_centre_line ? Weight::cut : Weight::helper;
}

/// The solid front stands from its top down to the floor that it guards.
void add_front_wall(const std::vector<FloorPiece>& pieces,
                    const FloorPiece& top,
                    Drawing& drawing) {
    std::optional<double> foot;
    for (const FloorPiece& piece : pieces) {
        if (piece.kind != room::PlatformKind::tread) continue;
        if (std::abs(piece.from.x - top.to.x) > 0.01 || piece.from.y > top.to.y) continue;
        foot = std::max(foot.value_or(piece.from.y), piece.from.y);
    }
    const double low = foot.value_or(top.to.y);
    drawing.items.push_back(Line{.points = {{top.from.x, low}, top.from, top.to, {top.to.x, low}},
                                 .weight = weight_of(top),
                                 .ink = Ink::line,
                                 .closed = true,
                                 .shows = showing(Kind::hall)});
}

}  // namespace

std::vector<FloorPiece> floor_pieces(const room::SeatPlan& plan) {
    std::vector<FloorPiece> pieces;
    std::vector<bool> row_is_cut(plan.rows.size(), false);
    for (const room::Platform& platform : plan.platforms) {
        const auto piece = cut_at(platform, 0.0);
        if (!piece) continue;
        pieces.push_back(*piece);
        if (platform.row) row_is_cut[static_cast<std::size_t>(*platform.row)] = true;
    }
    for (const room::Platform* platform : treads_beside(plan, row_is_cut)) {
        auto piece = cut_at(*platform, middle_across(*platform));
        if (!piece) continue;
        piece->on_centre_line = false;
        pieces.push_back(*piece);
    }
    std::stable_sort(pieces.begin(), pieces.end(), [](const FloorPiece& a, const FloorPiece& b) {
        return a.from.x != b.from.x ? a.from.x < b.from.x : a.from.y < b.from.y;
    });
    pieces.erase(std::unique(pieces.begin(), pieces.end(), same_place), pieces.end());
    return pieces;
}

void add_section_floor(const study::Study& study, Drawing& drawing) {
    const std::vector<FloorPiece> pieces = floor_pieces(study.seats);
    for (const FloorPiece& piece : pieces) {
        if (piece.kind == room::PlatformKind::balcony_front) {
            add_front_wall(pieces, piece, drawing);
            continue;
        }
        Line line = stroke(piece.from, piece.to, weight_of(piece), Ink::line, showing_of(piece));
        const FloorPiece* next = next_of(pieces, piece);
        if (next && next->from != piece.to) line.points.push_back(next->from);
        drawing.items.push_back(line);
    }
}

}  // namespace rakeline::drawing
