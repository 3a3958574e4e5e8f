// SPDX-License-Identifier: MIT
#include "base/number_text.hpp"
#include "base/units.hpp"
#include "room/document_root.hpp"
#include "room/layout_file.hpp"
#include "room/object_reader.hpp"

#include <array>
#include <cmath>

namespace rakeline::room {
namespace {

constexpr auto kScopes = std::to_array<const char*>(
    {"every", "first_row", "last_row", "reference_seat", "screen_channels"});
constexpr auto kSourceKinds = std::to_array<const char*>({"film", "digital"});
constexpr auto kAuthorities = std::to_array<const char*>({"standard", "common_practice", "yours"});

/// Units that bounds may stand in; the document holds SI.
constexpr auto kUnits =
    std::to_array<const char*>({"m", "deg", "1/deg", "cd/m2", "dB", "s", "lm", "1", "%"});
constexpr std::string_view kDegrees = "deg";
constexpr std::string_view kPerDegree = "1/deg";
constexpr std::string_view kPercent = "%";

class LimitReader {
public:
    LimitReader(const JsonNode& object, const std::string& path, ProblemList& problems)
        : in_(object, path, problems) {}

    Limit read() {
        Limit limit;
        limit.figure = required_text("figure", "name the id of the figure that it bounds");
        limit.scope = static_cast<LimitScope>(in_.choice("scope", kScopes).value_or(0));
        if (const auto kind = in_.choice("source_kind", kSourceKinds)) {
            limit.source_kind = static_cast<SourceKind>(*kind);
        }
        read_band(limit);
        read_bounds(limit);
        in_.refuse_missing("authority", "write standard, common_practice or yours");
        limit.authority = static_cast<Authority>(in_.choice("authority", kAuthorities).value_or(1));
        limit.source = required_text("source",
                                     "name the document and clause, or write \"common practice, "
                                     "no source\"");
        limit.mend = in_.text("mend").value_or("");
        in_.refuse_unknown();
        return limit;
    }

private:
    std::string required_text(const char* key, const char* mend) {
        in_.refuse_missing(key, mend);
        const auto text = in_.text(key);
        if (text && text->empty()) in_.refuse(key, "is empty", mend);
        return text.value_or("");
    }
    void read_band(Limit& limit) {
        const JsonNode* node = in_.number("band_hz");
        if (!node) return;
        limit.band_hz = node->number;
        if (node->number < 1.0 || node->number > 100000.0) {
            in_.refuse("band_hz", node->text + " Hz is no audible band",
                       "give the band's middle frequency, 1 to 100000");
        }
    }
    void read_bounds(Limit& limit) {
        in_.refuse_missing("unit", "write the unit that the bounds stand in, 1 for a plain ratio");
        if (const auto unit = in_.choice("unit", kUnits)) unit_ = kUnits[*unit];
        limit.least = bound("least");
        limit.most = bound("most");
        limit.near = bound("near").value_or(0.0);
        if (!in_.has("least") && !in_.has("most")) {
            in_.refuse("least", "is missing, and so is most, so nothing is bounded",
                       "give at least one of them");
        }
        if (limit.least && limit.most && *limit.least > *limit.most) {
            in_.refuse("least", "is above most", "exchange the two");
        }
        if (limit.near < 0.0) in_.refuse("near", "is negative", "give 0 or more");
    }
    /// In SI.
    std::optional<double> bound(const char* key) {
        const JsonNode* node = in_.number(key);
        if (!node) return std::nullopt;
        if (unit_ == kDegrees) {
            return base::parse_product(node->text, base::kRadPerDeg)
                .value_or(base::radians(node->number));
        }
        if (unit_ == kPerDegree) return node->number / base::kRadPerDeg;
        return unit_ == kPercent ? node->number / 100.0 : node->number;
    }

    ObjectReader in_;
    std::string_view unit_;
};

}  // namespace

base::Result<LimitSet> read_limits(std::string_view json, const std::string& file_name) {
    ProblemList problems(file_name);
    LimitSet set;
    if (const auto root = document_root(json, file_name, kLimitsHead, problems)) {
        ObjectReader in(*root, {}, problems);
        in.take(kLimitsHead);
        in.refuse_missing("name", "say what the set is called");
        set.name = in.text("name").value_or("");
        set.note = in.text("note").value_or("");
        in.refuse_missing("limits", "list the limits, or [] to hold a room against none");
        if (const JsonNode* limits = in.list("limits")) {
            for_each_object(*limits, "limits", problems,
                            [&](const JsonNode& item, const std::string& path, std::size_t) {
                                set.limits.push_back(LimitReader(item, path, problems).read());
                            });
        }
        in.refuse_unknown();
    }
    if (!problems.empty()) return std::move(problems).take();
    return set;
}

}  // namespace rakeline::room
