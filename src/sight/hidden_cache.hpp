// SPDX-License-Identifier: MIT
#pragma once

#include "sight/hidden.hpp"

#include <memory>

/// The hidden picture over one edit after the other.
namespace rakeline::sight {

/// Gives what hidden_picture gives, bit for bit, and works out again only the parts of the picture
/// that a head or wall that came, went or moved can touch, from the seats that can have it before
/// them. A change of the picture or of the number of eyes starts afresh.
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
