// SPDX-License-Identifier: MIT
#include "study/meter_rows.hpp"

#include "base/csv.hpp"
#include "base/nearest_name.hpp"
#include "base/number_text.hpp"
#include "room/utf8.hpp"

#include <algorithm>
#include <array>
#include <map>

namespace rakeline::study {
namespace {

using light::PicturePoint;

constexpr std::array<std::pair<const char*, PicturePoint>, light::kPointCount> kPoints{{
    {"centre", light::kCentre},
    {"left", light::kLeft},
    {"right", light::kRight},
    {"top", light::kTop},
    {"bottom", light::kBottom},
    {"top_left", light::kTopLeft},
    {"top_right", light::kTopRight},
    {"bottom_right", light::kBottomRight},
    {"bottom_left", light::kBottomLeft},
}};

const std::vector<std::string>& column_names() {
    static const std::vector<std::string> names{"point",    "across_m", "up_m", "across_ft",
                                                "up_ft",    "value",    "unit", "spot_deg",
                                                "accuracy", "seat"};
    return names;
}

/// A unit that meters show, and SI.
struct MeterUnit {
    const char* word;
    base::Unit unit;
    double si;
};
constexpr auto kUnits = std::to_array<MeterUnit>({
    {"cd/m2", base::Unit::cd_per_m2, 1.0},
    {"cd/m²", base::Unit::cd_per_m2, 1.0},
    {"fL", base::Unit::cd_per_m2, base::kCdm2PerFootLambert},
    {"lx", base::Unit::lux, 1.0},
    {"lux", base::Unit::lux, 1.0},
    {"fc", base::Unit::lux, base::kLuxPerFootCandle},
});

bool same_letters(std::string_view a, std::string_view b) {
    const auto lower = [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c + 32) : c; };
    return std::equal(a.begin(), a.end(), b.begin(), b.end(),
                      [&](char x, char y) { return lower(x) == lower(y); });
}

std::string suggestion(const std::string& word, const std::vector<std::string>& names) {
    const std::string near = base::nearest_name(word, names);
    std::string all;
    for (const std::string& name : names)
        all += (all.empty() ? "" : ", ") + name;
    return (near.empty() ? "there are " : "did you mean '" + near + "'? There are ") + all;
}

using Columns = std::map<std::string, std::size_t>;

base::Problem header_problem(const std::string& file,
                             const base::CsvRecord& header,
                             const std::string& what,
                             const std::string& mend) {
    return {.file = file, .line = header.line, .where = "header", .what = what, .mend = mend};
}

/// Columns that a table can't do without.
void check_columns(const std::string& file,
                   const base::CsvRecord& header,
                   const Columns& columns,
                   base::Problems& problems) {
    for (const char* needed : {"value", "unit"}) {
        if (columns.count(needed)) continue;
        problems.push_back(header_problem(file, header, std::string("there is no column ") + needed,
                                          "name the columns in the first row"));
    }
    const bool metres = columns.count("across_m") && columns.count("up_m");
    const bool feet = columns.count("across_ft") && columns.count("up_ft");
    if (columns.count("point") || metres || feet) return;
    problems.push_back(header_problem(file, header, "no column says where the readings were taken",
                                      "add a column point, or across_m and up_m"));
}

base::Result<Columns> columns_of(const std::string& file, const base::CsvRecord& header) {
    Columns columns;
    base::Problems problems;
    for (std::size_t i = 0; i < header.cells.size(); ++i) {
        const std::string& name = header.cells[i];
        const auto& known = column_names();
        const bool found = std::find(known.begin(), known.end(), name) != known.end();
        if (!found) {
            const bool semicolons = name.find(';') != std::string::npos;
            problems.push_back(
                header_problem(file, header, "there is no column '" + name + "'",
                               semicolons ? "part the cells by commas" : suggestion(name, known)));
        } else if (!columns.emplace(name, i).second) {
            problems.push_back(header_problem(
                file, header, "the column '" + name + "' stands twice", "keep one of them"));
        }
    }
    if (problems.empty()) check_columns(file, header, columns, problems);
    if (!problems.empty()) return problems;
    return columns;
}

/// Reads one record, and keeps what is wrong with it.
class RowReader {
public:
    RowReader(const std::string& file, const Columns& columns, base::Problems& problems)
        : file_(file), columns_(columns), problems_(problems) {}

    MeterRow read(const base::CsvRecord& record) {
        record_ = &record;
        MeterRow row;
        row.file = file_;
        row.line = record.line;
        if (record.cells.size() != columns_.size()) {
            fault("", "the row has " + std::to_string(record.cells.size()) + " cells",
                  "give one for each of the " + std::to_string(columns_.size()) + " columns");
            return row;
        }
        read_place(row);
        read_value(row);
        read_spot(row);
        row.seat = cell("seat");
        return row;
    }

private:
    void fault(const std::string& where, const std::string& what, const std::string& mend) {
        problems_.push_back({file_, record_->line, where, what, mend});
    }

    std::string cell(const char* column) const {
        const auto found = columns_.find(column);
        return found == columns_.end() ? std::string() : record_->cells.at(found->second);
    }

    /// The number in a cell; nothing, with a problem, where it holds none.
    std::optional<double> number(const char* column) {
        const std::string text = cell(column);
        const auto value = base::parse_number(text);
        if (value) return value;
        const bool comma = text.find(',') != std::string::npos;
        fault(column, text.empty() ? "there is no number" : "'" + text + "' is no number",
              comma ? "write the decimal sign as a point" : "write a number such as 48.2");
        return std::nullopt;
    }

    void read_place(MeterRow& row) {
        const std::string name = cell("point");
        const bool feet = !cell("across_ft").empty() || !cell("up_ft").empty();
        const bool metres = !cell("across_m").empty() || !cell("up_m").empty();
        if ((name.empty() ? 0 : 1) + (feet ? 1 : 0) + (metres ? 1 : 0) > 1)
            return fault("point", "the place is given in two ways", "keep one of them");
        if (name.empty()) return read_position(row, feet);
        for (const auto& [known, point] : kPoints)
            if (same_letters(known, name)) row.point = point;
        if (row.point) return;
        std::vector<std::string> names;
        for (const auto& known : kPoints)
            names.emplace_back(known.first);
        fault("point", "there is no point '" + name + "'", suggestion(name, names));
    }

    void read_position(MeterRow& row, bool feet) {
        const auto across = number(feet ? "across_ft" : "across_m");
        const auto up = number(feet ? "up_ft" : "up_m");
        if (across && up)
            row.place_m = glm::dvec2(*across, *up) * (feet ? base::kMetresPerFoot : 1.0);
    }

    void read_value(MeterRow& row) {
        const std::string word = cell("unit");
        const auto unit = std::find_if(kUnits.begin(), kUnits.end(), [&](const MeterUnit& u) {
            return same_letters(u.word, word);
        });
        if (unit == kUnits.end()) {
            fault("unit", word.empty() ? "there is no unit" : "there is no unit '" + word + "'",
                  "write cd/m2 or fL for luminance, lx or fc for light on the sheet");
        }
        const double si = unit == kUnits.end() ? 1.0 : unit->si;
        if (unit != kUnits.end()) row.unit = unit->unit;
        if (const auto value = number("value")) {
            row.value = *value * si;
            if (*value < 0.0)
                fault("value", "'" + cell("value") + "' is less than nothing",
                      "a meter reads 0 or more");
        }
        read_accuracy(row, si);
    }

    void read_accuracy(MeterRow& row, double si) {
        if (cell("accuracy").empty()) return;
        const auto accuracy = number("accuracy");
        if (!accuracy) return;
        row.accuracy = *accuracy * si;
        if (!(*accuracy > 0.0))
            fault("accuracy", "'" + cell("accuracy") + "' is not over 0",
                  "give what the meter may be off, either way, in the row's unit");
    }

    void read_spot(MeterRow& row) {
        if (cell("spot_deg").empty()) return;
        const auto degrees = number("spot_deg");
        if (!degrees) return;
        row.spot_rad = base::radians(*degrees);
        if (row.spot_rad < 0.0 || row.spot_rad > kMeterSpotRange_rad)
            fault("spot_deg", "'" + cell("spot_deg") + "' is out of range",
                  "an acceptance angle is 0 to 30 degrees");
        if (row.unit == base::Unit::lux && row.spot_rad > 0.0)
            fault("spot_deg", "a reading of the light on the sheet has no acceptance angle",
                  "leave the cell empty");
    }

    const std::string& file_;
    const Columns& columns_;
    base::Problems& problems_;
    const base::CsvRecord* record_ = nullptr;
};

}  // namespace

const char* meter_point_name(PicturePoint point) {
    for (const auto& [name, known] : kPoints)
        if (known == point) return name;
    return "";
}

base::Result<std::vector<MeterRow>> read_meter_rows(std::string_view csv, const std::string& file) {
    if (room::first_non_utf8(csv)) {
        return base::Problem{file,
                             0,
                             {},
                             "the file is no UTF-8 text",
                             "save the table as text in UTF-8, cells parted by commas"};
    }
    const auto records = base::read_csv(csv, file, kMeterRowsMost + 1);
    if (!records) return records.problems();
    const auto columns = columns_of(file, records->front());
    if (!columns) return columns.problems();
    base::Problems problems;
    std::vector<MeterRow> out;
    RowReader reader(file, *columns, problems);
    for (std::size_t i = 1; i < records->size(); ++i)
        out.push_back(reader.read((*records)[i]));
    if (!problems.empty()) return problems;
    if (out.empty())
        return base::Problem{
            file, 0, {}, "there are no readings under the header", "give one row a reading"};
    return out;
}

}  // namespace rakeline::study
