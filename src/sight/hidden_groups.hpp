// SPDX-License-Identifier: MIT
#pragma once

#include "sight/hidden_kernel.hpp"

#include <glm/vec3.hpp>

#include <span>
#include <vector>

/// Heads or walls in groups, each with the box about it, as the kernel reads them. Private to
/// sight/hidden.
namespace rakeline::sight::hidden {

constexpr float single(double x) {
    return static_cast<float>(x);
}

constexpr std::size_t rounded_up(std::size_t n) {
    return (n + kBlock - 1) / kBlock * kBlock;
}

/// Rows of numbers of one length in one piece of memory.
class Table {
public:
    Table(std::size_t rows, std::size_t length)
        : rows_(rows), length_(length), numbers_(rows * length, 0.0F) {}
    float* row(std::size_t i) { return numbers_.data() + i * length_; }
    const float* row(std::size_t i) const { return numbers_.data() + i * length_; }
    std::size_t rows() const { return rows_; }

private:
    std::size_t rows_, length_;
    std::vector<float> numbers_;
};

inline constexpr double kFarOff_m = 1e6;

/// One thing to pack: where it stands in the list, and how far it reaches in the patch's frame.
struct Item {
    int source = 0;
    glm::dvec3 low{0.0}, high{0.0};
};

/// Groups of up to kBlock that follow on one another in the list and in the room. Any order gives
/// the same result; one row after another, from side to side, makes the boxes small.
struct PackedGroups {
    explicit PackedGroups(std::size_t tables) : table(tables, 0), boxes(6, 0) {}

    /// Groups, boxes and places of the items of a list `listed` long; the table is left empty.
    void lay_out(const std::vector<Item>& items, std::size_t listed);
    void set_box(std::size_t group, const Item& box);

    KernelBoxes box_view() const;

    /// The lanes without the listed ones.
    std::vector<unsigned> lanes_without(std::span<const std::size_t> listed) const;

    Table table;  ///< the kernel's rows, in the order of its members
    Table boxes;
    std::vector<float> batch_z_low, batch_z_high;
    std::vector<unsigned> lanes;
    std::vector<int> source;  ///< per place: index in the list; -1: none
    std::vector<int> places;  ///< per index in the list: its place; -1: none
};

}  // namespace rakeline::sight::hidden
