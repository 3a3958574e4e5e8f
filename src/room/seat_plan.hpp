// SPDX-License-Identifier: MIT
#pragma once

#include "geometry/vector.hpp"
#include "room/layout.hpp"

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

/// Seats placed from the blocks of a layout, and the floor that people can stand on.
namespace rakeline::room {

struct Seat {
    std::string name;  ///< row letter and number: "C14"
    int row = 0;       ///< index in SeatPlan::rows
    int number = 0;
    glm::dvec3 floor{0.0};              ///< reference point: floor under the eye
    glm::dvec3 facing{0.0, 0.0, -1.0};  ///< unit, level
    glm::dvec3 eye{0.0};
    bool wheelchair = false;
    bool operator==(const Seat&) const = default;
};

struct Row {
    std::string letter;
    int block = 0;       ///< index in Layout::seating
    int first_seat = 0;  ///< index in SeatPlan::seats
    int seat_count = 0;
    glm::dvec3 centre_floor{0.0};  ///< on the block's centre line
    glm::dvec3 centre_eye{0.0};
    /// The next toward the screen in the same block; of a floor block's first row, the nearest row
    /// of another floor block that stands before its middle. The next toward the screen in the same
    /// block; of a floor block's first row, the nearest row of another floor block that stands
    /// before its middle.
    std::optional<int> row_in_front;
    std::optional<int> second_row_in_front;
    bool operator==(const Row&) const = default;
};

enum class PlatformKind { front, tread, cross_aisle, back, balcony_front };

/// A quadrilateral of floor; corners counter-clockwise from above, from the front left.
struct Platform {
    PlatformKind kind = PlatformKind::tread;
    std::array<glm::dvec3, 4> corners{};
    std::optional<int> row;    ///< index in SeatPlan::rows
    std::optional<int> block;  ///< index in Layout::seating of the block that it carries
    bool operator==(const Platform&) const = default;
};

struct SeatPlan {
    std::vector<Seat> seats;  ///< by row, then from house left
    std::vector<Row> rows;    ///< block by block, from the screen
    std::vector<Platform> platforms;
    bool operator==(const SeatPlan&) const = default;
};

/// What placing reads. The lower edge of the lowest picture drives equal-clearance floors.
struct SeatPlanInput {
    Hall hall;
    Screen screen;
    std::vector<SeatBlock> seating;
    Audience audience;
    bool operator==(const SeatPlanInput&) const = default;
};

SeatPlan place_seats(const SeatPlanInput& in);

/// Index of the seat called `name`, in any case of letters.
std::optional<int> find_seat(const SeatPlan& plan, std::string_view name);

/// The measuring seat: the audience's own choice if it names one, else the middle of the row whose
/// distance is nearest to the middle of the seating (ISO 26431-1 as reported: centre of the row
/// nearest the auditorium's centre). Nothing in a room without seats.
std::optional<int> reference_seat(const SeatPlan& plan, const Audience& audience);

/// Letter of the n-th row from "A" = 0: A ... Z, AA, AB ...; and back.
std::string row_letter(int index);
std::optional<int> row_index(std::string_view letter);

/// Half the hall's width at `back_m`.
double half_width_at(const Hall& hall, double back_m);

/// Floor height of the profile at `back_m`, level beyond its ends.
double profile_height(const std::vector<FloorPoint>& profile, double back_m);

}  // namespace rakeline::room
