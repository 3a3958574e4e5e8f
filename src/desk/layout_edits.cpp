// SPDX-License-Identifier: MIT
#include "desk/layout_edits.hpp"

#include "base/assert.hpp"

#include <algorithm>
#include <deque>
#include <variant>

namespace rakeline::desk {
namespace {

using FieldValue = std::variant<std::string, bool, int, double, std::optional<double>, std::size_t>;

/// Reads the fields of one element in their order.
class FieldReader final : public room::FieldVisitor {
public:
    std::deque<FieldValue> values;

    void text(const room::Words&, std::string& value) override { values.emplace_back(value); }
    void flag(const room::Words&, bool& value) override { values.emplace_back(value); }
    void integer(const room::IntegerField&, int& value) override { values.emplace_back(value); }
    void number(const room::NumberField&, double& value) override { values.emplace_back(value); }
    void optional_number(const room::NumberField&, std::optional<double>& value) override {
        values.emplace_back(value);
    }
    void choice(const room::ChoiceField&, int& index) override { values.emplace_back(index); }
    void group(const room::Words&, const std::function<void(FieldVisitor&)>& members) override {
        members(*this);
    }
    void list(const room::ListField&, room::ListAccess& items) override {
        values.emplace_back(items.size());
        for (std::size_t i = 0; i < items.size(); ++i)
            items.visit(i, *this);
    }
};

/// Writes them back into an element of the same kind.
class FieldWriter final : public room::FieldVisitor {
public:
    explicit FieldWriter(std::deque<FieldValue> values) : values_(std::move(values)) {}

    void text(const room::Words&, std::string& value) override { take(value); }
    void flag(const room::Words&, bool& value) override { take(value); }
    void integer(const room::IntegerField&, int& value) override { take(value); }
    void number(const room::NumberField&, double& value) override { take(value); }
    void optional_number(const room::NumberField&, std::optional<double>& value) override {
        take(value);
    }
    void choice(const room::ChoiceField&, int& index) override { take(index); }
    void group(const room::Words&, const std::function<void(FieldVisitor&)>& members) override {
        members(*this);
    }
    void list(const room::ListField&, room::ListAccess& items) override {
        std::size_t count = 0;
        take(count);
        items.resize(count);
        for (std::size_t i = 0; i < count; ++i)
            items.visit(i, *this);
    }

private:
    template <class T>
    void take(T& value) {
        RL_ASSERT(!values_.empty());
        value = std::get<T>(values_.front());
        values_.pop_front();
    }
    std::deque<FieldValue> values_;
};

/// Sets the element's own name and passes over everything else.
class NameWriter final : public room::FieldVisitor {
public:
    explicit NameWriter(std::string name) : name_(std::move(name)) {}

    void text(const room::Words& words, std::string& value) override {
        if (std::string_view(words.key) == "name") value = name_;
    }
    void flag(const room::Words&, bool&) override {}
    void integer(const room::IntegerField&, int&) override {}
    void number(const room::NumberField&, double&) override {}
    void optional_number(const room::NumberField&, std::optional<double>&) override {}
    void choice(const room::ChoiceField&, int&) override {}
    void group(const room::Words&, const std::function<void(FieldVisitor&)>&) override {}
    void list(const room::ListField&, room::ListAccess&) override {}

private:
    std::string name_;
};

template <class T, class Use>
void follow(const std::vector<T>& before, const std::vector<T>& after, Use&& rename) {
    if (before.size() != after.size()) return;
    for (std::size_t i = 0; i < before.size(); ++i)
        if (before[i].name != after[i].name) rename(before[i].name, after[i].name);
}

}  // namespace

void follow_renames(const room::Layout& before, room::Layout& after) {
    const auto in_uses = [&](std::string room::FormatUse::*member) {
        return [&after, member](const std::string& old_name, const std::string& new_name) {
            if (old_name.empty()) return;
            for (room::Projector& projector : after.projectors)
                for (room::FormatUse& use : projector.formats)
                    if (use.*member == old_name) use.*member = new_name;
        };
    };
    follow(before.formats, after.formats, in_uses(&room::FormatUse::format));
    follow(before.lenses, after.lenses, in_uses(&room::FormatUse::lens));
}

void duplicate_element(room::ListAccess& items, std::size_t from) {
    FieldReader reader;
    items.visit(from, reader);
    std::vector<std::string> taken;
    for (std::size_t i = 0; i < items.size(); ++i)
        taken.push_back(items.title(i));
    items.resize(items.size() + 1);
    FieldWriter writer(std::move(reader.values));
    items.visit(items.size() - 1, writer);
    if (taken[from].empty()) return;
    NameWriter name(free_name(taken[from], taken));
    items.visit(items.size() - 1, name);
}

std::string free_name(const std::string& name, const std::vector<std::string>& taken) {
    for (int number = 2;; ++number) {
        const std::string tried = name + " " + std::to_string(number);
        if (std::find(taken.begin(), taken.end(), tried) == taken.end()) return tried;
    }
}

}  // namespace rakeline::desk
