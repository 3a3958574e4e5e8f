// SPDX-License-Identifier: MIT
// Whole studies of rooms mirrored and built twice as large, figure by figure through the register.
// A study with seats, light and sound takes too long for 10,000 of them in every run; the picture
// alone is held to the same symmetries on 10,000 rooms in tests/picture/picture_property_test.cpp.
#include "picture/plate.hpp"
#include "room/platforms.hpp"
#include "study/random_layout.hpp"
#include "study/study.hpp"
#include "support/check.hpp"
#include "support/turned_room.hpp"

#include <algorithm>
#include <optional>

using namespace rakeline;
using namespace rakeline::study;
using namespace rakeline::tests;

namespace {

constexpr int kRooms = 300;

/// What a figure's id and sign become in the mirror.
struct Twin {
    std::string id;
    double sign = 1.0;
};

std::string other_side(std::string id) {
    const auto left = id.find("_left");
    if (left != std::string::npos) return id.replace(left, 5, "_right");
    const auto right = id.find("_right");
    return right == std::string::npos ? id : id.replace(right, 6, "_left");
}

Twin twin_of(const std::string& id) {
    const bool turns = id == "picture.angle_across" || id == "picture.aim_across" ||
                       id == "picture.shift_across" || id == "picture.keystone_horizontal" ||
                       id == "picture.port_centre_across" || id == "sight.apparent_keystone" ||
                       id == "light.hot_spot_across" || id == "sound.image_across";
    return {other_side(id), turns ? -1.0 : 1.0};
}

/// By how much a quantity of this unit grows in a room twice as large; nothing where no rule is
/// known, which fails the test that meets it.
std::optional<double> growth(base::Unit unit) {
    using base::Unit;
    switch (unit) {
        case Unit::metre:
        case Unit::millimetre:
        case Unit::micrometre:
            return 2.0;
        case Unit::square_metre:
            return 4.0;
        case Unit::radian:
        case Unit::per_radian:
        case Unit::ratio:
        case Unit::fraction:
        case Unit::count:
            return 1.0;
        default:
            return std::nullopt;
    }
}

const Figure* figure_like(const Study& study, const Figure& figure, const std::string& id) {
    for (const Figure& other : study.figures) {
        if (other.definition->id == id && other.projector == figure.projector &&
            other.format == figure.format && other.loudspeaker == figure.loudspeaker &&
            other.band == figure.band) {
            return &other;
        }
    }
    return nullptr;
}

/// The seat that stands mirrored: the same from the other end of its row.
int mirrored_index(const Study& study, const Figure& figure, int index) {
    if (figure.definition->axis() != Axis::seat) return index;
    const room::Seat& seat = study.seats.seats.at(static_cast<std::size_t>(index));
    const room::Row& row = study.seats.rows.at(static_cast<std::size_t>(seat.row));
    return 2 * row.first_seat + row.seat_count - 1 - index;
}

/// Where in the other study a value of this one is looked for, and what it is there.
struct Expected {
    std::string id;
    int index = 0;
    double si = 0.0;
    Tolerance near{1e-9, 1e-9, "rounding"};
};

int figures_of(const Study& study, Subject subject) {
    return static_cast<int>(
        std::count_if(study.figures.begin(), study.figures.end(),
                      [&](const Figure& f) { return f.definition->subject == subject; }));
}

/// Every figure of the subject has its like in the other study, and that study has no more. Gives
/// the number of values compared.
template <class Expect>
int check_figures(const Study& here, const Study& there, Subject subject, Expect expect) {
    CHECK(figures_of(here, subject) == figures_of(there, subject));
    int compared = 0;
    for (const Figure& figure : here.figures) {
        if (figure.definition->subject != subject) continue;
        for (const Value& value : figure.values) {
            const Expected expected = expect(figure, value);
            INFO(expected.id, " of projector ", figure.projector.value_or(-1), " in format ",
                 figure.format.value_or(-1), ", index ", expected.index);
            const Figure* like = figure_like(there, figure, expected.id);
            REQUIRE(like != nullptr);
            CHECK(like->values.size() == figure.values.size());
            const auto si = value_at(*like, expected.index);
            REQUIRE(si);
            check_close(*si, expected.si, expected.near);
            ++compared;
        }
    }
    return compared;
}

/// The hidden picture is worked in single precision; where an outline is upright, a height moves
/// with the root of that.
Tolerance near_of(const Figure& figure) {
    const std::string_view id = figure.definition->id;
    const bool hidden = id.find("hidden") != std::string_view::npos || id.ends_with("_hides");
    if (figure.definition->subject == Subject::sight && hidden)
        return absolute(1e-5, "single precision");
    if (id == "sight.clear_above") return absolute(2e-3, "single precision at an upright outline");
    return {1e-9, 1e-9, "rounding"};
}

/// The floor under curved rows is cut into chords that keep 2 cm from the arc whatever the size of
/// the room, so a larger room's floor is cut finer; heights over it agree within that.
Tolerance near_when_doubled(const room::Layout& layout, const Figure& figure) {
    const std::string_view id = figure.definition->id;
    const bool over_floor = id == "picture.beam_clearance" || id == "picture.head_clearance" ||
                            id == "picture.balcony_clearance";
    const bool arcs = std::ranges::any_of(
        layout.seating, [](const room::SeatBlock& b) { return b.row_radius_m > 0.0; });
    if (over_floor && arcs) return absolute(2.0 * room::kChordError_m, "chords for arcs");
    // A plate's bowed edges are cut into chords that keep within a length on the screen, too; the
    // pictures here are more than 50 times their gates.
    if (id.starts_with("picture.plate_"))
        return absolute(picture::kPlateTolerance_m / 50.0, "chords for bowed edges");
    return near_of(figure);
}

/// What a study of these rooms has to hold, so that nothing is compared with nothing.
void check_told_apart(int compared, int with_pictures) {
    CHECK(with_pictures > kRooms / 2);
    CHECK(compared > 60 * kRooms);
}

}  // namespace

TEST_SUITE("study/picture_symmetry") {
    TEST_CASE("property: the rooms drawn are valid") {
        Dice dice(601);
        for (int i = 0; i < kRooms; ++i) {
            INFO("seed 601, case ", i);
            const base::Problems problems = room::check_layout(random_layout(dice));
            INFO(base::text(problems));
            CHECK(problems.empty());
        }
    }

    TEST_CASE("property: a room mirrored left to right has the mirrored figures") {
        Dice dice(602);
        int compared = 0;
        int whole = 0;
        for (int i = 0; i < kRooms; ++i) {
            INFO("seed 602, case ", i);
            const room::Layout layout = random_layout(dice);
            const Study a = compute_study(brief_of(layout));
            const Study b = compute_study(brief_of(mirrored(layout)));
            whole += a.picture.none.empty() ? 1 : 0;
            const auto expect = [&](const Figure& figure, const Value& value) {
                const Twin twin = twin_of(figure.definition->id);
                return Expected{twin.id, mirrored_index(a, figure, value.index),
                                twin.sign * value.si, near_of(figure)};
            };
            compared += check_figures(a, b, Subject::picture, expect);
            for (const Subject other :
                 {Subject::room, Subject::light, Subject::sight, Subject::sound})
                check_figures(a, b, other, expect);
            CHECK(subject_verdict(a, Subject::picture) == subject_verdict(b, Subject::picture));
        }
        check_told_apart(compared, whole);
    }

    TEST_CASE("property: a room twice as large, gates and lenses too, has figures by their units") {
        Dice dice(603);
        int compared = 0;
        int whole = 0;
        for (int i = 0; i < kRooms; ++i) {
            INFO("seed 603, case ", i);
            const room::Layout layout = random_layout(dice);
            const Study a = compute_study(brief_of(layout));
            const Study b = compute_study(brief_of(doubled(layout)));
            whole += a.picture.none.empty() ? 1 : 0;
            const auto expect = [&](const Figure& f, const Value& v) {
                const auto times = growth(f.definition->unit);
                INFO("say here how a figure in the unit of ", f.definition->id, " grows");
                REQUIRE(times);
                return Expected{f.definition->id, v.index, *times * v.si,
                                near_when_doubled(layout, f)};
            };
            compared += check_figures(a, b, Subject::picture, expect);
            check_figures(a, b, Subject::sight, expect);
        }
        check_told_apart(compared, whole);
    }
}
