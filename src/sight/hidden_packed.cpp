// SPDX-License-Identifier: MIT
#include "sight/hidden_packed.hpp"

#include "base/assert.hpp"

#include <glm/common.hpp>

#include <algorithm>
#include <cmath>

namespace rakeline::sight::hidden {
namespace {

/// The kernel can't take an eye within sqrt 2 reaches of a head's centre; its box is one reach.
constexpr double kNearReaches = 0.4143;
constexpr std::size_t kHeadRows = 8;
constexpr std::size_t kWallRows = 9;

Item item_of(const Head& head, int source, const HiddenInput& in, const PictureColumns& columns) {
    const glm::dvec3 c = in_patch_frame(in.surface, head.centre);
    const double reach = std::max(head.radius_m, head.half_height_m);
    const double deep = columns.tilt.sine == 0.0 ? head.radius_m : reach;
    const glm::dvec3 size{head.radius_m, reach, deep};
    return {source, c - size, c + size};
}

Item item_of(const Wall& wall, int source, const HiddenInput& in, const PictureColumns&) {
    const glm::dvec3 from = in_patch_frame(in.surface, wall.from);
    const glm::dvec3 to = in_patch_frame(in.surface, wall.to);
    Item item{source, glm::min(from, to), glm::max(from, to)};
    if (wall.hides == WallHides::below) {
        item.low.y = -kFarOff_m;
    } else {
        item.high.y = kFarOff_m;
    }
    return item;
}

/// A flat surface has what is behind it left out.
bool counts(const Head& head, const HiddenInput& in, const PictureColumns& columns) {
    return !columns.flat || in_patch_frame(in.surface, head.centre).z > 0.0;
}

bool counts(const Wall& wall, const HiddenInput& in, const PictureColumns& columns) {
    return !columns.flat ||
           in_patch_frame(in.surface, wall.from).z + in_patch_frame(in.surface, wall.to).z > 0.0;
}

template <class T>
std::vector<Item> items_of(std::span<const T> list,
                           const HiddenInput& in,
                           const PictureColumns& columns) {
    std::vector<Item> items;
    items.reserve(list.size());
    for (std::size_t i = 0; i < list.size(); ++i) {
        if (counts(list[i], in, columns))
            items.push_back(item_of(list[i], static_cast<int>(i), in, columns));
    }
    return items;
}

/// Of the group that holds `list[i]`.
template <class T>
Item box_about(const PackedGroups& groups,
               std::size_t group,
               std::span<const T> list,
               const HiddenInput& in,
               const PictureColumns& columns) {
    Item box{-1, glm::dvec3(kFarOff_m), glm::dvec3(-kFarOff_m)};
    for (std::size_t at = kBlock * group; at < kBlock * (group + 1); ++at) {
        const int source = groups.source[at];
        if (source < 0) continue;
        const Item item = item_of(list[static_cast<std::size_t>(source)], source, in, columns);
        box.low = glm::min(box.low, item.low);
        box.high = glm::max(box.high, item.high);
    }
    return box;
}

/// The boxes of the groups in which something changed.
template <class T>
void fit_boxes(std::span<const T> list,
               std::span<const std::size_t> changed,
               const HiddenInput& in,
               const PictureColumns& columns,
               PackedGroups& groups) {
    int last = -1;
    for (const std::size_t i : changed) {
        const int group = groups.places[i] / kBlock;
        if (group == last) continue;
        last = group;
        const auto at = static_cast<std::size_t>(group);
        groups.set_box(at, box_about(groups, at, list, in, columns));
    }
}

/// Whether all that changed was packed and still counts.
template <class T>
bool in_place(std::span<const T> list,
              std::span<const std::size_t> changed,
              const HiddenInput& in,
              const PictureColumns& columns,
              const PackedGroups& groups) {
    return std::ranges::all_of(changed, [&](std::size_t i) {
        return groups.places[i] >= 0 && counts(list[i], in, columns);
    });
}

}  // namespace

PackedPicture::PackedPicture(const PictureColumns& columns)
    : columns_(2, columns.places.size()), ends_(4, rounded_up(columns.places.size() / kBlock)) {
    const std::size_t count = columns.places.size();
    RL_ASSERT(fits(static_cast<int>(count)));
    header_.blocks = static_cast<int>(count / kBlock);
    header_.flat = columns.flat;
    header_.bottom = single(columns.bottom_m);
    header_.height = single(columns.height_m);
    header_.cosine = single(columns.tilt.cosine);
    header_.sine = single(columns.tilt.sine);
    header_.upright = columns.tilt.sine == 0.0 && columns.tilt.cosine == 1.0;
    for (std::size_t j = 0; j < count; ++j) {
        columns_.row(0)[j] = single(columns.places[j].x);
        columns_.row(1)[j] = single(columns.places[j].z);
    }
    const auto [low, high] = std::minmax_element(columns_.row(1), columns_.row(1) + count);
    header_.z_low = *low;
    header_.z_high = *high;
    for (std::size_t b = 0; b < count / kBlock; ++b) {
        for (std::size_t axis = 0; axis < 2; ++axis) {
            ends_.row(axis)[b] = columns_.row(axis)[kBlock * b];
            ends_.row(2 + axis)[b] = columns_.row(axis)[kBlock * b + kBlock - 1];
        }
    }
}

KernelPicture PackedPicture::view() const {
    KernelPicture out = header_;
    out.x = columns_.row(0);
    out.z = columns_.row(1);
    out.first_x = ends_.row(0);
    out.first_z = ends_.row(1);
    out.last_x = ends_.row(2);
    out.last_z = ends_.row(3);
    return out;
}

PackedHeads::PackedHeads(const HiddenInput& in, const PictureColumns& columns)
    : groups_(kHeadRows) {
    groups_.lay_out(items_of(in.heads, in, columns), in.heads.size());
    for (std::size_t i = 0; i < in.heads.size(); ++i) {
        if (groups_.places[i] >= 0) fill(in, i);
    }
}

void PackedHeads::fill(const HiddenInput& in, std::size_t i) {
    const auto at = static_cast<std::size_t>(groups_.places[i]);
    const Head& head = in.heads[i];
    const glm::dvec3 c = in_patch_frame(in.surface, head.centre);
    const double kappa = head.radius_m / head.half_height_m;
    const std::array<double, kHeadRows> row{c.x,
                                            c.y,
                                            c.z,
                                            head.radius_m,
                                            head.half_height_m,
                                            static_cast<double>(head.eye),
                                            kappa * kappa,
                                            1.0 / (kappa * kappa)};
    for (std::size_t k = 0; k < row.size(); ++k)
        groups_.table.row(k)[at] = single(row[k]);
    const double reach = std::max(head.radius_m, head.half_height_m);
    near_m_ = std::max(near_m_, single(kNearReaches * reach));
}

bool PackedHeads::replace(const HiddenInput& in,
                          const PictureColumns& columns,
                          std::span<const std::size_t> changed) {
    if (!in_place(in.heads, changed, in, columns, groups_)) return false;
    for (const std::size_t i : changed)
        fill(in, i);
    fit_boxes(in.heads, changed, in, columns, groups_);
    return true;
}

KernelHeads PackedHeads::view() const {
    KernelHeads out;
    out.boxes = groups_.box_view();
    out.x = groups_.table.row(0);
    out.y = groups_.table.row(1);
    out.z = groups_.table.row(2);
    out.radius = groups_.table.row(3);
    out.half_height = groups_.table.row(4);
    out.eye = groups_.table.row(5);
    out.kappa2 = groups_.table.row(6);
    out.per_kappa2 = groups_.table.row(7);
    out.near_m = near_m_;
    return out;
}

PackedWalls::PackedWalls(const HiddenInput& in, const PictureColumns& columns)
    : groups_(kWallRows) {
    groups_.lay_out(items_of(in.walls, in, columns), in.walls.size());
    for (std::size_t i = 0; i < in.walls.size(); ++i) {
        if (groups_.places[i] >= 0) fill(in, i);
    }
}

void PackedWalls::fill(const HiddenInput& in, std::size_t i) {
    const auto at = static_cast<std::size_t>(groups_.places[i]);
    const Wall& wall = in.walls[i];
    const glm::dvec3 from = in_patch_frame(in.surface, wall.from);
    const glm::dvec3 to = in_patch_frame(in.surface, wall.to);
    const bool above = wall.hides == WallHides::above;
    const double limit = above ? std::min(wall.from.y, wall.to.y) : wall.base_m;
    const std::array<double, kWallRows> row{from.x,
                                            from.y,
                                            from.z,
                                            to.x,
                                            to.y,
                                            to.z,
                                            above ? 1.0 : 0.0,
                                            limit,
                                            static_cast<double>(wall.eye)};
    for (std::size_t k = 0; k < row.size(); ++k)
        groups_.table.row(k)[at] = single(row[k]);
}

bool PackedWalls::replace(const HiddenInput& in,
                          const PictureColumns& columns,
                          std::span<const std::size_t> changed) {
    if (!in_place(in.walls, changed, in, columns, groups_)) return false;
    for (const std::size_t i : changed)
        fill(in, i);
    fit_boxes(in.walls, changed, in, columns, groups_);
    return true;
}

KernelWalls PackedWalls::view() const {
    KernelWalls out;
    out.boxes = groups_.box_view();
    out.from_x = groups_.table.row(0);
    out.from_y = groups_.table.row(1);
    out.from_z = groups_.table.row(2);
    out.to_x = groups_.table.row(3);
    out.to_y = groups_.table.row(4);
    out.to_z = groups_.table.row(5);
    out.above = groups_.table.row(6);
    out.limit = groups_.table.row(7);
    out.eye = groups_.table.row(8);
    return out;
}

}  // namespace rakeline::sight::hidden
