// SPDX-License-Identifier: MIT
#pragma once

#include "room/fields.hpp"

#include <array>

/// What the fields_*.cpp files share: the descriptions of the inner parts, and the walks of enums,
/// groups and lists without their types.
namespace rakeline::room {

struct SheetChoice;  // layout_file.hpp

void describe(FieldVisitor& v, FloorPoint& x);
void describe(FieldVisitor& v, Perforation& x);
void describe(FieldVisitor& v, LossPoint& x);
void describe(FieldVisitor& v, SheetChoice& x);
void describe(FieldVisitor& v, FormatUse& x);
void describe(FieldVisitor& v, Imager& x);
void describe(FieldVisitor& v, Aim& x);
void describe(FieldVisitor& v, Port& x);
void describe(FieldVisitor& v, FluxChain& x);
void describe(FieldVisitor& v, FluxTolerances& x);
void describe(FieldVisitor& v, Supply& x);
void describe(FieldVisitor& v, GainPoint& x);
void describe(FieldVisitor& v, HouseLight& x);
void describe(FieldVisitor& v, StrayLight& x);
void describe(FieldVisitor& v, Programme& x);
void describe(FieldVisitor& v, CoveragePoint& x);
void describe(FieldVisitor& v, Acoustics& x);
void describe(FieldVisitor& v, Playback& x);
void describe(FieldVisitor& v, Aisle& x);
void describe(FieldVisitor& v, CrossAisle& x);
void describe(FieldVisitor& v, Flight& x);
void describe(FieldVisitor& v, WheelchairPlace& x);

/// Positions in a room: no hall of this trade is larger.
inline constexpr double kFar = 200.0;

/// Name that a list shows for an element; empty where elements go by their number.
inline std::string name_of(const FloorPoint&) {
    return {};
}
inline std::string name_of(const GainPoint&) {
    return {};
}
inline std::string name_of(const LossPoint&) {
    return {};
}
inline std::string name_of(const CoveragePoint&) {
    return {};
}
inline std::string name_of(const FormatUse& x) {
    return x.format;
}
inline std::string name_of(const Aisle&) {
    return {};
}
inline std::string name_of(const CrossAisle&) {
    return {};
}
inline std::string name_of(const Flight&) {
    return {};
}
inline std::string name_of(const WheelchairPlace& x) {
    return x.row + std::to_string(x.seat);
}
template <class T>
std::string name_of(const T& x) {
    return x.name;
}

template <class T>
class VectorAccess final : public ListAccess {
public:
    explicit VectorAccess(std::vector<T>& items) : items_(items) {}
    std::size_t size() const override { return items_.size(); }
    void resize(std::size_t count) override { items_.resize(count); }
    void erase(std::size_t index) override {
        items_.erase(items_.begin() + static_cast<std::ptrdiff_t>(index));
    }
    void visit(std::size_t index, FieldVisitor& visitor) override {
        describe(visitor, items_.at(index));
    }
    std::string title(std::size_t index) const override { return name_of(items_.at(index)); }

private:
    std::vector<T>& items_;
};

template <class Enum, std::size_t N>
void choice(FieldVisitor& v, const Words& words, const std::array<const char*, N>& names, Enum& x) {
    int index = static_cast<int>(x);
    v.choice({words, names}, index);
    x = static_cast<Enum>(index);
}

template <class T>
void list(FieldVisitor& v, const ListField& field, std::vector<T>& items) {
    VectorAccess<T> access(items);
    v.list(field, access);
}

template <class T>
void group(FieldVisitor& v, const Words& words, T& x) {
    v.group(words, [&](FieldVisitor& inner) { describe(inner, x); });
}

}  // namespace rakeline::room
