// SPDX-License-Identifier: MIT
#include "study/rake_plan.hpp"

#include "room/rows.hpp"
#include "study/raked_layout.hpp"
#include "study/slices.hpp"

#include <algorithm>
#include <limits>

namespace rakeline::study {
namespace {

constexpr double kOverHead_m = 0.3;  // common practice, no source
constexpr double kMetricStep_m = 0.01;
constexpr double kImperialStep_m = 0.0127;  // half an inch

const room::SeatBlock& block_of(const Study& study, int block) {
    return study.layout().seating.at(static_cast<std::size_t>(block));
}

base::Problem problem(const std::string& where, const std::string& what, const std::string& mend) {
    return {.file = {}, .line = 0, .where = where, .what = what, .mend = mend};
}

/// Plan rectangle that a platform lies in.
struct Reach {
    double left = std::numeric_limits<double>::infinity();
    double right = -std::numeric_limits<double>::infinity();
    double front = std::numeric_limits<double>::infinity();
    double back = -std::numeric_limits<double>::infinity();
    double low = std::numeric_limits<double>::infinity();

    explicit Reach(const room::Platform& platform) {
        for (const glm::dvec3& corner : platform.corners) {
            left = std::min(left, corner.x);
            right = std::max(right, corner.x);
            front = std::min(front, corner.z);
            back = std::max(back, corner.z);
            low = std::min(low, corner.y);
        }
    }
    bool shares_plan(const Reach& o) const {
        return left < o.right && o.left < right && front < o.back && o.front < back;
    }
};

/// Treads of raised blocks, which hang over what stands on the hall's floor.
std::vector<Reach> balconies(const Study& study) {
    std::vector<Reach> out;
    for (const room::Platform& platform : study.seats.platforms) {
        if (!platform.row) continue;
        const auto& row = study.seats.rows.at(static_cast<std::size_t>(*platform.row));
        if (block_of(study, row.block).raised) out.emplace_back(platform);
    }
    return out;
}

/// The row's treads, level at `up_m`.
std::vector<room::Platform> treads_at(const Study& study, int row, double up_m) {
    std::vector<room::Platform> out;
    for (const room::Platform& platform : study.seats.platforms) {
        if (platform.row != row) continue;
        out.push_back(platform);
        for (glm::dvec3& corner : out.back().corners)
            corner.y = up_m;
    }
    return out;
}

/// Lower side of the lowest beam over these level treads. A beam that passes under them whole, as
/// under a balcony, does not count.
std::optional<double> lowest_beam(const Study& study, std::span<const room::Platform> treads) {
    std::optional<double> lowest;
    for (const picture::ProjectedPicture& picture : study.picture.pictures) {
        const auto clear = picture::beam_clearance(
            {picture.map, picture.gate_size_m, study.layout().hall.length_m}, treads);
        if (!clear) continue;
        const double up = clear->floor_point.y + clear->height_m;
        lowest = std::min(lowest.value_or(up), up);
    }
    return lowest;
}

/// On the hall's profile the treads stand for no rows: the block's own, from its rows, do.
room::SeatPlan plan_by_seating(const Study& study, int block, double up_m) {
    room::SeatPlanInput in = seat_plan_slice(study.layout());
    in.hall.floor = room::FloorMode::by_seating;
    room::SeatBlock& seats = in.seating.at(static_cast<std::size_t>(block));
    seats.floor = room::BlockFloor::level;
    seats.first_row_up_m = up_m;
    return room::place_seats(in);
}

/// What hangs over each row, its treads taken as level with the first row's floor, under which no
/// built row lies.
void lower_to_what_hangs(const Study& study, int block, sight::RakeRows& rows) {
    Study level = study;
    level.seats = plan_by_seating(study, block, rows.rows.front().floor_m);
    const std::vector<Reach> hanging = balconies(level);
    const bool raised = block_of(study, block).raised;
    int n = 0;
    for (int r = 0; r < static_cast<int>(level.seats.rows.size()); ++r) {
        if (level.seats.rows[static_cast<std::size_t>(r)].block != block) continue;
        const auto treads = treads_at(level, r, rows.rows.front().floor_m);
        sight::RakeRow& row = rows.rows.at(static_cast<std::size_t>(n++));
        row.beam_m = lowest_beam(level, treads);
        for (const room::Platform& tread : treads) {
            for (const Reach& over : hanging) {
                if (!raised && over.shares_plan(Reach(tread)))
                    row.ceiling_m = std::min(row.ceiling_m, over.low);
            }
        }
    }
}

base::Problem not_behind(const Study& study, int block) {
    return problem("seating[" + std::to_string(block) + "]",
                   "a row of " + block_of(study, block).name +
                       " does not look over the row ahead on its way to the picture",
                   "put the block behind the picture's lower edge, facing it");
}

base::Result<sight::RakeRows> bare_rows(const Study& study,
                                        const room::SeatPlan& plan,
                                        int block,
                                        sight::RakeOver over) {
    const auto rows = sight::rake_rows(study.picture.surface, study.picture.openings, plan, block,
                                       over, study.layout().hall.height_m);
    if (!rows) return not_behind(study, block);
    if (rows->rows.size() < 2) {
        return problem("seating[" + std::to_string(block) + "].rows",
                       block_of(study, block).name + " has one row, and nothing to look over",
                       "name a block of two rows or more");
    }
    return *rows;
}

base::Problems faults_of(const sight::RakeOptions& options) {
    base::Problems out;
    for (const sight::OptionFault& fault : sight::option_faults(options))
        out.push_back(problem(fault.option, fault.what, fault.mend));
    return out;
}

}  // namespace

sight::RakeOptions rake_options(const Study& study, int block, base::UnitSystem system) {
    sight::RakeOptions out;
    const room::Audience& people = study.layout().audience;
    out.wanted_c_m = block_of(study, block).wanted_c_m;
    out.riser_step_m = system == base::UnitSystem::metric ? kMetricStep_m : kImperialStep_m;
    out.headroom_m = people.standing_height_m + kOverHead_m;
    out.beam_headroom_m = people.eye_height_m + people.eye_to_crown_m;
    return out;
}

base::Result<sight::RakeRows> rake_rows_of(const Study& study, int block, sight::RakeOver over) {
    auto rows = bare_rows(study, study.seats, block, over);
    if (rows) lower_to_what_hangs(study, block, *rows);
    return rows;
}

base::Result<sight::RakePlan> rake_plan(const Study& study,
                                        int block,
                                        const sight::RakeOptions& options) {
    if (auto faults = faults_of(options); !faults.empty()) return faults;
    const auto rows = rake_rows_of(study, block, options.over);
    if (!rows) return rows.problems();
    if (!sight::is_searchable(*rows, options)) {
        return problem("riser_step_m", "there are too many floors to search",
                       "take a coarser riser step, fewer rows a flight, or leave the number of "
                       "flights open");
    }
    return sight::plan_rake(*rows, options);
}

base::Result<std::optional<sight::ReverseRake>> sill_for_floor(const Study& study,
                                                               int block,
                                                               const sight::RakeOptions& options) {
    if (auto faults = faults_of(options); !faults.empty()) return faults;
    const auto rows = bare_rows(study, study.seats, block, options.over);
    if (!rows) return rows.problems();
    return sight::lowest_sill(*rows, options.wanted_c_m, study.layout().screen.sill_m);
}

base::Result<std::optional<sight::SpacingRange>> spacing_for_floor(
    const Study& study, int block, const sight::RakeOptions& options) {
    if (auto faults = faults_of(options); !faults.empty()) return faults;
    if (const auto rows = bare_rows(study, study.seats, block, options.over); !rows)
        return rows.problems();
    room::SeatPlanInput in = seat_plan_slice(study.layout());
    room::SeatBlock& seats = in.seating.at(static_cast<std::size_t>(block));
    seats = with_fixed_risers(study.layout(), block);
    room::SeatPlan plan = study.seats;
    const auto rows_at = [&](double spacing_m) {
        seats.row_spacing_m = spacing_m;
        auto line = room::row_lines(in, seats);
        std::size_t n = 0;
        for (room::Row& row : plan.rows) {
            if (row.block != block) continue;
            const room::RowLine& at = line.at(n++);
            row.centre_floor = {seats.across_m, at.up_m, at.back_m};
            row.centre_eye = row.centre_floor + glm::dvec3(0.0, in.audience.eye_height_m, 0.0);
        }
        return sight::rake_rows(study.picture.surface, study.picture.openings, plan, block,
                                options.over, study.layout().hall.height_m);
    };
    return sight::spacing_range(rows_at, options.wanted_c_m);
}

}  // namespace rakeline::study
