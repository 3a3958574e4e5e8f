// SPDX-License-Identifier: MIT
#include "sight/hidden_cache.hpp"

#include "base/parallel.hpp"
#include "sight/hidden_room.hpp"

#include <algorithm>
#include <optional>

namespace rakeline::sight {
namespace {

using hidden::Room;

constexpr std::size_t kLeastSeats = 128;
/// By which what moved is made larger before asking whom it can touch: more than the kernel's
/// single precision and the exact way can differ.
constexpr double kMargin_m = 0.001;

bool same_patch(const geometry::Patch& a, const geometry::Patch& b) {
    return a.centre == b.centre && a.across == b.across && a.up == b.up && a.normal == b.normal &&
           a.radius_m == b.radius_m;
}

/// What came, went or moved: as it was, and as it is.
struct Touched {
    std::vector<Head> heads;
    std::vector<Wall> walls;

    bool empty() const { return heads.empty() && walls.empty(); }
};

void widen(Head& head) {
    head.radius_m += kMargin_m;
    head.half_height_m += kMargin_m;
}

void widen(Wall& wall) {
    const glm::dvec3 along = wall.to - wall.from;
    const double length = glm::length(along);
    if (length == 0.0) return;
    wall.from -= kMargin_m / length * along;
    wall.to += kMargin_m / length * along;
}

/// Indices at which two lists differ; the longer one's rest counts.
template <class T>
std::vector<std::size_t> differing(std::span<const T> a, std::span<const T> b) {
    std::vector<std::size_t> out;
    for (std::size_t i = 0; i < std::max(a.size(), b.size()); ++i) {
        if (i >= a.size() || i >= b.size() || a[i] != b[i]) out.push_back(i);
    }
    return out;
}

template <class T>
void add_touched(std::span<const T> list, const std::vector<std::size_t>& at, std::vector<T>& out) {
    for (const std::size_t i : at) {
        if (i >= list.size()) continue;
        out.push_back(list[i]);
        widen(out.back());
    }
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
    std::vector<hidden::SeatBlocks> blocks;
    std::vector<char> exact;  ///< the seat's last full pass went the exact way in every block
    std::vector<SeatHidden> seats;

    bool same_frame(const HiddenInput& in) const {
        return room && same_patch(surface, in.surface) && opening == in.opening &&
               eyes.size() == in.eyes.size();
    }
    void copy(const HiddenInput& in);
    void start(const HiddenInput& in);
    void change(const HiddenInput& in);
    void take_over(const HiddenInput& in, const std::vector<std::size_t>& moved, bool walls_too);
    void work(const std::vector<unsigned>& wanted);
};

void HiddenCache::Memory::copy(const HiddenInput& in) {
    surface = in.surface;
    opening = in.opening;
    eyes.assign(in.eyes.begin(), in.eyes.end());
    heads.assign(in.heads.begin(), in.heads.end());
    walls.assign(in.walls.begin(), in.walls.end());
    own = {surface, opening, eyes, heads, walls};
}

void HiddenCache::Memory::work(const std::vector<unsigned>& wanted) {
    base::parallel_chunks(
        wanted.size(), kLeastSeats,
        [&](std::size_t begin, std::size_t end) {
            for (std::size_t i = begin; i < end; ++i) {
                if (wanted[i] == 0) continue;
                const int eye = static_cast<int>(i);
                const bool kernel = room->blocks(eye, wanted[i], blocks[i]);
                if (wanted[i] == room->all_blocks()) exact[i] = kernel ? 0 : 1;
                seats[i] = room->summed(eye, blocks[i]);
            }
        },
        setting.threads);
}

void HiddenCache::Memory::start(const HiddenInput& in) {
    copy(in);
    room.emplace(own, setting.columns, hidden::best_instruction_set());
    blocks.assign(eyes.size(), {});
    exact.assign(eyes.size(), 0);
    seats.assign(eyes.size(), {});
    work(std::vector<unsigned>(eyes.size(), room->all_blocks()));
}

/// The memory becomes `in`; only the heads at `moved` are packed again where that will do.
void HiddenCache::Memory::take_over(const HiddenInput& in,
                                    const std::vector<std::size_t>& moved,
                                    bool walls_too) {
    const bool in_place = !walls_too && heads.size() == in.heads.size();
    if (!in_place) {
        copy(in);
        room.emplace(own, setting.columns, hidden::best_instruction_set());
        return;
    }
    std::ranges::copy(in.eyes, eyes.begin());
    for (const std::size_t i : moved)
        heads[i] = in.heads[i];
    for (const std::size_t i : moved)
        room->replace_head(i);
}

void HiddenCache::Memory::change(const HiddenInput& in) {
    const auto moved_eyes = differing(std::span<const glm::dvec3>(eyes), in.eyes);
    const auto moved_heads = differing(std::span<const Head>(heads), in.heads);
    const auto moved_walls = differing(std::span<const Wall>(walls), in.walls);
    Touched touched;
    add_touched(std::span<const Head>(heads), moved_heads, touched.heads);
    add_touched(in.heads, moved_heads, touched.heads);
    add_touched(std::span<const Wall>(walls), moved_walls, touched.walls);
    add_touched(in.walls, moved_walls, touched.walls);
    take_over(in, moved_heads, !moved_walls.empty());
    std::vector<unsigned> wanted(eyes.size(), 0U);
    if (!touched.empty()) {
        const HiddenInput asked{surface, opening, {}, touched.heads, touched.walls};
        const hidden::PackedHeads some_heads(asked, room->columns());
        const hidden::PackedWalls some_walls(asked, room->columns());
        const auto heads_view = some_heads.view();
        const auto walls_view = some_walls.view();
        for (std::size_t i = 0; i < eyes.size(); ++i) {
            wanted[i] = room->reached(static_cast<int>(i), heads_view, walls_view);
            if (wanted[i] != 0 && exact[i] != 0) wanted[i] = room->all_blocks();
        }
    }
    for (const std::size_t i : moved_eyes)
        wanted[i] = room->all_blocks();
    work(wanted);
}

HiddenCache::HiddenCache(const HiddenSetting& setting) : memory_(std::make_unique<Memory>()) {
    memory_->setting = setting;
}

HiddenCache::~HiddenCache() = default;
HiddenCache::HiddenCache(HiddenCache&&) noexcept = default;
HiddenCache& HiddenCache::operator=(HiddenCache&&) noexcept = default;

const std::vector<SeatHidden>& HiddenCache::update(const HiddenInput& in) {
    Memory& m = *memory_;
    if (!hidden::PackedPicture::fits(m.setting.columns)) {
        m.seats = hidden_picture(in, m.setting);
    } else if (m.same_frame(in)) {
        m.change(in);
    } else {
        m.start(in);
    }
    return m.seats;
}

}  // namespace rakeline::sight
