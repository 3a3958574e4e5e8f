// SPDX-License-Identifier: MIT
#pragma once

#include "sight/hidden_kernel.hpp"
#include "sight/hidden_lanes.hpp"

/// Union of intervals in every column at once. Private to the kernel; see hidden_lanes.hpp for the
/// unnamed namespace.
namespace {

using rakeline::sight::hidden::kBlock;
using rakeline::sight::hidden::kMostBlocks;

constexpr float kNowhere = 1e30F;  ///< lower end of no interval

/// What is hidden of each column, in picture heights, as disjoint intervals: one that stands on the
/// lower edge, as most do, and up to two that float above it.
struct ColumnUnion {
    alignas(32) float base[kBlock * kMostBlocks];
    alignas(32) float low[2][kBlock * kMostBlocks];
    alignas(32) float high[2][kBlock * kMostBlocks];
    unsigned touched = 0;   ///< blocks with something hidden; the others' numbers are void
    unsigned floating = 0;  ///< blocks whose floating intervals are in use
    unsigned overflow = 0;  ///< blocks in which a third one was needed
};

inline void start_block(ColumnUnion& u, unsigned block) {
    store(u.base + kBlock * block, Lanes(0.0F));
    u.touched |= 1U << block;
}

inline void start_floating(ColumnUnion& u, unsigned block) {
    for (int k = 0; k < 2; ++k) {
        store(u.low[k] + kBlock * block, Lanes(kNowhere));
        store(u.high[k] + kBlock * block, Lanes(-kNowhere));
    }
    u.floating |= 1U << block;
}

/// Takes in the interval of slot `k` where it meets [low, high], and empties the slot there.
inline void absorb(ColumnUnion& u, unsigned block, int k, Lanes& low, Lanes& high) {
    float* slot_low = u.low[k] + kBlock * block;
    float* slot_high = u.high[k] + kBlock * block;
    const Lanes sl = load(slot_low);
    const Lanes sh = load(slot_high);
    const Lanes meets = both(low <= sh, sl <= high);
    low = select(meets, least(low, sl), low);
    high = select(meets, most(high, sh), high);
    store(slot_low, select(meets, Lanes(kNowhere), sl));
    store(slot_high, select(meets, Lanes(-kNowhere), sh));
}

/// Puts the interval into slot `k` where that is empty, and takes it from [low, high].
inline void place(ColumnUnion& u, unsigned block, int k, Lanes& low, Lanes& high) {
    float* slot_low = u.low[k] + kBlock * block;
    float* slot_high = u.high[k] + kBlock * block;
    const Lanes sl = load(slot_low);
    const Lanes empty = same(sl, Lanes(kNowhere));
    store(slot_low, select(empty, low, sl));
    store(slot_high, select(empty, high, load(slot_high)));
    low = select(empty, Lanes(kNowhere), low);
    high = select(empty, Lanes(-kNowhere), high);
}

inline void add_floating(ColumnUnion& u, unsigned block, Lanes low, Lanes high) {
    if ((u.floating >> block & 1U) == 0) start_floating(u, block);
    // The slots are disjoint, so one that was missed can't meet what another one added.
    absorb(u, block, 0, low, high);
    absorb(u, block, 1, low, high);
    float* base = u.base + kBlock * block;
    const Lanes b = load(base);
    const Lanes stands = low <= b;
    store(base, select(stands, most(b, high), b));
    low = select(stands, Lanes(kNowhere), low);
    high = select(stands, Lanes(-kNowhere), high);
    place(u, block, 0, low, high);
    place(u, block, 1, low, high);
    if (bits(low < Lanes(kNowhere)) != 0) u.overflow |= 1U << block;
}

/// Adds [low, high], cut to the picture, where low < high.
inline void add_interval(ColumnUnion& u, unsigned block, Lanes low, Lanes high) {
    low = most(low, Lanes(0.0F));
    high = least(high, Lanes(1.0F));
    const Lanes real = low < high;
    if ((u.touched >> block & 1U) == 0) start_block(u, block);
    float* base = u.base + kBlock * block;
    const Lanes b = load(base);
    const unsigned floats = bits(both(real, b < low)) | (u.floating >> block & 1U);
    if (floats == 0) {
        store(base, most(b, both(real, high)));
        return;
    }
    add_floating(u, block, select(real, low, Lanes(kNowhere)),
                 select(real, high, Lanes(-kNowhere)));
}

struct BlockSum {
    float hidden = 0.0F, top = 0.0F;
};

/// Over the eight columns, in one order whatever the registers hold.
inline BlockSum block_sum(const ColumnUnion& u, unsigned block) {
    if ((u.touched >> block & 1U) == 0) return {};
    Lanes hidden = load(u.base + kBlock * block);
    Lanes top = hidden;
    if ((u.floating >> block & 1U) != 0) {
        const Lanes one = load(u.high[0] + kBlock * block) - load(u.low[0] + kBlock * block);
        const Lanes two = load(u.high[1] + kBlock * block) - load(u.low[1] + kBlock * block);
        hidden = hidden + (most(one, Lanes(0.0F)) + most(two, Lanes(0.0F)));
        top = most(top, most(load(u.high[0] + kBlock * block), load(u.high[1] + kBlock * block)));
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
