// SPDX-License-Identifier: MIT
#pragma once

#include "sight/hidden_exact.hpp"
#include "sight/hidden_packed.hpp"

#include <optional>

/// A room made ready once, from which every eye is worked out on its own. Private to sight/hidden.
namespace rakeline::sight::hidden {

enum class InstructionSet { plain, sse42, avx2 };

/// The best that this processor has. All give the same bits.
InstructionSet best_instruction_set();
bool has(InstructionSet set);

/// Of one eye, block by block of kBlock columns, in picture heights.
struct SeatBlocks {
    std::array<float, kMostBlocks> hidden{};  ///< sum over the block's columns
    std::array<float, kMostBlocks> top{};
};

class Room {
public:
    /// `in` must stay.
    Room(const HiddenInput& in, int columns, InstructionSet set);
    Room(const Room&) = delete;
    Room& operator=(const Room&) = delete;

    /// Works out the blocks in `wanted` (by bit) and leaves the others. True where the kernel
    /// finished at least one of them.
    bool blocks(int eye, unsigned wanted, SeatBlocks& out) const;

    /// Which blocks these heads and walls can touch, as this eye has them, at most.
    unsigned reached(int eye, const KernelHeads& heads, const KernelWalls& walls) const;

    /// Takes over head `i` of the input, which alone changed.
    void replace_head(std::size_t i);

    /// Takes over all heads of the input, which may be others and more or fewer than before. The
    /// input's eyes may have moved too; they are read where they are.
    void repack_heads();
    unsigned all_blocks() const { return all_; }
    SeatHidden summed(int eye, const SeatBlocks& blocks) const;
    bool sees_back(int eye) const;
    const PictureColumns& columns() const { return columns_; }

private:
    void exact_blocks(int eye, unsigned wanted, SeatBlocks& out) const;
    bool before_surface(const glm::dvec3& eye) const;
    KernelEye kernel_eye(int eye, const glm::dvec3& place) const;

    const HiddenInput* in_;
    PictureColumns columns_;
    PackedPicture picture_;
    PackedHeads heads_;
    PackedWalls walls_;
    KernelPicture picture_view_;
    KernelHeads heads_view_;
    KernelWalls walls_view_;
    Kernel kernel_;
    unsigned all_;
    double front_m_ =
        0.0;  ///< eyes farther from the surface's lowest point than this are before it
};

/// Column by column in doubles, for numbers of columns that the kernel doesn't take.
SeatHidden exact_seat(const HiddenInput& in, const PictureColumns& columns, int eye);

}  // namespace rakeline::sight::hidden
