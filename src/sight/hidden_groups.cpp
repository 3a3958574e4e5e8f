// SPDX-License-Identifier: MIT
#include "sight/hidden_groups.hpp"

#include <glm/common.hpp>

#include <algorithm>
#include <cmath>

namespace rakeline::sight::hidden {
namespace {

/// A neighbour farther than this in plan begins a new run, and so a new group.
constexpr double kNewRun_m = 2.0;
/// Added to the boxes all round: more than single precision can be off.
constexpr double kBoxMargin_m = 0.001;

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

}  // namespace

void PackedGroups::set_box(std::size_t g, const Item& box) {
    const glm::dvec3 low = box.low - kBoxMargin_m;
    const glm::dvec3 high = box.high + kBoxMargin_m;
    for (int axis = 0; axis < 3; ++axis) {
        boxes.row(static_cast<std::size_t>(2 * axis))[g] = single(low[axis]);
        boxes.row(static_cast<std::size_t>(2 * axis + 1))[g] = single(high[axis]);
    }
    float& batch_low = batch_z_low[g / kBlock];
    float& batch_high = batch_z_high[g / kBlock];
    batch_low = std::min(batch_low, single(low.z));
    batch_high = std::max(batch_high, single(high.z));
}

void PackedGroups::lay_out(const std::vector<Item>& items, std::size_t listed) {
    const std::vector<int> starts = group_starts(items);
    const std::size_t used = items.empty() ? 0 : starts.size() - 1;
    const std::size_t count = rounded_up(used);
    table = Table(table.rows(), kBlock * count);
    boxes = Table(6, count);
    batch_z_low.assign(count / kBlock, single(kFarOff_m));
    batch_z_high.assign(count / kBlock, single(-kFarOff_m));
    places.assign(listed, -1);
    lanes.assign(count, 0U);
    source.assign(kBlock * count, -1);
    for (std::size_t g = 0; g < used; ++g) {
        Item box = items[static_cast<std::size_t>(starts[g])];
        for (int i = starts[g]; i < starts[g + 1]; ++i) {
            const Item& item = items[static_cast<std::size_t>(i)];
            box.low = glm::min(box.low, item.low);
            box.high = glm::max(box.high, item.high);
            const auto lane = static_cast<unsigned>(i - starts[g]);
            lanes[g] |= 1U << lane;
            source[kBlock * g + lane] = item.source;
            places[static_cast<std::size_t>(item.source)] = static_cast<int>(kBlock * g + lane);
        }
        set_box(g, box);
    }
    // Boxes of no group lie behind every eye.
    for (std::size_t g = used; g < count; ++g)
        set_box(g, {-1, glm::dvec3(kFarOff_m), glm::dvec3(kFarOff_m)});
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
    out.batch_z_high = batch_z_high.data();
    out.lanes = lanes.data();
    return out;
}

std::vector<unsigned> PackedGroups::lanes_without(std::span<const std::size_t> listed) const {
    std::vector<unsigned> out = lanes;
    for (const std::size_t i : listed) {
        if (places[i] < 0) continue;
        const auto place = static_cast<unsigned>(places[i]);
        out[place / kBlock] &= ~(1U << place % kBlock);
    }
    return out;
}

}  // namespace rakeline::sight::hidden
