// SPDX-License-Identifier: MIT
#pragma once

#include "sight/hidden_strips.hpp"

/// The kernel, included by one file for each instruction set; see hidden_lanes.hpp for the unnamed
/// namespace. Groups of heads are thrown out by their boxes, eight groups at a time, the nearest
/// first; the cones of a group's heads are worked out eight heads at a time; then, block by block,
/// the heads that reach it are laid on its eight columns at once.
namespace {

/// lay(strips, heads, block) for every group and block, with the heads that may hide some of it.
template <bool flat, class Lay>
inline void each_head(const View& view,
                      const KernelPicture& picture,
                      const KernelHeads& heads,
                      const KernelEye& eye,
                      const float* covered,
                      bool& too_near,
                      const Lay& lay) {
    Strips s;
    for (int batch = heads.boxes.groups - kBlock; batch >= 0; batch -= kBlock) {
        if (heads.boxes.batch_z_low[batch / kBlock] >= eye.z) continue;  // behind the eye
        unsigned groups = boxes_in_view(view, heads.boxes, batch, eye);
        while (groups != 0) {
            const unsigned g = highest(groups);
            groups ^= 1U << g;
            const int group = batch + static_cast<int>(g);
            unsigned blocks = blocks_of_box(view, heads.boxes, group, eye, covered);
            if (blocks == 0) continue;
            const unsigned alive =
                cones_of_group<flat>(view, picture, heads, group, eye, s, too_near);
            if (alive == 0) continue;
            for (; blocks != 0; blocks &= blocks - 1) {
                const unsigned block = lowest(blocks);
                const unsigned in_block = alive & strips_in_block<flat>(view, s, block);
                if (in_block != 0) lay(s, in_block, block);
            }
        }
    }
}

/// lay(strips, k, above, block) for every wall and block that it may hide some of.
template <bool flat, class Lay>
inline void each_wall(const View& view,
                      const KernelWalls& walls,
                      const KernelEye& eye,
                      const float* covered,
                      const Lay& lay) {
    Strips s;
    for (int batch = walls.boxes.groups - kBlock; batch >= 0; batch -= kBlock) {
        if (walls.boxes.batch_z_low[batch / kBlock] >= eye.z) continue;  // behind the eye
        unsigned groups = boxes_in_view(view, walls.boxes, batch, eye);
        for (; groups != 0; groups &= groups - 1) {
            const int group = batch + static_cast<int>(lowest(groups));
            unsigned blocks = blocks_of_box(view, walls.boxes, group, eye, covered);
            if (blocks == 0) continue;
            const unsigned alive = strips_of_walls<flat>(view, walls, group, eye, s);
            for (; blocks != 0; blocks &= blocks - 1) {
                const unsigned block = lowest(blocks);
                unsigned some = alive & strips_in_block<flat>(view, s, block);
                for (; some != 0; some &= some - 1) {
                    const unsigned k = lowest(some);
                    lay(s, k, walls.above[kBlock * group + static_cast<int>(k)] == 1.0F, block);
                }
            }
        }
    }
}

/// The heads of one group seldom meet in one column: together they are mostly one interval in each.
template <bool flat>
inline void lay_heads(
    const View& view, const Strips& s, unsigned heads, unsigned block, ColumnUnion& u) {
    Interval all = head_interval<flat>(view, s, lowest(heads), block);
    for (heads &= heads - 1; heads != 0; heads &= heads - 1) {
        const Interval one = head_interval<flat>(view, s, lowest(heads), block);
        if (bits(apart(all, one)) != 0) {
            add_interval(u, block, all);
            all = one;
        } else {
            all = {least(all.low, one.low), most(all.high, one.high)};
        }
    }
    add_interval(u, block, all);
}

template <bool flat>
inline unsigned blocks_of(const KernelPicture& picture,
                          const KernelHeads& heads,
                          const KernelWalls& walls,
                          const KernelEye& eye,
                          unsigned wanted,
                          float* hidden,
                          float* top) {
    View view;
    ColumnUnion u;
    set_frame(view, picture, eye, wanted);
    set_columns<flat>(view, picture, eye);
    bool too_near = false;
    each_head<flat>(view, picture, heads, eye, u.covered, too_near,
                    [&](const Strips& s, unsigned some, unsigned block) {
                        lay_heads<flat>(view, s, some, block, u);
                    });
    each_wall<flat>(view, walls, eye, u.covered,
                    [&](const Strips& s, unsigned k, bool above, unsigned block) {
                        add_interval(u, block, wall_interval<flat>(view, s, k, above, block));
                    });
    for (unsigned rest = wanted; rest != 0; rest &= rest - 1) {
        const unsigned block = lowest(rest);
        const BlockSum sum = block_sum(u, block);
        hidden[block] = sum.hidden;
        top[block] = sum.top;
    }
    return too_near ? wanted : u.overflow;
}

template <bool flat>
inline unsigned reach_of(const KernelPicture& picture,
                         const KernelHeads& heads,
                         const KernelWalls& walls,
                         const KernelEye& eye,
                         unsigned wanted) {
    View view;
    set_frame(view, picture, eye, wanted);
    alignas(32) const float covered[kMostBlocks] = {};
    unsigned out = 0;
    bool too_near = false;
    each_head<flat>(view, picture, heads, eye, covered, too_near,
                    [&](const Strips&, unsigned, unsigned block) { out |= 1U << block; });
    each_wall<flat>(view, walls, eye, covered,
                    [&](const Strips&, unsigned, bool, unsigned block) { out |= 1U << block; });
    return too_near ? wanted : out;
}

inline unsigned hidden_blocks(const KernelPicture& picture,
                              const KernelHeads& heads,
                              const KernelWalls& walls,
                              const KernelEye& eye,
                              unsigned wanted,
                              float* hidden,
                              float* top) {
    return picture.flat ? blocks_of<true>(picture, heads, walls, eye, wanted, hidden, top)
                        : blocks_of<false>(picture, heads, walls, eye, wanted, hidden, top);
}

inline unsigned reached_blocks(const KernelPicture& picture,
                               const KernelHeads& heads,
                               const KernelWalls& walls,
                               const KernelEye& eye,
                               unsigned wanted) {
    return picture.flat ? reach_of<true>(picture, heads, walls, eye, wanted)
                        : reach_of<false>(picture, heads, walls, eye, wanted);
}

}  // namespace
