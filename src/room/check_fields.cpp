// SPDX-License-Identifier: MIT
#include "room/check_internal.hpp"
#include "room/field_fault.hpp"
#include "room/fields.hpp"
#include "room/layout_file.hpp"

namespace rakeline::room {
namespace {

class RangeCheck final : public FieldVisitor {
public:
    RangeCheck(std::string path, Findings& out) : path_(std::move(path)), out_(out) {}

    void text(const Words& words, std::string& value) override { report(words, text_fault(value)); }
    void flag(const Words&, bool&) override {}
    void integer(const IntegerField& field, int& value) override {
        report(field.words, fault_of(field, value));
    }
    void number(const NumberField& field, double& value) override {
        report(field.words, fault_of(field, value));
    }
    void optional_number(const NumberField& field, std::optional<double>& value) override {
        if (value) number(field, *value);
    }
    void choice(const ChoiceField& field, int& index) override {
        if (index >= 0 && index < static_cast<int>(field.names.size())) return;
        report(field.words, Fault{"is none of its choices", "choose " + listed(field.names)});
    }
    void group(const Words& words, const std::function<void(FieldVisitor&)>& members) override {
        RangeCheck inner(path_of(words), out_);
        members(inner);
    }
    void list(const ListField& field, ListAccess& items) override {
        report(field.words, fault_of(field, items.size()));
        for (std::size_t i = 0; i < items.size(); ++i) {
            RangeCheck inner(at(path_of(field.words), i), out_);
            items.visit(i, inner);
        }
    }

private:
    std::string path_of(const Words& words) const {
        return path_.empty() ? words.key : path_ + "." + words.key;
    }
    void report(const Words& words, const std::optional<Fault>& fault) {
        if (fault) out_.add(path_of(words), fault->what, fault->mend);
    }

    std::string path_;
    Findings& out_;
};

}  // namespace

base::Problems check_field_ranges(const Layout& layout) {
    Layout copy = layout;
    Findings out;
    RangeCheck visitor({}, out);
    describe(visitor, copy);
    return out.problems;
}

}  // namespace rakeline::room
