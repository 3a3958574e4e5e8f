// SPDX-License-Identifier: MIT
#include "sound/sound_study.hpp"

#include "base/parallel.hpp"

#include <algorithm>
#include <cmath>

namespace rakeline::sound {
namespace {

/// What a band needs of sheet and air, computed once: only the angle differs from seat to seat.
struct Band {
    double frequency_hz = 0.0;
    std::complex<double> sheet;  ///< impedance over 2 rho c
    double air_db_per_m = 0.0;
};

Band band_at(double frequency_hz, const Sheet& sheet, const Air& air) {
    return {frequency_hz, relative_impedance(sheet, frequency_hz, air),
            air_absorption_db_per_m(frequency_hz, air)};
}

/// What one path needs in every band, computed once.
struct Way {
    double distance_m = 0.0;
    double distance_db = 0.0;
    OffAxis off_axis;
    bool through_sheet = false;
    double cos_sheet = 1.0;
};

Way way_of(const DirectPath& path) {
    return {.distance_m = path.distance_m,
            .distance_db = -20.0 * std::log10(std::max(path.distance_m, kNearestPath_m)),
            .off_axis = path.off_axis,
            .through_sheet = path.through_sheet,
            .cos_sheet = path.cos_sheet};
}

LevelTerms terms_of(const LevelTerms& source, const Beam& beam, const Band& band, const Way& way) {
    LevelTerms terms = source;
    terms.distance_db = way.distance_db;
    terms.directivity_db = beam.level_db(way.off_axis);
    if (way.through_sheet) terms.screen_db = -transmission_loss_db(band.sheet, way.cos_sheet);
    terms.air_db = -band.air_db_per_m * way.distance_m;
    return terms;
}

/// The terms that are the loudspeaker's own.
LevelTerms source_terms(const room::Loudspeaker& loudspeaker) {
    return {.sensitivity_db = loudspeaker.sensitivity_db,
            .power_db = 10.0 * std::log10(loudspeaker.power_w)};
}

using Bands = std::array<Band, kOctaves.size()>;

Bands octave_bands(const Sheet& sheet, const Air& air) {
    Bands bands;
    for (std::size_t i = 0; i < bands.size(); ++i)
        bands[i] = band_at(kOctaves[i], sheet, air);
    return bands;
}

LoudspeakerSound sound_of(const SoundInput& in,
                          const room::Loudspeaker& loudspeaker,
                          const Bands& bands) {
    LoudspeakerSound out;
    std::vector<Way> ways;
    out.paths.reserve(in.ears.size());
    ways.reserve(in.ears.size());
    for (const glm::dvec3& ear : in.ears) {
        out.paths.push_back(direct_path(loudspeaker, in.surface, ear));
        ways.push_back(way_of(out.paths.back()));
    }
    const LevelTerms source = source_terms(loudspeaker);
    for (std::size_t b = 0; b < bands.size(); ++b) {
        const Beam beam(loudspeaker, bands[b].frequency_hz, in.air);
        out.level_db[b].reserve(ways.size());
        for (const Way& way : ways) {
            out.level_db[b].push_back(terms_of(source, beam, bands[b], way).sum_db());
        }
        out.spread_db[b] = spread_of(out.level_db[b]);
    }
    return out;
}

}  // namespace

LevelTerms level_terms(const room::Loudspeaker& loudspeaker,
                       const DirectPath& path,
                       const Sheet& sheet,
                       const Air& air,
                       double frequency_hz) {
    return terms_of(source_terms(loudspeaker), Beam(loudspeaker, frequency_hz, air),
                    band_at(frequency_hz, sheet, air), way_of(path));
}

std::vector<LoudspeakerSound> direct_levels(const SoundInput& in, unsigned threads) {
    const Bands bands = octave_bands(in.sheet, in.air);
    std::vector<LoudspeakerSound> out(in.loudspeakers.size());
    // A thread costs as much as some hundred paths do.
    constexpr std::size_t kLeastPaths = 1000;
    const std::size_t least_chunk = 1 + kLeastPaths / (in.ears.size() + 1);
    base::parallel_chunks(
        in.loudspeakers.size(), least_chunk,
        [&](std::size_t begin, std::size_t end) {
            for (std::size_t i = begin; i < end; ++i)
                out[i] = sound_of(in, in.loudspeakers[i], bands);
        },
        threads);
    return out;
}

SoundStudy study_sound(const SoundInput& in) {
    SoundStudy out;
    out.screen_loss_db = loss_by_thirds(in.sheet, 0.0, in.air);
    out.sheet = study_sheet(in);
    out.loudspeakers = direct_levels(in);
    out.coverage = study_coverage(in, out);
    out.cabinets = study_cabinets(in);
    out.arrival = study_arrival({.loudspeakers = in.loudspeakers,
                                 .ears = in.ears,
                                 .reference_seat = in.reference_seat,
                                 .sound_speed_m_s = in.air.sound_speed_m_s()});
    if (in.hall) out.hall = study_hall(*in.hall, in.air, in.loudspeakers, in.ears);
    if (in.sheet.perforation.pattern != room::PerforationPattern::none) {
        out.hole_visible_from_m = hole_visible_from_m(in.sheet.perforation.hole_diameter_m);
    }
    return out;
}

}  // namespace rakeline::sound
