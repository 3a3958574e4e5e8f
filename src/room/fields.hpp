// SPDX-License-Identifier: MIT
#pragma once

#include "base/quantity_text.hpp"
#include "room/layout.hpp"

#include <functional>
#include <optional>
#include <span>
#include <string>
#include <vector>

/// Every member of the document described once: key, words, unit, range. Reading, writing, range
/// checks, the JSON Schema and the window's editors are all visitors of this one description, so a
/// new field is one line in fields.cpp.
namespace rakeline::room {

struct Words {
    const char* key;    ///< in files; unit-suffixed ("width_m", "tilt_deg")
    const char* label;  ///< in the window
    const char* help;   ///< one plain sentence
};

struct NumberField {
    Words words;
    base::Unit unit = base::Unit::metre;
    double least = 0.0;  ///< SI, inclusive
    double most = 0.0;
};

struct IntegerField {
    Words words;
    int least = 0;
    int most = 0;
};

struct ChoiceField {
    Words words;
    std::span<const char* const> names;  ///< in the order of the enum
};

/// A list as a visitor sees it, without its element type.
class ListAccess {
public:
    virtual ~ListAccess() = default;
    virtual std::size_t size() const = 0;
    virtual void resize(std::size_t count) = 0;  ///< new elements have their defaults
    virtual void erase(std::size_t index) = 0;
    virtual void visit(std::size_t index, class FieldVisitor& visitor) = 0;
    virtual std::string title(std::size_t index) const = 0;  ///< name of the element, or its number
};

struct ListField {
    Words words;
    const char* singular;  ///< "projector"
    std::size_t most = 0;
};

/// Files hold angles in degrees, ratios as they are; visitors convert with base::json_value.
class FieldVisitor {
public:
    virtual ~FieldVisitor() = default;
    virtual void text(const Words& words, std::string& value) = 0;
    virtual void flag(const Words& words, bool& value) = 0;
    virtual void integer(const IntegerField& field, int& value) = 0;
    virtual void number(const NumberField& field, double& value) = 0;
    virtual void optional_number(const NumberField& field, std::optional<double>& value) = 0;
    virtual void choice(const ChoiceField& field, int& index) = 0;
    virtual void group(const Words& words, const std::function<void(FieldVisitor&)>& members) = 0;
    virtual void list(const ListField& field, ListAccess& items) = 0;
};

/// Walk all members of a part, in file order.
void describe(FieldVisitor& v, Layout& x);
void describe(FieldVisitor& v, Hall& x);
void describe(FieldVisitor& v, Screen& x);
void describe(FieldVisitor& v, ScreenSurface& x);
void describe(FieldVisitor& v, Format& x);
void describe(FieldVisitor& v, Projector& x);
void describe(FieldVisitor& v, Lens& x);
void describe(FieldVisitor& v, SeatBlock& x);
void describe(FieldVisitor& v, Audience& x);
void describe(FieldVisitor& v, Loudspeaker& x);

}  // namespace rakeline::room
