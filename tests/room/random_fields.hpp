// SPDX-License-Identifier: MIT
#pragma once

#include "room/fields.hpp"

#include <random>

/// Fills a part of the document with values that suit their fields, whatever the fields are; the
/// rules between fields are not kept.
namespace rakeline::tests {

class RandomFields final : public room::FieldVisitor {
public:
    explicit RandomFields(std::mt19937& random) : random_(random) {}

    void text(const room::Words&, std::string& value) override {
        static const char* const pieces[] = {"a", "Ä", "\"", "\\", "\n", "зал", "/", "𝄞", " "};
        value.clear();
        for (int left = pick(0, 6); left > 0; --left)
            value += pieces[pick(0, 8)];
    }
    void flag(const room::Words&, bool& value) override { value = pick(0, 1) == 1; }
    void integer(const room::IntegerField& field, int& value) override {
        value = pick(field.least, field.most);
    }
    void number(const room::NumberField& field, double& value) override {
        // Both ends too, and the default now and then.
        const int kind = pick(0, 9);
        if (kind == 0) value = field.least;
        if (kind == 1) value = field.most;
        if (kind > 2) value = std::uniform_real_distribution(field.least, field.most)(random_);
    }
    void optional_number(const room::NumberField& field, std::optional<double>& value) override {
        value.reset();
        if (pick(0, 1) == 1) number(field, value.emplace(field.least));
    }
    void choice(const room::ChoiceField& field, int& index) override {
        index = pick(0, static_cast<int>(field.names.size()) - 1);
    }
    void group(const room::Words&,
               const std::function<void(room::FieldVisitor&)>& members) override {
        members(*this);
    }
    void list(const room::ListField&, room::ListAccess& items) override {
        items.resize(static_cast<std::size_t>(pick(0, 3)));
        for (std::size_t i = 0; i < items.size(); ++i)
            items.visit(i, *this);
    }

private:
    int pick(int least, int most) { return std::uniform_int_distribution(least, most)(random_); }

    std::mt19937& random_;
};

}  // namespace rakeline::tests
