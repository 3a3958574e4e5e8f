// SPDX-License-Identifier: MIT
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

/// How many fills and how many outlines each seat has.
struct SeatCount {
    std::vector<int> fills, outlines;
};

SeatCount count_seats(const study::Study& study, const drawing::Drawing& plan) {
    SeatCount count{std::vector<int>(study.seats.seats.size(), 0),
                    std::vector<int>(study.seats.seats.size(), 0)};
    for (const auto& fill : items_of<drawing::Fill>(plan))
        if (fill.shows.kind == Shows::Kind::seat)
            ++count.fills.at(static_cast<std::size_t>(fill.shows.index));
    for (const auto& line : items_of<drawing::Line>(plan))
        if (line.shows.kind == Shows::Kind::seat && line.ink != Ink::near)
            ++count.outlines.at(static_cast<std::size_t>(line.shows.index));
    return count;
}

bool all_are(const std::vector<int>& counts, int wanted) {
    return std::all_of(counts.begin(), counts.end(), [=](int n) { return n == wanted; });
}

glm::dvec2 middle(const std::vector<glm::dvec2>& points) {
    glm::dvec2 sum(0.0);
    for (const auto& p : points)
        sum += p;
    return sum / static_cast<double>(points.size());
}

}  // namespace

TEST_SUITE("drawing/plan") {
    TEST_CASE("every seat of every demo room appears once, as fill and outline") {
        for (const char* name : tests::kDemoRooms) {
            INFO(name);
            const study::Study& study = studied(name);
            const SeatCount count = count_seats(study, drawing::plan(study, {}));
            CHECK(all_are(count.fills, 1));
            CHECK(all_are(count.outlines, 1));
        }
    }

    TEST_CASE("the two levels of a house with a balcony share its seats without overlap") {
        const study::Study& study = studied("grand-620");
        drawing::DrawingChoice floor, balcony;
        floor.raised = false;
        balcony.raised = true;
        const SeatCount a = count_seats(study, drawing::plan(study, floor));
        const SeatCount b = count_seats(study, drawing::plan(study, balcony));
        int on_floor = 0, on_balcony = 0;
        for (std::size_t i = 0; i < a.fills.size(); ++i) {
            CHECK(a.fills[i] + b.fills[i] == 1);
            on_floor += a.fills[i];
            on_balcony += b.fills[i];
        }
        CHECK(on_floor > 0);
        CHECK(on_balcony > 0);
    }

    TEST_CASE("bounds hold every point of every item") {
        for (const char* name : tests::kDemoRooms) {
            INFO(name);
            CHECK(tests::bounds_hold_all(drawing::plan(studied(name), {})));
        }
    }

    TEST_CASE("dimensions equal the figures") {
        for (const char* name : tests::kDemoRooms) {
            INFO(name);
            const study::Study& study = studied(name);
            const drawing::Drawing plan = drawing::plan(study, {});
            study::Place first;
            first.projector = 0;
            first.format = 0;
            const auto length = [&](const char* prefix) {
                const auto d = tests::dimension(plan, prefix);
                REQUIRE_MESSAGE(d, prefix);
                return drawing::length_m(*d);
            };
            check_close(length("throw "), tests::figure_value(study, "picture.throw", first),
                        kExact);
            check_close(length("picture "), tests::figure_value(study, "picture.width", first),
                        kExact);
            check_close(length("first row "), tests::figure_value(study, "room.first_row_distance"),
                        kExact);
            check_close(length("hall "), study.layout().hall.width_m, kExact);
        }
    }

    TEST_CASE("a seat lies at its place with the screen at the top and house left at the left") {
        const study::Study& study = studied("grand-620");
        const drawing::Drawing plan = drawing::plan(study, {});
        CHECK(plan.y_down);
        for (const auto& fill : items_of<drawing::Fill>(plan)) {
            if (fill.shows.kind != Shows::Kind::seat) continue;
            const auto& seat = study.seats.seats.at(static_cast<std::size_t>(fill.shows.index));
            const glm::dvec2 at = middle(fill.points);
            // The shape reaches farther before the eye than behind it, by less than half a metre.
            const glm::dvec2 off = at - glm::dvec2(seat.floor.x, seat.floor.z);
            CHECK(glm::length(off) < 0.25);
            CHECK(glm::dot(off, glm::dvec2(seat.facing.x, seat.facing.z)) > 0.0);
        }
    }

    TEST_CASE("seats are inked by the verdict of the chosen figure, and marked where they miss") {
        const study::Study& study = studied("screening-24");
        study::Place place;
        place.format = 0;
        const study::Figure* figure = study::find_figure(study, "sight.off_axis", place);
        REQUIRE(figure);
        drawing::DrawingChoice choice;
        choice.seat_figure = figure;
        const drawing::Drawing plan = drawing::plan(study, choice);
        int missed_fills = 0, crosses = 0;
        for (const auto& fill : items_of<drawing::Fill>(plan))
            missed_fills += fill.shows.kind == Shows::Kind::seat && fill.ink == Ink::missed;
        for (const auto& line : items_of<drawing::Line>(plan))
            crosses += line.ink == Ink::missed && !line.closed;
        const auto missed =
            std::count(figure->verdicts.begin(), figure->verdicts.end(), study::Verdict::missed);
        CHECK(missed > 0);
        CHECK(missed_fills == missed);
        CHECK(crosses == missed);
    }

    TEST_CASE("a figure that is not per seat colours no seat") {
        const study::Study& study = studied("screening-24");
        drawing::DrawingChoice choice;
        choice.seat_figure = study::find_figure(study, "picture.beam_clearance");
        for (const auto& fill : items_of<drawing::Fill>(drawing::plan(study, choice)))
            if (fill.shows.kind == Shows::Kind::seat) CHECK(fill.ink == Ink::line);
    }

    TEST_CASE("the beam's sides run from the lens to the picture's edges") {
        const study::Study& study = studied("steep-240");
        const auto* picture = picture::find_picture(study.picture, 0, 0);
        REQUIRE(picture);
        for (const auto& fill : items_of<drawing::Fill>(drawing::plan(study, {}))) {
            if (fill.ink != Ink::beam) continue;
            const glm::dvec3 lens = picture->map.pose().lens;
            CHECK(fill.points.front() == glm::dvec2(lens.x, lens.z));
            const auto left = picture->map.screen_from_gate({-0.5 * picture->gate_size_m.x, 0.0});
            REQUIRE(left);
            const glm::dvec3 p = geometry::point_at(study.picture.surface, *left);
            check_close(fill.points.at(1).x, p.x, kExact);
            check_close(fill.points.at(1).y, p.z, kExact);
        }
    }

    TEST_CASE("the opening and the masking beside it differ in ink and add up to the frame") {
        const study::Study& study = studied("converted-hall-96");
        double opening = 0.0, masking = 0.0;
        for (const auto& line : items_of<drawing::Line>(drawing::plan(study, {}))) {
            if (line.shows.kind != Shows::Kind::screen) continue;
            const double width = glm::length(line.points.back() - line.points.front());
            (line.ink == Ink::screen ? opening : masking) += width;
        }
        check_close(opening, study.picture.openings[0].width_m, kExact);
        CHECK(masking > 0.0);
        check_close(opening + masking, study.layout().screen.width_m, kExact);
    }

    TEST_CASE("every row letter stands at both ends of its row") {
        const study::Study& study = studied("steep-240");
        std::vector<int> seen(study.seats.rows.size(), 0);
        for (const auto& label : items_of<drawing::Label>(drawing::plan(study, {})))
            if (label.shows.kind == Shows::Kind::row) {
                const auto row = static_cast<std::size_t>(label.shows.index);
                CHECK(label.text == study.seats.rows.at(row).letter);
                ++seen.at(row);
            }
        CHECK(all_are(seen, 2));
    }

    TEST_CASE("every projector and loudspeaker can be clicked at its place") {
        const study::Study& study = studied("grand-620");
        const drawing::Drawing plan = drawing::plan(study, {});
        for (std::size_t i = 0; i < study.layout().projectors.size(); ++i) {
            const auto& p = study.layout().projectors[i];
            const Shows found = drawing::shown_at(plan, {p.across_m, p.back_m}, 0.01);
            CHECK(found == Shows{Shows::Kind::projector, static_cast<int>(i)});
        }
        for (std::size_t i = 0; i < study.layout().loudspeakers.size(); ++i) {
            const auto& l = study.layout().loudspeakers[i];
            const Shows found = drawing::shown_at(plan, {l.across_m, l.back_m}, 0.01);
            CHECK(found.kind == Shows::Kind::loudspeaker);
        }
    }

    TEST_CASE("a room without seats, formats, projectors or loudspeakers still has a plan") {
        room::Brief empty;
        const auto study = study::compute_study(std::make_shared<const room::Brief>(empty));
        const drawing::Drawing plan = drawing::plan(study, {});
        CHECK(tests::bounds_hold_all(plan));
        CHECK(count_seats(study, plan).fills.empty());
        CHECK(tests::dimension(plan, "hall "));
        CHECK_FALSE(tests::dimension(plan, "throw "));
    }
}
