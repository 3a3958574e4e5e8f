// SPDX-License-Identifier: MIT
#include "sight/hidden.hpp"

#include "base/assert.hpp"
#include "base/parallel.hpp"
#include "sight/hidden_exact.hpp"

#include <algorithm>

namespace rakeline::sight {
namespace {

/// Seats below which a second thread costs more than it saves.
constexpr std::size_t kLeastSeats = 64;

SeatHidden seat_hidden(const HiddenInput& in, const hidden::PictureColumns& columns, int eye) {
    const hidden::Shadows shadows(in, columns, eye);
    SeatHidden out;
    double hidden_m = 0.0;
    std::vector<hidden::Stretch> stretches;
    for (std::size_t j = 0; j < columns.places.size(); ++j) {
        shadows.stretches(j, stretches);
        for (const ClearInterval& h : hidden::merged(stretches)) {
            hidden_m += h.top_m - h.bottom_m;
            out.clear_above_m = std::max(out.clear_above_m, h.top_m);
        }
    }
    out.hidden_fraction =
        hidden_m / (static_cast<double>(columns.places.size()) * columns.height_m);
    out.sees_back = hidden::sees_back(
        columns, hidden::in_patch_frame(in.surface, in.eyes[static_cast<std::size_t>(eye)]));
    return out;
}

}  // namespace

std::vector<SeatHidden> hidden_picture(const HiddenInput& in, const HiddenSetting& setting) {
    RL_ASSERT(setting.columns >= 8);
    const auto columns = hidden::picture_columns(in.surface, in.opening, setting.columns);
    std::vector<SeatHidden> out(in.eyes.size());
    base::parallel_chunks(
        in.eyes.size(), kLeastSeats,
        [&](std::size_t begin, std::size_t end) {
            for (std::size_t i = begin; i < end; ++i)
                out[i] = seat_hidden(in, columns, static_cast<int>(i));
        },
        setting.threads);
    return out;
}

void hidden_fractions(const HiddenInput& in, const HiddenSetting& setting, std::span<double> out) {
    RL_ASSERT(out.size() == in.eyes.size());
    const std::vector<SeatHidden> seats = hidden_picture(in, setting);
    for (std::size_t i = 0; i < out.size(); ++i)
        out[i] = seats[i].hidden_fraction;
}

}  // namespace rakeline::sight
