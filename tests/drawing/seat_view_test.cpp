// SPDX-License-Identifier: MIT
#include "study/seat_view.hpp"

#include "drawing/studied_room.hpp"
#include "support/check.hpp"

#include <doctest/doctest.h>

#include <algorithm>

using namespace rakeline;
using drawing::Ink;
using tests::items_of;
using tests::studied;

namespace {

base::Result<drawing::Drawing> from(const study::Study& study, int seat, int format = 0) {
    drawing::DrawingChoice choice;
    choice.seat = seat;
    choice.format = format;
    return drawing::seat_view(study, choice);
}

drawing::Drawing drawn(const study::Study& study, int seat, int format = 0) {
    auto drawing = from(study, seat, format);
    if (!drawing) FAIL(base::text(drawing.problems()));
    return *drawing;
}

bool says(const drawing::Drawing& drawing, const std::string& words) {
    return std::ranges::any_of(items_of<drawing::Label>(drawing), [&](const auto& label) {
        return label.text.find(words) != std::string::npos;
    });
}

std::vector<std::vector<glm::dvec2>> marked(const drawing::Drawing& drawing) {
    std::vector<std::vector<glm::dvec2>> out;
    for (const drawing::Fill& fill : items_of<drawing::Fill>(drawing))
        if (fill.ink == Ink::missed) out.push_back(fill.points);
    return out;
}

double hidden(const study::Study& study, int seat, int format) {
    return study.sight.formats.at(static_cast<std::size_t>(format))
        .hidden.at(static_cast<std::size_t>(seat))
        .hidden_fraction;
}

/// From the page back to the picture surface: a ray from the eye through the page's point, which
/// lies in the plane through the picture's centre across the line of sight.
std::vector<glm::dvec2> on_picture(const study::Study& study,
                                   int seat,
                                   int format,
                                   const std::vector<glm::dvec2>& page) {
    const geometry::Patch& surface = study.picture.surface;
    const auto& opening = study.picture.openings.at(static_cast<std::size_t>(format)).uv;
    const glm::dvec3 eye = study.seats.seats.at(static_cast<std::size_t>(seat)).eye;
    const glm::dvec3 target = geometry::point_at(surface, opening.centre());
    const glm::dvec3 ahead = glm::normalize(target - eye);
    const glm::dvec3 right = glm::normalize(glm::cross(ahead, glm::dvec3(0.0, 1.0, 0.0)));
    const glm::dvec3 up = glm::cross(right, ahead);
    std::vector<glm::dvec2> out;
    for (const glm::dvec2& p : page) {
        const glm::dvec3 through = target + p.x * right + p.y * up;
        const auto hit = geometry::front_hit(surface, {eye, through - eye});
        REQUIRE(hit);
        out.push_back(hit->uv);
    }
    return out;
}

int worst(const study::Study& study, int format) {
    const auto& seats = study.sight.formats.at(static_cast<std::size_t>(format)).hidden;
    return static_cast<int>(
        std::ranges::max_element(seats, {}, &sight::SeatHidden::hidden_fraction) - seats.begin());
}

study::Study curved_room() {
    room::Brief brief = *tests::demo_brief("screening-24");
    brief.layout.screen.radius_m = 5.0;
    brief.layout.screen.tilt_rad = 0.1;
    return study::compute_study(std::make_shared<const room::Brief>(brief));
}

}  // namespace

TEST_SUITE("drawing/seat_view") {
    TEST_CASE("the area marked, thrown back onto the screen, is the part that the figure gives") {
        const study::Study curved = curved_room();
        for (const study::Study* study : {&studied("screening-24"), &studied("converted-hall-96"),
                                          &studied("grand-620"), &curved})
            for (std::size_t f = 0; f < study->picture.openings.size(); ++f) {
                const int format = static_cast<int>(f);
                for (const int seat : {worst(*study, format), 0, 9}) {
                    double area = 0.0;
                    for (const auto& fill : marked(drawn(*study, seat, format)))
                        area += geometry::signed_area(on_picture(*study, seat, format, fill));
                    INFO(study->layout().name, " format ", f, " seat ", seat);
                    tests::check_close(area / study->picture.openings[f].uv.area(),
                                       hidden(*study, seat, format),
                                       tests::absolute(0.0015, "128 columns against 512"));
                }
            }
    }

    TEST_CASE("it says in words what the figures say, and who hides most") {
        const study::Study& study = studied("screening-24");
        const int seat = worst(study, 0);
        const drawing::Drawing drawing = drawn(study, seat);
        const auto& name = study.seats.seats[static_cast<std::size_t>(seat)].name;
        CHECK(drawing.title == "From seat " + name);
        CHECK(says(drawing, name + " · 1.85"));
        const auto value = [&](const char* id) {
            study::Place place;
            place.format = 0;
            const study::Figure* figure = study::find_figure(study, id, place);
            return base::quantity_text(*study::value_at(*figure, seat), figure->definition->unit);
        };
        CHECK(says(drawing, "hidden " + value("sight.hidden") + " ✗"));
        CHECK(says(drawing, "clear from " + value("sight.clear_above")));
        CHECK(says(drawing, "picture " + value("sight.subtended_width") + " wide"));
        CHECK(says(drawing, "picture " + value("sight.subtended_height") + " high"));
        CHECK(says(drawing, "up to the top edge " + value("sight.elevation_top")));
        const auto shares = study::shares_by_seat(study::seat_view(study, 0, seat));
        REQUIRE_FALSE(shares.empty());
        const auto& most = study.seats.seats[static_cast<std::size_t>(*shares[0].seat)];
        CHECK(says(drawing, "by " + most.name + " " +
                                base::quantity_text(shares[0].fraction, base::Unit::fraction)));
        CHECK(says(drawing, "eye level"));
    }

    TEST_CASE("a hidden part is hatched as well as filled: colour is never alone") {
        const study::Study& study = studied("screening-24");
        const auto lines = items_of<drawing::Line>(drawn(study, worst(study, 0)));
        const auto hatches = std::ranges::count_if(lines, [](const drawing::Line& line) {
            return line.ink == Ink::missed && line.weight == drawing::Weight::helper;
        });
        CHECK(hatches > 10);
    }

    TEST_CASE("a click on a head in front means its seat, and the nearest is meant") {
        const study::Study& study = studied("screening-24");
        const int seat = *room::find_seat(study.seats, "C3");
        const drawing::Drawing drawing = drawn(study, seat);
        const int front = *room::find_seat(study.seats, "B3");
        for (const drawing::Label& label : items_of<drawing::Label>(drawing)) {
            if (label.text.find("B3") != 0) continue;
            CHECK(drawing::shown_at(drawing, label.at + glm::dvec2(0.0, 0.05), 0.01) ==
                  drawing::Shows{drawing::Shows::Kind::seat, front});
        }
    }

    TEST_CASE("every seat of every demo room and format can be looked from, within its bounds") {
        for (const char* name : tests::kDemoRooms) {
            const study::Study& study = studied(name);
            const int count = static_cast<int>(study.seats.seats.size());
            for (int seat = 0; seat < count; seat += std::max(1, count / 16)) {
                INFO(name, " seat ", seat);
                CHECK(tests::bounds_hold_all(drawn(study, seat, 0)));
            }
        }
    }

    TEST_CASE("a format without a picture is looked at like any other") {
        study::Study study = studied("converted-hall-96");
        study.picture.pictures.clear();
        CHECK(says(drawn(study, 90, 1), "hidden"));
    }

    TEST_CASE("a seat that faces away says so, and its eye is turned to the picture") {
        study::Study study = studied("screening-24");
        const auto before = marked(drawn(study, 14));
        study.seats.seats[14].facing = {0.0, 0.0, 1.0};
        const drawing::Drawing drawing = drawn(study, 14);
        CHECK(says(drawing, "faces away"));
        CHECK(marked(drawing) == before);
    }

    TEST_CASE("an eye inside another's head sees nothing: all of the picture is marked") {
        study::Study study = studied("screening-24");
        study.seats.seats[14].eye = study.seats.seats[8].eye + glm::dvec3(0.01, 0.0, 0.02);
        double area = 0.0;
        for (const auto& fill : marked(drawn(study, 14)))
            area += geometry::signed_area(on_picture(study, 14, 0, fill));
        tests::check_close(area, study.picture.openings[0].uv.area(),
                           tests::relative(1e-9, "all of it"));
    }

    TEST_CASE(
        "behind a flat picture nothing hides it, nobody is drawn, and it says where the eye is") {
        study::Study study = studied("screening-24");
        study.seats.seats[14].eye = study.picture.surface.centre - glm::dvec3(0.4, 0.2, 2.0);
        const drawing::Drawing drawing = drawn(study, 14);
        CHECK(says(drawing, "behind the picture"));
        CHECK(marked(drawing).empty());
        for (const drawing::Line& line : items_of<drawing::Line>(drawing))
            CHECK(line.shows.kind != drawing::Shows::Kind::seat);
        CHECK(tests::bounds_hold_all(drawing));
    }

    TEST_CASE("an eye in the picture, and one beside its edge, are drawn within the widest field") {
        study::Study study = studied("screening-24");
        const geometry::Patch& surface = study.picture.surface;
        for (const glm::dvec3 eye :
             {geometry::point_at(surface, {0.0, 0.0}),
              geometry::point_at(surface, {1.9, 0.1}) + 0.02 * surface.normal,
              surface.centre + 1e-9 * surface.normal}) {
            study.seats.seats[14].eye = eye;
            CHECK(tests::bounds_hold_all(drawn(study, 14)));
        }
    }

    TEST_CASE("refuses: no seat chosen, a seat that is not there, a room without seats") {
        study::Study study = studied("screening-24");
        CHECK(drawing::seat_view(study, {}).problems()[0].what == "no seat is chosen");
        for (const int seat : {-1, 24, 1000})
            CHECK_FALSE(from(study, seat));
        study.seats.seats.clear();
        const auto refused = from(study, 0);
        REQUIRE_FALSE(refused);
        CHECK(refused.problems()[0].what == "the room has no seats");
        CHECK_FALSE(refused.problems()[0].mend.empty());
    }
}
