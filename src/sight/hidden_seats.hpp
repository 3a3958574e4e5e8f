// SPDX-License-Identifier: MIT
#pragma once

#include "sight/hidden_room.hpp"

#include <memory>
#include <optional>

/// What every seat remembers from one edit to the next. Private to sight/hidden.
namespace rakeline::sight::hidden {

/// Heads and walls that move, kept apart from the rest of the room: as they stand now, and the room
/// without them. The room and the input must stay, and apart and room take over changes together.
class Apart {
public:
    Apart(const HiddenInput& in, const Room& room, Chosen chosen);

    const Chosen& chosen() const { return chosen_; }

    /// The heads and walls stand elsewhere now; so does the room have them.
    void take_over(const HiddenInput& in, const Room& room);

    /// Those apart alone.
    const KernelScene& scene() const { return scene_; }
    const KernelScene& rest() const { return rest_; }

    /// All of them are behind the eye or below what it has of the picture; true only if it is sure.
    bool out_of_sight(const KernelEye& eye) const;

private:
    void enclose();

    Chosen chosen_;
    std::optional<PackedHeads> heads_;
    std::optional<PackedWalls> walls_;
    KernelScene scene_;
    std::vector<unsigned> rest_head_lanes_, rest_wall_lanes_;
    KernelScene rest_;
    float y_high_ = 0.0F, z_low_ = 0.0F, z_high_ = 0.0F;  ///< of all that is apart
};

/// All seats of one room. The first move of some heads works out anew the blocks that they touch;
/// what the rest of the room hides there is kept, and every further move of the same heads only
/// lays them upon it.
///
/// What keeps the bits: a block's number is a function of the union of its intervals, not of their
/// order, so leaving out what is sure to lie within the others changes nothing.
class Seats {
public:
    /// All seats from scratch.
    Seats(const Room& room, std::size_t count, unsigned threads);

    /// From here on `apart` moves: to be called before it does.
    void begin(const Room& room, const Apart& apart);

    void move_eyes(const Room& room, const std::vector<std::size_t>& moved);

    /// Eyes may have moved, and the heads and walls of `apart`; null: none of them has.
    void update(const Room& room, const Apart* apart);

    const std::vector<SeatHidden>& results() const { return results_; }

private:
    struct Seat {
        EyePlace place;
        SeatBlocks blocks;
        bool exact = false;  ///< the kernel can't take it
        bool awaits_scratch = false;
        KernelRest rest;       ///< what all but those apart hide
        unsigned crowded = 0;  ///< blocks of which `rest` can't be worked out
        unsigned applied = 0;  ///< blocks that those apart may have a part in
        /// Up to here, block by block, all is hidden without those apart, at least.
        alignas(32) float covered[kMostBlocks] = {};
    };

    void from_scratch(const Room& room, Seat& seat);
    void lay_apart(const Room& room, const Apart& apart, Seat& seat);
    void work_out_rest(const Room& room, const Apart& apart, unsigned missing, Seat& seat);

    unsigned threads_;
    std::vector<Seat> seats_;
    std::unique_ptr<BlockUnion[]> unions_;  ///< seat by seat, one a block
    std::vector<SeatHidden> results_;
};

}  // namespace rakeline::sight::hidden
