// SPDX-License-Identifier: MIT
#pragma once

/// One eye against all heads and walls, eight columns at a time. Private to sight/hidden.
///
/// Plain numbers only: the kernel is compiled once for each instruction set, and anything from the
/// standard library in it could end up, compiled for the wrong processor, in the rest of the
/// program. Single precision, in the patch's frame from its centre, metres.
namespace rakeline::sight::hidden {

inline constexpr int kBlock = 8;  ///< columns in a block, heads in a group, groups in a batch
inline constexpr int kMostBlocks = 32;

struct KernelPicture {
    int blocks = 0;  ///< of kBlock columns; a multiple of 8 blocks is laid out
    bool flat = true;
    const float* x = nullptr;  ///< places of the columns in plan
    const float* z = nullptr;
    const float* first_x = nullptr;  ///< of the first and last column of each block
    const float* first_z = nullptr;
    const float* last_x = nullptr;
    const float* last_z = nullptr;
    float z_low = 0.0F, z_high = 0.0F;  ///< range of the columns' z
    float bottom = 0.0F;
    float height = 1.0F;
    bool upright = true;
    float cosine = 1.0F, sine = 0.0F;  ///< of the tilt
};

/// Boxes about the groups of kBlock heads or walls; a whole number of batches of groups.
struct KernelBoxes {
    int groups = 0;
    const float *x_low = nullptr, *x_high = nullptr;
    const float *y_low = nullptr, *y_high = nullptr;
    const float *z_low = nullptr, *z_high = nullptr;
    const float* batch_z_low = nullptr;  ///< of each batch: the least of its boxes' z_low
    const unsigned* lanes = nullptr;     ///< which places of a group are taken, by bit
};

struct KernelHeads {
    KernelBoxes boxes;
    const float *x = nullptr, *y = nullptr, *z = nullptr;
    const float *radius = nullptr, *half_height = nullptr;
    const float *kappa2 = nullptr,
                *per_kappa2 = nullptr;  ///< (radius / half height)^2, one over it
    const float* eye = nullptr;  ///< index of the eye in the head, as a whole number; -1: none
};

struct KernelWalls {
    KernelBoxes boxes;
    const float *from_x = nullptr, *from_y = nullptr, *from_z = nullptr;
    const float *to_x = nullptr, *to_y = nullptr, *to_z = nullptr;
    const float* above = nullptr;  ///< 1: hides what is above; 0: below
    const float* limit = nullptr;  ///< room height that the eye must be over (above: under)
    const float* eye = nullptr;
};

struct KernelEye {
    float x = 0.0F, y = 0.0F, z = 0.0F;
    float up = 0.0F;  ///< height in the room
    float index = 0.0F;
};

/// Sum of the hidden heights of each block's columns, and the top of what is hidden in them, both
/// in picture heights, for the blocks in `wanted` (by bit, at least one). Comes back with the
/// blocks that this arithmetic can't finish: too many separate intervals in one column, or a head
/// so near that the eye is all but under it. Holds only for an eye before the surface.
using HiddenBlocks = unsigned(const KernelPicture&,
                              const KernelHeads&,
                              const KernelWalls&,
                              const KernelEye&,
                              unsigned wanted,
                              float* hidden,
                              float* top);

/// Which of the wanted blocks any of the heads and walls can touch, at most.
using ReachedBlocks = unsigned(const KernelPicture&,
                               const KernelHeads&,
                               const KernelWalls&,
                               const KernelEye&,
                               unsigned wanted);

struct Kernel {
    HiddenBlocks* hidden_blocks = nullptr;
    ReachedBlocks* reached_blocks = nullptr;
};

Kernel plain_kernel();
Kernel sse42_kernel();
Kernel avx2_kernel();

}  // namespace rakeline::sight::hidden
