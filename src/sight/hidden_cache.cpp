// SPDX-License-Identifier: MIT
#include "sight/hidden_cache.hpp"

#include "sight/hidden_seats.hpp"

#include <algorithm>
#include <optional>

namespace rakeline::sight {
namespace {

using hidden::Alone;
using hidden::Apart;
using hidden::Chosen;
using hidden::Room;
using hidden::Seats;

bool same_patch(const geometry::Patch& a, const geometry::Patch& b) {
    return a.centre == b.centre && a.across == b.across && a.up == b.up && a.normal == b.normal &&
           a.radius_m == b.radius_m;
}

/// Indices at which two lists of one length differ.
template <class T>
std::vector<std::size_t> differing(const std::vector<T>& a, std::span<const T> b) {
    std::vector<std::size_t> out;
    for (std::size_t i = 0; i < a.size(); ++i) {
        if (a[i] != b[i]) out.push_back(i);
    }
    return out;
}

std::size_t size_of(const Chosen& chosen) {
    return chosen.heads.size() + chosen.walls.size();
}

/// Whether what moved is most of what is apart already, and nothing else.
bool mostly(const Chosen& moved, const Chosen& apart) {
    return 2 * size_of(moved) >= size_of(apart) &&
           std::ranges::includes(apart.heads, moved.heads) &&
           std::ranges::includes(apart.walls, moved.walls);
}

/// How they stood and how they stand.
template <class T>
std::vector<T> both(const std::vector<T>& was,
                    std::span<const T> is,
                    const std::vector<std::size_t>& at) {
    std::vector<T> out;
    out.reserve(2 * at.size());
    for (const std::size_t i : at)
        out.push_back(was[i]);
    for (const std::size_t i : at)
        out.push_back(is[i]);
    return out;
}

}  // namespace

struct HiddenCache::Memory {
    HiddenSetting setting;
    geometry::Patch surface;
    picture::Opening opening;
    std::vector<glm::dvec3> eyes;
    std::vector<Head> heads;
    std::vector<Wall> walls;
    HiddenInput own;  ///< of the members above; what `room` looks at
    std::optional<Room> room;
    std::optional<Seats> seats;
    std::optional<Apart> apart;
    std::vector<SeatHidden> without_kernel;

    bool same_frame(const HiddenInput& in) const;
    void start(const HiddenInput& in);
    void change(const HiddenInput& in);
    void move(const HiddenInput& in, const Chosen& moved);
    const std::vector<SeatHidden>& update(const HiddenInput& in);
};

bool HiddenCache::Memory::same_frame(const HiddenInput& in) const {
    return room && same_patch(surface, in.surface) && opening == in.opening &&
           eyes.size() == in.eyes.size() && heads.size() == in.heads.size() &&
           walls.size() == in.walls.size();
}

void HiddenCache::Memory::start(const HiddenInput& in) {
    surface = in.surface;
    opening = in.opening;
    eyes.assign(in.eyes.begin(), in.eyes.end());
    heads.assign(in.heads.begin(), in.heads.end());
    walls.assign(in.walls.begin(), in.walls.end());
    own = {surface, opening, eyes, heads, walls};
    room.emplace(own, setting.columns, hidden::best_instruction_set());
    seats.emplace(*room, eyes.size(), setting.threads);
    apart.reset();
}

void HiddenCache::Memory::move(const HiddenInput& in, const Chosen& moved) {
    const bool further = apart && mostly(moved, apart->chosen());
    if (!further) {
        const Alone touched(own, *room, both(heads, in.heads, moved.heads),
                            both(walls, in.walls, moved.walls));
        seats->begin(*room, touched);
    }
    for (const std::size_t i : moved.heads)
        heads[i] = in.heads[i];
    for (const std::size_t i : moved.walls)
        walls[i] = in.walls[i];
    room->replace(moved);
    Chosen chosen = further ? apart->chosen() : moved;
    apart.emplace(own, *room, std::move(chosen));
}

void HiddenCache::Memory::change(const HiddenInput& in) {
    const std::vector<std::size_t> moved_eyes = differing(eyes, in.eyes);
    const Chosen moved{differing(heads, in.heads), differing(walls, in.walls)};
    const std::size_t all = heads.size() + walls.size();
    if (2 * size_of(moved) > all || 2 * moved_eyes.size() > eyes.size()) {
        start(in);
        return;
    }
    const bool some = size_of(moved) > 0;
    if (some) move(in, moved);
    for (const std::size_t i : moved_eyes)
        eyes[i] = in.eyes[i];
    seats->move_eyes(*room, moved_eyes);
    seats->update(*room, some ? &*apart : nullptr);
}

const std::vector<SeatHidden>& HiddenCache::Memory::update(const HiddenInput& in) {
    if (!hidden::PackedPicture::fits(setting.columns)) {
        without_kernel = hidden_picture(in, setting);
        return without_kernel;
    }
    if (same_frame(in)) {
        change(in);
    } else {
        start(in);
    }
    return seats->results();
}

HiddenCache::HiddenCache(const HiddenSetting& setting) : memory_(std::make_unique<Memory>()) {
    memory_->setting = setting;
}

HiddenCache::~HiddenCache() = default;
HiddenCache::HiddenCache(HiddenCache&&) noexcept = default;
HiddenCache& HiddenCache::operator=(HiddenCache&&) noexcept = default;

const std::vector<SeatHidden>& HiddenCache::update(const HiddenInput& in) {
    return memory_->update(in);
}

}  // namespace rakeline::sight
