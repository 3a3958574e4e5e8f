// SPDX-License-Identifier: MIT
#pragma once

#include "sight/chance.hpp"
#include "sight/sight_study.hpp"

#include <functional>
#include <optional>
#include <stop_token>
#include <vector>

/// How likely whoever sits in a seat has a clear view, over random audiences.
///
/// A crowd is one person for every seat (sight/people.hpp), drawn anew, of whom a share comes. A
/// seat is clear in a crowd when its person sees at least kClearFraction of the picture's area past
/// those who came and past all seat backs and balconies (sight/hidden.hpp). The seat is asked as if
/// it were taken, whoever comes. A room is clear in a crowd when every one of its seats is. Choices
/// of ours (common practice, no source):
///
///  - Eye over the floor = cushion + sitting eye height - slump, the same slump for all.
///  - At a wheelchair place the eye lies evenly anywhere in the audience's range, and the place has
///    no seat back; head and sex as for all.
///  - An empty seat keeps its back and has no head.
///
/// The person of a seat in crowd k follows from the seed, k and the seat's index alone, and is the
/// same in every format: what differs between two layouts with as many seats is what was changed.
namespace rakeline::sight {

inline constexpr double kClearFraction = 0.95;

/// Crowds are drawn in batches, and no more than this in all: 0.01 is reached by then anywhere.
inline constexpr int kCrowdBatch = 100;
inline constexpr int kMostCrowds = 10000;

/// Across the picture. Against 256 columns, 64 decide otherwise in 2 of 1000 crowds or fewer on the
/// mean over a demo room's seats, and move no seat's chance by more than 0.01 (measured over 300
/// crowds a room; 32 columns: 0.03). They cost a seventh more than 32.
inline constexpr int kCrowdColumns = 64;

struct FormatCrowd {
    std::vector<Chance> seats;  ///< per seat, counted until its own interval was narrow enough
    Chance room;                ///< every seat clear
    bool operator==(const FormatCrowd&) const = default;
};

/// What the sampling was asked and found. A room without seats or formats has nothing to ask.
struct CrowdStudy {
    room::Crowd crowd;
    std::vector<FormatCrowd> formats;
    int drawn = 0;        ///< crowds
    bool reached = true;  ///< every interval's half width is at most crowd.precision
    bool operator==(const CrowdStudy&) const = default;
};

struct CrowdProgress {
    int drawn = 0;
    int open = 0;  ///< chances whose intervals are still too wide
    int all = 0;
};

struct CrowdRun {
    std::stop_token stop;                                ///< asked once a crowd
    std::function<void(const CrowdProgress&)> progress;  ///< after every batch, on the caller
    unsigned threads = 0;  ///< 0: as many as the machine has; the result is the same
    int columns = kCrowdColumns;
};

/// Batch by batch until every interval is narrow enough or kMostCrowds are drawn. Nothing where
/// `stop` came first: there is no half a result.
std::optional<CrowdStudy> sample_crowds(const SightInput& in, const CrowdRun& run = {});

/// Crowd `k` in the plan's seats: an eye for each, and a head for each that is taken.
struct SeatedCrowd {
    std::vector<glm::dvec3> eyes;
    std::vector<Head> heads;
};
void seat_crowd(const room::SeatPlan& plan,
                const room::Audience& audience,
                int k,
                SeatedCrowd& out);

}  // namespace rakeline::sight
