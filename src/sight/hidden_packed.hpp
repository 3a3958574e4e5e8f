// SPDX-License-Identifier: MIT
#pragma once

#include "sight/hidden_columns.hpp"
#include "sight/hidden_groups.hpp"

#include <array>

/// The room as the kernel reads it. Private to sight/hidden.
namespace rakeline::sight::hidden {

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

class PackedHeads {
public:
    PackedHeads(const HiddenInput& in, const PictureColumns& columns);
    KernelHeads view() const;

    /// Takes over the heads that changed. False, and nothing done, where all have to be packed
    /// anew.
    bool replace(const HiddenInput& in,
                 const PictureColumns& columns,
                 std::span<const std::size_t> changed);

    const PackedGroups& groups() const { return groups_; }

private:
    void fill(const HiddenInput& in, std::size_t i);

    PackedGroups groups_;
    float near_m_ = 0.0F;
};

class PackedWalls {
public:
    PackedWalls(const HiddenInput& in, const PictureColumns& columns);
    KernelWalls view() const;

    /// As PackedHeads::replace.
    bool replace(const HiddenInput& in,
                 const PictureColumns& columns,
                 std::span<const std::size_t> changed);
    const PackedGroups& groups() const { return groups_; }

private:
    void fill(const HiddenInput& in, std::size_t i);

    PackedGroups groups_;
};

}  // namespace rakeline::sight::hidden
