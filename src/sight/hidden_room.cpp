// SPDX-License-Identifier: MIT
#include "sight/hidden_room.hpp"

#include <algorithm>

namespace rakeline::sight::hidden {
namespace {

/// Nearer to the surface's foremost point than this an eye goes the exact way; and than half a
/// block's width, so that no block spans a right angle and its two ends tell where all of it lies.
constexpr double kLeastDepth_m = 0.05;

struct ColumnHidden {
    double hidden_m = 0.0, top_m = 0.0;
};

ColumnHidden column_hidden(const Shadows& shadows, std::size_t j, std::vector<Stretch>& scratch) {
    shadows.stretches(j, scratch);
    ColumnHidden out;
    for (const ClearInterval& h : merged(scratch)) {
        out.hidden_m += h.top_m - h.bottom_m;
        out.top_m = h.top_m;
    }
    return out;
}

struct FloatInterval {
    float low = 0.0F, high = 0.0F;
};

struct ColumnUnion {
    float hidden = 0.0F, top = 0.0F;
};

/// Summed as the kernel sums: what stands on the lower edge, and then all that floats.
ColumnUnion united(std::vector<FloatInterval>& intervals) {
    std::ranges::sort(intervals, {}, &FloatInterval::low);
    std::vector<FloatInterval> apart{{0.0F, 0.0F}};
    for (const FloatInterval& i : intervals) {
        if (i.low <= apart.back().high) {
            apart.back().high = std::max(apart.back().high, i.high);
        } else {
            apart.push_back(i);
        }
    }
    float floating = 0.0F;
    for (std::size_t k = 1; k < apart.size(); ++k)
        floating += apart[k].high - apart[k].low;
    return {apart.front().high + floating, apart.back().high};
}

Kernel kernel_of(InstructionSet set) {
    switch (set) {
        case InstructionSet::plain:
            return plain_kernel();
#if defined(__x86_64__)
        case InstructionSet::sse42:
            return sse42_kernel();
        case InstructionSet::avx2:
            return avx2_kernel();
#else
        default:
            break;
#endif
    }
    return plain_kernel();
}

}  // namespace

bool has(InstructionSet set) {
#if defined(__x86_64__)
    if (set == InstructionSet::sse42) return __builtin_cpu_supports("sse4.2") != 0;
    if (set == InstructionSet::avx2) return __builtin_cpu_supports("avx2") != 0;
#endif
    return set == InstructionSet::plain;
}

InstructionSet best_instruction_set() {
    if (has(InstructionSet::avx2)) return InstructionSet::avx2;
    return has(InstructionSet::sse42) ? InstructionSet::sse42 : InstructionSet::plain;
}

Room::Room(const HiddenInput& in, int columns, InstructionSet set)
    : in_(&in),
      columns_(picture_columns(in.surface, in.opening, columns)),
      picture_(columns_),
      heads_(in, columns_),
      walls_(in, columns_),
      scene_{picture_.view(), heads_.view(), walls_.view()},
      kernel_(kernel_of(set)) {
    const int blocks = columns / kBlock;
    all_ = blocks == 32 ? ~0U : (1U << blocks) - 1U;
    double front_m = 0.0;
    for (const PlanPoint& place : columns_.places)
        front_m = std::max(front_m, place.z);
    least_z_m_ = front_m + std::max(kLeastDepth_m, 0.5 * columns_.width_m / blocks);
}

EyePlace Room::place(int eye) const {
    const glm::dvec3& in_room = in_->eyes[static_cast<std::size_t>(eye)];
    const glm::dvec3 p = in_patch_frame(in_->surface, in_room);
    EyePlace out;
    out.index = eye;
    out.at = {single(p.x), single(p.y), single(p.z), single(in_room.y), static_cast<float>(eye)};
    out.sees_back = hidden::sees_back(columns_, p);
    out.before = p.z >= least_z_m_ && !out.sees_back;
    return out;
}

bool Room::blocks(const EyePlace& place, unsigned wanted, bool solid, SeatBlocks& out) const {
    if (place.before) {
        const KernelAnswer answer = kernel_.hidden_blocks(scene_, place.at, wanted, solid, out);
        if (!answer.near) {
            for (unsigned block = 0; block < kMostBlocks; ++block) {
                if ((answer.blocks >> block & 1U) != 0) crowded_block(place.at, block, out);
            }
            return true;
        }
    }
    exact_blocks(place.index, wanted, out);
    return false;
}

void Room::replace(const Chosen& changed) {
    if (!heads_.replace(*in_, columns_, changed.heads)) heads_ = PackedHeads(*in_, columns_);
    if (!walls_.replace(*in_, columns_, changed.walls)) walls_ = PackedWalls(*in_, columns_);
    scene_.heads = heads_.view();
    scene_.walls = walls_.view();
}

void Room::repack_heads() {
    heads_ = PackedHeads(*in_, columns_);
    scene_.heads = heads_.view();
}

/// The kernel's own intervals, as many as there are, so that the block is the same bits however the
/// heads are grouped and in whatever order they would have been laid.
void Room::crowded_block(const KernelEye& eye, unsigned block, SeatBlocks& out) const {
    const auto most =
        static_cast<std::size_t>(kBlock * (scene_.heads.boxes.groups + scene_.walls.boxes.groups));
    std::vector<float> ends(2 * kBlock * most);
    const auto count =
        static_cast<std::size_t>(kernel_.block_intervals(scene_, eye, block, ends.data()));
    std::array<ColumnUnion, kBlock> columns;
    for (std::size_t j = 0; j < kBlock; ++j) {
        std::vector<FloatInterval> intervals;
        for (std::size_t k = 0; k < count; ++k) {
            const float* at = ends.data() + 2 * kBlock * k + j;
            if (at[0] < at[kBlock]) intervals.push_back({at[0], at[kBlock]});
        }
        columns[j] = united(intervals);
    }
    const auto hidden = [&](std::size_t a) { return columns[a].hidden + columns[a + 1].hidden; };
    out.hidden[block] = (hidden(0) + hidden(2)) + (hidden(4) + hidden(6));
    out.top[block] = std::ranges::max(columns, {}, &ColumnUnion::top).top;
}

void Room::exact_blocks(int eye, unsigned wanted, SeatBlocks& out) const {
    const Shadows shadows(*in_, columns_, eye);
    std::vector<Stretch> scratch;
    for (std::size_t block = 0; block < kMostBlocks; ++block) {
        if ((wanted >> block & 1U) == 0) continue;
        ColumnHidden all;
        for (std::size_t j = kBlock * block; j < kBlock * (block + 1); ++j) {
            const ColumnHidden one = column_hidden(shadows, j, scratch);
            all.hidden_m += one.hidden_m;
            all.top_m = std::max(all.top_m, one.top_m);
        }
        out.hidden[block] = static_cast<float>(all.hidden_m / columns_.height_m);
        out.top[block] = static_cast<float>(all.top_m / columns_.height_m);
    }
}

SeatHidden Room::summed(const EyePlace& place, const SeatBlocks& blocks) const {
    SeatHidden out;
    double hidden = 0.0;
    double top = 0.0;
    const std::size_t count = columns_.places.size() / kBlock;
    for (std::size_t b = 0; b < count; ++b) {
        hidden += static_cast<double>(blocks.hidden[b]);
        top = std::max(top, static_cast<double>(blocks.top[b]));
    }
    out.hidden_fraction = hidden / static_cast<double>(columns_.places.size());
    out.clear_above_m = top * columns_.height_m;
    out.sees_back = place.sees_back;
    return out;
}

SeatHidden exact_seat(const HiddenInput& in, const PictureColumns& columns, int eye) {
    const Shadows shadows(in, columns, eye);
    SeatHidden out;
    double hidden_m = 0.0;
    std::vector<Stretch> scratch;
    for (std::size_t j = 0; j < columns.places.size(); ++j) {
        const ColumnHidden one = column_hidden(shadows, j, scratch);
        hidden_m += one.hidden_m;
        out.clear_above_m = std::max(out.clear_above_m, one.top_m);
    }
    const auto count = static_cast<double>(columns.places.size());
    out.hidden_fraction = hidden_m / (count * columns.height_m);
    out.sees_back =
        sees_back(columns, in_patch_frame(in.surface, in.eyes[static_cast<std::size_t>(eye)]));
    return out;
}

}  // namespace rakeline::sight::hidden
