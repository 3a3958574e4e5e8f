// SPDX-License-Identifier: MIT
#pragma once

#include "base/quantity_text.hpp"
#include "base/result.hpp"
#include "light/light_study.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

/// Readings as they are noted down: a table with a row a reading.
namespace rakeline::study {

/// One row. Positions are metres on the picture from the opening's centre, across to the right as
/// seen from the seats, along the sheet.
struct MeterRow {
    std::string file;                          ///< as named; empty for rows that were typed in
    int line = 0;                              ///< 0 for rows that were typed in
    std::optional<light::PicturePoint> point;  ///< a standard point, or
    glm::dvec2 place_m{0.0};                   ///< a place of its own
    double value = 0.0;                        ///< cd/m2 or lx
    base::Unit unit = base::Unit::cd_per_m2;   ///< or lux: light that falls on the sheet
    double spot_rad = 0.0;                     ///< full acceptance angle; 0: a point
    std::optional<double> accuracy;            ///< either way, cd/m2 or lx; unset: the standard's
    std::string seat;                          ///< read from; empty: the measuring seat
};

/// "centre", "top_left": the standard points as tables name them.
const char* meter_point_name(light::PicturePoint point);

inline constexpr std::size_t kMeterRowsMost = 1000;
inline constexpr double kMeterSpotRange_rad = base::radians(30.0);

/// A table as spreadsheets save it (base/csv.hpp), the first record naming its columns in any
/// order:
///
///     point               centre, left, right, top, bottom, top_left, top_right, bottom_left,
///                         bottom_right (each 5 % inside the opening's edges)
///     across_m, up_m      or across_ft, up_ft: a place on the picture instead of a point
///     value, unit         cd/m2, fL (luminance from a seat), lx, fc (light on the sheet)
///     spot_deg            acceptance angle of a luminance meter, 0 to 30 degrees; may be left out
///     accuracy            of the meter, either way, in the row's unit; may be left out
///     seat                where the meter stood; may be left out
///
/// All faults of the table come back, each with its line and column.
base::Result<std::vector<MeterRow>> read_meter_rows(std::string_view csv, const std::string& file);

}  // namespace rakeline::study
