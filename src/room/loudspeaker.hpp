// SPDX-License-Identifier: MIT
#pragma once

#include "base/units.hpp"

#include <string>
#include <vector>

/// One loudspeaker of the room, part of the document (layout.hpp). SI inside.
namespace rakeline::room {

enum class Channel { left, centre, right, sub_bass, surround };
enum class Directivity {
    piston,  ///< rigid piston in a baffle, published closed form
    horn,    ///< constant coverage by nominal angles above the frequency where it holds
};

/// Measured coverage of a horn in the octave band about a frequency: the whole angles between its
/// -6 dB directions.
struct CoveragePoint {
    double frequency_hz = 1000.0;
    double across_rad = base::radians(90.0);
    double up_rad = base::radians(50.0);
    bool operator==(const CoveragePoint&) const = default;
};

struct Loudspeaker {
    std::string name;
    Channel channel = Channel::centre;
    double across_m = 0.0;  ///< acoustic centre
    double up_m = 2.5;
    double back_m = 0.4;
    double yaw_rad = 0.0;    ///< axis turned toward +x; 0 faces the booth
    double pitch_rad = 0.0;  ///< axis turned downward
    bool behind_screen = true;
    double sensitivity_db = 98.0;  ///< sound pressure level at 1 m for 1 W, free field, on axis
    double power_w = 500.0;        ///< continuous rating
    double amplifier_w = 500.0;    ///< continuous, that its amplifier can give into it
    double delay_s = 0.0;          ///< electrical, on top of what the player gives its channel
    Directivity directivity = Directivity::horn;
    double piston_radius_m = 0.16;                     ///< of a horn: half the width of its mouth
    double coverage_across_rad = base::radians(90.0);  ///< between the -6 dB directions
    double coverage_up_rad = base::radians(50.0);
    /// Frequencies rising. One or more stand in place of a horn's nominal coverage; unused by a
    /// piston.
    std::vector<CoveragePoint> coverage_table;
    double cabinet_width_m = 0.6;  ///< outside, across its axis
    double cabinet_height_m = 0.9;
    double cabinet_depth_m = 0.5;  ///< along its axis
    double mass_kg = 45.0;
    bool operator==(const Loudspeaker&) const = default;
};

}  // namespace rakeline::room
