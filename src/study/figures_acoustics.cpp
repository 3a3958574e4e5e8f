// SPDX-License-Identifier: MIT
#include "sound/noise_criterion.hpp"
#include "study/hall_cells.hpp"

#include <algorithm>
#include <cmath>
#include <vector>

/// Air, surfaces, decay of sound and background noise.
namespace rakeline::study {
namespace {

using base::Unit;

const room::Acoustics& acoustics_of(const Cell& c) {
    return c.study.layout().acoustics;
}

const room::HallSurfaces& surfaces_of(const Cell& c) {
    return hall_of(c).surfaces;
}

/// The octave along the axis among those that absorption is given in.
std::optional<std::size_t> absorption_band(int octave) {
    const auto& bands = room::kAbsorptionOctaves_hz;
    const auto* found =
        std::find(bands.begin(), bands.end(), sound::kOctaves.at(static_cast<std::size_t>(octave)));
    if (found == bands.end()) return std::nullopt;
    return static_cast<std::size_t>(found - bands.begin());
}

const sound::DecayBand* decay_of(const Cell& c) {
    const auto band = absorption_band(c.index);
    return band ? &hall_of(c).decay[*band] : nullptr;
}

std::optional<double> volume(const Cell& c, Working& w) {
    const room::Hall& hall = c.study.layout().hall;
    const double volume_m3 = surfaces_of(c).volume_m3;
    const double plan_m2 =
        hall.length_m * (hall.width_m + hall.length_m * std::tan(hall.splay_rad));
    w.input("A", "plan between the walls", plan_m2, Unit::square_metre);
    w.input("H", "height of the ceiling over the datum", hall.height_m, Unit::metre);
    w.input("U", "under the seat plan's floors, down to the datum",
            plan_m2 * hall.height_m - volume_m3, Unit::cubic_metre);
    return volume_m3;
}

std::optional<double> volume_per_seat(const Cell& c, Working& w) {
    const double n =
        w.input("n", "seats", static_cast<double>(c.study.seats.seats.size()), Unit::count);
    if (n == 0.0) return std::nullopt;
    return w.input("V", "air in the hall", surfaces_of(c).volume_m3, Unit::cubic_metre) / n;
}

void record_surfaces(const room::HallSurfaces& s, Working& w) {
    w.input("S_1", "screen wall", s.screen_wall_m2, Unit::square_metre);
    w.input("S_2", "side walls", s.side_walls_m2, Unit::square_metre);
    w.input("S_3", "rear wall", s.rear_wall_m2, Unit::square_metre);
    w.input("S_4", "ceiling, undersides of balconies with it", s.ceiling_m2, Unit::square_metre);
    w.input("S_5", "floor without seats", s.bare_floor_m2, Unit::square_metre);
    w.input("S_6", "floor that seats cover", s.seated_floor_m2, Unit::square_metre);
}

std::optional<double> surface_area(const Cell& c, Working& w) {
    const room::HallSurfaces& s = surfaces_of(c);
    record_surfaces(s, w);
    return s.total_m2();
}

std::optional<double> mean_absorption(const Cell& c, Working& w) {
    const sound::DecayBand* d = decay_of(c);
    if (!d) return std::nullopt;
    if (w.recording()) {
        const room::Acoustics& a = acoustics_of(c);
        const std::size_t band = *absorption_band(c.index);
        record_surfaces(surfaces_of(c), w);
        w.input("a_1", "of the screen wall", a.screen_wall.by_octave[band], Unit::ratio);
        w.input("a_2", "of the side walls", a.side_walls.by_octave[band], Unit::ratio);
        w.input("a_3", "of the rear wall", a.rear_wall.by_octave[band], Unit::ratio);
        w.input("a_4", "of the ceiling", a.ceiling.by_octave[band], Unit::ratio);
        w.input("a_5", "of the bare floor", a.floor.by_octave[band], Unit::ratio);
        w.input("a_6", "of the seats, so many of them taken", sound::seated_absorption(a, band),
                Unit::ratio);
        w.input("t", "seats taken", a.taken_fraction, Unit::fraction);
    }
    return d->mean_absorption;
}

void record_decay(const Cell& c, const sound::DecayBand& d, Working& w) {
    if (!w.recording()) return;
    const room::HallSurfaces& s = surfaces_of(c);
    w.input("V", "air in the hall", s.volume_m3, Unit::cubic_metre);
    w.input("S", "all surfaces", s.total_m2(), Unit::square_metre);
    w.input("a", "their mean absorption", d.mean_absorption, Unit::ratio);
    w.input("A", "absorption area of the surfaces, S a", d.surfaces_m2, Unit::square_metre);
    w.input("4 m V", "absorption area of the air", d.air_m2, Unit::square_metre);
    if (d.mean_absorption > 0.2)
        w.note("over a mean absorption of about 0.2 Sabine's formula gives too long a decay");
}

std::optional<double> decay_sabine(const Cell& c, Working& w) {
    const sound::DecayBand* d = decay_of(c);
    if (!d) return std::nullopt;
    record_decay(c, *d, w);
    return d->sabine_s;
}

std::optional<double> decay_eyring(const Cell& c, Working& w) {
    const sound::DecayBand* d = decay_of(c);
    if (!d) return std::nullopt;
    record_decay(c, *d, w);
    return d->eyring_s;
}

std::optional<double> decay_least(const Cell& c, Working& w) {
    return sound::listening_decay_s(
        w.input("V", "air in the hall", surfaces_of(c).volume_m3, Unit::cubic_metre));
}

std::optional<double> decay_most(const Cell& c, Working& w) {
    const double volume_m3 =
        w.input("V", "air in the hall", surfaces_of(c).volume_m3, Unit::cubic_metre);
    if (volume_m3 > 5000.0) w.note("the standard ends at 5000 m³; its formula is carried on");
    return sound::speech_decay_s(volume_m3);
}

std::optional<double> decay_share(const Cell& c, Working& w) {
    const sound::DecayBand* d = decay_of(c);
    const auto most = sound::speech_decay_s(surfaces_of(c).volume_m3);
    if (!d || !most) return std::nullopt;
    const double decay = w.input("T", "decay time by Eyring", d->eyring_s, Unit::long_second);
    return decay / w.input("T_most", "for speech in such a volume", *most, Unit::long_second);
}

/// Mean of the octaves of 500 Hz and 1 kHz.
double middle_decay_s(const Cell& c) {
    double sum = 0.0;
    for (const sound::DecayBand& d : hall_of(c).decay)
        if (d.frequency_hz == 500.0 || d.frequency_hz == 1000.0) sum += 0.5 * d.eyring_s;
    return sum;
}

std::optional<double> critical_distance(const Cell& c, Working& w) {
    for (const sound::DecayBand& d : hall_of(c).decay) {
        if (d.frequency_hz != 1000.0) continue;
        w.input("A", "absorption area of the surfaces, 1 kHz", d.surfaces_m2, Unit::square_metre);
        w.input("4 m V", "absorption area of the air", d.air_m2, Unit::square_metre);
        return sound::critical_distance_m(d);
    }
    return std::nullopt;
}

std::optional<double> schroeder_frequency(const Cell& c, Working& w) {
    const double decay =
        w.input("T", "decay time, mean of 500 Hz and 1 kHz", middle_decay_s(c), Unit::long_second);
    return sound::schroeder_frequency_hz(
        decay, w.input("V", "air in the hall", surfaces_of(c).volume_m3, Unit::cubic_metre));
}

std::optional<double> noise_target(const Cell& c, Working&) {
    return acoustics_of(c).noise_target_nc;
}

std::optional<double> noise_allowed(const Cell& c, Working& w) {
    w.input("NC", "noise criterion aimed at", acoustics_of(c).noise_target_nc, Unit::count);
    return sound::noise_criterion_db(acoustics_of(c).noise_target_nc,
                                     sound::kOctaves.at(static_cast<std::size_t>(c.index)));
}

constexpr Per kB{.band = true};

}  // namespace

std::span<const FigureDefinition> acoustics_figures() {
    static const std::vector<FigureDefinition> entries = {
        {"sound.volume",
         Subject::sound,
         "Air in the hall",
         Unit::cubic_metre,
         {},
         "Between walls, ceiling and the floor as it is raked, datum to floor taken off.",
         "V = A H - U",
         "derived: prisms under the seat plan's floors",
         "The hall holds {value} of air",
         volume},
        {"sound.volume_per_seat",
         Subject::sound,
         "Air a seat",
         Unit::cubic_metre,
         {},
         "Air in the hall over the number of seats.",
         "V / n",
         "derived: ratio of two figures",
         "There are {value} of air to a seat",
         volume_per_seat},
        {"sound.surface_area",
         Subject::sound,
         "Surfaces of the hall",
         Unit::square_metre,
         {},
         "Walls above the floor that runs along them, ceiling and all floors.",
         "S = S_1 + S_2 + S_3 + S_4 + S_5 + S_6",
         "derived: plane surfaces of hall and seat plan",
         "The hall has {value} of surface",
         surface_area},
        {"sound.mean_absorption", Subject::sound, "Mean absorption", Unit::ratio, kB,
         "Part of the sound energy that a surface of the hall takes, over all surfaces by area.",
         "a = sum of S_i a_i / S", "derived: the layout's own coefficients, which are yours",
         "The hall's surfaces take {value} on average at {band}", mean_absorption},
        {"sound.decay_sabine", Subject::sound, "Decay time, Sabine", Unit::long_second, kB,
         "Time in which sound in the hall would fall by 60 dB, were it spread evenly.",
         "24 ln 10 V / (c (A + 4 m V))", "W. C. Sabine, 1900; ISO 9613-1:1993 for the air",
         "Sound lingers for {value} at {band} by Sabine", decay_sabine},
        {"sound.decay_eyring", Subject::sound, "Decay time, Eyring", Unit::long_second, kB,
         "The same for a hall that absorbs much, as a cinema does.",
         "24 ln 10 V / (c (-S ln(1 - a) + 4 m V))",
         "C. F. Eyring, 1930, from memory; ISO 9613-1:1993 for the air",
         "Sound lingers for {value} at {band} by Eyring", decay_eyring},
        {"sound.decay_least",
         Subject::sound,
         "Decay, close listening",
         Unit::long_second,
         {},
         "Lower side of the recommended range, at middle frequencies.",
         "0.25 s (V / 100 m³)^(1/3)",
         "Rec. ITU-R BS.1116-3, from memory; as a range for a cinema our choice",
         "Close listening wants {value}",
         decay_least},
        {"sound.decay_most",
         Subject::sound,
         "Decay, speech",
         Unit::long_second,
         {},
         "Upper side of the recommended range, at middle frequencies.",
         "0.37 s lg V - 0.14 s",
         "DIN 18041:2016, group A2, from memory; as a range for a cinema our choice",
         "Speech wants {value} at most",
         decay_most},
        {"sound.decay_share", Subject::sound, "Decay over recommended", Unit::ratio, kB,
         "The hall's decay time by Eyring against the upper side of the recommended range.",
         "T / T_most", "derived: ratio of two figures",
         "The hall lingers {value} times as long as suits speech at {band}", decay_share},
        {"sound.critical_distance",
         Subject::sound,
         "Critical distance",
         Unit::metre,
         {},
         "From a source that sends evenly all round, at 1 kHz: beyond it the hall is the louder; a "
         "beam carries farther.",
         "((A + 4 m V) / (16 pi))^(1/2)",
         "diffuse field, handbook form, from memory",
         "Beyond {value} the hall is louder than a source that sends evenly",
         critical_distance},
        {"sound.schroeder_frequency",
         Subject::sound,
         "Single resonances below",
         Unit::hertz,
         {},
         "Under this frequency the hall's resonances stand apart, and decay times say little.",
         "2000 (T / V)^(1/2)",
         "M. R. Schroeder, 1962, from memory",
         "Single resonances are heard below {value}",
         schroeder_frequency},
        {"sound.noise_target",
         Subject::sound,
         "Noise criterion, NC",
         Unit::count,
         {},
         "The NC curve that the background noise of the empty, running hall is to keep under.",
         "NC",
         "the layout's own target, which is yours; nothing here predicts the noise",
         "The hall is held to NC-{value}",
         noise_target},
        {"sound.noise_allowed", Subject::sound, "Background noise allowed", Unit::decibel, kB,
         "Octave-band level of the curve aimed at, dB re 20 uPa: for whoever lays out the "
         "ventilation and measures.",
         "L(NC, f)", "NC curves of L. L. Beranek, 1957, from memory",
         "{value} of noise are allowed at {band}", noise_allowed},
    };
    return entries;
}

}  // namespace rakeline::study
