// SPDX-License-Identifier: MIT
#pragma once

#include "sight/hidden_columns.hpp"
#include "sight/hidden_kernel.hpp"

#include <array>
#include <vector>

/// The room as the kernel reads it. Private to sight/hidden.
namespace rakeline::sight::hidden {

/// Rows of numbers of one length in one piece of memory.
class Table {
public:
    Table(std::size_t rows, std::size_t length) : length_(length), numbers_(rows * length, 0.0F) {}
    float* row(std::size_t i) { return numbers_.data() + i * length_; }
    const float* row(std::size_t i) const { return numbers_.data() + i * length_; }

private:
    std::size_t length_;
    std::vector<float> numbers_;
};

class PackedPicture {
public:
    /// Columns must be a whole number of blocks, at most kMostBlocks.
    explicit PackedPicture(const PictureColumns& columns);
    KernelPicture view() const;
    static bool fits(int columns) {
        return columns % kBlock == 0 && columns <= kBlock * kMostBlocks;
    }

private:
    KernelPicture header_;
    Table columns_;
    Table ends_;
};

/// Heads or walls in groups of up to kBlock that follow on one another in the list and in the room,
/// each with the box about it. Any order gives the same result; one row after another, from side to
/// side, makes the boxes small.
struct PackedGroups {
    explicit PackedGroups(std::size_t tables) : table(tables, 0), boxes(6, 0) {}
    Table table;  ///< the kernel's rows, in the order of its members
    Table boxes;
    std::vector<float> batch_z_low;
    std::vector<unsigned> lanes;
    std::vector<int> source;  ///< per place: index in the list; -1: none

    KernelBoxes box_view() const;
};

class PackedHeads {
public:
    PackedHeads(const HiddenInput& in, const PictureColumns& columns);
    KernelHeads view() const;

    /// Takes over head `i`, which alone changed. False where the heads have to be packed anew.
    bool replace(const HiddenInput& in, const PictureColumns& columns, std::size_t i);

private:
    void fill(const HiddenInput& in, std::size_t i);

    PackedGroups groups_;
    std::vector<int> places_;  ///< per head: its place in the groups; -1: behind the surface
};

class PackedWalls {
public:
    PackedWalls(const HiddenInput& in, const PictureColumns& columns);
    KernelWalls view() const;

private:
    PackedGroups groups_;
};

}  // namespace rakeline::sight::hidden
