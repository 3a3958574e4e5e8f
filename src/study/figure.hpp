// SPDX-License-Identifier: MIT
#pragma once

#include "base/quantity_text.hpp"
#include "room/limits.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

/// A figure is the unit of truth: every number that window, reports and command line show is one.
namespace rakeline::study {

enum class Subject { room, picture, light, sight, sound };
inline constexpr Subject kSubjects[] = {Subject::room, Subject::picture, Subject::light,
                                        Subject::sight, Subject::sound};
const char* subject_name(Subject subject);   ///< "room", ... as in ids
const char* subject_title(Subject subject);  ///< "Room", ... as shown

/// What a figure has one of. A figure may be per several: then it has a value for each combination.
struct Per {
    bool projector = false;
    bool format = false;
    bool loudspeaker = false;
    bool band = false;  ///< octave band, or third octave for sound.screen_loss
    bool seat = false;
    bool row = false;
    bool operator==(const Per&) const = default;
};

/// The list of values inside one figure runs along this.
enum class Axis { none, seat, row, band };

/// How values compare with their limits.
enum class Verdict { no_limit, holds, near, missed };

const char* verdict_mark(Verdict verdict);  ///< "✓", "△", "✗", or "" without a limit
const char* verdict_word(Verdict verdict);  ///< "holds", "near its limit", ...

/// One value of a figure: `index` of the seat, row or band (0 where the axis is none).
struct Value {
    int index = 0;
    double si = 0.0;
    bool operator==(const Value&) const = default;
};

struct FigureDefinition;  // register.hpp

/// One figure of one study. Its values run along the definition's axis; undefined ones are left
/// out.
struct Figure {
    const FigureDefinition* definition = nullptr;
    std::optional<int> projector;  ///< indices in the layout
    std::optional<int> format;
    std::optional<int> loudspeaker;
    std::optional<int> band;  ///< index in sound::kOctaves, for figures per L, B and S
    std::vector<Value> values;
    std::vector<int> limits;        ///< indices in the LimitSet of those that apply to any value
    std::vector<Verdict> verdicts;  ///< parallel to `values`, the worst over those limits
    Verdict worst = Verdict::no_limit;
    bool operator==(const Figure&) const = default;
};

}  // namespace rakeline::study
