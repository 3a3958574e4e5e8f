// SPDX-License-Identifier: MIT
#include "sight/hidden_room.hpp"

#include <algorithm>

namespace rakeline::sight::hidden {
namespace {

/// Nearer to the surface's foremost point than this an eye goes the exact way.
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
      picture_view_(picture_.view()),
      heads_view_(heads_.view()),
      walls_view_(walls_.view()),
      kernel_(kernel_of(set)) {
    const int blocks = columns / kBlock;
    all_ = blocks == 32 ? ~0U : (1U << blocks) - 1U;
    for (const PlanPoint& place : columns_.places)
        front_m_ = std::max(front_m_, place.z);
}

bool Room::sees_back(int eye) const {
    return hidden::sees_back(
        columns_, in_patch_frame(in_->surface, in_->eyes[static_cast<std::size_t>(eye)]));
}

bool Room::before_surface(const glm::dvec3& eye) const {
    return eye.z >= front_m_ + kLeastDepth_m && !hidden::sees_back(columns_, eye);
}

KernelEye Room::kernel_eye(int eye, const glm::dvec3& place) const {
    const double up = in_->eyes[static_cast<std::size_t>(eye)].y;
    return {static_cast<float>(place.x), static_cast<float>(place.y), static_cast<float>(place.z),
            static_cast<float>(up), static_cast<float>(eye)};
}

bool Room::blocks(int eye, unsigned wanted, SeatBlocks& out) const {
    const glm::dvec3 place = in_patch_frame(in_->surface, in_->eyes[static_cast<std::size_t>(eye)]);
    unsigned rest = wanted;
    if (before_surface(place)) {
        rest =
            kernel_.hidden_blocks(picture_view_, heads_view_, walls_view_, kernel_eye(eye, place),
                                  wanted, out.hidden.data(), out.top.data());
    }
    if (rest != 0) exact_blocks(eye, rest, out);
    return rest != wanted;
}

unsigned Room::reached(int eye, const KernelHeads& heads, const KernelWalls& walls) const {
    const glm::dvec3 place = in_patch_frame(in_->surface, in_->eyes[static_cast<std::size_t>(eye)]);
    if (!before_surface(place)) return all_;
    return kernel_.reached_blocks(picture_view_, heads, walls, kernel_eye(eye, place), all_);
}

void Room::replace_head(std::size_t i) {
    if (!heads_.replace(*in_, columns_, i)) repack_heads();
}

void Room::repack_heads() {
    heads_ = PackedHeads(*in_, columns_);
    heads_view_ = heads_.view();
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

SeatHidden Room::summed(int eye, const SeatBlocks& blocks) const {
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
    out.sees_back = sees_back(eye);
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
