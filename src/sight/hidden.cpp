// SPDX-License-Identifier: MIT
#include "sight/hidden.hpp"

#include "base/assert.hpp"
#include "base/parallel.hpp"
#include "sight/hidden_room.hpp"

namespace rakeline::sight {
namespace {

/// Seats below which a second thread costs more than it saves.
constexpr std::size_t kLeastSeats = 128;

/// seat(i) for every eye, each on its own.
template <class Seat>
void for_every_eye(const HiddenInput& in, const HiddenSetting& setting, const Seat& seat) {
    base::parallel_chunks(
        in.eyes.size(), kLeastSeats,
        [&](std::size_t begin, std::size_t end) {
            for (std::size_t i = begin; i < end; ++i)
                seat(i);
        },
        setting.threads);
}

template <class Keep>
void all_seats(const HiddenInput& in, const HiddenSetting& setting, const Keep& keep) {
    RL_ASSERT(setting.columns >= hidden::kBlock);
    if (!hidden::PackedPicture::fits(setting.columns)) {
        const auto columns = hidden::picture_columns(in.surface, in.opening, setting.columns);
        for_every_eye(in, setting, [&](std::size_t i) {
            keep(i, hidden::exact_seat(in, columns, static_cast<int>(i)));
        });
        return;
    }
    const hidden::Room room(in, setting.columns, hidden::best_instruction_set());
    for_every_eye(in, setting, [&](std::size_t i) {
        const hidden::EyePlace place = room.place(static_cast<int>(i));
        hidden::SeatBlocks blocks;
        room.blocks(place, room.all_blocks(), false, blocks);
        keep(i, room.summed(place, blocks));
    });
}

}  // namespace

std::vector<SeatHidden> hidden_picture(const HiddenInput& in, const HiddenSetting& setting) {
    std::vector<SeatHidden> out(in.eyes.size());
    all_seats(in, setting, [&](std::size_t i, const SeatHidden& seat) { out[i] = seat; });
    return out;
}

void hidden_fractions(const HiddenInput& in, const HiddenSetting& setting, std::span<double> out) {
    RL_ASSERT(out.size() == in.eyes.size());
    all_seats(in, setting,
              [&](std::size_t i, const SeatHidden& seat) { out[i] = seat.hidden_fraction; });
}

}  // namespace rakeline::sight
