// SPDX-License-Identifier: MIT
#include "room/fields_internal.hpp"

#include <array>

namespace rakeline::room {
namespace {

using base::Unit;

constexpr auto kHouseCurves = std::to_array<const char*>({"flat", "x_curve"});

struct OctaveWords {
    const char* key;
    const char* label;
};
constexpr auto kOctaveWords = std::to_array<OctaveWords>({{"hz_125", "125 Hz"},
                                                          {"hz_250", "250 Hz"},
                                                          {"hz_500", "500 Hz"},
                                                          {"hz_1000", "1 kHz"},
                                                          {"hz_2000", "2 kHz"},
                                                          {"hz_4000", "4 kHz"}});
static_assert(kOctaveWords.size() == kAbsorptionOctaves_hz.size());

/// A surface takes in all of the sound at most; seats and people count on their floor alone, and
/// their edges add to it.
constexpr double kSurfaceMost = 1.0;
constexpr double kSeatedMost = 1.2;

void absorption(FieldVisitor& v, const Words& words, double most, OctaveAbsorption& x) {
    v.group(words, [&](FieldVisitor& inner) {
        for (std::size_t i = 0; i < kOctaveWords.size(); ++i) {
            inner.number({{kOctaveWords[i].key, kOctaveWords[i].label,
                           "Absorption coefficient of the octave band, random incidence."},
                          Unit::ratio,
                          0.0,
                          most},
                         x.by_octave[i]);
        }
    });
}

void level(FieldVisitor& v, const Words& words, double least, double most, double& value) {
    v.number({words, Unit::decibel, least, most}, value);
}

}  // namespace

void describe(FieldVisitor& v, Acoustics& x) {
    absorption(v, {"screen_wall", "Screen wall", "What stands behind and round the screen."},
               kSurfaceMost, x.screen_wall);
    absorption(v, {"side_walls", "Side walls", "Both of them."}, kSurfaceMost, x.side_walls);
    absorption(v, {"rear_wall", "Rear wall", "Of the booth."}, kSurfaceMost, x.rear_wall);
    absorption(v, {"ceiling", "Ceiling", "All of it."}, kSurfaceMost, x.ceiling);
    absorption(v, {"floor", "Floor", "That no seats cover."}, kSurfaceMost, x.floor);
    absorption(v, {"seats", "Seats, empty", "Per area of the floor that they cover."}, kSeatedMost,
               x.seats);
    absorption(v, {"audience", "Seats, taken", "Per area of the floor that they cover."},
               kSeatedMost, x.audience);
    absorption(v,
               {"baffle", "Behind the sheet",
                "Facing of the wall or cabinet fronts that the gap behind the sheet meets."},
               kSurfaceMost, x.baffle);
    v.number({{"taken_fraction", "Seats taken", "For the decay time."}, Unit::fraction, 0.0, 1.0},
             x.taken_fraction);
    v.integer({{"noise_target_nc", "Noise target",
                "Noise criterion (NC) curve that the background noise is to keep under."},
               15,
               50},
              x.noise_target_nc);
}

void describe(FieldVisitor& v, Playback& x) {
    level(v,
          {"surround_peak_level_db", "Surround peak level",
           "Of one surround channel at the reference seat, all its loudspeakers together."},
          60.0, 130.0, x.surround_peak_level_db);
    level(
        v,
        {"sub_bass_gain_db", "Sub-bass gain", "In its band, above the level of a screen channel."},
        0.0, 20.0, x.sub_bass_gain_db);
    level(v,
          {"crest_factor_db", "Crest factor", "Peaks of the programme above its long-term level."},
          3.0, 30.0, x.crest_factor_db);
    v.number({{"equalise_to_hz", "Equalise up to",
               "Frequency up to which the sheet's loss is made good."},
              Unit::hertz,
              1000.0,
              20000.0},
             x.equalise_to_hz);
    choice(v, {"house_curve", "House curve", "What the system is equalised to at the seats."},
           kHouseCurves, x.house_curve);
}

}  // namespace rakeline::room
