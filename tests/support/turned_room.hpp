// SPDX-License-Identifier: MIT
#pragma once

#include "room/fields.hpp"
#include "room/seat_plan.hpp"

#include <array>
#include <string_view>

/// A room mirrored left to right, and one built twice as large. Both walk the fields of the
/// document, so that a field which comes later takes part by its key or unit.
namespace rakeline::tests {

/// Changes numbers alone, wherever they stand.
class NumberEdit : public room::FieldVisitor {
public:
    void text(const room::Words&, std::string&) override {}
    void flag(const room::Words&, bool&) override {}
    void integer(const room::IntegerField&, int&) override {}
    void choice(const room::ChoiceField&, int&) override {}
    void optional_number(const room::NumberField& field, std::optional<double>& value) override {
        if (value) number(field, *value);
    }
    void group(const room::Words&,
               const std::function<void(room::FieldVisitor&)>& members) override {
        members(*this);
    }
    void list(const room::ListField&, room::ListAccess& items) override {
        for (std::size_t i = 0; i < items.size(); ++i)
            items.visit(i, *this);
    }
};

/// Places across and turns that show their direction.
class MirrorNumbers final : public NumberEdit {
public:
    void number(const room::NumberField& field, double& value) override {
        static constexpr std::array<std::string_view, 5> kSided{"across_m", "yaw_deg", "roll_deg",
                                                                "shift_across", "hot_spot_across"};
        for (const std::string_view key : kSided) {
            if (key == field.words.key) value = -value;
        }
    }
};

/// Every length, and what is counted by the length the other way.
class DoubleLengths final : public NumberEdit {
public:
    void number(const room::NumberField& field, double& value) override {
        using base::Unit;
        if (field.unit == Unit::metre || field.unit == Unit::millimetre ||
            field.unit == Unit::micrometre) {
            value *= 2.0;
        }
        const std::string_view key = field.words.key;
        if (key.ends_with("_lp_mm") || key.ends_with("_per_m")) value *= 0.5;
    }
};

/// The seat that stands in the mirrored row where this one stood.
inline int mirrored_seat(const room::SeatBlock& block, int row, int number) {
    const int seats = block.seats_per_row + row * block.seats_added_per_row;
    return 2 * block.first_seat_number + seats - 1 - number;
}

inline void mirror_block(room::SeatBlock& block) {
    for (room::Aisle& aisle : block.aisles)
        aisle.after_seat = block.seats_per_row - aisle.after_seat;
    for (room::WheelchairPlace& place : block.wheelchair_places) {
        const int row =
            room::row_index(place.row).value() - room::row_index(block.first_row).value();
        place.seat = mirrored_seat(block, row, place.seat);
    }
}

inline void mirror_channel(room::Loudspeaker& speaker) {
    if (speaker.channel == room::Channel::left) {
        speaker.channel = room::Channel::right;
    } else if (speaker.channel == room::Channel::right) {
        speaker.channel = room::Channel::left;
    }
}

/// The room as a mirror at its centre plane shows it: a seat keeps its place in the list of its
/// row counted from the other side. Not for staggered blocks (every second row moves to the right
/// whatever the room), nor for a reference seat by name.
inline room::Layout mirrored(room::Layout layout) {
    MirrorNumbers sides;
    room::describe(sides, layout);
    for (room::SeatBlock& block : layout.seating)
        mirror_block(block);
    for (room::Loudspeaker& speaker : layout.loudspeakers)
        mirror_channel(speaker);
    return layout;
}

/// Room, gates, lenses and sheets twice as large; a power of two, so that rounding is the same.
inline room::Layout doubled(room::Layout layout) {
    DoubleLengths lengths;
    room::describe(lengths, layout);
    return layout;
}

}  // namespace rakeline::tests
