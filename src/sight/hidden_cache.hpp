// SPDX-License-Identifier: MIT
#pragma once

#include "sight/hidden.hpp"

#include <memory>

/// The hidden picture over one edit after the other.
namespace rakeline::sight {

/// Gives what hidden_picture gives, bit for bit, and works out again only the parts of the picture
/// that a head or wall that moved can touch, from the seats that can have it before them. What the
/// rest of the room hides there is kept, so that moving the same heads again, as a handle that is
/// dragged does, only lays them upon it: about 3 kB a seat. A change of the picture or of the
/// number of eyes, heads or walls, and a move of most of them, starts afresh.
class HiddenCache {
public:
    explicit HiddenCache(const HiddenSetting& setting = {});
    ~HiddenCache();
    HiddenCache(HiddenCache&&) noexcept;
    HiddenCache& operator=(HiddenCache&&) noexcept;

    /// The result stays until the next update.
    const std::vector<SeatHidden>& update(const HiddenInput& in);

private:
    struct Memory;
    std::unique_ptr<Memory> memory_;
};

}  // namespace rakeline::sight
