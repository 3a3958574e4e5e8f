// SPDX-License-Identifier: MIT
#include "study/use_fields.hpp"

#include "room/fields.hpp"

#include <algorithm>

namespace rakeline::study {
namespace {

/// Walks a projector down to one of its formats, and there keeps every member.
class UseReader final : public room::FieldVisitor {
public:
    UseReader(int projector, int use)
        : use_(static_cast<std::size_t>(use)),
          path_("projectors[" + std::to_string(projector) + "].formats[" + std::to_string(use) +
                "].") {}

    UseFields take() { return std::move(fields_); }

    void text(const room::Words& words, std::string& value) override {
        keep(words, {}, base::Unit::ratio, value);
    }
    void flag(const room::Words&, bool&) override {}
    void integer(const room::IntegerField& field, int& value) override {
        keep(field.words, value, base::Unit::count);
    }
    void number(const room::NumberField& field, double& value) override {
        keep(field.words, value, field.unit);
    }
    void optional_number(const room::NumberField& field, std::optional<double>& value) override {
        keep(field.words, value, field.unit);
    }
    void choice(const room::ChoiceField&, int&) override {}
    void group(const room::Words&, const std::function<void(room::FieldVisitor&)>&) override {}
    void list(const room::ListField& field, room::ListAccess& items) override {
        if (std::string_view(field.words.key) != "formats") return;
        inside_ = true;
        items.visit(use_, *this);
        inside_ = false;
    }

private:
    void keep(const room::Words& words,
              std::optional<double> si,
              base::Unit unit,
              const std::string& text = {}) {
        if (inside_) fields_[words.key] = {path_ + words.key, words.label, si, unit, text};
    }

    std::size_t use_;
    std::string path_;
    bool inside_ = false;
    UseFields fields_;
};

}  // namespace

UseFields use_fields(const room::Layout& layout, int projector, int use) {
    room::Projector copy = layout.projectors.at(static_cast<std::size_t>(projector));
    UseReader reader(projector, use);
    room::describe(reader, copy);
    return reader.take();
}

std::optional<int> find_use(const room::Layout& layout, int projector, int format) {
    const auto& uses = layout.projectors.at(static_cast<std::size_t>(projector)).formats;
    const std::string& name = layout.formats.at(static_cast<std::size_t>(format)).name;
    const auto found =
        std::find_if(uses.begin(), uses.end(), [&](const auto& use) { return use.format == name; });
    if (found == uses.end()) return std::nullopt;
    return static_cast<int>(found - uses.begin());
}

}  // namespace rakeline::study
