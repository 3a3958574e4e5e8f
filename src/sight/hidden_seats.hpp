// SPDX-License-Identifier: MIT
#pragma once

#include "sight/hidden_room.hpp"

#include <memory>
#include <optional>

/// What every seat remembers from one edit to the next. Private to sight/hidden.
namespace rakeline::sight::hidden {

/// Some heads and walls alone, as the kernel has them.
class Alone {
public:
    Alone(const HiddenInput& in,
          const Room& room,
          std::vector<Head> heads,
          std::vector<Wall> walls);

    const KernelScene& scene() const { return scene_; }

    /// All of them are behind the eye or below what it has of the picture; true only if it is sure.
    bool out_of_sight(const KernelEye& eye) const;

private:
    bool about(const KernelEye& eye) const;

    PackedHeads heads_;
    PackedWalls walls_;
    KernelScene scene_;
    /// About all of them, in the patch's frame.
    float x_low_ = single(kFarOff_m), x_high_ = single(-kFarOff_m);
    float y_high_ = single(-kFarOff_m);
    float z_low_ = single(kFarOff_m), z_high_ = single(-kFarOff_m);
};

/// Heads and walls that move, kept apart from the rest of the room: as they stand now, and the room
/// without them.
class Apart {
public:
    /// The chosen ones of `in`, which is what `room` has; to be made anew when they have moved.
    Apart(const HiddenInput& in, const Room& room, Chosen chosen);

    const Chosen& chosen() const { return chosen_; }
    const Alone& alone() const { return alone_; }
    const KernelScene& rest() const { return rest_; }

private:
    Chosen chosen_;
    Alone alone_;
    std::vector<unsigned> head_lanes_, wall_lanes_;
    KernelScene rest_;
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

    /// From here on other heads and walls than before are apart; `touched` has them as they stood
    /// and as they stand.
    void begin(const Room& room, const Alone& touched);

    void move_eyes(const Room& room, const std::vector<std::size_t>& moved);

    /// Eyes may have moved, and the heads and walls of `apart`; null: none of these has. The room
    /// has them where they stand now.
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

    /// `solid` takes longer, and saves time when something moves for the first time: not worth it
    /// for an eye that moves and will move again.
    void from_scratch(const Room& room, bool solid, Seat& seat);
    void lay_apart(const Room& room, const Apart& apart, Seat& seat);
    void work_out_rest(const Room& room, const Apart& apart, unsigned missing, Seat& seat);

    unsigned threads_;
    bool begun_ = false;  ///< those apart move for the first time: `applied` tells whom they touch
    std::vector<Seat> seats_;
    std::unique_ptr<BlockUnion[]> unions_;  ///< seat by seat, one a block
    std::vector<SeatHidden> results_;
};

}  // namespace rakeline::sight::hidden
