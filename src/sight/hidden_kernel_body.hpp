// SPDX-License-Identifier: MIT
#pragma once

#include "sight/hidden_kernel_lay.hpp"

/// The kernel's five functions, included by one file for each instruction set; see
/// hidden_kernel.hpp for what they do, and hidden_lanes.hpp for the unnamed namespace.
namespace {

inline void sum_up(const ColumnUnion& u, unsigned wanted, SeatBlocks& out) {
    for (; wanted != 0; wanted &= wanted - 1) {
        const unsigned block = lowest(wanted);
        const BlockSum sum = block_sum(u, block);
        out.hidden[block] = sum.hidden;
        out.top[block] = sum.top;
    }
}

inline void keep_solid(const ColumnUnion& u, unsigned wanted, SeatBlocks& out) {
    for (; wanted != 0; wanted &= wanted - 1)
        out.solid[lowest(wanted)] = solid_of(u, lowest(wanted));
}

/// A block's numbers but `solid`; the floating ones only where they are in use.
inline void copy_block(const BlockUnion& from, bool floating, BlockUnion& to) {
    store(to.base, load(from.base));
    if (!floating) return;
    for (int k = 0; k < 2; ++k) {
        store(to.low[k], load(from.low[k]));
        store(to.high[k], load(from.high[k]));
    }
}

inline void keep_union(const ColumnUnion& u, unsigned wanted, KernelRest& rest) {
    rest.ready |= wanted & ~u.overflow;
    rest.touched = (rest.touched & ~wanted) | (u.touched & wanted);
    rest.floating = (rest.floating & ~wanted) | (u.floating & wanted);
    for (; wanted != 0; wanted &= wanted - 1) {
        const unsigned b = lowest(wanted);
        const bool touched = (u.touched >> b & 1U) != 0;
        rest.covered[b] = touched ? u.covered[b] : 0.0F;
        if (touched) copy_block(u.blocks[b], (u.floating >> b & 1U) != 0, rest.blocks[b]);
    }
}

inline void take_union(const KernelRest& rest, unsigned block, ColumnUnion& u) {
    const unsigned bit = 1U << block;
    u.touched |= rest.touched & bit;
    u.floating |= rest.floating & bit;
    if ((rest.touched & bit) == 0) return;
    copy_block(rest.blocks[block], (rest.floating & bit) != 0, u.blocks[block]);
}

template <bool flat, bool solid>
inline KernelAnswer hidden_of(const KernelScene& scene,
                              const KernelEye& eye,
                              unsigned wanted,
                              SeatBlocks& out) {
    View view;
    ColumnUnion u;
    set_frame(view, scene.picture, eye, wanted);
    if (near_heads(view, scene, eye)) return {0, true};
    set_columns<flat>(view, scene.picture, eye);
    lay_all<flat, solid>(view, scene, eye, u);
    sum_up(u, wanted, out);
    if constexpr (solid) keep_solid(u, wanted, out);
    return {u.overflow, false};
}

template <bool flat>
inline unsigned rest_of(const KernelScene& scene,
                        const KernelEye& eye,
                        unsigned wanted,
                        KernelRest& rest,
                        SeatBlocks& out) {
    View view;
    ColumnUnion u;
    set_frame(view, scene.picture, eye, wanted);
    set_columns<flat>(view, scene.picture, eye);
    lay_all<flat, true>(view, scene, eye, u);
    keep_union(u, wanted, rest);
    keep_solid(u, wanted, out);
    return u.overflow;
}

template <bool flat>
inline MovedAnswer moved_over(const KernelScene& scene,
                              const KernelEye& eye,
                              unsigned wanted,
                              unsigned before,
                              const KernelRest& rest,
                              SeatBlocks& out) {
    View view;
    ColumnUnion u;
    set_frame(view, scene.picture, eye, wanted);
    if (near_heads(view, scene, eye)) return {0, 0, true};
    for (int b = 0; b < scene.picture.blocks; b += kBlock)
        store(u.covered + b, load(rest.covered + b));
    unsigned reached = 0;
    const auto take = [&](unsigned block) {
        set_columns_of<flat>(view, scene.picture, eye, block);
        take_union(rest, block, u);
    };
    const auto can_lay = [&](unsigned block) {
        const bool ready = (rest.ready >> block & 1U) != 0;
        if (ready && (reached >> block & 1U) == 0) take(block);
        reached |= 1U << block;
        return ready;
    };
    each_head<flat>(view, scene, eye, u.covered,
                    [&](const Strips& s, unsigned some, unsigned block) {
                        if (can_lay(block)) lay_heads<flat, false>(view, s, some, block, u);
                    });
    each_wall<flat>(view, scene.walls, eye, u.covered,
                    [&](const Strips& s, unsigned k, bool above, unsigned block) {
                        if (can_lay(block))
                            add_interval(u, block, wall_interval<flat>(view, s, k, above, block));
                    });
    for (unsigned alone = before & rest.ready & ~reached; alone != 0; alone &= alone - 1)
        take_union(rest, lowest(alone), u);
    sum_up(u, rest.ready & (reached | before), out);
    return {reached, u.overflow, false};
}

template <bool flat>
inline KernelAnswer reach_of(const KernelScene& scene,
                             const KernelEye& eye,
                             unsigned wanted,
                             const float* covered) {
    View view;
    set_frame(view, scene.picture, eye, wanted);
    if (near_heads(view, scene, eye)) return {wanted, true};
    unsigned out = 0;
    each_head<flat>(view, scene, eye, covered,
                    [&](const Strips&, unsigned, unsigned block) { out |= 1U << block; });
    each_wall<flat>(view, scene.walls, eye, covered,
                    [&](const Strips&, unsigned, bool, unsigned block) { out |= 1U << block; });
    return {out, false};
}

template <bool flat>
inline int intervals_of(const KernelScene& scene,
                        const KernelEye& eye,
                        unsigned block,
                        float* out) {
    View view;
    alignas(32) const float covered[kMostBlocks] = {};
    set_frame(view, scene.picture, eye, 1U << block);
    set_columns<flat>(view, scene.picture, eye);
    int count = 0;
    const auto write = [&](const Interval& one) {
        store(out + 2 * kBlock * count, one.low);
        store(out + 2 * kBlock * count + kBlock, one.high);
        ++count;
    };
    each_head<flat>(view, scene, eye, covered, [&](const Strips& s, unsigned some, unsigned b) {
        for (; some != 0; some &= some - 1)
            write(head_interval<flat>(view, s, lowest(some), b));
    });
    each_wall<flat>(view, scene.walls, eye, covered,
                    [&](const Strips& s, unsigned k, bool above, unsigned b) {
                        write(wall_interval<flat>(view, s, k, above, b));
                    });
    return count;
}

inline KernelAnswer hidden_blocks(
    const KernelScene& scene, const KernelEye& eye, unsigned wanted, bool solid, SeatBlocks& out) {
    if (scene.picture.flat) {
        return solid ? hidden_of<true, true>(scene, eye, wanted, out)
                     : hidden_of<true, false>(scene, eye, wanted, out);
    }
    return solid ? hidden_of<false, true>(scene, eye, wanted, out)
                 : hidden_of<false, false>(scene, eye, wanted, out);
}

inline unsigned rest_blocks(const KernelScene& scene,
                            const KernelEye& eye,
                            unsigned wanted,
                            KernelRest& rest,
                            SeatBlocks& out) {
    return scene.picture.flat ? rest_of<true>(scene, eye, wanted, rest, out)
                              : rest_of<false>(scene, eye, wanted, rest, out);
}

inline MovedAnswer moved_blocks(const KernelScene& scene,
                                const KernelEye& eye,
                                unsigned wanted,
                                unsigned before,
                                const KernelRest& rest,
                                SeatBlocks& out) {
    return scene.picture.flat ? moved_over<true>(scene, eye, wanted, before, rest, out)
                              : moved_over<false>(scene, eye, wanted, before, rest, out);
}

inline KernelAnswer reached_blocks(const KernelScene& scene,
                                   const KernelEye& eye,
                                   unsigned wanted,
                                   const float* covered) {
    return scene.picture.flat ? reach_of<true>(scene, eye, wanted, covered)
                              : reach_of<false>(scene, eye, wanted, covered);
}

inline int block_intervals(const KernelScene& scene,
                           const KernelEye& eye,
                           unsigned block,
                           float* out) {
    return scene.picture.flat ? intervals_of<true>(scene, eye, block, out)
                              : intervals_of<false>(scene, eye, block, out);
}

inline Kernel kernel() {
    return {hidden_blocks, rest_blocks, moved_blocks, reached_blocks, block_intervals};
}

}  // namespace
