// SPDX-License-Identifier: MIT
#include "sight/hidden_seats.hpp"

#include "base/parallel.hpp"

#include <algorithm>
#include <utility>

namespace rakeline::sight::hidden {
namespace {

/// Seats below which a second thread costs more than it saves: all from scratch, and one edit.
constexpr std::size_t kLeastSeats = 128;
constexpr std::size_t kLeastEdited = 1024;

template <class T>
std::vector<T> picked(std::span<const T> list, const std::vector<std::size_t>& at) {
    std::vector<T> out;
    out.reserve(at.size());
    for (const std::size_t i : at)
        out.push_back(list[i]);
    return out;
}

}  // namespace

Alone::Alone(const HiddenInput& in,
             const Room& room,
             std::vector<Head> heads,
             std::vector<Wall> walls)
    : heads_({in.surface, in.opening, {}, heads, {}}, room.columns()),
      walls_({in.surface, in.opening, {}, {}, walls}, room.columns()),
      scene_{room.scene().picture, heads_.view(), walls_.view()} {
    for (const KernelBoxes& boxes : {scene_.heads.boxes, scene_.walls.boxes}) {
        for (int g = 0; g < boxes.groups; ++g) {
            if (boxes.lanes[g] == 0) continue;
            x_low_ = std::min(x_low_, boxes.x_low[g]);
            x_high_ = std::max(x_high_, boxes.x_high[g]);
            y_high_ = std::max(y_high_, boxes.y_high[g]);
            z_low_ = std::min(z_low_, boxes.z_low[g]);
            z_high_ = std::max(z_high_, boxes.z_high[g]);
        }
    }
}

/// A head beside or behind the eye can still be too near for the kernel.
bool Alone::about(const KernelEye& eye) const {
    const float near = scene_.heads.near_m;
    return x_low_ - near <= eye.x && eye.x <= x_high_ + near && z_low_ - near <= eye.z &&
           eye.z <= z_high_ + near;
}

bool Alone::out_of_sight(const KernelEye& eye) const {
    if (about(eye)) return false;
    if (z_low_ >= eye.z) return true;
    const KernelPicture& picture = scene_.picture;
    const float up = y_high_ - eye.y;
    const float depth = eye.z - (up > 0.0F ? z_high_ : z_low_);
    if (depth <= 0.0F) return false;
    const float farthest = eye.z - (up > 0.0F ? picture.z_low : picture.z_high);
    return up * farthest < (picture.bottom - eye.y) * depth;
}

Apart::Apart(const HiddenInput& in, const Room& room, Chosen chosen)
    : chosen_(std::move(chosen)),
      alone_(in, room, picked(in.heads, chosen_.heads), picked(in.walls, chosen_.walls)),
      head_lanes_(room.heads().groups().lanes_without(chosen_.heads)),
      wall_lanes_(room.walls().groups().lanes_without(chosen_.walls)),
      rest_(room.scene()) {
    rest_.heads.boxes.lanes = head_lanes_.data();
    rest_.walls.boxes.lanes = wall_lanes_.data();
}

Seats::Seats(const Room& room, std::size_t count, unsigned threads)
    : threads_(threads), seats_(count), results_(count) {
    base::parallel_chunks(
        count, kLeastSeats,
        [&](std::size_t begin, std::size_t end) {
            for (std::size_t i = begin; i < end; ++i) {
                seats_[i].place = room.place(static_cast<int>(i));
                from_scratch(room, true, seats_[i]);
                results_[i] = room.summed(seats_[i].place, seats_[i].blocks);
            }
        },
        threads_);
}

void Seats::from_scratch(const Room& room, bool solid, Seat& seat) {
    seat.awaits_scratch = false;
    seat.exact = !room.blocks(seat.place, room.all_blocks(), solid, seat.blocks);
    if (!solid) std::ranges::fill(seat.blocks.solid, 0.0F);
    seat.rest.ready = seat.crowded = 0;
    // Of those apart nothing is known now: all blocks may be theirs.
    seat.applied = room.all_blocks();
    std::ranges::fill(seat.covered, 0.0F);
}

void Seats::begin(const Room& room, const Alone& touched) {
    begun_ = true;
    const std::size_t blocks = room.columns().places.size() / kBlock;
    if (!unions_) unions_ = std::make_unique_for_overwrite<BlockUnion[]>(blocks * seats_.size());
    for (std::size_t i = 0; i < seats_.size(); ++i) {
        Seat& seat = seats_[i];
        seat.rest = {unions_.get() + blocks * i, seat.covered};
        if (seat.exact) continue;
        seat.crowded = seat.applied = 0;
        std::ranges::copy(seat.blocks.solid, seat.covered);
        if (touched.out_of_sight(seat.place.at)) continue;
        seat.applied =
            room.kernel()
                .reached_blocks(touched.scene(), seat.place.at, room.all_blocks(), seat.covered)
                .blocks;
    }
}

void Seats::work_out_rest(const Room& room, const Apart& apart, unsigned missing, Seat& seat) {
    const unsigned crowded =
        room.kernel().rest_blocks(apart.rest(), seat.place.at, missing, seat.rest, seat.blocks);
    seat.crowded |= crowded;
    for (unsigned block = 0; block < kMostBlocks; ++block) {
        if ((crowded >> block & 1U) != 0) seat.covered[block] = seat.blocks.solid[block];
    }
}

void Seats::lay_apart(const Room& room, const Apart& apart, Seat& seat) {
    const auto lay = [&](unsigned wanted, unsigned before) {
        return room.kernel().moved_blocks(apart.alone().scene(), seat.place.at, wanted, before,
                                          seat.rest, seat.blocks);
    };
    const auto unknown = [&](unsigned wanted) {
        return wanted & ~(seat.rest.ready | seat.crowded);
    };
    if (const unsigned missing = unknown(seat.applied); missing != 0)
        work_out_rest(room, apart, missing, seat);
    const MovedAnswer answer = lay(room.all_blocks(), seat.applied);
    if (answer.near) {
        from_scratch(room, false, seat);
        return;
    }
    unsigned crowded = answer.crowded;
    if (const unsigned missing = unknown(answer.reached); missing != 0) {
        work_out_rest(room, apart, missing, seat);
        crowded |= lay(missing, missing).crowded;
    }
    crowded |= (answer.reached | seat.applied) & seat.crowded;
    // `solid` stays that of the rest, which will still be right when those apart have gone.
    if (crowded != 0) room.blocks(seat.place, crowded, false, seat.blocks);
    seat.applied = answer.reached;
}

void Seats::move_eyes(const Room& room, const std::vector<std::size_t>& moved) {
    for (const std::size_t i : moved) {
        Seat& seat = seats_[i];
        seat.place = room.place(static_cast<int>(i));
        seat.awaits_scratch = true;
    }
}

void Seats::update(const Room& room, const Apart* apart) {
    const bool first = std::exchange(begun_, false);
    const auto edit = [&](std::size_t i) {
        Seat& seat = seats_[i];
        const bool touched =
            apart != nullptr && (seat.applied != 0 || seat.exact ||
                                 (!first && !apart->alone().out_of_sight(seat.place.at)));
        if (seat.awaits_scratch || (touched && seat.exact)) {
            from_scratch(room, false, seat);
        } else if (touched) {
            lay_apart(room, *apart, seat);
        } else {
            return;
        }
        results_[i] = room.summed(seat.place, seat.blocks);
    };
    base::parallel_chunks(
        seats_.size(), kLeastEdited,
        [&](std::size_t begin, std::size_t end) {
            for (std::size_t i = begin; i < end; ++i)
                edit(i);
        },
        threads_);
}

}  // namespace rakeline::sight::hidden
