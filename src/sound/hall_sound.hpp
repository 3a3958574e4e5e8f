// SPDX-License-Identifier: MIT
#pragma once

#include "room/loudspeaker.hpp"
#include "sound/decay.hpp"
#include "sound/flutter.hpp"
#include "sound/reflections.hpp"

#include <array>
#include <vector>

/// What the hall does to sound: how long it lingers, what comes back from its walls.
namespace rakeline::sound {

struct HallSound {
    room::HallSurfaces surfaces;
    std::array<DecayBand, room::kAbsorptionOctaves_hz.size()> decay;
    FlutterPairs flutter;
    /// Per loudspeaker, then per seat; empty for those that are no screen channel.
    std::vector<std::vector<SeatReflections>> reflections;
    bool operator==(const HallSound&) const = default;
};

/// Whether the channel is left, centre or right.
bool is_screen_channel(room::Channel channel);

HallSound study_hall(const HallInput& hall,
                     const Air& air,
                     const std::vector<room::Loudspeaker>& loudspeakers,
                     const std::vector<glm::dvec3>& ears);

}  // namespace rakeline::sound
