// SPDX-License-Identifier: MIT
#include "sound/hall_sound.hpp"

#include "base/assert.hpp"

#include <algorithm>

namespace rakeline::sound {
namespace {

std::size_t reflection_band() {
    const auto& bands = room::kAbsorptionOctaves_hz;
    const auto* found = std::find(bands.begin(), bands.end(), kReflectionBand_hz);
    RL_ASSERT(found != bands.end());
    return static_cast<std::size_t>(found - bands.begin());
}

}  // namespace

bool is_screen_channel(room::Channel channel) {
    return channel == room::Channel::left || channel == room::Channel::centre ||
           channel == room::Channel::right;
}

HallSound study_hall(const HallInput& hall,
                     const Air& air,
                     const std::vector<room::Loudspeaker>& loudspeakers,
                     const std::vector<glm::dvec3>& ears) {
    HallSound out;
    out.surfaces = hall.surfaces;
    out.decay = decay_bands(hall.surfaces, hall.acoustics, air);
    out.flutter = flutter_pairs(hall, air);
    const ReflectionRoom room{wall_planes(hall), wall_returns(hall.acoustics, reflection_band()),
                              air.sound_speed_m_s()};
    for (const room::Loudspeaker& loudspeaker : loudspeakers) {
        const Beam beam(loudspeaker, kReflectionBand_hz, air);
        out.reflections.push_back(is_screen_channel(loudspeaker.channel)
                                      ? seat_reflections(room, loudspeaker, beam, ears)
                                      : std::vector<SeatReflections>{});
    }
    return out;
}

}  // namespace rakeline::sound
