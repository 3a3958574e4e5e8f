// SPDX-License-Identifier: MIT
#include "sight/hidden_packed.hpp"

#include "base/assert.hpp"

#include <algorithm>
#include <cmath>

namespace rakeline::sight::hidden {
namespace {

/// A neighbour farther than this in plan begins a new run, and so a new group.
constexpr double kNewRun_m = 2.0;
/// Added to the boxes all round: more than single precision can be off.
constexpr double kBoxMargin_m = 0.001;
constexpr double kFarOff_m = 1e6;
constexpr std::size_t kHeadRows = 8;
constexpr std::size_t kWallRows = 9;

float single(double x) {
    return static_cast<float>(x);
}

constexpr std::size_t rounded_up(std::size_t n) {
    return (n + kBlock - 1) / kBlock * kBlock;
}

/// One thing to pack: where it stands and how far it reaches.
struct Item {
    int source = 0;
    glm::dvec3 low{0.0}, high{0.0};
};

bool same_run(const Item& a, const Item& b) {
    const glm::dvec3 step = b.low - a.low;
    return std::hypot(step.x, step.z) < kNewRun_m;
}

/// Runs, each shared out evenly among as few groups as hold it.
std::vector<int> group_starts(const std::vector<Item>& items) {
    std::vector<int> starts;
    for (std::size_t begin = 0; begin < items.size();) {
        std::size_t end = begin + 1;
        while (end < items.size() && same_run(items[end - 1], items[end]))
            ++end;
        const std::size_t length = end - begin;
        const std::size_t groups = (length + kBlock - 1) / kBlock;
        for (std::size_t g = 0; g < groups; ++g)
            starts.push_back(static_cast<int>(begin + length * g / groups));
        begin = end;
    }
    starts.push_back(static_cast<int>(items.size()));
    return starts;
}

Item item_of(const Head& head, int source, const HiddenInput& in, const PictureColumns& columns) {
    const glm::dvec3 c = in_patch_frame(in.surface, head.centre);
    const double reach = std::max(head.radius_m, head.half_height_m);
    const double deep = columns.tilt.sine == 0.0 ? head.radius_m : reach;
    const glm::dvec3 size{head.radius_m, reach, deep};
    return {source, c - size, c + size};
}

void set_box(PackedGroups& groups, std::size_t g, const Item& box) {
    const glm::dvec3 low = box.low - kBoxMargin_m;
    const glm::dvec3 high = box.high + kBoxMargin_m;
    for (int axis = 0; axis < 3; ++axis) {
        groups.boxes.row(static_cast<std::size_t>(2 * axis))[g] = single(low[axis]);
        groups.boxes.row(static_cast<std::size_t>(2 * axis + 1))[g] = single(high[axis]);
    }
    float& batch = groups.batch_z_low[g / kBlock];
    batch = std::min(batch, single(low.z));
}

/// Groups with their boxes and places; the caller fills the table by `source`.
void lay_out(const std::vector<Item>& items, std::size_t tables, PackedGroups& groups) {
    const std::vector<int> starts = group_starts(items);
    const std::size_t used = items.empty() ? 0 : starts.size() - 1;
    const std::size_t count = rounded_up(used);
    groups.table = Table(tables, kBlock * count);
    groups.boxes = Table(6, count);
    groups.batch_z_low.assign(count / kBlock, single(kFarOff_m));
    groups.lanes.assign(count, 0U);
    groups.source.assign(kBlock * count, -1);
    for (std::size_t g = 0; g < used; ++g) {
        Item box = items[static_cast<std::size_t>(starts[g])];
        for (int i = starts[g]; i < starts[g + 1]; ++i) {
            const Item& item = items[static_cast<std::size_t>(i)];
            box.low = glm::min(box.low, item.low);
            box.high = glm::max(box.high, item.high);
            const auto lane = static_cast<unsigned>(i - starts[g]);
            groups.lanes[g] |= 1U << lane;
            groups.source[kBlock * g + lane] = item.source;
        }
        set_box(groups, g, box);
    }
    // Boxes of no group lie behind every eye.
    for (std::size_t g = used; g < count; ++g)
        set_box(groups, g, {-1, glm::dvec3(kFarOff_m), glm::dvec3(kFarOff_m)});
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

KernelBoxes PackedGroups::box_view() const {
    KernelBoxes out;
    out.groups = static_cast<int>(lanes.size());
    out.x_low = boxes.row(0);
    out.x_high = boxes.row(1);
    out.y_low = boxes.row(2);
    out.y_high = boxes.row(3);
    out.z_low = boxes.row(4);
    out.z_high = boxes.row(5);
    out.batch_z_low = batch_z_low.data();
    out.lanes = lanes.data();
    return out;
}

PackedHeads::PackedHeads(const HiddenInput& in, const PictureColumns& columns)
    : groups_(kHeadRows) {
    std::vector<Item> items;
    items.reserve(in.heads.size());
    for (std::size_t i = 0; i < in.heads.size(); ++i) {
        if (columns.flat && in_patch_frame(in.surface, in.heads[i].centre).z <= 0.0) continue;
        items.push_back(item_of(in.heads[i], static_cast<int>(i), in, columns));
    }
    lay_out(items, kHeadRows, groups_);
    places_.assign(in.heads.size(), -1);
    for (std::size_t at = 0; at < groups_.source.size(); ++at) {
        const int source = groups_.source[at];
        if (source < 0) continue;
        places_[static_cast<std::size_t>(source)] = static_cast<int>(at);
        fill(in, static_cast<std::size_t>(source));
    }
}

void PackedHeads::fill(const HiddenInput& in, std::size_t i) {
    const auto at = static_cast<std::size_t>(places_[i]);
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
}

bool PackedHeads::replace(const HiddenInput& in, const PictureColumns& columns, std::size_t i) {
    if (i >= places_.size() || places_[i] < 0) return false;
    if (columns.flat && in_patch_frame(in.surface, in.heads[i].centre).z <= 0.0) return false;
    fill(in, i);
    const std::size_t group = static_cast<std::size_t>(places_[i]) / kBlock;
    const std::size_t begin = kBlock * group;
    Item box = item_of(in.heads[i], 0, in, columns);
    for (std::size_t at = begin; at < begin + kBlock; ++at) {
        const int source = groups_.source[at];
        if (source < 0) continue;
        const Item item = item_of(in.heads[static_cast<std::size_t>(source)], 0, in, columns);
        box.low = glm::min(box.low, item.low);
        box.high = glm::max(box.high, item.high);
    }
    set_box(groups_, group, box);
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
    return out;
}

PackedWalls::PackedWalls(const HiddenInput& in, const PictureColumns& columns)
    : groups_(kWallRows) {
    std::vector<Item> items;
    for (std::size_t i = 0; i < in.walls.size(); ++i) {
        const Wall& wall = in.walls[i];
        const glm::dvec3 from = in_patch_frame(in.surface, wall.from);
        const glm::dvec3 to = in_patch_frame(in.surface, wall.to);
        if (columns.flat && from.z + to.z <= 0.0) continue;
        Item item{static_cast<int>(i), glm::min(from, to), glm::max(from, to)};
        (wall.hides == WallHides::below ? item.low : item.high).y =
            wall.hides == WallHides::below ? -kFarOff_m : kFarOff_m;
        items.push_back(item);
    }
    lay_out(items, kWallRows, groups_);
    for (std::size_t at = 0; at < groups_.source.size(); ++at) {
        const int source = groups_.source[at];
        if (source < 0) continue;
        const Wall& wall = in.walls[static_cast<std::size_t>(source)];
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
