// SPDX-License-Identifier: MIT
#include "base/assert.hpp"
#include "base/number_text.hpp"
#include "room/document_root.hpp"
#include "room/field_fault.hpp"
#include "room/fields.hpp"
#include "room/layout_file.hpp"

#include <nlohmann/json.hpp>

namespace rakeline::room {
namespace {

using Json = nlohmann::ordered_json;

/// A number as the schema prints it: whole where it is whole.
Json json_number(double value_si, base::Unit unit) {
    const auto value = base::parse_number(file_number(value_si, unit));
    RL_ASSERT(value);
    if (*value == static_cast<double>(static_cast<long long>(*value))) {
        return static_cast<long long>(*value);
    }
    return *value;
}

std::string help_with_unit(const NumberField& field) {
    const std::string unit = base::json_unit(field.unit);
    return field.words.help + (unit == "1" ? std::string() : " Unit: " + unit + ".");
}

/// Gathers the schema of an object's members; the values that it visits are the defaults.
class SchemaWriter final : public FieldVisitor {
public:
    Json object_schema() && {
        return {{"type", "object"},
                {"additionalProperties", false},
                {"properties", std::move(properties_)}};
    }
    void add(const char* key, Json schema) { properties_[key] = std::move(schema); }

    void text(const Words& words, std::string& value) override {
        add(words, {{"type", "string"}, {"default", value}});
    }
    void flag(const Words& words, bool& value) override {
        add(words, {{"type", "boolean"}, {"default", value}});
    }
    void integer(const IntegerField& field, int& value) override {
        add(field.words, {{"type", "integer"},
                          {"minimum", field.least},
                          {"maximum", field.most},
                          {"default", value}});
    }
    void number(const NumberField& field, double& value) override {
        Json schema = number_schema(field);
        schema["default"] = json_number(value, field.unit);
        add(field.words.key, std::move(schema));
    }
    void optional_number(const NumberField& field, std::optional<double>&) override {
        add(field.words.key, number_schema(field));
    }
    void choice(const ChoiceField& field, int& index) override {
        Json names = Json::array();
        for (const char* name : field.names)
            names.push_back(name);
        const char* chosen = field.names[static_cast<std::size_t>(index)];
        add(field.words, {{"enum", std::move(names)}, {"default", chosen}});
    }
    void group(const Words& words, const std::function<void(FieldVisitor&)>& members) override {
        SchemaWriter inner;
        members(inner);
        add(words, std::move(inner).object_schema());
    }
    void list(const ListField& field, ListAccess& items) override {
        items.resize(1);
        SchemaWriter inner;
        items.visit(0, inner);
        add(field.words, {{"type", "array"},
                          {"maxItems", field.most},
                          {"items", std::move(inner).object_schema()}});
    }

private:
    static Json number_schema(const NumberField& field) {
        return {{"description", help_with_unit(field)},
                {"type", "number"},
                {"minimum", json_number(field.least, field.unit)},
                {"maximum", json_number(field.most, field.unit)}};
    }
    void add(const Words& words, Json rest) {
        Json schema = {{"description", words.help}};
        schema.update(rest);
        add(words.key, std::move(schema));
    }

    Json properties_ = Json::object();
};

}  // namespace

std::string layout_schema() {
    Layout defaults;
    SchemaWriter writer;
    writer.add(kLayoutHead, {{"description", "Version of the form of this file."}, {"const", 1}});
    describe(writer, defaults);
    Json schema = {{"$schema", "http://json-schema.org/draft-07/schema#"},
                   {"title", "Rakeline layout"},
                   {"description",
                    "One cinema room. Lengths in metres, angles in degrees, fractions 0 to 1."}};
    schema.update(std::move(writer).object_schema());
    schema["required"] = {kLayoutHead};
    return schema.dump(2) + "\n";
}

}  // namespace rakeline::room
