// SPDX-License-Identifier: MIT
#pragma once

#include "sight/hidden_strips.hpp"

/// Heads and walls onto the columns. Groups of heads are thrown out by their boxes, eight groups at
/// a time, the nearest first; the cones of a group's heads are worked out eight heads at a time;
/// then, block by block, the heads that reach it are laid on its eight columns at once. Private to
/// the kernel; see hidden_lanes.hpp for the unnamed namespace.
namespace {

/// lay(strips, heads, block) for every group and block, with the heads that may hide some of it.
template <bool flat, class Lay>
inline void each_head(const View& view,
                      const KernelScene& scene,
                      const KernelEye& eye,
                      const float* covered,
                      const Lay& lay) {
    const KernelBoxes& boxes = scene.heads.boxes;
    Strips s;
    for (int batch = boxes.groups - kBlock; batch >= 0; batch -= kBlock) {
        if (boxes.batch_z_low[batch / kBlock] >= eye.z) continue;  // behind the eye
        unsigned groups = boxes_in_view(view, boxes, batch, eye);
        while (groups != 0) {
            const unsigned g = highest(groups);
            groups ^= 1U << g;
            const int group = batch + static_cast<int>(g);
            unsigned blocks = blocks_of_box(view, boxes, group, eye, covered);
            if (blocks == 0) continue;
            const unsigned alive =
                cones_of_group<flat>(view, scene.picture, scene.heads, group, eye, s);
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
template <bool flat, bool solid>
RL_IN_PLACE void lay_heads(
    const View& view, const Strips& s, unsigned heads, unsigned block, ColumnUnion& u) {
    Interval all = head_interval<flat>(view, s, lowest(heads), block);
    if constexpr (solid) note_solid(u, block, all);
    for (heads &= heads - 1; heads != 0; heads &= heads - 1) {
        const Interval one = head_interval<flat>(view, s, lowest(heads), block);
        if constexpr (solid) note_solid(u, block, one);
        if (bits(apart(all, one)) != 0) {
            add_interval(u, block, all);
            all = one;
        } else {
            all = {least(all.low, one.low), most(all.high, one.high)};
        }
    }
    add_interval(u, block, all);
}

template <bool flat, bool solid>
inline void lay_all(const View& view,
                    const KernelScene& scene,
                    const KernelEye& eye,
                    ColumnUnion& u) {
    each_head<flat>(view, scene, eye, u.covered,
                    [&](const Strips& s, unsigned some, unsigned block) {
                        lay_heads<flat, solid>(view, s, some, block, u);
                    });
    each_wall<flat>(view, scene.walls, eye, u.covered,
                    [&](const Strips& s, unsigned k, bool above, unsigned block) {
                        const Interval one = wall_interval<flat>(view, s, k, above, block);
                        if constexpr (solid) note_solid(u, block, one);
                        add_interval(u, block, one);
                    });
}

/// Of all heads, in the view or not, so that it is the same however they are grouped.
inline bool near_heads(const View& view, const KernelScene& scene, const KernelEye& eye) {
    const KernelHeads& heads = scene.heads;
    const float margin = heads.near_m;
    for (int batch = 0; batch < heads.boxes.groups; batch += kBlock) {
        if (heads.boxes.batch_z_low[batch / kBlock] - margin > eye.z) continue;
        if (heads.boxes.batch_z_high[batch / kBlock] + margin < eye.z) continue;
        unsigned groups = boxes_about_eye(heads.boxes, batch, eye, margin);
        for (; groups != 0; groups &= groups - 1) {
            const int group = batch + static_cast<int>(lowest(groups));
            if (near_in_group(view, scene.picture, heads, group, eye)) return true;
        }
    }
    return false;
}

}  // namespace
