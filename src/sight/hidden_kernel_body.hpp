// SPDX-License-Identifier: MIT
#pragma once

#include "sight/hidden_shadow.hpp"
#include "sight/hidden_union.hpp"

/// The kernel, included by one file for each instruction set; see hidden_lanes.hpp for the unnamed
/// namespace. Groups of heads are thrown out by their boxes, eight groups at a time; the cones of a
/// group's heads are worked out eight at a time; then each head is laid on the blocks of columns
/// that it can reach, eight columns at a time.
namespace {

using namespace rakeline::sight::hidden;

inline unsigned lowest(unsigned mask) {
    return static_cast<unsigned>(__builtin_ctz(mask));
}

/// The columns as one eye has them, and the wedge and the slopes within which a head must reach.
struct View {
    alignas(32) float x[kBlock * kMostBlocks];  ///< from the eye
    alignas(32) float z[kBlock * kMostBlocks];
    alignas(32) float first_x[kMostBlocks], first_z[kMostBlocks];
    alignas(32) float last_x[kMostBlocks], last_z[kMostBlocks];
    unsigned wanted = 0;
    float left_x = 0.0F, left_z = 0.0F;         ///< > 0 to the right of the first wanted column
    float right_x = 0.0F, right_z = 0.0F;       ///< > 0 to the left of the last one
    float slope_low = 0.0F, slope_high = 0.0F;  ///< of the picture's edges, by depth along z
    float shift = 0.0F;                         ///< eye over the lower edge, in picture heights
    float per_height = 1.0F;
};

inline void set_slopes(View& view, const KernelPicture& picture, const KernelEye& eye) {
    const float nearest = eye.z - picture.z_high;
    const float deepest = eye.z - picture.z_low;
    const float low = picture.bottom - eye.y;
    const float high = low + picture.height;
    view.slope_low = low / (low < 0.0F ? nearest : deepest);
    view.slope_high = high / (high > 0.0F ? nearest : deepest);
}

inline void set_wedge(View& view) {
    const unsigned first = lowest(view.wanted);
    const unsigned last = 31U - static_cast<unsigned>(__builtin_clz(view.wanted));
    view.left_x = -view.first_z[first];
    view.left_z = view.first_x[first];
    view.right_x = view.last_z[last];
    view.right_z = -view.last_x[last];
}

/// All of the view but the columns themselves.
inline void set_frame(View& view,
                      const KernelPicture& picture,
                      const KernelEye& eye,
                      unsigned wanted) {
    const Lanes ex(eye.x);
    const Lanes ez(eye.z);
    for (int b = 0; b < picture.blocks; b += kBlock) {
        store(view.first_x + b, load(picture.first_x + b) - ex);
        store(view.first_z + b, load(picture.first_z + b) - ez);
        store(view.last_x + b, load(picture.last_x + b) - ex);
        store(view.last_z + b, load(picture.last_z + b) - ez);
    }
    view.wanted = wanted;
    view.per_height = 1.0F / picture.height;
    view.shift = (eye.y - picture.bottom) * view.per_height;
    set_slopes(view, picture, eye);
    set_wedge(view);
}

inline void set_columns(View& view, const KernelPicture& picture, const KernelEye& eye) {
    const Lanes ex(eye.x);
    const Lanes ez(eye.z);
    for (int i = 0; i < kBlock * picture.blocks; i += kBlock) {
        store(view.x + i, load(picture.x + i) - ex);
        store(view.z + i, load(picture.z + i) - ez);
    }
}

/// Which of eight boxes reach into the view: over both sides of the wedge by their best corner,
/// over the lower edge's plane and under the upper one's by their best height and depth.
inline unsigned boxes_in_view(const View& view,
                              const KernelBoxes& boxes,
                              int at,
                              const KernelEye& eye) {
    const Lanes zero(0.0F);
    const Lanes ex(eye.x);
    const Lanes ey(eye.y);
    const Lanes ez(eye.z);
    const Lanes near_z = load(boxes.z_high + at) - ez;
    const Lanes far_z = load(boxes.z_low + at) - ez;
    const Lanes least_x = load(boxes.x_low + at) - ex;
    const Lanes most_x = load(boxes.x_high + at) - ex;
    const Lanes left = Lanes(view.left_x) * (view.left_x > 0.0F ? most_x : least_x) +
                       Lanes(view.left_z) * (view.left_z > 0.0F ? near_z : far_z);
    const Lanes right = Lanes(view.right_x) * (view.right_x > 0.0F ? most_x : least_x) +
                        Lanes(view.right_z) * (view.right_z > 0.0F ? near_z : far_z);
    const Lanes deepest = zero - far_z;
    const Lanes nearest = most(zero - near_z, zero);
    const Lanes low = Lanes(view.slope_low) * (view.slope_low < 0.0F ? deepest : nearest);
    const Lanes high = Lanes(view.slope_high) * (view.slope_high > 0.0F ? deepest : nearest);
    const Lanes wedge = both(zero < left, zero < right);
    const Lanes heights =
        both(low < load(boxes.y_high + at) - ey, load(boxes.y_low + at) - ey < high);
    return bits(both(wedge, heights));
}

/// Eight heads or walls ready to be laid on columns; place d has y = (b . d) + shift.
struct Strips {
    alignas(32) float b_x[kBlock], b_z[kBlock];
    alignas(32) float left_x[kBlock], left_z[kBlock];
    alignas(32) float right_x[kBlock], right_z[kBlock];
    alignas(32) float near_x[kBlock], near_z[kBlock];  ///< heads: centre; walls: see hidden_exact
};

RL_IN_PLACE void keep(Strips& s, const HeadCone<Lanes>& cone, float per_height) {
    const Lanes scale(per_height);
    store(s.b_x, cone.b_x * scale);
    store(s.b_z, cone.b_z * scale);
    store(s.left_x, cone.left_x);
    store(s.left_z, cone.left_z);
    store(s.right_x, cone.right_x);
    store(s.right_z, cone.right_z);
}

/// Blocks of which a column may lie within strip `k`: their last one is right of its left side, and
/// their first one left of its right side.
inline unsigned blocks_in_reach(const View& view,
                                const KernelPicture& picture,
                                const Strips& s,
                                unsigned k) {
    unsigned out = 0;
    for (int b = 0; b < picture.blocks; b += kBlock) {
        const Lanes left =
            Lanes(s.left_x[k]) * load(view.last_x + b) + Lanes(s.left_z[k]) * load(view.last_z + b);
        const Lanes right = Lanes(s.right_x[k]) * load(view.first_x + b) +
                            Lanes(s.right_z[k]) * load(view.first_z + b);
        const Lanes zero(0.0F);
        out |= bits(both(zero < left, zero < right)) << b;
    }
    return out & view.wanted;
}

/// Values of a linear form at the eight columns of a block.
RL_IN_PLACE Lanes at_columns(const float* x, const float* z, float form_x, float form_z) {
    return Lanes(form_x) * load(x) + Lanes(form_z) * load(z);
}

template <bool flat>
RL_IN_PLACE void lay_head(
    const View& view, const Strips& s, unsigned k, unsigned block, ColumnUnion& u) {
    const float* x = view.x + kBlock * block;
    const float* z = view.z + kBlock * block;
    const Lanes zero(0.0F);
    const Lanes left = most(at_columns(x, z, s.left_x[k], s.left_z[k]), zero);
    Lanes right = most(at_columns(x, z, s.right_x[k], s.right_z[k]), zero);
    if constexpr (!flat) {
        // Only where the head is nearer than the surface.
        const Lanes along = at_columns(x, z, s.near_x[k], s.near_z[k]);
        const Lanes whole = load(x) * load(x) + load(z) * load(z);
        right = both(along < whole, right);
    }
    const Lanes middle = at_columns(x, z, s.b_x[k], s.b_z[k]) + Lanes(view.shift);
    const Lanes half = root(left * right);
    add_interval(u, block, middle - half, middle + half);
}

template <bool flat>
RL_IN_PLACE void lay_wall(
    const View& view, const Strips& s, unsigned k, bool above, unsigned block, ColumnUnion& u) {
    const float* x = view.x + kBlock * block;
    const float* z = view.z + kBlock * block;
    const Lanes zero(0.0F);
    Lanes within = both(zero < at_columns(x, z, s.left_x[k], s.left_z[k]),
                        zero < at_columns(x, z, s.right_x[k], s.right_z[k]));
    if constexpr (!flat) {
        within = both(within, Lanes(1.0F) < at_columns(x, z, s.near_x[k], s.near_z[k]));
    }
    const Lanes edge = at_columns(x, z, s.b_x[k], s.b_z[k]) + Lanes(view.shift);
    if (above) {
        add_interval(u, block, edge, both(within, Lanes(1.0F)));
    } else {
        add_interval(u, block, zero, both(within, edge));
    }
}

/// Which of the group's heads may hide something; their cones go to `s`. `too_near` tells of heads
/// within which, seen in plan, the eye all but stands.
inline unsigned cones_of_group(const View& view,
                               const KernelPicture& picture,
                               const KernelHeads& heads,
                               int group,
                               const KernelEye& eye,
                               Strips& s,
                               bool& too_near) {
    const int at = kBlock * group;
    HeadPlace<Lanes> head;
    head.x = load(heads.x + at) - Lanes(eye.x);
    head.y = load(heads.y + at) - Lanes(eye.y);
    head.z = load(heads.z + at) - Lanes(eye.z);
    head.radius = load(heads.radius + at);
    head.half_height = load(heads.half_height + at);
    const float steep = view.slope_low < 0.0F ? -view.slope_low : view.slope_low;
    // Over the lower edge's plane: at best by the whole height, and the radius nearer or farther.
    const Lanes over = head.y + head.half_height + head.radius * Lanes(steep + 0.01F) +
                       Lanes(view.slope_low) * head.z;
    const Lanes others = Lanes(0.0F) < over;
    unsigned alive = bits(without(same(load(heads.eye + at), Lanes(eye.index)), others)) &
                     heads.boxes.lanes[group];
    if (alive == 0) return 0;
    const HeadCone<Lanes> cone = head_cone(head, Lanes(picture.cosine), Lanes(picture.sine),
                                           [](Lanes x) { return root(x); });
    const unsigned clear = bits(head.radius * head.radius < cone.outside);
    too_near = too_near || (alive & ~clear) != 0;
    keep(s, cone, view.per_height);
    // The root of the product scales with the height too.
    const Lanes square(view.per_height * view.per_height);
    store(s.left_x, cone.left_x * square);
    store(s.left_z, cone.left_z * square);
    store(s.near_x, head.x);
    store(s.near_z, head.z);
    return alive & clear;
}

/// lay(strips, k, blocks) for every head that may hide something of the wanted blocks.
template <class Lay>
inline void each_head(const View& view,
                      const KernelPicture& picture,
                      const KernelHeads& heads,
                      const KernelEye& eye,
                      bool& too_near,
                      const Lay& lay) {
    Strips s;
    for (int batch = 0; batch < heads.boxes.groups; batch += kBlock) {
        unsigned groups = boxes_in_view(view, heads.boxes, batch, eye);
        for (; groups != 0; groups &= groups - 1) {
            const int group = batch + static_cast<int>(lowest(groups));
            unsigned alive = cones_of_group(view, picture, heads, group, eye, s, too_near);
            for (; alive != 0; alive &= alive - 1) {
                const unsigned k = lowest(alive);
                lay(s, k, blocks_in_reach(view, picture, s, k));
            }
        }
    }
}

/// Which of the group's walls count for this eye; see Shadows::add_wall for the formulas.
inline unsigned strips_of_walls(
    const View& view, const KernelWalls& walls, int group, const KernelEye& eye, Strips& s) {
    const int at = kBlock * group;
    Lanes ax = load(walls.from_x + at) - Lanes(eye.x);
    Lanes ay = load(walls.from_y + at) - Lanes(eye.y);
    Lanes az = load(walls.from_z + at) - Lanes(eye.z);
    Lanes bx = load(walls.to_x + at) - Lanes(eye.x);
    Lanes by = load(walls.to_y + at) - Lanes(eye.y);
    Lanes bz = load(walls.to_z + at) - Lanes(eye.z);
    Lanes turn = ax * bz - az * bx;
    const Lanes other_way = turn < Lanes(0.0F);
    const auto in_order = [&](Lanes& a, Lanes& b) {
        const Lanes first = select(other_way, b, a);
        b = select(other_way, a, b);
        a = first;
    };
    in_order(ax, bx);
    in_order(ay, by);
    in_order(az, bz);
    turn = select(other_way, Lanes(0.0F) - turn, turn);
    // Not edge-on: the sine of the angle in plan, squared.
    const Lanes seen = Lanes(1e-10F) * (ax * ax + az * az) * (bx * bx + bz * bz) < turn * turn;
    const Lanes above = same(load(walls.above + at), Lanes(1.0F));
    const Lanes limit = load(walls.limit + at);
    const Lanes right_side = select(above, Lanes(eye.up) < limit, limit < Lanes(eye.up));
    const Lanes own = same(load(walls.eye + at), Lanes(eye.index));
    const Lanes per_turn = Lanes(1.0F) / turn;
    HeadCone<Lanes> strip;
    strip.b_x = (ay * bz - az * by) * per_turn;
    strip.b_z = (ax * by - ay * bx) * per_turn;
    strip.left_x = Lanes(0.0F) - az;
    strip.left_z = ax;
    strip.right_x = bz;
    strip.right_z = Lanes(0.0F) - bx;
    keep(s, strip, view.per_height);
    store(s.near_x, (bz - az) * per_turn);
    store(s.near_z, (ax - bx) * per_turn);
    return bits(without(own, both(seen, right_side))) & walls.boxes.lanes[group];
}

/// lay(strips, k, above, blocks) for every wall that may.
template <class Lay>
inline void each_wall(const View& view,
                      const KernelPicture& picture,
                      const KernelWalls& walls,
                      const KernelEye& eye,
                      const Lay& lay) {
    Strips s;
    for (int batch = 0; batch < walls.boxes.groups; batch += kBlock) {
        unsigned groups = boxes_in_view(view, walls.boxes, batch, eye);
        for (; groups != 0; groups &= groups - 1) {
            const int group = batch + static_cast<int>(lowest(groups));
            unsigned alive = strips_of_walls(view, walls, group, eye, s);
            for (; alive != 0; alive &= alive - 1) {
                const unsigned k = lowest(alive);
                const bool above = walls.above[kBlock * group + static_cast<int>(k)] == 1.0F;
                lay(s, k, above, blocks_in_reach(view, picture, s, k));
            }
        }
    }
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
    set_columns(view, picture, eye);
    bool too_near = false;
    each_head(view, picture, heads, eye, too_near,
              [&](const Strips& s, unsigned k, unsigned blocks) {
                  for (; blocks != 0; blocks &= blocks - 1)
                      lay_head<flat>(view, s, k, lowest(blocks), u);
              });
    each_wall(view, picture, walls, eye,
              [&](const Strips& s, unsigned k, bool above, unsigned blocks) {
                  for (; blocks != 0; blocks &= blocks - 1)
                      lay_wall<flat>(view, s, k, above, lowest(blocks), u);
              });
    for (unsigned rest = wanted; rest != 0; rest &= rest - 1) {
        const unsigned block = lowest(rest);
        const BlockSum sum = block_sum(u, block);
        hidden[block] = sum.hidden;
        top[block] = sum.top;
    }
    return too_near ? wanted : u.overflow;
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
    View view;
    set_frame(view, picture, eye, wanted);
    unsigned out = 0;
    bool too_near = false;
    each_head(view, picture, heads, eye, too_near,
              [&](const Strips&, unsigned, unsigned blocks) { out |= blocks; });
    each_wall(view, picture, walls, eye,
              [&](const Strips&, unsigned, bool, unsigned blocks) { out |= blocks; });
    return too_near ? wanted : out;
}

}  // namespace
