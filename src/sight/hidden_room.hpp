// SPDX-License-Identifier: MIT
#pragma once

#include "sight/hidden_exact.hpp"
#include "sight/hidden_packed.hpp"

/// A room made ready once, from which every eye is worked out on its own. Private to sight/hidden.
namespace rakeline::sight::hidden {

enum class InstructionSet { plain, sse42, avx2 };

/// The best that this processor has. All give the same bits.
InstructionSet best_instruction_set();
bool has(InstructionSet set);

/// One eye as the room's surface has it.
struct EyePlace {
    int index = 0;
    KernelEye at;
    bool before = false;  ///< the surface, so that the kernel can take it
    bool sees_back = false;
};

/// Heads and walls by their indices.
struct Chosen {
    std::vector<std::size_t> heads, walls;
};

class Room {
public:
    /// `in` must stay.
    Room(const HiddenInput& in, int columns, InstructionSet set);
    Room(const Room&) = delete;
    Room& operator=(const Room&) = delete;

    EyePlace place(int eye) const;

    /// Works out the blocks in `wanted` (by bit) and leaves the others. False where the kernel
    /// can't take the eye: then all has gone the exact way, without SeatBlocks::solid.
    bool blocks(const EyePlace& place, unsigned wanted, bool solid, SeatBlocks& out) const;
    SeatHidden summed(const EyePlace& place, const SeatBlocks& blocks) const;

    /// Takes over heads and walls of the input that alone changed.
    void replace(const Chosen& changed);

    /// Takes over all heads of the input, which may be others and more or fewer than before. The
    /// input's eyes may have moved too; they are read where they are.
    void repack_heads();

    unsigned all_blocks() const { return all_; }
    const PictureColumns& columns() const { return columns_; }
    const Kernel& kernel() const { return kernel_; }
    const KernelScene& scene() const { return scene_; }
    const PackedHeads& heads() const { return heads_; }
    const PackedWalls& walls() const { return walls_; }

private:
    void exact_blocks(int eye, unsigned wanted, SeatBlocks& out) const;
    void crowded_block(const KernelEye& eye, unsigned block, SeatBlocks& out) const;

    const HiddenInput* in_;
    PictureColumns columns_;
    PackedPicture picture_;
    PackedHeads heads_;
    PackedWalls walls_;
    KernelScene scene_;
    Kernel kernel_;
    unsigned all_;
    double least_z_m_ = 0.0;  ///< in the patch's frame; nearer eyes go the exact way
};

/// Column by column in doubles, for numbers of columns that the kernel doesn't take.
SeatHidden exact_seat(const HiddenInput& in, const PictureColumns& columns, int eye);

}  // namespace rakeline::sight::hidden
