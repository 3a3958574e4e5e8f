// SPDX-License-Identifier: MIT
#include "command/crowd_text.hpp"

#include "command/text_table.hpp"
#include "study/crowd_words.hpp"

#include <algorithm>

namespace rakeline::command {
namespace {

using base::Unit;
using study::Figure;
using Cells = std::vector<std::string>;

constexpr std::size_t kWorstSeats = 10;

/// The three figures of one format's seats.
struct SeatFigures {
    const Figure* chance = nullptr;
    const Figure* low = nullptr;
    const Figure* high = nullptr;
};

class CrowdWriter {
public:
    explicit CrowdWriter(const study::Study& study) : study_(study) {}

    std::string write(std::optional<int> format) {
        out_ = study_.layout().name + "\n" + study::people_sentence(study_) + "\n";
        const std::string precision = study::precision_sentence(study_);
        if (!precision.empty()) out_ += precision + "\n";
        for (int f = 0; f < static_cast<int>(study_.layout().formats.size()); ++f) {
            if (!format || *format == f) write_format(f);
        }
        return out_;
    }

private:
    void write_format(int format) {
        format_ = format;
        const study::Place place{.format = format};
        figures_ = {study::find_figure(study_, "sight.clear_chance", place),
                    study::find_figure(study_, "sight.clear_chance_low", place),
                    study::find_figure(study_, "sight.clear_chance_high", place)};
        out_ += "\n" + study::crowd_sentence(study_, format) + "\n";
        write_table("Least clear seat of each row", "Row", worst_by_row());
        write_table("Least clear seats", "Row", worst_of_all());
    }

    double chance(int seat) const { return study::value_at(*figures_.chance, seat).value(); }

    /// By chance, then in the plan's order.
    std::vector<int> by_chance() const {
        std::vector<int> seats;
        for (const study::Value& value : figures_.chance->values)
            seats.push_back(value.index);
        std::ranges::stable_sort(seats, {}, [&](int i) { return chance(i); });
        return seats;
    }

    std::vector<int> worst_of_all() const {
        std::vector<int> seats = by_chance();
        std::erase_if(seats, [&](int i) { return chance(i) == 1.0; });
        seats.resize(std::min(seats.size(), kWorstSeats));
        return seats;
    }

    std::vector<int> worst_by_row() const {
        std::vector<int> worst(study_.seats.rows.size(), -1);
        for (const int seat : by_chance()) {
            int& of_row = worst[static_cast<std::size_t>(row_of(seat))];
            if (of_row < 0) of_row = seat;
        }
        std::erase(worst, -1);
        return worst;
    }

    int row_of(int seat) const { return study_.seats.seats[static_cast<std::size_t>(seat)].row; }

    Cells seat_cells(int seat) const {
        const auto number = [&](const Figure& figure) {
            return base::quantity(study::value_at(figure, seat).value(), Unit::fraction,
                                  base::UnitSystem::metric)
                .number;
        };
        const auto at = static_cast<std::size_t>(seat);
        const auto& crowd = study_.crowd->formats[static_cast<std::size_t>(format_)];
        return {study_.seats.rows[static_cast<std::size_t>(row_of(seat))].letter,
                study_.seats.seats[at].name,
                number(*figures_.chance),
                number(*figures_.low),
                number(*figures_.high),
                std::to_string(crowd.seats[at].drawn),
                study::verdict_mark(figures_.chance->verdicts.at(at))};
    }

    void write_table(const char* title, const char* first, const std::vector<int>& seats) {
        if (seats.empty()) return;
        out_ += std::string(title) + "\n";
        std::vector<Cells> table{{first, "Seat", "Chance %", "from", "to", "Crowds", ""}};
        for (const int seat : seats)
            table.push_back(seat_cells(seat));
        for (const std::string& line : table_lines(table, 2))
            out_ += line + "\n";
    }

    const study::Study& study_;
    SeatFigures figures_;
    int format_ = 0;
    std::string out_;
};

}  // namespace

std::string crowd_text(const study::Study& study, std::optional<int> format) {
    return CrowdWriter(study).write(format);
}

}  // namespace rakeline::command
