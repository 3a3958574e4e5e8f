// SPDX-License-Identifier: MIT
#pragma once

#include "sight/hidden_shadow.hpp"
#include "sight/hidden_union.hpp"
#include "sight/hidden_view.hpp"

/// Eight heads or walls of a group, ready to be laid on columns. Private to the kernel; see
/// hidden_lanes.hpp for the unnamed namespace.
namespace {

/// Linear forms of a column's place d. For a flat picture, whose columns are all equally deep, the
/// part along z is worked in: then `_z` is that product, else the form's coefficient.
struct Strips {
    alignas(32) float b_x[kBlock], b_z[kBlock];  ///< height over the eye, in picture heights
    alignas(32) float left_x[kBlock], left_z[kBlock];
    alignas(32) float right_x[kBlock], right_z[kBlock];
    alignas(32) float near_x[kBlock], near_z[kBlock];  ///< heads: centre; walls: see hidden_exact
};

template <bool flat>
RL_IN_PLACE void keep(Strips& s, const View& view, const HeadCone<Lanes>& cone) {
    const Lanes scale(view.per_height);
    const Lanes depth(flat ? view.first_z[0] : 1.0F);
    store(s.b_x, cone.b_x * scale);
    store(s.b_z, cone.b_z * scale * depth);
    store(s.left_x, cone.left_x);
    store(s.left_z, cone.left_z * depth);
    store(s.right_x, cone.right_x);
    store(s.right_z, cone.right_z * depth);
}

/// A group's heads as the eye has them.
RL_IN_PLACE HeadPlace<Lanes> places_of(const KernelHeads& heads, int group, const KernelEye& eye) {
    const int at = kBlock * group;
    HeadPlace<Lanes> head;
    head.x = load(heads.x + at) - Lanes(eye.x);
    head.y = load(heads.y + at) - Lanes(eye.y);
    head.z = load(heads.z + at) - Lanes(eye.z);
    head.radius = load(heads.radius + at);
    head.half_height = load(heads.half_height + at);
    return head;
}

RL_IN_PLACE HeadCone<Lanes> cones_of(const KernelPicture& picture,
                                     const KernelHeads& heads,
                                     int group,
                                     const HeadPlace<Lanes>& head) {
    const auto square_root = [](Lanes x) { return root(x); };
    const int at = kBlock * group;
    return picture.upright
               ? upright_cone(head, load(heads.kappa2 + at), load(heads.per_kappa2 + at),
                              square_root)
               : head_cone(head, Lanes(picture.cosine), Lanes(picture.sine), square_root);
}

/// Others' heads that reach over the lower edge's plane: at best by their whole height, and by
/// their reach nearer or farther.
RL_IN_PLACE unsigned over_lower_edge(const View& view,
                                     const KernelHeads& heads,
                                     int group,
                                     const KernelEye& eye,
                                     const HeadPlace<Lanes>& head) {
    const Lanes reach = most(head.radius, head.half_height);
    const float steep = view.slope_low < 0.0F ? -view.slope_low : view.slope_low;
    const Lanes over =
        head.y + reach + reach * Lanes(steep + 0.01F) + Lanes(view.slope_low) * head.z;
    const Lanes own = same(load(heads.eye + kBlock * group), Lanes(eye.index));
    return bits(without(own, Lanes(0.0F) < over)) & heads.boxes.lanes[group];
}

/// The same of the upper edge's plane, from beneath.
RL_IN_PLACE unsigned under_upper_edge(const View& view, const HeadPlace<Lanes>& head) {
    const Lanes reach = most(head.radius, head.half_height);
    const float steep = view.slope_high < 0.0F ? -view.slope_high : view.slope_high;
    const Lanes under =
        head.y - reach - reach * Lanes(steep + 0.01F) + Lanes(view.slope_high) * head.z;
    return bits(under < Lanes(0.0F));
}

/// Whose generator through the eye is outside the head by enough.
RL_IN_PLACE unsigned clear_of_eye(const HeadPlace<Lanes>& head, const HeadCone<Lanes>& cone) {
    return bits(head.radius * head.radius < cone.outside);
}

/// Which of the group's heads may hide something; their cones go to `s`.
template <bool flat>
inline unsigned cones_of_group(const View& view,
                               const KernelPicture& picture,
                               const KernelHeads& heads,
                               int group,
                               const KernelEye& eye,
                               Strips& s) {
    const HeadPlace<Lanes> head = places_of(heads, group, eye);
    const unsigned alive = over_lower_edge(view, heads, group, eye, head);
    if (alive == 0) return 0;
    HeadCone<Lanes> cone = cones_of(picture, heads, group, head);
    const unsigned clear = clear_of_eye(head, cone);
    // The square of the half width is in picture heights too.
    const Lanes square(view.per_height * view.per_height);
    cone.left_x = cone.left_x * square;
    cone.left_z = cone.left_z * square;
    keep<flat>(s, view, cone);
    store(s.near_x, head.x);
    store(s.near_z, head.z);
    return alive & clear;
}

/// Whether the eye is all but within one of the group's heads, seen along the generator.
inline bool near_in_group(const View& view,
                          const KernelPicture& picture,
                          const KernelHeads& heads,
                          int group,
                          const KernelEye& eye) {
    const HeadPlace<Lanes> head = places_of(heads, group, eye);
    const unsigned before =
        over_lower_edge(view, heads, group, eye, head) & under_upper_edge(view, head);
    if (before == 0) return false;
    return (before & ~clear_of_eye(head, cones_of(picture, heads, group, head))) != 0;
}

/// Which of the group's walls count for this eye; see Shadows::add_wall for the formulas.
template <bool flat>
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
    keep<flat>(s, view, strip);
    store(s.near_x, (bz - az) * per_turn);
    store(s.near_z, (ax - bx) * per_turn);
    return bits(without(own, both(seen, right_side))) & walls.boxes.lanes[group];
}

/// Which strips a column of the block may lie within: its last one is right of their left sides,
/// and its first one left of their right sides.
template <bool flat>
inline unsigned strips_in_block(const View& view, const Strips& s, unsigned block) {
    const Lanes last_z(flat ? 1.0F : view.last_z[block]);
    const Lanes first_z(flat ? 1.0F : view.first_z[block]);
    const Lanes left = load(s.left_x) * Lanes(view.last_x[block]) + load(s.left_z) * last_z;
    const Lanes right = load(s.right_x) * Lanes(view.first_x[block]) + load(s.right_z) * first_z;
    const Lanes zero(0.0F);
    return bits(both(zero < left, zero < right));
}

/// A form at the eight columns of a block.
template <bool flat>
RL_IN_PLACE Lanes at_columns(const View& view, unsigned block, float form_x, float form_z) {
    const Lanes across = Lanes(form_x) * load(view.x + kBlock * block);
    if constexpr (flat) return across + Lanes(form_z);
    return across + Lanes(form_z) * load(view.z + kBlock * block);
}

template <bool flat>
RL_IN_PLACE Interval head_interval(const View& view, const Strips& s, unsigned k, unsigned block) {
    const Lanes zero(0.0F);
    const Lanes left = most(at_columns<flat>(view, block, s.left_x[k], s.left_z[k]), zero);
    Lanes right = most(at_columns<flat>(view, block, s.right_x[k], s.right_z[k]), zero);
    if constexpr (!flat) {
        // Only where the head is nearer than the surface.
        const Lanes x = load(view.x + kBlock * block);
        const Lanes z = load(view.z + kBlock * block);
        right =
            both(at_columns<flat>(view, block, s.near_x[k], s.near_z[k]) < x * x + z * z, right);
    }
    const Lanes middle = at_columns<flat>(view, block, s.b_x[k], s.b_z[k]) + Lanes(view.shift);
    const Lanes half = root(left * right);
    return cut(middle - half, middle + half);
}

template <bool flat>
RL_IN_PLACE Interval
wall_interval(const View& view, const Strips& s, unsigned k, bool above, unsigned block) {
    const Lanes zero(0.0F);
    Lanes within = both(zero < at_columns<flat>(view, block, s.left_x[k], s.left_z[k]),
                        zero < at_columns<flat>(view, block, s.right_x[k], s.right_z[k]));
    if constexpr (!flat) {
        const Lanes beyond = at_columns<flat>(view, block, s.near_x[k], s.near_z[k]);
        within = both(within, Lanes(1.0F) < beyond);
    }
    const Lanes edge = at_columns<flat>(view, block, s.b_x[k], s.b_z[k]) + Lanes(view.shift);
    return above ? cut(edge, both(within, Lanes(1.0F))) : cut(zero, both(within, edge));
}

}  // namespace
