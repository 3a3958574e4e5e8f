// SPDX-License-Identifier: MIT
#pragma once

#include "sight/hidden_kernel.hpp"
#include "sight/hidden_lanes.hpp"

/// The picture as one eye has it, and what can be before it by its box alone. Private to the
/// kernel; see hidden_lanes.hpp for the unnamed namespace.
namespace {

using namespace rakeline::sight::hidden;

inline unsigned lowest(unsigned mask) {
    return static_cast<unsigned>(__builtin_ctz(mask));
}
inline unsigned highest(unsigned mask) {
    return 31U - static_cast<unsigned>(__builtin_clz(mask));
}

/// The columns from the eye, and the wedge and the slopes within which a head must reach.
struct View {
    alignas(32) float x[kBlock * kMostBlocks];
    alignas(32) float z[kBlock * kMostBlocks];
    alignas(32) float first_x[kMostBlocks], first_z[kMostBlocks];
    alignas(32) float last_x[kMostBlocks], last_z[kMostBlocks];
    int blocks = 0;
    unsigned wanted = 0;
    float nearest = 0.0F, deepest = 0.0F;       ///< depth of the surface along z
    float left_x = 0.0F, left_z = 0.0F;         ///< > 0 to the right of the first wanted column
    float right_x = 0.0F, right_z = 0.0F;       ///< > 0 to the left of the last one
    float slope_low = 0.0F, slope_high = 0.0F;  ///< of the picture's edges, by depth
    float shift = 0.0F;                         ///< eye over the lower edge, in picture heights
    float per_height = 1.0F;
};

inline void set_slopes(View& view, const KernelPicture& picture, const KernelEye& eye) {
    view.nearest = eye.z - picture.z_high;
    view.deepest = eye.z - picture.z_low;
    const float low = picture.bottom - eye.y;
    const float high = low + picture.height;
    view.slope_low = low / (low < 0.0F ? view.nearest : view.deepest);
    view.slope_high = high / (high > 0.0F ? view.nearest : view.deepest);
}

inline void set_wedge(View& view) {
    const unsigned first = lowest(view.wanted);
    const unsigned last = highest(view.wanted);
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
    view.blocks = picture.blocks;
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

/// A flat picture's columns are all as deep as its first, which is kept in the frame.
template <bool flat>
inline void set_columns_of(View& view,
                           const KernelPicture& picture,
                           const KernelEye& eye,
                           unsigned block) {
    const unsigned i = kBlock * block;
    store(view.x + i, load(picture.x + i) - Lanes(eye.x));
    if constexpr (!flat) store(view.z + i, load(picture.z + i) - Lanes(eye.z));
}

template <bool flat>
inline void set_columns(View& view, const KernelPicture& picture, const KernelEye& eye) {
    for (int block = 0; block < picture.blocks; ++block)
        set_columns_of<flat>(view, picture, eye, static_cast<unsigned>(block));
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

/// Which of eight boxes have the eye, seen in plan, within them or as near as `margin`.
inline unsigned boxes_about_eye(const KernelBoxes& boxes,
                                int at,
                                const KernelEye& eye,
                                float margin) {
    const Lanes m(margin);
    const Lanes ex(eye.x);
    const Lanes ez(eye.z);
    const Lanes x = both(load(boxes.x_low + at) - m < ex, ex < load(boxes.x_high + at) + m);
    const Lanes z = both(load(boxes.z_low + at) - m < ez, ez < load(boxes.z_high + at) + m);
    return bits(both(x, z));
}

/// The most, in picture heights over the lower edge, that anything in box `g` can hide up to.
inline float top_of_box(const View& view, const KernelBoxes& boxes, int g, const KernelEye& eye) {
    const float up = boxes.y_high[g] - eye.y;
    const float depth = eye.z - (up > 0.0F ? boxes.z_high[g] : boxes.z_low[g]);
    const float slope = up / (depth > 1e-3F ? depth : 1e-3F);
    return view.shift + slope * (up > 0.0F ? view.deepest : view.nearest) * view.per_height;
}

/// Which wanted blocks box `g` can reach and is not already hidden in: `covered` is up to where, in
/// picture heights, all of a block is. The eye is before the surface, so blocks lie at z < 0.
inline unsigned blocks_of_box(
    const View& view, const KernelBoxes& boxes, int g, const KernelEye& eye, const float* covered) {
    const Lanes zero(0.0F);
    const Lanes near_z(boxes.z_high[g] - eye.z);
    const Lanes far_z(boxes.z_low[g] - eye.z);
    const Lanes least_x(boxes.x_low[g] - eye.x);
    const Lanes most_x(boxes.x_high[g] - eye.x);
    const Lanes top(top_of_box(view, boxes, g, eye));
    unsigned out = 0;
    for (int b = 0; b < view.blocks; b += kBlock) {
        const Lanes first_x = load(view.first_x + b);
        const Lanes last_x = load(view.last_x + b);
        const Lanes left =
            most(first_x * near_z, first_x * far_z) - load(view.first_z + b) * most_x;
        const Lanes right =
            load(view.last_z + b) * least_x - least(last_x * near_z, last_x * far_z);
        const Lanes open = load(covered + b) < top;
        out |= bits(both(open, both(zero < left, zero < right))) << b;
    }
    return out & view.wanted;
}

}  // namespace
