// SPDX-License-Identifier: MIT
#pragma once

#include "sight/hidden_kernel.hpp"
#include "sight/hidden_lanes.hpp"

/// Union of intervals in every column at once. Private to the kernel; see hidden_lanes.hpp for the
/// unnamed namespace.
namespace {

using rakeline::sight::hidden::BlockUnion;
using rakeline::sight::hidden::kBlock;
using rakeline::sight::hidden::kMostBlocks;

/// Lanes that are handed to a function in memory cost more than the function: eight floats stored
/// as two halves and read back as one stall. So what takes Lanes is always set in place.
#define RL_IN_PLACE [[gnu::always_inline]] inline

constexpr float kNowhere = 1e30F;  ///< lower end of no interval

/// In every column, in picture heights; no interval: kNowhere to -kNowhere.
struct Interval {
    Lanes low, high;
};

/// A block's numbers lie together: at a power of two apart, the processor would take a load of one
/// for a load of what was just stored to another.
struct ColumnUnion {
    alignas(64) BlockUnion blocks[kMostBlocks];
    alignas(32) float covered[kMostBlocks] = {};  ///< up to where all columns of a block are hidden
    unsigned touched = 0;   ///< blocks with something hidden; the others' numbers are void
    unsigned floating = 0;  ///< blocks whose floating intervals are in use
    unsigned overflow = 0;  ///< blocks in which a third one was needed
};

inline void start_block(ColumnUnion& u, unsigned block) {
    store(u.blocks[block].base, Lanes(0.0F));
    store(u.blocks[block].solid, Lanes(0.0F));
    u.touched |= 1U << block;
}

inline void start_floating(ColumnUnion& u, unsigned block) {
    for (int k = 0; k < 2; ++k) {
        store(u.blocks[block].low[k], Lanes(kNowhere));
        store(u.blocks[block].high[k], Lanes(-kNowhere));
    }
    u.floating |= 1U << block;
}

/// Takes in the interval of slot `k` where it meets [low, high], and empties the slot there.
RL_IN_PLACE void absorb(BlockUnion& block, int k, Lanes& low, Lanes& high) {
    const Lanes slot_low = load(block.low[k]);
    const Lanes slot_high = load(block.high[k]);
    const Lanes meets = both(low <= slot_high, slot_low <= high);
    low = select(meets, least(low, slot_low), low);
    high = select(meets, most(high, slot_high), high);
    store(block.low[k], select(meets, Lanes(kNowhere), slot_low));
    store(block.high[k], select(meets, Lanes(-kNowhere), slot_high));
}

/// Puts the interval into slot `k` where that is empty, and takes it from [low, high].
RL_IN_PLACE void place(BlockUnion& block, int k, Lanes& low, Lanes& high) {
    const Lanes slot_low = load(block.low[k]);
    const Lanes empty = same(slot_low, Lanes(kNowhere));
    store(block.low[k], select(empty, low, slot_low));
    store(block.high[k], select(empty, high, load(block.high[k])));
    low = select(empty, Lanes(kNowhere), low);
    high = select(empty, Lanes(-kNowhere), high);
}

RL_IN_PLACE void add_floating(ColumnUnion& u, unsigned at, Lanes low, Lanes high) {
    if ((u.floating >> at & 1U) == 0) start_floating(u, at);
    BlockUnion& block = u.blocks[at];
    // The slots are disjoint, so one that was missed can't meet what another one added.
    absorb(block, 0, low, high);
    absorb(block, 1, low, high);
    const Lanes base = load(block.base);
    const Lanes stands = low <= base;
    store(block.base, select(stands, most(base, high), base));
    low = select(stands, Lanes(kNowhere), low);
    high = select(stands, Lanes(-kNowhere), high);
    place(block, 0, low, high);
    place(block, 1, low, high);
    if (bits(low < Lanes(kNowhere)) != 0) u.overflow |= 1U << at;
}

/// [low, high] cut to the picture; none where that leaves nothing.
RL_IN_PLACE Interval cut(Lanes low, Lanes high) {
    low = most(low, Lanes(0.0F));
    high = least(high, Lanes(1.0F));
    const Lanes real = low < high;
    return {select(real, low, Lanes(kNowhere)), select(real, high, Lanes(-kNowhere))};
}

/// Where both are something and do not meet.
RL_IN_PLACE Lanes apart(const Interval& a, const Interval& b) {
    const Lanes something = both(a.low < Lanes(kNowhere), b.low < Lanes(kNowhere));
    return both(something, either(a.high < b.low, b.high < a.low));
}

RL_IN_PLACE void add_interval(ColumnUnion& u, unsigned block, const Interval& i) {
    if ((u.touched >> block & 1U) == 0) start_block(u, block);
    float* base = u.blocks[block].base;
    const Lanes b = load(base);
    const unsigned floats = bits(both(b < i.low, i.low < Lanes(1.0F)));
    if ((floats | (u.floating >> block & 1U)) == 0) {
        store(base, most(b, i.high));
    } else {
        add_floating(u, block, i.low, i.high);
    }
    u.covered[block] = least_of_eight(load(base));
}

/// Takes note of an interval of one head or wall, if it stands on the lower edge.
RL_IN_PLACE void note_solid(ColumnUnion& u, unsigned block, const Interval& one) {
    if ((u.touched >> block & 1U) == 0) start_block(u, block);
    float* solid = u.blocks[block].solid;
    store(solid, most(load(solid), both(one.low <= Lanes(0.0F), one.high)));
}

inline float solid_of(const ColumnUnion& u, unsigned block) {
    return (u.touched >> block & 1U) == 0 ? 0.0F : least_of_eight(load(u.blocks[block].solid));
}

struct BlockSum {
    float hidden = 0.0F, top = 0.0F;
};

/// Over the eight columns, in one order whatever the registers hold.
inline BlockSum block_sum(const ColumnUnion& u, unsigned block) {
    if ((u.touched >> block & 1U) == 0) return {};
    const BlockUnion& b = u.blocks[block];
    Lanes hidden = load(b.base);
    Lanes top = hidden;
    if ((u.floating >> block & 1U) != 0) {
        const Lanes one = load(b.high[0]) - load(b.low[0]);
        const Lanes two = load(b.high[1]) - load(b.low[1]);
        hidden = hidden + (most(one, Lanes(0.0F)) + most(two, Lanes(0.0F)));
        top = most(top, most(load(b.high[0]), load(b.high[1])));
    }
    float h[kBlock];
    float t[kBlock];
    store(h, hidden);
    store(t, top);
    BlockSum out{((h[0] + h[1]) + (h[2] + h[3])) + ((h[4] + h[5]) + (h[6] + h[7])), 0.0F};
    for (const float x : t)
        out.top = x > out.top ? x : out.top;
    return out;
}

}  // namespace
