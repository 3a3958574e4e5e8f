// SPDX-License-Identifier: MIT
#pragma once

#include "support/check.hpp"
#include "support/demo_rooms.hpp"

#include <algorithm>
#include <iterator>
#include <string>
#include <string_view>

/// One seat, one format and one projector of a demo room, whose figures the hand_worked tests hold
/// against numbers worked out on paper.
namespace rakeline::tests {

struct Chosen {
    std::string room, projector, format, seat;
    std::string loudspeaker = "C";
};

class HandWorked {
public:
    explicit HandWorked(const Chosen& chosen)
        : study_(study::compute_study(demo_brief(chosen.room))) {
        const room::Layout& l = study_.layout();
        place_.projector = index_of(l.projectors, chosen.projector);
        place_.format = index_of(l.formats, chosen.format);
        place_.loudspeaker = index_of(l.loudspeakers, chosen.loudspeaker);
        seat_ = room::find_seat(study_.seats, chosen.seat).value();
    }

    const room::Layout& layout() const { return study_.layout(); }
    const room::Projector& projector() const {
        return layout().projectors.at(static_cast<std::size_t>(*place_.projector));
    }
    const room::Seat& seat() const {
        return study_.seats.seats.at(static_cast<std::size_t>(seat_));
    }
    std::string reference_seat() const {
        return study_.seats.seats.at(static_cast<std::size_t>(study_.reference_seat.value())).name;
    }

    /// The figure's one value, or the one for the seat or for the seat's row.
    double figure(std::string_view id) const { return value(id, place_); }
    double degrees(std::string_view id) const { return base::degrees(figure(id)); }

    bool has_value(std::string_view id) const {
        const study::Figure* figure = study::find_figure(study_, id, place_);
        return figure != nullptr && !figure->values.empty();
    }

    /// Screen loss in the third octave, or the level at the seat in the octave, at `hz`.
    double loss_db(double hz) const {
        return value("sound.screen_loss", place_, band(sound::kThirds, hz));
    }
    double level_db(double hz) const {
        study::Place place = place_;
        place.band = band(sound::kOctaves, hz);
        return value("sound.direct_level", place);
    }

private:
    template <class Things>
    static int index_of(const Things& things, const std::string& name) {
        const auto found = std::ranges::find(things, name, [](const auto& t) { return t.name; });
        if (found == things.end()) FAIL("no '" << name << "' in the room");
        return static_cast<int>(found - things.begin());
    }
    template <class Bands>
    static int band(const Bands& bands, double hz) {
        return static_cast<int>(std::ranges::find(bands, hz) - bands.begin());
    }

    double value(std::string_view id, const study::Place& place, int index = 0) const {
        const study::Figure* figure = study::find_figure(study_, id, place);
        if (figure == nullptr) FAIL("no figure " << std::string(id));
        const study::Axis axis = figure->definition->axis();
        if (axis == study::Axis::seat) index = seat_;
        if (axis == study::Axis::row) index = seat().row;
        return study::value_at(*figure, index).value();
    }

    study::Study study_;
    study::Place place_;
    int seat_ = 0;
};

}  // namespace rakeline::tests
