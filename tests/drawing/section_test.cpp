// SPDX-License-Identifier: MIT
#include "drawing/section_floor.hpp"
#include "drawing/studied_room.hpp"
#include "support/check.hpp"

#include <algorithm>

using namespace rakeline;
using drawing::Ink;
using drawing::Shows;
using tests::check_close;
using tests::items_of;
using tests::studied;

namespace {

const tests::Tolerance kExact = tests::absolute(1e-9, "the same number by another route");

/// Sight lines of rows by index: two-point row lines that end at the focus.
std::vector<drawing::Line> sight_lines(const drawing::Drawing& section) {
    std::vector<drawing::Line> found;
    for (const auto& line : items_of<drawing::Line>(section)) {
        const bool sight = line.ink == Ink::sight || line.ink == Ink::missed;
        if (sight && line.points.size() == 2 && line.points[1].x < line.points[0].x - 0.5)
            found.push_back(line);
    }
    return found;
}

const study::Figure& c_value(const study::Study& study) {
    study::Place place;
    place.format = 0;
    const study::Figure* figure = study::find_figure(study, "sight.c_value", place);
    REQUIRE(figure);
    return *figure;
}

}  // namespace

TEST_SUITE("drawing/section") {
    TEST_CASE("bounds hold every point of every item") {
        for (const char* name : tests::kDemoRooms) {
            INFO(name);
            CHECK(tests::bounds_hold_all(drawing::long_section(studied(name), {})));
        }
    }

    TEST_CASE("dimensions equal the figures and the layout") {
        for (const char* name : tests::kDemoRooms) {
            INFO(name);
            const study::Study& study = studied(name);
            const room::Layout& layout = study.layout();
            const drawing::Drawing section = drawing::long_section(study, {});
            study::Place first;
            first.projector = 0;
            first.format = 0;
            const auto length = [&](const char* prefix) {
                const auto d = tests::dimension(section, prefix);
                REQUIRE_MESSAGE(d, prefix);
                return drawing::length_m(*d);
            };
            check_close(length("throw "), tests::figure_value(study, "picture.throw", first),
                        kExact);
            check_close(length("picture "), tests::figure_value(study, "picture.height", first),
                        kExact);
            check_close(length("sill "), layout.screen.sill_m, kExact);
            check_close(length("ceiling "), layout.hall.height_m, kExact);
            check_close(length("port "), layout.projectors[0].port.up_m, kExact);
        }
    }

    TEST_CASE("the riser that is dimensioned is the greatest, where a step stands") {
        const study::Study& study = studied("steep-240");
        const study::Figure* risers = study::find_figure(study, "room.riser");
        REQUIRE(risers);
        double greatest = 0.0;
        for (const study::Value& value : risers->values)
            greatest = std::max(greatest, value.si);
        const auto d = tests::dimension(drawing::long_section(study, {}), "riser ");
        REQUIRE(d);
        check_close(drawing::length_m(*d), greatest, kExact);
    }

    TEST_CASE("a plain slope has no riser to dimension") {
        const study::Study& study = studied("converted-hall-96");
        CHECK_FALSE(tests::dimension(drawing::long_section(study, {}), "riser "));
    }

    TEST_CASE("every row has one sight line from its eye to its point of focus") {
        for (const char* name : tests::kDemoRooms) {
            INFO(name);
            const study::Study& study = studied(name);
            const auto lines = sight_lines(drawing::long_section(study, {}));
            CHECK(lines.size() == study.seats.rows.size());
            for (const auto& line : lines) {
                const auto row = static_cast<std::size_t>(line.shows.index);
                const glm::dvec3 eye = study.seats.rows.at(row).centre_eye;
                const glm::dvec3 focus = study.sight.formats[0].rows.at(row).focus;
                CHECK(line.points[0] == glm::dvec2(eye.z, eye.y));
                CHECK(line.points[1] == glm::dvec2(focus.z, focus.y));
            }
        }
    }

    TEST_CASE("rows that miss their C-value, and no others, are drawn in the missed ink") {
        const study::Study& study = studied("converted-hall-96");
        const study::Figure& figure = c_value(study);
        std::vector<int> expected, drawn;
        for (std::size_t i = 0; i < figure.values.size(); ++i)
            if (figure.verdicts[i] == study::Verdict::missed)
                expected.push_back(figure.values[i].index);
        for (const auto& line : sight_lines(drawing::long_section(study, {})))
            if (line.ink == Ink::missed) drawn.push_back(line.shows.index);
        REQUIRE_FALSE(expected.empty());
        std::sort(drawn.begin(), drawn.end());
        CHECK(drawn == expected);
    }

    TEST_CASE("the worst of neighbouring rows that miss says by how much, in the chosen units") {
        const study::Study& study = studied("converted-hall-96");
        const auto labels = [&](base::UnitSystem units) {
            drawing::DrawingChoice choice;
            choice.units = units;
            std::vector<std::string> texts;
            for (const auto& label : items_of<drawing::Label>(drawing::long_section(study, choice)))
                if (label.text.find(" wants ") != std::string::npos) texts.push_back(label.text);
            return texts;
        };
        const auto metric = labels(base::UnitSystem::metric);
        REQUIRE(metric.size() == 1);
        const study::Figure& figure = c_value(study);
        const auto worst = std::min_element(
            figure.values.begin(), figure.values.end(),
            [](const study::Value& a, const study::Value& b) { return a.si < b.si; });
        const std::string row = study.seats.rows.at(static_cast<std::size_t>(worst->index)).letter;
        const std::string value = base::quantity_text(worst->si, base::Unit::millimetre);
        CHECK(metric[0].find(row + " " + value + " wants ") == 0);
        const auto imperial = labels(base::UnitSystem::imperial);
        REQUIRE(imperial.size() == 1);
        CHECK(imperial[0].find(" in wants ") != std::string::npos);
    }

    TEST_CASE("the floor on the centre line runs without a gap from screen wall to booth wall") {
        for (const char* name : tests::kDemoRooms) {
            INFO(name);
            const study::Study& study = studied(name);
            double reached = 0.0;
            for (const auto& piece : drawing::floor_pieces(study.seats)) {
                if (!piece.on_centre_line) continue;
                CHECK(piece.from.x <= reached + 0.01);
                reached = std::max(reached, piece.to.x);
            }
            check_close(reached, study.layout().hall.length_m,
                        tests::absolute(0.01, "a centimetre of floor"));
        }
    }

    TEST_CASE("a floor piece lies on its platform") {
        room::SeatPlan plan;
        plan.platforms.push_back(
            {room::PlatformKind::tread,
             {{{-2.0, 1.0, 4.0}, {-2.0, 2.0, 6.0}, {2.0, 2.0, 6.0}, {2.0, 1.0, 4.0}}},
             {}});
        const auto pieces = drawing::floor_pieces(plan);
        REQUIRE(pieces.size() == 1);
        CHECK(pieces[0].from == glm::dvec2(4.0, 1.0));
        CHECK(pieces[0].to == glm::dvec2(6.0, 2.0));
    }

    TEST_CASE("a row beside the centre line is drawn once, as seen behind it") {
        room::SeatPlan plan;
        plan.rows.push_back({});
        plan.rows[0].centre_floor = {5.0, 0.0, 5.0};
        for (const double x : {3.0, 4.5, 6.0})
            plan.platforms.push_back(
                {room::PlatformKind::tread,
                 {{{x, 0.0, 4.0}, {x, 0.0, 6.0}, {x + 1.5, 0.0, 6.0}, {x + 1.5, 0.0, 4.0}}},
                 0});
        const auto pieces = drawing::floor_pieces(plan);
        REQUIRE(pieces.size() == 1);
        CHECK_FALSE(pieces[0].on_centre_line);
    }

    TEST_CASE("the picture's edges on the section are those of the opening") {
        const study::Study& study = studied("grand-620");
        const auto d = tests::dimension(drawing::long_section(study, {}), "picture ");
        REQUIRE(d);
        const auto& uv = study.picture.openings[0].uv;
        const glm::dvec3 low = geometry::point_at(study.picture.surface, {0.0, uv.bottom});
        CHECK(d->from == glm::dvec2(low.z, low.y));
    }

    TEST_CASE("the scale counts in the chosen units and ends with their name") {
        const study::Study& study = studied("steep-240");
        const auto last = [&](base::UnitSystem units) {
            drawing::DrawingChoice choice;
            choice.units = units;
            std::string text;
            for (const auto& label : items_of<drawing::Label>(drawing::long_section(study, choice)))
                if (label.shows.kind == Shows::Kind::nothing) text = label.text;
            return text;
        };
        CHECK(last(base::UnitSystem::metric) == "24 m");
        CHECK(last(base::UnitSystem::imperial) == "80 ft");
    }

    TEST_CASE("the sight lines are every row's, the selected seat's row's, or none") {
        const study::Study& study = studied("steep-240");
        const std::size_t rows = study.seats.rows.size();
        drawing::DrawingChoice choice;
        CHECK(sight_lines(drawing::long_section(study, choice)).size() == rows);
        choice.sight_lines = drawing::SightLines::selected;
        CHECK(sight_lines(drawing::long_section(study, choice)).empty());
        choice.seat = study.seats.rows[6].first_seat + 3;
        const auto lines = sight_lines(drawing::long_section(study, choice));
        REQUIRE(lines.size() == 1);
        CHECK(lines[0].shows == Shows{Shows::Kind::row, 6});
        check_close(lines[0].points[0].y, study.seats.rows[6].centre_eye.y, kExact);
    }

    TEST_CASE("in each cross aisle someone stands as tall as the audience says") {
        const study::Study& study = studied("grand-620");
        const auto aisles = study::cross_aisles(study);
        REQUIRE(aisles.size() == 1);
        const double crown = aisles[0].middle.y + study.layout().audience.standing_height_m;
        bool found = false;
        for (const auto& line : items_of<drawing::Line>(drawing::long_section(study, {}))) {
            if (!line.closed || line.ink != Ink::quiet) continue;
            double top = -1e9, middle = 0.0;
            for (const glm::dvec2& p : line.points) {
                top = std::max(top, p.y);
                middle += p.x / static_cast<double>(line.points.size());
            }
            found = found ||
                    (std::abs(top - crown) < 1e-6 && std::abs(middle - aisles[0].middle.z) < 1e-6);
        }
        CHECK(found);
    }
}
