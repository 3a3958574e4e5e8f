// SPDX-License-Identifier: MIT
#include "room/field_reader.hpp"

#include "base/number_text.hpp"
#include "base/units.hpp"
#include "room/field_fault.hpp"
#include "room/object_reader.hpp"

namespace rakeline::room {
namespace {

/// Digits of a file to SI.
double value_of(const JsonNode& node, base::Unit unit) {
    if (unit != base::Unit::radian) return node.number;
    // Digits that are too small for any number read as zero, and so does their product.
    return base::parse_product(node.text, base::kRadPerDeg).value_or(base::radians(node.number));
}

class FieldReader final : public FieldVisitor {
public:
    FieldReader(const JsonNode& object, std::string path, ProblemList& problems)
        : reader_(object, std::move(path), problems), problems_(problems) {}

    ObjectReader& reader() { return reader_; }

    void text(const Words& words, std::string& value) override {
        if (auto read = reader_.text(words.key)) value = std::move(*read);
    }
    void flag(const Words& words, bool& value) override {
        if (const auto read = reader_.flag(words.key)) value = *read;
    }
    void integer(const IntegerField& field, int& value) override {
        const JsonNode* node = reader_.number(field.words.key);
        if (node && accept(field.words, fault_of(field, node->number))) {
            value = static_cast<int>(node->number);
        }
    }
    void number(const NumberField& field, double& value) override {
        if (const auto read = number_of(field)) value = *read;
    }
    void optional_number(const NumberField& field, std::optional<double>& value) override {
        if (const auto read = number_of(field)) value = *read;
    }
    void choice(const ChoiceField& field, int& index) override {
        if (const auto read = reader_.choice(field.words.key, field.names)) {
            index = static_cast<int>(*read);
        }
    }
    void group(const Words& words, const std::function<void(FieldVisitor&)>& members) override {
        const JsonNode* node = reader_.object(words.key);
        if (node) read_object(*node, reader_.path_of(words.key), members);
    }
    void list(const ListField& field, ListAccess& items) override {
        const JsonNode* node = reader_.list(field.words.key);
        if (!node || !accept(field.words, fault_of(field, node->items.size()))) return;
        items.resize(node->items.size());
        for_each_object(*node, reader_.path_of(field.words.key), problems_,
                        [&](const JsonNode& item, const std::string& path, std::size_t i) {
                            read_object(item, path, [&](FieldVisitor& v) { items.visit(i, v); });
                        });
    }

private:
    bool accept(const Words& words, const std::optional<Fault>& fault) {
        if (fault) reader_.refuse(words.key, fault->what, fault->mend);
        return !fault;
    }
    std::optional<double> number_of(const NumberField& field) {
        const JsonNode* node = reader_.number(field.words.key);
        if (!node) return std::nullopt;
        const double value = value_of(*node, field.unit);
        return accept(field.words, fault_of(field, value)) ? std::optional(value) : std::nullopt;
    }
    void read_object(const JsonNode& object,
                     const std::string& path,
                     const std::function<void(FieldVisitor&)>& members) {
        FieldReader inner(object, path, problems_);
        members(inner);
        inner.reader_.refuse_unknown();
    }

    ObjectReader reader_;
    ProblemList& problems_;
};

}  // namespace

void read_fields(const JsonNode& root,
                 const char* head,
                 ProblemList& problems,
                 const std::function<void(FieldVisitor&)>& members) {
    FieldReader visitor(root, {}, problems);
    visitor.reader().take(head);
    members(visitor);
    visitor.reader().refuse_unknown();
}

}  // namespace rakeline::room
