// SPDX-License-Identifier: MIT
#include "room/field_writer.hpp"

#include "base/assert.hpp"
#include "room/field_fault.hpp"

#include <nlohmann/json.hpp>

#include <cmath>

namespace rakeline::room {
namespace {

std::string json_text(const std::string& text) {
    return nlohmann::json(text).dump(-1, ' ', false, nlohmann::json::error_handler_t::replace);
}

class FieldWriter final : public FieldVisitor {
public:
    FieldWriter(std::string& out, int depth) : out_(out), depth_(depth) { out_ += '{'; }
    void finish() {
        if (!first_) break_line(depth_ - 1);
        out_ += '}';
    }

    void text(const Words& words, std::string& value) override { member(words, json_text(value)); }
    void flag(const Words& words, bool& value) override { member(words, value ? "true" : "false"); }
    void integer(const IntegerField& field, int& value) override {
        member(field.words, std::to_string(value));
    }
    void number(const NumberField& field, double& value) override {
        RL_ASSERT(std::isfinite(value));
        member(field.words, file_number(value, field.unit));
    }
    void optional_number(const NumberField& field, std::optional<double>& value) override {
        if (value) number(field, *value);
    }
    void choice(const ChoiceField& field, int& index) override {
        const auto at = static_cast<std::size_t>(index);
        RL_ASSERT(at < field.names.size());
        member(field.words, json_text(field.names[at]));
    }
    void group(const Words& words, const std::function<void(FieldVisitor&)>& members) override {
        member(words, {});
        object(depth_ + 1, members);
    }
    void list(const ListField& field, ListAccess& items) override {
        member(field.words, "[");
        for (std::size_t i = 0; i < items.size(); ++i) {
            if (i > 0) out_ += ',';
            break_line(depth_ + 1);
            object(depth_ + 2, [&](FieldVisitor& v) { items.visit(i, v); });
        }
        if (items.size() > 0) break_line(depth_);
        out_ += ']';
    }
    void member(const Words& words, const std::string& value) {
        if (!first_) out_ += ',';
        first_ = false;
        break_line(depth_);
        out_ += json_text(words.key) + ": " + value;
    }

private:
    void break_line(int depth) {
        out_ += '\n' + std::string(static_cast<std::size_t>(2 * depth), ' ');
    }
    void object(int depth, const std::function<void(FieldVisitor&)>& members) {
        FieldWriter inner(out_, depth);
        members(inner);
        inner.finish();
    }

    std::string& out_;
    int depth_;
    bool first_ = true;
};

}  // namespace

std::string written_fields(const char* head, const std::function<void(FieldVisitor&)>& members) {
    std::string out;
    FieldWriter writer(out, 1);
    writer.member({head, "", ""}, "1");
    members(writer);
    writer.finish();
    return out + "\n";
}

}  // namespace rakeline::room
