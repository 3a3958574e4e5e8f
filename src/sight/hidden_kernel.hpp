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
    const float* batch_z_low = nullptr;   ///< of each batch: the least of its boxes' z_low
    const float* batch_z_high = nullptr;  ///< and the greatest z_high
    const unsigned* lanes = nullptr;      ///< which places of a group are taken, by bit
};

struct KernelHeads {
    KernelBoxes boxes;
    const float *x = nullptr, *y = nullptr, *z = nullptr;
    const float *radius = nullptr, *half_height = nullptr;
    const float *kappa2 = nullptr,
                *per_kappa2 = nullptr;  ///< (radius / half height)^2, one over it
    const float* eye = nullptr;  ///< index of the eye in the head, as a whole number; -1: none
    float near_m = 0.0F;  ///< so far from its box a head may be one that the kernel can't take
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

struct KernelScene {
    KernelPicture picture;
    KernelHeads heads;
    KernelWalls walls;
};

/// What is hidden of the columns of a block, in picture heights, as disjoint intervals: one that
/// stands on the lower edge, as most do, and up to two that float above it.
struct BlockUnion {
    float base[kBlock];
    float solid[kBlock];  ///< the highest that one thing alone hides from the lower edge up
    float low[2][kBlock];
    float high[2][kBlock];
};

/// Of one eye, block by block.
struct SeatBlocks {
    float hidden[kMostBlocks] = {};  ///< sum over the block's columns, in picture heights
    float top[kMostBlocks] = {};     ///< of what is hidden, in picture heights
    /// Up to here one thing alone hides each of the columns: what lies all below can go away, and
    /// the block stays as it is.
    float solid[kMostBlocks] = {};
};

/// Unions kept, to lay more upon them later.
struct KernelRest {
    BlockUnion* blocks = nullptr;  ///< one a block of the picture
    float* covered = nullptr;      ///< up to here all columns of a block are hidden
    unsigned ready = 0;            ///< blocks whose union is worked out
    unsigned touched = 0;          ///< of these: with something hidden; the others' unions are void
    unsigned floating = 0;         ///< blocks whose floating intervals are in use
};

struct KernelAnswer {
    unsigned blocks = 0;  ///< by bit
    /// A head is so near that the eye is all but under it: this arithmetic can't take it, and the
    /// rest of the answer is void. So it is or isn't whatever the order of the heads.
    bool near = false;
};

// All hold only for an eye before the surface, and for the blocks in `wanted` (at least one). What
// is hidden is the union of the same intervals in whatever order they are laid, bit for bit.

/// From nothing. Comes back with the blocks that are too crowded: more than two floating intervals
/// in a column at one time. `solid` asks for SeatBlocks::solid too.
using HiddenBlocks =
    KernelAnswer(const KernelScene&, const KernelEye&, unsigned wanted, bool solid, SeatBlocks&);

/// Keeps the unions, and SeatBlocks::solid; comes back with the crowded blocks.
using RestBlocks =
    unsigned(const KernelScene&, const KernelEye&, unsigned wanted, KernelRest&, SeatBlocks&);

struct MovedAnswer {
    unsigned reached = 0;  ///< blocks that the scene may have a part in
    unsigned crowded = 0;
    bool near = false;  ///< as in KernelAnswer
};

/// The scene laid upon the unions that are ready; also works out the ready blocks among `before`,
/// on which it was laid the last time. Blocks that are reached and not ready are left.
using MovedBlocks = MovedAnswer(const KernelScene&,
                                const KernelEye&,
                                unsigned wanted,
                                unsigned before,
                                const KernelRest&,
                                SeatBlocks&);

/// Which of the wanted blocks the scene can touch, at most, where all below `covered` (kMostBlocks,
/// in picture heights) is hidden already.
using ReachedBlocks = KernelAnswer(const KernelScene&,
                                   const KernelEye&,
                                   unsigned wanted,
                                   const float* covered);

/// The intervals in one block: kBlock lower ends, then kBlock upper ends (below the lower one:
/// nothing) for each head and wall that reaches it. Gives their number; `out` has room for all.
using BlockIntervals = int(const KernelScene&, const KernelEye&, unsigned block, float* out);

struct Kernel {
    HiddenBlocks* hidden_blocks = nullptr;
    RestBlocks* rest_blocks = nullptr;
    MovedBlocks* moved_blocks = nullptr;
    ReachedBlocks* reached_blocks = nullptr;
    BlockIntervals* block_intervals = nullptr;
};

Kernel plain_kernel();
Kernel sse42_kernel();
Kernel avx2_kernel();

}  // namespace rakeline::sight::hidden
